/* The book holds every rule once, in order, each with all that people are told about it. */
#include "check/rulebook.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static void every_rule_says_all_of_itself(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_rulebook_count(); i++) {
        const ts_rule *rule   = ts_rulebook_rules()[i];
        const char    *said[] = {rule->id,  rule->title,  rule->question,
                                 rule->why, rule->source, rule->hint};
        for (size_t j = 0; j < sizeof said / sizeof said[0]; j++) {
            assert_non_null(said[j]);
            assert_true(said[j][0] != '\0');
        }
        assert_int_equal(rule->question[strlen(rule->question) - 1], '?');
        assert_int_equal(rule->why[strlen(rule->why) - 1], '.');
        assert_int_not_equal(rule->hint[strlen(rule->hint) - 1], '.');
        assert_non_null(rule->run);
    }
}

/* "A2-x" before "A10-x", and so on. */
static int order(const char *a, const char *b)
{
    if (a[0] != b[0])
        return a[0] < b[0] ? -1 : 1;
    const long first = strtol(a + 1, NULL, 10), second = strtol(b + 1, NULL, 10);
    if (first != second)
        return first < second ? -1 : 1;
    return strcmp(strchr(a, '-'), strchr(b, '-'));
}

static void rules_stand_in_the_order_of_their_ids(void **state)
{
    (void)state;
    for (size_t i = 1; i < ts_rulebook_count(); i++)
        assert_true(order(ts_rulebook_rules()[i - 1]->id, ts_rulebook_rules()[i]->id) < 0);
}

static void every_rule_has_a_page_of_its_own(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_rulebook_count(); i++) {
        const char *page = ts_rulebook_page(i), *id = ts_rulebook_rules()[i]->id;
        assert_int_equal(strncmp(page, "# ", 2), 0);
        assert_int_equal(strncmp(page + 2, id, strlen(id)), 0);
        assert_true(strlen(page) > 300);
    }
}

static void there_are_enough_rules(void **state)
{
    (void)state;
    assert_true(ts_rulebook_count() >= 28);
}

static void rules_are_found_by_their_ids(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_rulebook_count(); i++)
        assert_int_equal(ts_rulebook_find(ts_text_of(ts_rulebook_rules()[i]->id), NULL), i);
}

static void unknown_rule_gets_the_nearest_id(void **state)
{
    (void)state;
    const char *nearest = NULL;
    assert_true(ts_rulebook_find(TS_TEXT("B2-sped-band"), &nearest) == SIZE_MAX);
    assert_string_equal(nearest, "B2-speed-band");
    assert_true(ts_rulebook_find(TS_TEXT("nothing like any of them"), &nearest) == SIZE_MAX);
    assert_null(nearest);
    assert_true(ts_rulebook_find(TS_TEXT(""), NULL) == SIZE_MAX);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_rule_says_all_of_itself),
        cmocka_unit_test(rules_stand_in_the_order_of_their_ids),
        cmocka_unit_test(every_rule_has_a_page_of_its_own),
        cmocka_unit_test(there_are_enough_rules),
        cmocka_unit_test(rules_are_found_by_their_ids),
        cmocka_unit_test(unknown_rule_gets_the_nearest_id),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
