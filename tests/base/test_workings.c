/* Are notes kept as they were made, does silence change nothing, and is every origin found? */
#include "base/workings.h"

#include "support/close.h"
#include "support/faulty_allocator.h"

#include <fcntl.h>
#include <math.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define NOWHERE SIZE_MAX

static const ts_subject whole_drive = {0, TS_EVERY_CONDITION};

static const ts_formula F_t_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force at the reference circle",
    .unit    = "N",
    .text    = "2*T/d",
    .source  = "ISO 6336-1:2019, clause 5 (from memory)",
};

static double tangential_force(double T, double d, ts_workings *workings)
{
    return TS_STEP(workings, F_t_formula, 2.0 * T / d, T, d);
}

static ts_arena *open_arena(ts_workings **workings)
{
    ts_arena *arena = ts_arena_open(NULL);
    *workings       = ts_workings_open(arena);
    assert_non_null(*workings);
    return arena;
}

static uint64_t bits_of(double value)
{
    uint64_t bits = 0;
    memcpy(&bits, &value, sizeof bits);
    return bits;
}

/* A small generator of our own (Marsaglia's xorshift), so that every run sees the same numbers. */
static uint64_t next_random(uint64_t *seed)
{
    *seed ^= *seed << 13;
    *seed ^= *seed >> 7;
    *seed ^= *seed << 17;
    return *seed;
}

static void results_are_bit_equal_with_and_without_workings(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    uint64_t     seed     = 88172645463325252u;
    for (int i = 0; i < 2000; i++) {
        const double T = (double)(next_random(&seed) >> 12) * 1e-12;
        const double d = (double)(next_random(&seed) >> 12) * 1e-17 + 1e-3;
        assert_true(bits_of(tangential_force(T, d, NULL)) ==
                    bits_of(tangential_force(T, d, workings)));
    }
    assert_int_equal(ts_workings_count(workings), 2000);
    ts_arena_close(arena);
}

static double count_and_give(int *calls, double value)
{
    (*calls)++;
    return value;
}

static void the_result_is_computed_once(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    const double T = 3.0, d = 2.0;
    int          calls = 0;
    assert_same_double(TS_STEP(workings, F_t_formula, count_and_give(&calls, 3.0), T, d), 3.0);
    assert_int_equal(calls, 1);
    workings = NULL;
    assert_same_double(TS_STEP(workings, F_t_formula, count_and_give(&calls, 3.0), T, d), 3.0);
    assert_int_equal(calls, 2);
    ts_arena_close(arena);
}

static void a_step_notes_names_and_values(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    ts_workings_about(workings, 7, 2);
    tangential_force(30.0, 0.06, workings);
    const ts_note *note = ts_workings_at(workings, 0);
    assert_int_equal(note->kind, TS_NOTE_STEP);
    assert_int_equal(note->subject.object, 7);
    assert_int_equal(note->subject.condition, 2);
    assert_string_equal(note->symbol, "F_t");
    assert_ptr_equal(note->formula, &F_t_formula);
    assert_same_double(note->value, 2.0 * 30.0 / 0.06);
    assert_int_equal(note->input_count, 2);
    assert_string_equal(note->inputs[0].name, "T");
    assert_same_double(note->inputs[0].value, 30.0);
    assert_string_equal(note->inputs[1].name, "d");
    assert_same_double(note->inputs[1].value, 0.06);
    ts_arena_close(arena);
}

static void sixteen_inputs_and_one_are_noted(void **state)
{
    (void)state;
    static const ts_formula sum      = {"s", "sum", "1", "a+b+c+d+e+f+g+h+i+j+k+l+m+n+o+p",
                                        "derived: definition"};
    static const ts_formula same     = {"t", "itself", "1", "a", "derived: definition"};
    ts_workings            *workings = NULL;
    ts_arena               *arena    = open_arena(&workings);
    const double            a = 1, b = 2, c = 3, d = 4, e = 5, f = 6, g = 7, h = 8;
    const double            i = 9, j = 10, k = 11, l = 12, m = 13, n = 14, o = 15, p = 16;
    TS_STEP(workings, sum, 136.0, a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p);
    TS_STEP(workings, same, 1.0, a);
    assert_int_equal(ts_workings_at(workings, 0)->input_count, 16);
    assert_string_equal(ts_workings_at(workings, 0)->inputs[15].name, "p");
    assert_int_equal(ts_workings_at(workings, 1)->input_count, 1);
    ts_arena_close(arena);
}

static void whole_numbers_may_be_inputs(void **state)
{
    (void)state;
    static const ts_formula ratio    = {"u", "gear ratio", "1", "z_2/z_1", "derived: definition"};
    ts_workings            *workings = NULL;
    ts_arena               *arena    = open_arena(&workings);
    const int               z_1 = 17, z_2 = 43;
    TS_STEP(workings, ratio, 43.0 / 17.0, z_1, z_2);
    assert_same_double(ts_workings_at(workings, 0)->inputs[1].value, 43.0);
    ts_arena_close(arena);
}

static void a_list_of_inputs_is_summed(void **state)
{
    (void)state;
    static const ts_formula total    = {"P", "power of all", "W", "sum(P_i)", "derived: balance"};
    const ts_input          inputs[] = {{"P_i", 1500.0}, {"P_i", 250.0}, {"P_i", -50.0}};
    ts_workings            *workings = NULL;
    ts_arena               *arena    = open_arena(&workings);
    assert_same_double(ts_step_list(workings, &total, 1700.0, inputs, 3), 1700.0);
    assert_int_equal(ts_workings_at(workings, 0)->input_count, 3);
    ts_arena_close(arena);
}

/* How `work` ends in a process of its own, with its last words thrown away. */
static int signal_of(void (*work)(void))
{
    const pid_t child = fork();
    if (child == 0) {
        const int silence = open("/dev/null", O_WRONLY);
        if (silence >= 0)
            dup2(silence, 2);
        work();
        _exit(0);
    }
    int status = 0;
    assert_true(child > 0 && waitpid(child, &status, 0) == child);
    return WIFSIGNALED(status) ? WTERMSIG(status) : 0;
}

static void make_a_wrong_step(void)
{
    const double T = 3.0, d = 2.0;
    TS_STEP((ts_workings *)NULL, F_t_formula, T / d, T, d);
}

static void make_a_right_step(void)
{
    tangential_force(3.0, 2.0, NULL);
}

static void make_a_wrong_search(void)
{
    static const ts_formula root     = {"x", "root", "1", "x^2 - a", "derived: definition"};
    const ts_input          inputs[] = {{"x", 1.5}, {"a", 2.0}};
    ts_search_note(NULL, &root, 1.5, 0.0, inputs, 2);
}

static void a_silent_step_that_is_wrong_stops_the_program(void **state)
{
    (void)state;
    assert_int_equal(signal_of(make_a_right_step), 0);
    assert_int_equal(signal_of(make_a_wrong_step), SIGABRT);
    assert_int_equal(signal_of(make_a_wrong_search), SIGABRT);
}

static void without_a_recorder_nothing_happens(void **state)
{
    (void)state;
    ts_workings_about(NULL, 1, 1);
    ts_workings_given(NULL, "d", 1.0, "m", 1);
    ts_workings_assumed(NULL, "d", 1.0, "m", "because");
    ts_workings_row(NULL, "d", 1.0, "m", "a table");
    ts_workings_borrow(NULL, "d", 1.0, whole_drive, "d_1");
    ts_step_note(NULL, &F_t_formula, 1.0, NULL, 0);
    assert_int_equal(ts_workings_count(NULL), 0);
    assert_true(ts_workings_complete(NULL));
    assert_true(ts_workings_find(NULL, whole_drive, "d") == NOWHERE);
}

static void every_kind_of_note_keeps_what_it_was_given(void **state)
{
    (void)state;
    static const ts_formula equation = {"x", "root", "1", "x^2 - a", "derived: definition"};
    const ts_input          inputs[] = {{"x", 1.5}, {"a", 2.25}};
    ts_workings            *workings = NULL;
    ts_arena               *arena    = open_arena(&workings);
    ts_workings_given(workings, "m_n", 0.002, "m", 31);
    ts_workings_assumed(workings, "mu", 0.06, "1", "common practice, no source");
    ts_workings_row(workings, "E", 2.06e11, "Pa", "data/material.tsv, row 9310");
    ts_workings_borrow(workings, "d", 0.06, (ts_subject){5, 1}, "d_1");
    ts_search_note(workings, &equation, 1.5, 0.0, inputs, 2);

    const ts_note *given = ts_workings_at(workings, 0), *assumed = ts_workings_at(workings, 1);
    const ts_note *row = ts_workings_at(workings, 2), *borrowed = ts_workings_at(workings, 3);
    const ts_note *searched = ts_workings_at(workings, 4);
    assert_int_equal(given->kind, TS_NOTE_GIVEN);
    assert_int_equal(given->node, 31);
    assert_string_equal(given->unit, "m");
    assert_int_equal(assumed->kind, TS_NOTE_ASSUMED);
    assert_string_equal(assumed->source, "common practice, no source");
    assert_int_equal(row->kind, TS_NOTE_ROW);
    assert_string_equal(row->unit, "Pa");
    assert_string_equal(row->source, "data/material.tsv, row 9310");
    assert_int_equal(borrowed->kind, TS_NOTE_BORROWED);
    assert_int_equal(borrowed->lender.object, 5);
    assert_string_equal(borrowed->lender_symbol, "d_1");
    assert_int_equal(searched->kind, TS_NOTE_SEARCHED);
    assert_string_equal(searched->symbol, "x");
    assert_same_double(searched->value, 1.5);
    assert_same_double(searched->residual, 0.0);
    assert_int_equal(searched->input_count, 2);
    ts_arena_close(arena);
}

static void given_about(ts_workings *workings, uint32_t object, int32_t condition, double value)
{
    ts_workings_about(workings, object, condition);
    ts_workings_given(workings, "d", value, "m", 1);
}

static void an_origin_is_the_latest_earlier_note_of_that_value(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    given_about(workings, 3, 1, 0.5);     /* 0 */
    given_about(workings, 3, 1, 0.5);     /* 1 */
    given_about(workings, 3, 1, 0.75);    /* 2: shadows only its own value */
    tangential_force(1.0, 0.5, workings); /* 3 */
    given_about(workings, 3, 1, 0.5);     /* 4: later than the step */
    assert_int_equal(ts_origin(workings, 3, "d", 0.5), 1);
    assert_int_equal(ts_origin(workings, 3, "d", 0.75), 2);
    assert_int_equal(ts_origin(workings, 1, "d", 0.5), 0);
    assert_true(ts_origin(workings, 0, "d", 0.5) == NOWHERE);
    assert_true(ts_origin(workings, 3, "d", nextafter(0.5, 1.0)) == NOWHERE);
    assert_true(ts_origin(workings, 3, "d_1", 0.5) == NOWHERE);
    assert_true(ts_origin(workings, 3, "T", 1.0) == NOWHERE);
    ts_arena_close(arena);
}

static void an_origin_widens_from_condition_to_object_to_drive(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    given_about(workings, 3, 1, 0.5);                  /* 0 */
    given_about(workings, 3, TS_EVERY_CONDITION, 0.5); /* 1 */
    given_about(workings, 0, 1, 0.5);                  /* 2 */
    given_about(workings, 0, TS_EVERY_CONDITION, 0.5); /* 3 */
    given_about(workings, 4, 1, 9.0);                  /* 4 */
    given_about(workings, 3, 2, 9.0);                  /* 5 */
    given_about(workings, 3, 1, 9.0);                  /* 6 */
    given_about(workings, 4, 2, 9.0);                  /* 7 */
    assert_int_equal(ts_origin(workings, 6, "d", 0.5), 0);
    assert_int_equal(ts_origin(workings, 5, "d", 0.5), 1);
    assert_int_equal(ts_origin(workings, 4, "d", 0.5), 2);
    assert_int_equal(ts_origin(workings, 7, "d", 0.5), 3);
    ts_arena_close(arena);
}

static void a_borrowed_value_comes_from_its_lender(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    ts_workings_about(workings, 9, 1);
    ts_workings_borrow(workings, "T", 30.0, (ts_subject){8, 1}, "T_out"); /* 0 */
    ts_workings_borrow(workings, "d", 0.06, (ts_subject){8, 1}, "d_1");   /* 1 */
    ts_workings_about(workings, 8, 1);
    ts_workings_borrow(workings, "d_1", 0.06, (ts_subject){7, TS_EVERY_CONDITION}, "d"); /* 2 */
    ts_workings_about(workings, 9, 1);
    tangential_force(30.0, 0.06, workings); /* 3 */
    ts_workings_about(workings, 8, TS_EVERY_CONDITION);
    ts_workings_given(workings, "T_out", 30.0, "N.m", 12); /* 4: noted after it was borrowed */
    ts_workings_about(workings, 7, TS_EVERY_CONDITION);
    ts_workings_given(workings, "d", 0.06, "m", 13); /* 5 */
    assert_int_equal(ts_origin(workings, 3, "T", 30.0), 4);
    assert_int_equal(ts_origin(workings, 3, "d", 0.06), 5);
    assert_int_equal(ts_borrow_origin(workings, 1), 5);
    assert_int_equal(ts_borrow_origin(workings, 2), 5);
    assert_true(ts_borrow_origin(workings, 3) == NOWHERE);
    ts_arena_close(arena);
}

static void borrowing_in_a_circle_or_from_nobody_has_no_origin(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    ts_workings_about(workings, 1, 0);
    ts_workings_borrow(workings, "T", 2.0, (ts_subject){2, 0}, "T");
    ts_workings_borrow(workings, "d", 1.0, (ts_subject){1, 0}, "d");
    ts_workings_borrow(workings, "w", 1.0, (ts_subject){5, 0}, "w");
    ts_workings_about(workings, 2, 0);
    ts_workings_borrow(workings, "T", 2.0, (ts_subject){1, 0}, "T");
    ts_workings_about(workings, 1, 0);
    tangential_force(2.0, 1.0, workings);
    assert_true(ts_origin(workings, 4, "T", 2.0) == NOWHERE);
    assert_true(ts_origin(workings, 4, "d", 1.0) == NOWHERE);
    assert_true(ts_origin(workings, 4, "w", 1.0) == NOWHERE);
    ts_arena_close(arena);
}

static void find_gives_the_latest_note_about_a_subject(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    assert_true(ts_workings_find(workings, whole_drive, "d") == NOWHERE);
    given_about(workings, 3, 1, 0.5);
    given_about(workings, 3, 1, 0.75);
    given_about(workings, 3, 2, 0.25);
    assert_int_equal(ts_workings_find(workings, (ts_subject){3, 1}, "d"), 1);
    assert_int_equal(ts_workings_find(workings, (ts_subject){3, 2}, "d"), 2);
    assert_true(ts_workings_find(workings, (ts_subject){3, 3}, "d") == NOWHERE);
    assert_true(ts_workings_find(workings, (ts_subject){3, 1}, "F_t") == NOWHERE);
    given_about(workings, 3, 1, 0.125); /* the index is older than this note */
    assert_int_equal(ts_workings_find(workings, (ts_subject){3, 1}, "d"), 3);
    ts_arena_close(arena);
}

/* The rule of ts_origin in its plainest form, without borrowing. */
static size_t plain_origin(const ts_workings *workings, size_t index, const char *name,
                           double value)
{
    const ts_subject own     = ts_workings_at(workings, index)->subject;
    const ts_subject wider[] = {
        own, {own.object, TS_EVERY_CONDITION}, {0, own.condition}, {0, TS_EVERY_CONDITION}};
    for (int w = 0; w < 4; w++) {
        for (size_t i = index; i > 0; i--) {
            const ts_note *note = ts_workings_at(workings, i - 1);
            if (note->subject.object == wider[w].object &&
                note->subject.condition == wider[w].condition &&
                bits_of(note->value) == bits_of(value) && strcmp(note->symbol, name) == 0)
                return i - 1;
        }
    }
    return NOWHERE;
}

static void make_many_notes(ts_workings *workings, size_t count)
{
    static const char *const symbols[] = {"d", "d_1", "T", "n", "P", "F_t"};
    uint64_t                 seed      = 2463534242u;
    for (size_t i = 0; i < count; i++) {
        const uint64_t r = next_random(&seed);
        ts_workings_about(workings, (uint32_t)(r % 7), (int32_t)((r >> 8) % 4) - 1);
        ts_workings_given(workings, symbols[(r >> 16) % 6], (double)((r >> 24) % 5) - 2.0, "1", 1);
    }
}

static void assert_origins_are_plain(const ts_workings *workings, size_t from, size_t step)
{
    static const char *const symbols[] = {"d", "d_1", "T", "n", "P", "F_t"};
    for (size_t i = from; i < ts_workings_count(workings); i += step)
        for (size_t s = 0; s < 6; s++) {
            const double value = (double)(i % 5) - 2.0;
            assert_true(ts_origin(workings, i, symbols[s], value) ==
                        plain_origin(workings, i, symbols[s], value));
        }
}

static void the_index_answers_as_a_plain_search_does(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    make_many_notes(workings, 100);
    assert_origins_are_plain(workings, 0, 1);
    make_many_notes(workings, 3000);
    assert_origins_are_plain(workings, 0, 7);
    make_many_notes(workings, 1);
    assert_origins_are_plain(workings, 3050, 1);
    assert_true(ts_workings_complete(workings));
    ts_arena_close(arena);
}

static void minus_nought_is_not_nought(void **state)
{
    (void)state;
    ts_workings *workings = NULL;
    ts_arena    *arena    = open_arena(&workings);
    given_about(workings, 0, TS_EVERY_CONDITION, 0.0);
    given_about(workings, 0, TS_EVERY_CONDITION, -0.0);
    given_about(workings, 0, TS_EVERY_CONDITION, 1.0);
    assert_int_equal(ts_origin(workings, 2, "d", 0.0), 0);
    assert_int_equal(ts_origin(workings, 2, "d", -0.0), 1);
    ts_arena_close(arena);
}

/* Everything that takes memory, once through; false when the arena or the recorder could not be
 * opened at all. */
static bool work_with(const ts_allocator *allocator)
{
    ts_arena *arena = ts_arena_open(allocator);
    if (arena == NULL)
        return false;
    ts_workings *workings = ts_workings_open(arena);
    if (workings == NULL) {
        ts_arena_close(arena);
        return false;
    }
    make_many_notes(workings, 700);
    for (int i = 0; i < 3000; i++)
        assert_same_double(tangential_force(3.0, 2.0, workings), 3.0);
    const size_t count = ts_workings_count(workings);
    assert_true(ts_workings_complete(workings) == (count == 3700));
    if (count > 0) {
        assert_true(ts_origin(workings, count - 1, "d", 1.0) ==
                    plain_origin(workings, count - 1, "d", 1.0));
        (void)ts_workings_find(workings, whole_drive, "F_t");
    }
    ts_arena_close(arena);
    return true;
}

static void a_failed_allocation_is_said_and_loses_only_notes(void **state)
{
    static const faulty_manner manners[] = {FAULTY_ONCE, FAULTY_ONWARDS};
    (void)state;
    for (int m = 0; m < 2; m++) {
        faulty_allocator faulty = {.failed = 1};
        for (size_t n = 1; faulty.failed > 0; n++) {
            const ts_allocator allocator = faulty_allocator_open(&faulty, n, manners[m]);
            (void)work_with(&allocator);
            assert_int_equal(faulty.live_blocks, 0);
        }
        assert_true(faulty.calls > 3);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(results_are_bit_equal_with_and_without_workings),
        cmocka_unit_test(the_result_is_computed_once),
        cmocka_unit_test(a_step_notes_names_and_values),
        cmocka_unit_test(sixteen_inputs_and_one_are_noted),
        cmocka_unit_test(whole_numbers_may_be_inputs),
        cmocka_unit_test(a_list_of_inputs_is_summed),
        cmocka_unit_test(a_silent_step_that_is_wrong_stops_the_program),
        cmocka_unit_test(without_a_recorder_nothing_happens),
        cmocka_unit_test(every_kind_of_note_keeps_what_it_was_given),
        cmocka_unit_test(an_origin_is_the_latest_earlier_note_of_that_value),
        cmocka_unit_test(an_origin_widens_from_condition_to_object_to_drive),
        cmocka_unit_test(a_borrowed_value_comes_from_its_lender),
        cmocka_unit_test(borrowing_in_a_circle_or_from_nobody_has_no_origin),
        cmocka_unit_test(find_gives_the_latest_note_about_a_subject),
        cmocka_unit_test(the_index_answers_as_a_plain_search_does),
        cmocka_unit_test(minus_nought_is_not_nought),
        cmocka_unit_test(a_failed_allocation_is_said_and_loses_only_notes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
