/* Every page of docs/check is a test: its failing snippet brings exactly the findings that it
 * prints, and its passing snippet none of its rule, which still has something to judge there.
 */
#include "page_snippet.h"
#include "support/case_count.h"

#include "check/rulebook.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* Joins a line of the page with the lines after it that begin with a blank. */
static size_t unwrap(ts_text block, size_t at, ts_buffer *out)
{
    ts_buffer_clear(out);
    ts_buffer_add(out, "");
    bool first = true;
    while (at < block.length && (first || block.at[at] == ' ')) {
        const char *end = memchr(block.at + at, '\n', block.length - at);
        assert_non_null(end);
        const size_t  length = (size_t)(end - block.at) - at;
        const ts_text part   = ts_text_trim((ts_text){block.at + at, length});
        if (!first)
            ts_buffer_add(out, " ");
        ts_buffer_text(out, part);
        at += length + 1;
        first = false;
    }
    return at;
}

static bool is_also(const char *line, const char *rule)
{
    return strncmp(line, "also ", 5) == 0 && strcmp(line + 5, rule) == 0;
}

/* Does the page print this finding, or name its rule with `also`? */
static bool page_has(const char *rule, ts_text block, ts_study *study, size_t index)
{
    ts_buffer wanted, line;
    ts_buffer_open(&wanted, NULL);
    ts_buffer_open(&line, NULL);
    finding_line(study, index, &wanted);
    bool found = false;
    for (size_t at = 0; at < block.length && !found;) {
        at    = unwrap(block, at, &line);
        found = strcmp(line.bytes, wanted.bytes) == 0 ||
                is_also(line.bytes, ts_study_finding(study, index).rule);
    }
    if (!found)
        print_error("the page of %s does not print\n%s\n", rule, wanted.bytes);
    ts_buffer_close(&wanted);
    ts_buffer_close(&line);
    return found;
}

static size_t lines_in(ts_text block, bool also)
{
    ts_buffer line;
    ts_buffer_open(&line, NULL);
    size_t count = 0;
    for (size_t at = 0; at < block.length;) {
        at = unwrap(block, at, &line);
        count += (strncmp(line.bytes, "also ", 5) == 0) == also;
    }
    ts_buffer_close(&line);
    return count;
}

static size_t other_rules(const ts_study *study, const char *rule)
{
    const char *seen[64];
    size_t      count = 0;
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        const char *other = study->outcome.findings[i].rule;
        bool        known = strcmp(other, rule) == 0;
        for (size_t j = 0; j < count; j++)
            known = known || strcmp(seen[j], other) == 0;
        if (!known)
            seen[count++] = other;
    }
    return count;
}

static ts_study *study_of(size_t index, const char *info)
{
    const ts_text diff = page_block(ts_rulebook_page(index), info);
    if (diff.length == 0)
        fail_msg("the page of %s has no block `%s`", ts_rulebook_rules()[index]->id, info);
    ts_buffer drive;
    ts_buffer_open(&drive, NULL);
    page_apply(diff, &drive);
    ts_study *study = page_study(&drive, PAGE_DAY);
    ts_buffer_close(&drive);
    return study;
}

/* Only a fault of the program makes this rule speak; see test_rules_by_hand. */
static bool cannot_fail(size_t index)
{
    return strcmp(ts_rulebook_rules()[index]->id, "M2-power-balance") == 0;
}

/* A whole drive is solved for every page, and its formulas prove themselves: ten times slower under
 * the sanitizers, which take a share of the pages. */
enum { EVERY = TS_CASES(1, 6) };

static void failing_snippets_bring_what_their_pages_print(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_rulebook_count(); i += EVERY) {
        if (cannot_fail(i))
            continue;
        const char   *rule  = ts_rulebook_rules()[i]->id;
        ts_study     *study = study_of(i, "diff fails");
        const ts_text block = page_block(ts_rulebook_page(i), "text findings");
        for (size_t j = 0; j < study->outcome.finding_count; j++)
            assert_true(page_has(rule, block, study, j));
        if (findings_of(study, rule) == 0)
            fail_msg("the drive that is to fail %s brings no finding of it", rule);
        if (findings_of(study, rule) != lines_in(block, false) ||
            other_rules(study, rule) != lines_in(block, true))
            print_error("the page of %s prints findings that are not there\n", rule);
        assert_int_equal(findings_of(study, rule), lines_in(block, false));
        assert_int_equal(other_rules(study, rule), lines_in(block, true));
        ts_study_close(study);
    }
}

static void passing_snippets_leave_their_rule_content(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_rulebook_count(); i += EVERY) {
        if (cannot_fail(i))
            continue;
        const char            *rule    = ts_rulebook_rules()[i]->id;
        ts_study              *study   = study_of(i, "diff holds");
        const ts_rule_outcome *outcome = outcome_of(study, rule);
        if (findings_of(study, rule) > 0)
            fail_msg("%s speaks in its own passing snippet", rule);
        if (outcome->judged == 0)
            fail_msg("%s has nothing to judge in its passing snippet: %s", rule, outcome->skipped);
        assert_int_equal(outcome->passed, outcome->judged);
        ts_study_close(study);
    }
}

static void base_drive_leaves_every_rule_content(void **state)
{
    (void)state;
    ts_study *study = changed_study(" towershaft: 1\n");
    assert_int_equal(study->outcome.finding_count, 0);
    assert_int_equal(ts_study_verdict(study), TS_HOLDS);
    assert_int_equal(study->outcome.passed, study->outcome.judgement_count);
    for (size_t i = 0; i < study->outcome.rule_count; i++) {
        const ts_rule_outcome *outcome = &study->outcome.rules[i];
        assert_true((outcome->judged > 0) == (outcome->skipped == NULL));
    }
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(failing_snippets_bring_what_their_pages_print),
        cmocka_unit_test(passing_snippets_leave_their_rule_content),
        cmocka_unit_test(base_drive_leaves_every_rule_content),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
