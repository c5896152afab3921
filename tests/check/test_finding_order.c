/* Findings come worst first, whatever order they were made in, and keep their fingerprints. */
#include "page_snippet.h"

#include "base/sha256.h"
#include "check/finding_order.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define TROUBLE                                                                                    \
    "-        - {teeth: 44, face: 14 mm}\n"                                                        \
    "+        - {teeth: 45, face: 14 mm}\n"                                                        \
    "@@\n"                                                                                         \
    "-    overhang: 112 mm\n"                                                                      \
    "+    overhang: 11 mm\n"                                                                       \
    "@@\n"                                                                                         \
    "-    mass: 23.5 kg\n"                                                                         \
    "+    mass: {value: 23.5 kg, confidence: low}\n"                                               \
    "@@\n"                                                                                         \
    "-      input: {teeth: 35, face: 10 mm, front: cover}\n"                                       \
    "+      input: {teeth: 35, face: 10 mm, front: open}\n"                                        \
    "@@\n"                                                                                         \
    "-      slide: -2..2 mm\n"                                                                     \
    "@@\n"                                                                                         \
    "   pitch line velocity: 120 m/s\n"                                                            \
    "+waived:\n"                                                                                   \
    "+  - {rule: C2-hunting-tooth, at: drive/hp/box/clockwise/2, why: re-used}\n"

static int rank(const ts_finding *finding)
{
    if (finding->state == TS_NOT_COMPUTABLE)
        return 1;
    if (finding->state == TS_WAIVED)
        return 3;
    return finding->level == TS_REFUSE ? 0 : finding->level == TS_WARN ? 2 : 4;
}

static void worst_comes_first(void **state)
{
    (void)state;
    ts_study         *study   = changed_study(TROUBLE);
    const ts_finding *list    = study->outcome.findings;
    bool              seen[5] = {false, false, false, false, false};
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        seen[rank(&list[i])] = true;
        assert_true(i == 0 || rank(&list[i - 1]) <= rank(&list[i]));
    }
    for (size_t i = 0; i < 5; i++)
        assert_true(seen[i]);
    ts_study_close(study);
}

static void sorting_forgets_the_order_before(void **state)
{
    (void)state;
    ts_study        *study = changed_study(TROUBLE);
    const size_t     count = study->outcome.finding_count;
    ts_finding       mixed[32];
    const ts_source *source = &study->source;
    assert_in_range(count, 5, 32);
    for (size_t turn = 0; turn < count; turn++) {
        for (size_t i = 0; i < count; i++)
            mixed[(i * 7 + turn) % count] = study->outcome.findings[i];
        if (count % 7 != 0)
            ts_findings_sort(mixed, count, source);
        for (size_t i = 0; i < count && count % 7 != 0; i++)
            assert_string_equal(mixed[i].fingerprint, study->outcome.findings[i].fingerprint);
    }
    assert_true(count % 7 != 0);
    ts_findings_sort(mixed, 0, source);
    ts_study_close(study);
}

static void fingerprint_is_the_hash_of_rule_address_and_condition(void **state)
{
    (void)state;
    ts_study *study =
        changed_study("-        - {teeth: 35, face: 14 mm, front: generator, rear: breather}\n"
                      "+        - {teeth: 37, face: 14 mm, front: generator, rear: breather}\n");
    char digest[65];
    ts_sha256(TS_TEXT("B2-speed-band\ndrive/hp/box/clockwise/2/front\nground idle"), digest);
    digest[16] = '\0';
    assert_string_equal(first_finding_of(study, "B2-speed-band")->fingerprint, digest);
    ts_study_close(study);
    study = changed_study("-        - {teeth: 44, face: 14 mm}\n"
                          "+        - {teeth: 45, face: 14 mm}\n");
    ts_sha256(TS_TEXT("C2-hunting-tooth\ndrive/hp/box/clockwise/2\n"), digest);
    digest[16] = '\0';
    assert_string_equal(first_finding_of(study, "C2-hunting-tooth")->fingerprint, digest);
    ts_study_close(study);
}

static void fingerprints_survive_lines_that_move(void **state)
{
    (void)state;
    ts_study *here  = changed_study(TROUBLE);
    ts_study *moved = changed_study(TROUBLE "@@\n"
                                            "+# a comment more\n"
                                            "+\n"
                                            " title: Wheatear 12, accessory drive\n");
    assert_int_equal(here->outcome.finding_count, moved->outcome.finding_count);
    for (size_t i = 0; i < here->outcome.finding_count; i++) {
        assert_string_equal(here->outcome.findings[i].fingerprint,
                            moved->outcome.findings[i].fingerprint);
        assert_true(ts_study_finding(moved, i).line >= ts_study_finding(here, i).line);
    }
    ts_study_close(here);
    ts_study_close(moved);
}

static void no_two_findings_share_a_fingerprint(void **state)
{
    (void)state;
    ts_study         *study = changed_study(TROUBLE "@@\n"
                                                            "-  casing: 230 mm\n"
                                                            "+  casing: 420 mm\n");
    const ts_finding *list  = study->outcome.findings;
    assert_true(study->outcome.finding_count > 15);
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        assert_int_equal(strlen(list[i].fingerprint), 16);
        assert_int_equal(strspn(list[i].fingerprint, "0123456789abcdef"), 16);
        for (size_t j = 0; j < i; j++)
            assert_string_not_equal(list[i].fingerprint, list[j].fingerprint);
    }
    ts_study_close(study);
}

static void counts_add_up(void **state)
{
    (void)state;
    ts_study               *study   = changed_study(TROUBLE);
    const ts_check_outcome *outcome = &study->outcome;
    size_t                  judged = 0, passed = 0;
    for (size_t i = 0; i < outcome->rule_count; i++) {
        judged += outcome->rules[i].judged;
        passed += outcome->rules[i].passed;
    }
    assert_int_equal(judged, outcome->judgement_count);
    assert_int_equal(passed, outcome->passed);
    assert_int_equal(outcome->rules_run + outcome->rules_skipped, outcome->rule_count);
    assert_int_equal(outcome->judgement_count - outcome->passed, outcome->finding_count);
    assert_int_equal(outcome->open[TS_REFUSE] + outcome->open[TS_WARN] + outcome->open[TS_NOTE] +
                         outcome->waived + outcome->not_computable,
                     outcome->finding_count);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(worst_comes_first),
        cmocka_unit_test(sorting_forgets_the_order_before),
        cmocka_unit_test(fingerprint_is_the_hash_of_rule_address_and_condition),
        cmocka_unit_test(fingerprints_survive_lines_that_move),
        cmocka_unit_test(no_two_findings_share_a_fingerprint),
        cmocka_unit_test(counts_add_up),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
