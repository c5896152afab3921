/* One value against one limit: what passes, what is written down, and what is never let through. */
#include "page_snippet.h"

#include "check/desk.h"
#include "check/rule.h"
#include "support/close.h"

static void ask_nothing(ts_check *check)
{
    (void)check;
}

static const ts_rule probe = {
    .id       = "A1-probe",
    .title    = "Probe",
    .question = "Is it so?",
    .why      = "It is tried.",
    .level    = TS_REFUSE,
    .source   = "derived: made for this test",
    .hint     = "nothing",
    .run      = ask_nothing,
};

typedef struct trial {
    ts_study       *study;
    ts_check       *check;
    ts_rule_outcome result;
} trial;

/* The check of the base drive, with a rule of ours on the desk. */
static void open_trial(trial *t)
{
    t->study               = changed_study(" towershaft: 1\n");
    t->check               = t->study->outcome.check;
    t->result              = (ts_rule_outcome){.rule = probe.id};
    t->check->desk->rule   = &probe;
    t->check->desk->result = &t->result;
}

static ts_finding *ask(trial *t, ts_bound bound, double value, double limit)
{
    ts_question question = ts_question_about(t->check, t->study->drive.node, TS_EVERY_CONDITION);
    question.bound       = bound;
    question.value       = value;
    question.limit       = limit;
    question.kind        = TS_KIND_NUMBER;
    return ts_judge(t->check, &question);
}

static const ts_judgement *last_judgement(const trial *t)
{
    return &t->check->desk->judgements[t->check->desk->judgement_count - 1];
}

static const ts_finding *last_finding(const trial *t)
{
    return &t->check->desk->findings[t->check->desk->finding_count - 1];
}

static void nan_never_passes(void **state)
{
    (void)state;
    const double values[] = {-INFINITY, -1.0, -0.0, 0.0, 1.0, 1e300, INFINITY};
    trial        t;
    open_trial(&t);
    for (int bound = TS_AT_MOST; bound <= TS_AT_LEAST; bound++)
        for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
            assert_null(ask(&t, (ts_bound)bound, NAN, values[i]));
            assert_int_equal(last_finding(&t)->state, TS_NOT_COMPUTABLE);
            assert_null(ask(&t, (ts_bound)bound, values[i], NAN));
            assert_int_equal(last_finding(&t)->state, TS_NOT_COMPUTABLE);
        }
    assert_null(ask(&t, TS_AT_MOST, NAN, NAN));
    assert_int_equal(t.result.passed, 0);
    assert_int_equal(t.result.judged, 4 * sizeof values / sizeof values[0] + 1);
    ts_study_close(t.study);
}

static void what_could_not_be_computed_says_what_to_state(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    (void)ts_not_computable(t.check, t.study->drive.node, TS_EVERY_CONDITION, "the mass of %s",
                            "starter");
    assert_string_equal(last_finding(&t)->says,
                        "cannot be judged: the mass of starter is not known");
    assert_string_equal(last_finding(&t)->remedy, "state the mass of starter in the file");
    assert_false(last_judgement(&t)->passed);
    ts_study_close(t.study);
}

/* derived: reserve = capacity / demand - 1, by hand. */
static void reserve_is_capacity_over_demand_less_one(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    assert_null(ask(&t, TS_AT_MOST, 4.0, 5.0));
    assert_close(last_judgement(&t)->margin, 0.25, 0.0);
    assert_null(ask(&t, TS_AT_LEAST, 5.0, 4.0));
    assert_close(last_judgement(&t)->margin, 0.25, 0.0);
    assert_non_null(ask(&t, TS_AT_MOST, 5.0, 4.0));
    assert_close(last_judgement(&t)->margin, -0.2, 1e-15);
    assert_non_null(ask(&t, TS_AT_LEAST, 4.0, 5.0));
    assert_close(last_finding(&t)->margin, -0.2, 1e-15);
    ts_study_close(t.study);
}

static void limit_itself_passes(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    assert_null(ask(&t, TS_AT_MOST, 0.1 + 0.2, 0.1 + 0.2));
    assert_null(ask(&t, TS_AT_LEAST, 0.0, 0.0));
    assert_non_null(ask(&t, TS_AT_MOST, nextafter(1.0, 2.0), 1.0));
    assert_non_null(ask(&t, TS_AT_LEAST, nextafter(1.0, 0.0), 1.0));
    ts_study_close(t.study);
}

static void without_demand_there_is_no_reserve(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    assert_null(ask(&t, TS_AT_MOST, 0.0, 5.0));
    assert_nan(last_judgement(&t)->margin);
    assert_null(ask(&t, TS_AT_LEAST, 5.0, 0.0));
    assert_nan(last_judgement(&t)->margin);
    assert_null(ask(&t, TS_AT_MOST, 1.0, INFINITY));
    assert_nan(last_judgement(&t)->margin);
    ts_study_close(t.study);
}

static void no_infinity_is_written_down(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    assert_non_null(ask(&t, TS_AT_MOST, INFINITY, 1.0));
    assert_nan(last_finding(&t)->value);
    assert_non_null(ask(&t, TS_AT_LEAST, 1.0, INFINITY));
    assert_nan(last_judgement(&t)->limit);
    assert_false(last_judgement(&t)->passed);
    ts_study_close(t.study);
}

static void reserve_that_is_wanted_must_be_there(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    ts_question question = ts_question_about(t.check, t.study->drive.node, TS_EVERY_CONDITION);
    question.bound       = TS_AT_MOST;
    question.value       = 4.0;
    question.limit       = 5.0;
    question.wanted      = 0.25;
    question.kind        = TS_KIND_NUMBER;
    assert_null(ts_judge(t.check, &question));
    question.wanted = 0.26;
    assert_non_null(ts_judge(t.check, &question));
    ts_study_close(t.study);
}

static void skipping_counts_only_where_nothing_was_asked(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    assert_null(ask(&t, TS_AT_MOST, 1.0, 2.0));
    ts_skip(t.check, "there is nothing");
    assert_null(t.result.skipped);
    t.result = (ts_rule_outcome){.rule = probe.id};
    ts_skip(t.check, "there is nothing");
    ts_skip(t.check, "there is less");
    assert_string_equal(t.result.skipped, "there is nothing");
    ts_study_close(t.study);
}

static void numbers_show_enough_digits_to_differ(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    const ts_kind kind = TS_KIND_LENGTH;
    assert_string_equal(ts_shown(t.check, 0.035, kind), "35 mm");
    assert_string_equal(ts_shown(t.check, 1.2, kind), "1200 mm");
    assert_string_equal(ts_shown(t.check, 0.0, kind), "0 mm");
    assert_string_equal(ts_shown_apart(t.check, 0.0350001, 0.035, kind), "35.0001 mm");
    assert_string_equal(ts_shown_apart(t.check, 0.035, 0.036, kind), "35 mm");
    assert_string_equal(ts_shown(t.check, NAN, kind), "not known");
    assert_string_equal(ts_shown(t.check, INFINITY, kind), "without end");
    assert_string_equal(ts_shown_percent(t.check, -0.0179), "1.8 %");
    ts_study_close(t.study);
}

static void proposals_are_rounded_outwards(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    const ts_kind kind = TS_KIND_LENGTH;
    assert_string_equal(ts_shown_outward(t.check, 0.0123401, kind, +1), "12.35 mm");
    assert_string_equal(ts_shown_outward(t.check, 0.0123499, kind, -1), "12.34 mm");
    assert_string_equal(ts_shown_outward(t.check, 0.012, kind, +1), "12 mm");
    assert_string_equal(ts_shown_outward(t.check, -0.0123401, kind, -1), "-12.35 mm");
    assert_string_equal(ts_shown_outward(t.check, 0.0, kind, +1), "0 mm");
    ts_study_close(t.study);
}

static void clocks_are_told_in_the_sight_of_the_file(void **state)
{
    (void)state;
    trial t;
    open_trial(&t);
    const double quarter = 2.0 * atan(1.0);
    assert_string_equal(ts_shown_clock(t.check, 0.0), "12:00");
    assert_string_equal(ts_shown_clock(t.check, quarter), "3:00");
    assert_string_equal(ts_shown_clock(t.check, -quarter), "9:00");
    assert_string_equal(ts_shown_clock(t.check, 4.0 * quarter - 1e-9), "12:00");
    t.study->drive.sight.value = TS_FROM_FRONT;
    assert_string_equal(ts_shown_clock(t.check, quarter), "9:00");
    ts_study_close(t.study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nan_never_passes),
        cmocka_unit_test(what_could_not_be_computed_says_what_to_state),
        cmocka_unit_test(reserve_is_capacity_over_demand_less_one),
        cmocka_unit_test(limit_itself_passes),
        cmocka_unit_test(without_demand_there_is_no_reserve),
        cmocka_unit_test(no_infinity_is_written_down),
        cmocka_unit_test(reserve_that_is_wanted_must_be_there),
        cmocka_unit_test(skipping_counts_only_where_nothing_was_asked),
        cmocka_unit_test(numbers_show_enough_digits_to_differ),
        cmocka_unit_test(proposals_are_rounded_outwards),
        cmocka_unit_test(clocks_are_told_in_the_sight_of_the_file),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
