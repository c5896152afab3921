/* Is a sample that stands on what the last one left behind bitwise the one that is read and solved
 * by itself? */
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "study/sampling.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define VARIED_MOST 12
#define SAMPLES     5

static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                    "examples/medium.yaml", "examples/large.yaml"};

static const ts_study_options options = {.today = 20000};

static uint64_t state = 9;

static uint64_t any(uint64_t below)
{
    state ^= state << 13;
    state ^= state >> 7;
    state ^= state << 17;
    return state % below;
}

/* ---- a study of anything that varies ----------------------------------------------------------
 */

/* A line of `vary` for a node: a few percent about what stands there, as far as it is a number. */
/* 2.5 mm, and no temperature, which has no percentage; no range. */
static bool is_simple(ts_text text)
{
    if (text.length < 3 || text.at[0] < '1' || text.at[0] > '9')
        return false;
    for (size_t i = 1; i < text.length; i++)
        if (text.at[i] == 'C' || (text.at[i] == '.' && text.at[i - 1] == '.'))
            return false;
    return memchr(text.at, ' ', text.length) != NULL && memchr(text.at, '.', text.length) != NULL;
}

static bool add_line(const ts_study *drive, ts_node node, ts_buffer *out)
{
    const ts_node_place *place = &drive->source.nodes[node];
    ts_buffer            address;

    if (place->form != TS_NODE_SCALAR || !is_simple(place->scalar))
        return false;
    ts_buffer_open(&address, drive->allocator);
    ts_source_address(&drive->source, node, &address);
    const bool plain =
        !address.failed && address.length > 0 && strpbrk(address.bytes, ":#'\"{},") == NULL;
    if (plain)
        ts_buffer_print(out, "  - {at: %s, law: uniform, least: 97 %%, most: 103 %%}\n",
                        address.bytes);
    ts_buffer_close(&address);
    return plain;
}

static void write_study(const ts_study *drive, ts_buffer *out)
{
    const uint64_t one_in = 4 + any(60);
    int            count  = 0;

    ts_buffer_print(out,
                    "towershaft study: 1\ntitle: t\ndrive: d.yaml\nseed: %d\nsamples: 100\n"
                    "vary:\n",
                    (int)any(1000));
    while (count == 0)
        for (ts_node node = 1; node <= drive->source.node_count && count < VARIED_MOST; node++)
            count += any(one_in) == 0 && add_line(drive, node, out);
}

/* ---- the same -------------------------------------------------------------------------------- */

static void same(double a, double b)
{
    assert_memory_equal(&a, &b, sizeof a);
}

static void same_text(const char *a, const char *b)
{
    assert_int_equal(a == NULL, b == NULL);
    if (a != NULL)
        assert_string_equal(a, b);
}

static void same_findings(const ts_check_outcome *a, const ts_check_outcome *b)
{
    assert_int_equal(a->verdict, b->verdict);
    assert_int_equal(a->finding_count, b->finding_count);
    for (size_t i = 0; i < a->finding_count; i++) {
        const ts_finding *x = &a->findings[i], *y = &b->findings[i];
        assert_string_equal(x->rule, y->rule);
        assert_int_equal(x->node, y->node);
        assert_int_equal(x->state, y->state);
        same_text(x->says, y->says);
        same_text(x->remedy, y->remedy);
        assert_string_equal(x->fingerprint, y->fingerprint);
    }
    assert_int_equal(a->judgement_count, b->judgement_count);
    for (size_t i = 0; i < a->judgement_count; i++) {
        const ts_judgement *x = &a->judgements[i], *y = &b->judgements[i];
        assert_string_equal(x->rule, y->rule);
        assert_int_equal(x->node, y->node);
        assert_int_equal(x->condition, y->condition);
        assert_int_equal(x->passed, y->passed);
        same(x->value, y->value);
        same(x->limit, y->limit);
        same(x->margin, y->margin);
    }
}

/* What is remembered stands behind judgements; here it is itself. */
static void same_remembered(const ts_study *a, const ts_study *b)
{
    for (uint32_t i = 0; i < a->webs.count; i++) {
        assert_int_equal(a->webs.items[i].count, b->webs.items[i].count);
        for (int n = 0; n < a->webs.items[i].count; n++)
            same(a->webs.items[i].f[n], b->webs.items[i].f[n]);
    }
    for (uint32_t i = 0; i < a->whirls.count; i++) {
        same(a->whirls.items[i].forward, b->whirls.items[i].forward);
        same_text(a->whirls.items[i].fault, b->whirls.items[i].fault);
    }
    for (uint32_t i = 0; i < a->lines.count; i++)
        for (int k = 0; k < a->lines.lines[i].bearing_count; k++) {
            const ts_line_bearing *x = &a->lines.lines[i].bearings[k];
            const ts_line_bearing *y = &b->lines.lines[i].bearings[k];
            same_text(x->series, y->series);
            same_text(x->fault, y->fault);
            same(x->bearing.D, y->bearing.D);
            same(x->k_r, y->k_r);
            same(x->rating.L_nmh, y->rating.L_nmh);
        }
}

/* ---- the two ways ---------------------------------------------------------------------------- */

static size_t compared;

static int keep_text(void *context, const char *bytes, size_t length)
{
    ts_buffer_bytes(context, bytes, length);
    return 0;
}

static void compare(ts_sampling *sampling, ts_sampling_frame *frame, ts_study *cold, uint64_t id)
{
    double        values[TS_SAMPLE_INPUTS_MOST];
    ts_buffer     text;
    const ts_sink sink = {keep_text, &text};

    ts_buffer_open(&text, cold->allocator);
    ts_design_row(&sampling->design, id, values);
    assert_int_equal(ts_sampling_write_drive(sampling, id, &sink), TS_OK);
    const ts_status warm = ts_sampling_frame_solve(frame, values);
    assert_int_equal(
        ts_study_read(cold, sampling->nominal->name, text.bytes, text.length, &options), warm);
    assert_int_equal(ts_study_message_count(cold), ts_study_message_count(frame->study));
    for (size_t i = 0; i < ts_study_message_count(cold); i++) {
        const ts_message x = ts_study_message(cold, i), y = ts_study_message(frame->study, i);
        assert_int_equal(x.line, y.line);
        assert_int_equal(x.column, y.column);
        assert_string_equal(x.says, y.says);
    }
    if (warm == TS_OK) {
        same_findings(&frame->study->outcome, &cold->outcome);
        same_remembered(frame->study, cold);
        compared++;
    }
    ts_buffer_close(&text);
}

static void try_study(const char *path, ts_text bytes, const ts_study *drive)
{
    ts_sampling      *sampling = NULL;
    ts_sampling_frame frame;
    ts_study         *cold;
    ts_buffer         text;

    ts_buffer_open(&text, drive->allocator);
    write_study(drive, &text);
    assert_int_equal(ts_sampling_open(NULL, "s.yaml", text.bytes, text.length, &sampling), TS_OK);
    const ts_status taken = ts_sampling_take(sampling, path, bytes.at, bytes.length, &options);
    assert_true(taken == TS_OK || taken == TS_NOT_UNDERSTOOD); /* an address came twice */
    if (taken == TS_OK) {
        assert_int_equal(ts_sampling_frame_open(sampling, &frame), TS_OK);
        assert_int_equal(ts_study_open(NULL, &cold), TS_OK);
        for (int i = 0; i < SAMPLES; i++)
            compare(sampling, &frame, cold, any(100));
        ts_study_close(cold);
        ts_sampling_frame_close(&frame);
    }
    ts_sampling_close(sampling);
    ts_buffer_close(&text);
}

static void a_sample_does_not_depend_on_those_before_it(void **unused)
{
    (void)unused;
    compared = 0;
    for (size_t f = 0; f < sizeof files / sizeof files[0]; f++) {
        const ts_text file = read_file(files[f]);
        ts_study     *drive;

        assert_int_equal(ts_study_open(NULL, &drive), TS_OK);
        assert_int_equal(ts_study_read(drive, files[f], file.at, file.length, &options), TS_OK);
        for (int i = 0; i < TS_CASES(4, 1); i++)
            try_study(files[f], file, drive);
        ts_study_close(drive);
        free_file(file);
    }
    assert_true(compared > TS_CASES(40, 4)); /* the others are refused, both ways */
}

/* ---- without memory -------------------------------------------------------------------------- */

static const char loads[] =
    "towershaft study: 1\ntitle: t\ndrive: d.yaml\nsamples: 100\nvary:\n"
    "  - {at: accessories/starter-generator/mass, law: uniform, least: 90 %, most: 110 %}\n";

static void memory_may_end_anywhere(void **unused)
{
    const ts_text      file = read_file(files[0]);
    faulty_allocator   faulty;
    const ts_allocator allocator = faulty_allocator_open(&faulty, 0, FAULTY_ONCE);
    ts_sampling       *sampling  = NULL;
    double             values[TS_SAMPLE_INPUTS_MOST];
    size_t             lacked = 0;
    bool               whole  = false;

    (void)unused;
    assert_int_equal(ts_sampling_open(&allocator, "s.yaml", loads, strlen(loads), &sampling),
                     TS_OK);
    assert_int_equal(ts_sampling_take(sampling, files[0], file.at, file.length, &options), TS_OK);
    const size_t before = faulty.live_blocks;
    for (size_t n = 1; !whole; n += TS_CASES(1, 3)) {
        ts_sampling_frame frame;
        ts_status         status;

        faulty.fail_at = faulty.calls + n;
        faulty.failed  = 0;
        status         = ts_sampling_frame_open(sampling, &frame);
        for (uint64_t id = 0; status == TS_OK && id < 2; id++) {
            ts_design_row(&sampling->design, id, values);
            status = ts_sampling_frame_solve(&frame, values);
        }
        assert_true(status == TS_OK || (status == TS_NO_MEMORY && faulty.failed > 0));
        lacked += status == TS_NO_MEMORY;
        whole = faulty.failed == 0;
        ts_sampling_frame_close(&frame);
        assert_int_equal(faulty.live_blocks, before);
    }
    assert_true(lacked > TS_CASES(4, 1));
    ts_sampling_close(sampling);
    assert_int_equal(faulty.live_blocks, 0);
    free_file(file);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_sample_does_not_depend_on_those_before_it),
        cmocka_unit_test(memory_may_end_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
