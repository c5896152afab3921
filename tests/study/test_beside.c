/* Is a drive that is read beside another answered as if it were read alone, bit for bit?
 *
 * A study alone computes everything; one beside another takes what has not changed.  Both are asked
 * for the whole answer and the view after every one of a walk of edits.
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "towershaft/towershaft.h"

#include "base/buffer.h"

#include <stdlib.h>
#include <string.h>

/* Some drives have not all of these places. */
static const ts_study_edit walk[] = {
    {"drive/hp/box/clockwise/1/teeth", "41", 0},
    {"drive/hp/box/clockwise/1/teeth", "43", 0},
    {"drive/hp/box/clockwise/1", NULL, 2},
    {"drive/hp/box/input/bearings/rear", "{series: 6210}", 0},
    {"drive/hp/box/counter-clockwise/1/face", "13 mm", 0},
    {"drive/hp/box/clockwise/1/teeth", "41", 0},
    {"revision", "Z", 0},
    {"drive/hp/box/clockwise/2/teeth", "39", 0},
};
#define STEPS (sizeof walk / sizeof walk[0])

static int append(void *context, const char *bytes, size_t length)
{
    ts_buffer_bytes(context, bytes, length);
    return 0;
}

static ts_study_options options_of(size_t step)
{
    return (ts_study_options){.today = 20000, .us = step % 3 == 1};
}

/* All that a page is told of it. */
static void tell(ts_study *study, bool us, ts_buffer *out)
{
    const ts_sink         sink = {append, out};
    const ts_view_options view = {.us = us};
    assert_int_equal(ts_study_write(study, TS_DOCUMENT_JSON, NULL, &sink), TS_OK);
    assert_int_equal(ts_study_write_view(study, &view, &sink), TS_OK);
}

static void same_as_alone(ts_study *beside, const ts_buffer *text, const ts_study_options *options)
{
    ts_study *alone = NULL;
    ts_buffer one, other;
    ts_buffer_open(&one, NULL);
    ts_buffer_open(&other, NULL);
    assert_int_equal(ts_study_open(NULL, &alone), TS_OK);
    assert_int_equal(ts_study_read(alone, "a.yaml", text->bytes, text->length, options), TS_OK);
    tell(alone, options->us, &one);
    tell(beside, options->us, &other);
    assert_int_equal(one.length, other.length);
    assert_memory_equal(one.bytes, other.bytes, one.length);
    ts_study_close(alone);
    ts_buffer_close(&one);
    ts_buffer_close(&other);
}

/* The text with one edit more, where it can be read; the study beside `shown` that has read it. */
static ts_study *step(ts_study *shown, size_t number, ts_buffer *text)
{
    const ts_study_options options = options_of(number);
    const ts_sink          sink    = {append, text};
    ts_study              *beside  = NULL;
    ts_buffer_clear(text);
    if (ts_study_propose(shown, &walk[number % STEPS], 1, &sink) != TS_OK)
        return NULL;
    assert_int_equal(ts_study_open_beside(shown, &beside), TS_OK);
    if (ts_study_read(beside, "a.yaml", text->bytes, text->length, &options) == TS_OK)
        return beside;
    ts_study_close(beside);
    return NULL;
}

static void walk_over(const char *path, size_t *made)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = options_of(0);
    ts_study              *shown   = NULL;
    ts_buffer              text;
    ts_buffer_open(&text, NULL);
    assert_int_equal(ts_study_open(NULL, &shown), TS_OK);
    assert_int_equal(ts_study_read(shown, path, file.at, file.length, &options), TS_OK);
    for (size_t number = 0; number < TS_CASES(STEPS + 2, STEPS); number++) {
        ts_study *beside = step(shown, number, &text);
        if (beside == NULL)
            continue;
        const ts_study_options told = options_of(number);
        same_as_alone(beside, &text, &told);
        ts_study_close(shown); /* the one that began it ends first */
        shown = beside;
        (*made)++;
    }
    ts_study_close(shown);
    ts_buffer_close(&text);
    free_file(file);
}

static void what_is_remembered_changes_no_bit(void **state)
{
    (void)state;
    static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                           "examples/large.yaml"};
    size_t                   made       = 0;
    for (size_t i = 0; i < sizeof examples / sizeof examples[0]; i++)
        walk_over(examples[i], &made);
    assert_true(made >= STEPS);
}

/* A drive and the same drive beside it, with whatever memory there is. */
/* The digit before the first kilowatt becomes another. */
static void change_digit(char *bytes, size_t length)
{
    size_t at = 1;
    while (at + 3 < length &&
           !(memcmp(bytes + at, " kW", 3) == 0 && bytes[at - 1] >= '0' && bytes[at - 1] <= '9'))
        at++;
    assert_true(at + 3 < length);
    bytes[at - 1] = bytes[at - 1] == '9' ? '8' : (char)(bytes[at - 1] + 1);
}

/* The second drive differs in a value, so that its tree is moved along. */
static ts_status both(const ts_allocator *allocator, ts_text file, ts_text other, ts_buffer *out)
{
    const ts_study_options options = options_of(0);
    const ts_sink          sink    = {append, out};
    ts_study              *first = NULL, *second = NULL;
    ts_status              status = ts_study_open(allocator, &first);
    if (status == TS_OK)
        status = ts_study_read(first, "a.yaml", file.at, file.length, &options);
    for (int i = 0; i < 2 && status == TS_OK; i++) {
        ts_study_close(second);
        second = NULL;
        status = ts_study_open_beside(first, &second);
        if (status == TS_OK)
            status = ts_study_read(second, "a.yaml", other.at, other.length, &options);
    }
    ts_study_close(first);
    if (status == TS_OK)
        status = ts_study_write(second, TS_DOCUMENT_PAGE, NULL, &sink);
    ts_study_close(second);
    return status;
}

static void without_memory_nothing_is_remembered_and_nothing_is_lost(void **state)
{
    (void)state;
    const ts_text    file = read_file("examples/trainer.yaml");
    faulty_allocator faulty;
    ts_buffer        whole;
    ts_buffer_open(&whole, NULL);
    const ts_allocator sound = faulty_allocator_open(&faulty, 0, FAULTY_ONCE);
    char              *bytes = malloc(file.length);
    assert_non_null(bytes);
    memcpy(bytes, file.at, file.length);
    const ts_text other = {bytes, file.length};
    change_digit(bytes, file.length);
    assert_int_equal(both(&sound, file, other, &whole), TS_OK);
    assert_int_equal(faulty.live_blocks, 0);
    const size_t calls = faulty.calls, stride = calls / TS_CASES(30, 6) + 1;
    size_t       refused = 0, answered = 0;
    for (size_t n = 1; n <= calls; n += stride) {
        ts_buffer out;
        ts_buffer_open(&out, NULL);
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
        const ts_status    status    = both(&allocator, file, other, &out);
        assert_int_equal(faulty.live_blocks, 0);
        if (status == TS_OK) {
            assert_int_equal(out.length, whole.length);
            assert_memory_equal(out.bytes, whole.bytes, whole.length);
        } else {
            assert_int_equal(status, TS_NO_MEMORY);
        }
        refused += status != TS_OK;
        answered += status == TS_OK;
        ts_buffer_close(&out);
    }
    assert_true(refused > 0 && answered > 0); /* a memo may do without */
    ts_buffer_close(&whole);
    free(bytes);
    free_file(file);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_is_remembered_changes_no_bit),
        cmocka_unit_test(without_memory_nothing_is_remembered_and_nothing_is_lost),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
