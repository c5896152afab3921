/* Is a value of the oil that nobody knows asked for once by each rule, where it stands? */
#include "page_snippet.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <string.h>

#include <cmocka.h>

static const char *const waiting[] = {"E4-scuffing-flash", "E4-scuffing-integral",
                                      "E7-bearing-life", "J5-oil-rise"};

static void is_line(ts_study *study, const char *rule, const char *expected)
{
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        ts_buffer line;

        if (strcmp(study->outcome.findings[i].rule, rule) != 0)
            continue;
        ts_buffer_open(&line, NULL);
        finding_line(study, i, &line);
        assert_non_null(strstr(line.bytes, expected));
        ts_buffer_close(&line);
    }
}

static void an_unknown_feed_is_asked_for_once_a_rule(void **state)
{
    (void)state;
    ts_study *study = changed_study(" sight: from behind\n+oil: {feed: unknown}\n");

    for (size_t i = 0; i < sizeof waiting / sizeof waiting[0]; i++) {
        assert_int_equal(findings_of(study, waiting[i]), 1);
        assert_int_equal(first_finding_of(study, waiting[i])->state, TS_NOT_COMPUTABLE);
        is_line(study, waiting[i],
                "oil/feed: cannot be judged: `feed` of the oil is not known; state it, such as "
                "90 degC");
    }
    assert_int_equal(ts_study_verdict(study), TS_VERDICT_NOT_COMPUTABLE);
    ts_study_close(study);
}

static void of_one_condition_only_that_one_is_asked_for(void **state)
{
    (void)state;
    ts_study *study = changed_study(" sight: from behind\n+oil: {feed at: {red line: unknown}}\n");

    assert_int_equal(findings_of(study, "E7-bearing-life"), 1);
    is_line(study, "E7-bearing-life", "`feed at` of the oil in red line is not known");
    assert_true(outcome_of(study, "E4-scuffing-integral")->judged > 1); /* the others are judged */
    ts_study_close(study);
}

static void so_are_the_others_that_a_bearing_needs(void **state)
{
    (void)state;
    static const char *const keys[] = {"viscosity at 40", "viscosity at 100", "bearing rise"};

    for (size_t i = 0; i < 3; i++) {
        ts_buffer diff;
        ts_buffer_open(&diff, NULL);
        ts_buffer_print(&diff, " sight: from behind\n+oil: {%s: unknown}\n", keys[i]);
        ts_study *study = changed_study(diff.bytes);
        assert_int_equal(findings_of(study, "E7-bearing-life"), 1);
        is_line(study, "E7-bearing-life", keys[i]);
        ts_study_close(study);
        ts_buffer_close(&diff);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_unknown_feed_is_asked_for_once_a_rule),
        cmocka_unit_test(of_one_condition_only_that_one_is_asked_for),
        cmocka_unit_test(so_are_the_others_that_a_bearing_needs),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
