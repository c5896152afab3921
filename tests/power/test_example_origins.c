/* Does every number of every example lead back to a line of its file or to a reasoned assumption?
 */
#include "support/close.h"
#include "support/read_file.h"
#include "support/solved_file.h"

#include <string.h>

static const char *const examples[] = {
    "examples/trainer.yaml",
    "examples/bizjet.yaml",
    "examples/medium.yaml",
    "examples/large.yaml",
};

static void check_inputs(const solved_file *file, size_t index)
{
    const ts_note *note = ts_workings_at(file->workings, index);

    for (uint32_t i = 0; i < note->input_count; i++) {
        const ts_input *input = &note->inputs[i];

        if (note->kind == TS_NOTE_SEARCHED && strcmp(input->name, note->symbol) == 0)
            continue;
        if (ts_origin(file->workings, index, input->name, input->value) == SIZE_MAX)
            fail_msg("%s has no origin in %s = %s", input->name, note->symbol, note->formula->text);
    }
}

/* What the register of assumptions holds has its own reason there; a number that nobody gave a
 * reason for would be told as merely assumed. */
static void check_note(const solved_file *file, size_t index)
{
    const ts_note *note = ts_workings_at(file->workings, index);

    if (note->kind == TS_NOTE_STEP || note->kind == TS_NOTE_SEARCHED)
        check_inputs(file, index);
    if (note->kind == TS_NOTE_GIVEN)
        assert_true(note->node > 0 && note->node <= file->source.node_count);
    if (note->kind == TS_NOTE_ASSUMED &&
        strstr(note->source, "since the file does not say") != NULL)
        fail_msg("%s of node %u is assumed without a reason", note->symbol, note->subject.object);
}

static void every_number_of_every_example_has_an_origin(void **state)
{
    (void)state;
    for (size_t e = 0; e < sizeof examples / sizeof examples[0]; e++) {
        const ts_text text = read_file(examples[e]);
        solved_file   file;

        solved_file_open(&file, text, true);
        assert_int_equal(file.status, TS_OK);
        assert_true(ts_workings_complete(file.workings));
        for (size_t i = 0; i < ts_workings_count(file.workings); i++)
            check_note(&file, i);
        solved_file_close(&file);
        free_file(text);
    }
}

static void every_example_balances(void **state)
{
    (void)state;
    for (size_t e = 0; e < sizeof examples / sizeof examples[0]; e++) {
        const ts_text text = read_file(examples[e]);
        solved_file   file;
        double        most = 0.0;

        solved_file_open(&file, text, false);
        assert_int_equal(file.status, TS_OK);
        for (size_t i = 0; i < file.drive.condition_count * file.drive.spool_count; i++) {
            assert_true(file.power.spool[i].imbalance <= 1e-12);
            most = fmax(most, fabs(file.power.spool[i].P));
        }
        for (size_t i = 0; i < file.drive.condition_count * file.train.shaft_count; i++)
            assert_true(file.power.shaft_imbalance[i] <= 1e-12);
        assert_true(most > 1e3);
        solved_file_close(&file);
        free_file(text);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_number_of_every_example_has_an_origin),
        cmocka_unit_test(every_example_balances),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
