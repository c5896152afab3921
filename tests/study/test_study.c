/* Is the study pure, frugal and whole? */
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include "study/study.h"

#include "model/reader.h"

#include <stdlib.h>
#include <string.h>

static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                       "examples/medium.yaml", "examples/large.yaml"};
#define EXAMPLE_COUNT (sizeof examples / sizeof examples[0])

static int append(void *context, const char *bytes, size_t length)
{
    ts_buffer_bytes(context, bytes, length);
    return 0;
}

static ts_study *study_of(const char *path, bool workings)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000, .workings = workings};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static void page_of(ts_study *study, ts_buffer *out)
{
    const ts_sink sink = {append, out};
    ts_buffer_open(out, NULL);
    assert_int_equal(ts_study_write(study, TS_DOCUMENT_PAGE, NULL, &sink), TS_OK);
}

static void workings_change_no_bit_of_the_answer(void **state)
{
    (void)state;
    for (size_t i = 0; i < EXAMPLE_COUNT; i++) {
        ts_study    *silent = study_of(examples[i], false), *told = study_of(examples[i], true);
        const size_t speeds = silent->drive.condition_count * silent->train.shaft_count;
        const size_t loads  = silent->drive.condition_count * silent->train.mesh_count;
        assert_memory_equal(silent->motion.speed, told->motion.speed, speeds * sizeof(double));
        for (size_t k = 0; k < loads; k++) {
            assert_same_double(told->power.mesh[k].F_t, silent->power.mesh[k].F_t);
            assert_same_double(told->power.mesh[k].T[0], silent->power.mesh[k].T[0]);
            assert_same_double(told->power.mesh[k].force[2], silent->power.mesh[k].force[2]);
        }
        ts_buffer a, b;
        page_of(silent, &a);
        page_of(told, &b);
        assert_int_equal(a.length, b.length);
        assert_memory_equal(a.bytes, b.bytes, a.length);
        ts_buffer_close(&a);
        ts_buffer_close(&b);
        ts_study_close(silent);
        ts_study_close(told);
    }
}

static void a_second_read_forgets_the_first(void **state)
{
    (void)state;
    ts_study     *study = study_of(examples[0], true);
    const ts_text file  = read_file(examples[3]);
    assert_int_equal(ts_study_read(study, examples[3], file.at, file.length, NULL), TS_OK);
    free_file(file);
    ts_study *fresh = study_of(examples[3], false);
    assert_string_equal(ts_study_sha256(study), ts_study_sha256(fresh));
    assert_int_equal(study->outcome.judgement_count, fresh->outcome.judgement_count);
    ts_study_close(fresh);
    ts_study_close(study);
}

static int swallow(void *context, const char *bytes, size_t length)
{
    (void)context, (void)bytes, (void)length;
    return 0;
}

/* A study may stand open for days, and be asked without end. */
static void every_question_begins_with_no_message_and_no_memory_of_the_last(void **state)
{
    (void)state;
    const ts_text          file    = read_file(examples[0]);
    const ts_study_options options = {.today = INT32_MIN, .workings = true};
    const ts_page_options  page    = {0};
    const ts_sink          sink    = {swallow, NULL};
    faulty_allocator       faulty;
    const ts_allocator     own = faulty_allocator_open(&faulty, 0, FAULTY_ONCE);
    ts_study              *study;

    assert_int_equal(ts_study_open(&own, &study), TS_OK);
    assert_int_equal(ts_study_read(study, examples[0], file.at, file.length, &options), TS_OK);
    size_t settled = 0;
    for (int times = 0; times < 600; times++) {
        const char *wrong = times % 2 == 0 ? "drive/none" : "drive/hp:none";
        assert_int_equal(ts_study_write_why(study, wrong, false, &page, &sink), TS_NOT_UNDERSTOOD);
        assert_int_equal(ts_study_message_count(study), 1);
        assert_non_null(
            strstr(ts_study_message(study, 0).says, times % 2 == 0 ? "part" : "number"));
        if (ts_study_finding_count(study) > 0)
            assert_string_not_equal(ts_study_finding(study, 0).address, "");
        if (times == 19)
            settled = faulty.live_blocks;
    }
    assert_int_equal(faulty.live_blocks, settled);
    assert_int_equal(ts_study_write_why(study, "drive/hp", false, &page, &sink), TS_OK);
    assert_int_equal(ts_study_message_count(study), 0);
    ts_study_close(study);
    assert_int_equal(faulty.live_blocks, 0);
    free_file(file);
}

/* Everything after the model is built: motion, power, check. */
static void the_solve_allocates_nothing(void **state)
{
    (void)state;
    for (size_t i = 0; i < EXAMPLE_COUNT; i++) {
        const ts_text    file = read_file(examples[i]);
        ts_study         study;
        faulty_allocator faulty;
        memset(&study, 0, sizeof study);
        study.own       = faulty_allocator_open(&faulty, 0, FAULTY_ONCE);
        study.allocator = &study.own;
        assert_int_equal(ts_study_begin(&study, examples[i], file.at, file.length), TS_OK);
        assert_int_equal(ts_study_build(&study), TS_OK);
        const size_t before = faulty.calls;
        assert_int_equal(ts_study_solve(&study), TS_OK);
        assert_int_equal(faulty.calls, before);
        ts_arena_close(study.asked);
        ts_arena_close(study.arena);
        assert_int_equal(faulty.live_blocks, 0);
        free_file(file);
    }
}

static void balances_close_to_one_part_in_a_million_million(void **state)
{
    (void)state;
    for (size_t i = 0; i < EXAMPLE_COUNT; i++) {
        ts_study    *study  = study_of(examples[i], false);
        const size_t spools = study->drive.condition_count * study->drive.spool_count;
        const size_t shafts = study->drive.condition_count * study->train.shaft_count;
        for (size_t k = 0; k < spools; k++)
            assert_close_abs(study->power.spool[k].imbalance, 0.0, 1e-12);
        for (size_t k = 0; k < shafts; k++)
            assert_close_abs(study->power.shaft_imbalance[k], 0.0, 1e-12);
        ts_study_close(study);
    }
}

/* Every input of every step ends at a line of the file, a table, an assumption or another step. */
static void every_input_of_every_step_has_an_origin(void **state)
{
    (void)state;
    for (size_t i = 0; i < EXAMPLE_COUNT; i++) {
        ts_study          *study    = study_of(examples[i], true);
        const ts_workings *workings = study->workings;
        size_t             orphans  = 0;
        for (size_t n = 0; n < ts_workings_count(workings); n++) {
            const ts_note *note = ts_workings_at(workings, n);
            for (uint32_t k = 0; k < note->input_count && note->kind == TS_NOTE_STEP; k++) {
                if (ts_origin(workings, n, note->inputs[k].name, note->inputs[k].value) != SIZE_MAX)
                    continue;
                print_error("%s: %s of %s has no origin\n", examples[i], note->inputs[k].name,
                            note->symbol);
                orphans++;
            }
        }
        assert_int_equal(orphans, 0);
        ts_study_close(study);
    }
}

/* One edit by bytes alone, as it was always made: parsed, planned, proven. */
static ts_status edited_long(ts_text bytes, const ts_study_edit *edit, ts_buffer *out)
{
    const ts_sink sink  = {append, out};
    ts_study     *study = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    const ts_status status = edit->place != 0
                                 ? ts_study_move_bytes(study, "a.yaml", bytes.at, bytes.length,
                                                       edit->address, edit->place, &sink)
                                 : ts_study_set_bytes(study, "a.yaml", bytes.at, bytes.length,
                                                      edit->address, edit->value, &sink);
    ts_study_close(study);
    return status;
}

static void edits_by_the_tree_that_is_there_are_the_edits_by_bytes(void **state)
{
    (void)state;
    static const ts_study_edit edits[] = {
        {"drive/hp/box/clockwise/1/teeth", "41", 0},
        {"drive/hp/box/clockwise/2/rear", NULL, 0},
        {"drive/hp/box/clockwise/1", NULL, 2},
        {"drive/hp/box/clockwise/1/front", "a thing", 0},
        {"drive/hp/box/clockwise/3", "{teeth: 30, face: 10 mm}", 0},
        {"drive/hp/box/clockwise/2", NULL, 0},
        {"drive/hp/box/input/bearings/rear", "{series: 6210}", 0},
        {"drive/hp/take-off/float", "{scheme: fixed}", 0},
        {"revision", "Z", 0},
        {"revision", NULL, 0},
        {"assumptions", "[{says: a, at: accessories, source: b}]", 0},
        {"nowhere/at/all", "1", 0},
        {"drive/hp/box/clockwise/9", NULL, 1},
        {"drive/hp/box/clockwise/2:n@take-off", "1", 0},
    };
    const size_t count = sizeof edits / sizeof edits[0];
    size_t       made = 0, refused = 0;
    for (size_t i = 0; i < EXAMPLE_COUNT; i++) {
        ts_study *study = study_of(examples[i], false);
        for (size_t a = 0; a < count; a++) {
            for (size_t b = 0; b < count; b++) {
                const ts_study_edit both[2] = {edits[a], edits[b]};
                ts_buffer           first, second, at_once;
                ts_buffer_open(&first, NULL);
                ts_buffer_open(&second, NULL);
                ts_buffer_open(&at_once, NULL);
                ts_status status = edited_long(study->bytes, &both[0], &first);
                if (status == TS_OK)
                    status = edited_long((ts_text){first.bytes, first.length}, &both[1], &second);
                const ts_sink   sink     = {append, &at_once};
                const ts_status proposed = ts_study_propose(study, both, 2, &sink);
                /* What can be proven is proposed, byte by byte. */
                if (status == TS_OK) {
                    assert_int_equal(proposed, TS_OK);
                    assert_int_equal(at_once.length, second.length);
                    assert_memory_equal(at_once.bytes, second.bytes, second.length);
                }
                made += status == TS_OK;
                refused += proposed == TS_NOT_UNDERSTOOD;
                ts_buffer_close(&first);
                ts_buffer_close(&second);
                ts_buffer_close(&at_once);
            }
        }
        ts_study_close(study);
    }
    assert_true(made > 100 && refused > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(workings_change_no_bit_of_the_answer),
        cmocka_unit_test(a_second_read_forgets_the_first),
        cmocka_unit_test(every_question_begins_with_no_message_and_no_memory_of_the_last),
        cmocka_unit_test(the_solve_allocates_nothing),
        cmocka_unit_test(balances_close_to_one_part_in_a_million_million),
        cmocka_unit_test(every_input_of_every_step_has_an_origin),
        cmocka_unit_test(edits_by_the_tree_that_is_there_are_the_edits_by_bytes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
