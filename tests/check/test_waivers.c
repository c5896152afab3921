/* A waiver covers exactly what it names, while it lasts, and nothing that nobody knows. */
#include "page_snippet.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* 45 and 35 teeth share 5: a refusal at drive/hp/box/clockwise/2. */
#define SHARED_DIVISOR                                                                             \
    "-        - {teeth: 44, face: 14 mm}\n"                                                        \
    "+        - {teeth: 45, face: 14 mm}\n"                                                        \
    "@@\n"
/* Both are below the band of the generator at ground idle alone. */
#define SLOW_GENERATOR                                                                             \
    "-        - {teeth: 35, face: 14 mm, front: generator, rear: breather}\n"                      \
    "+        - {teeth: 37, face: 14 mm, front: generator, rear: breather}\n"                      \
    "@@\n"

static ts_study *waived_on(const char *change, const char *waiver, int32_t today)
{
    char diff[2048];
    (void)snprintf(diff, sizeof diff, "%s   pitch line velocity: 120 m/s\n+waived:\n+  - %s\n",
                   change, waiver);
    ts_buffer drive;
    ts_buffer_open(&drive, NULL);
    page_apply(ts_text_of(diff), &drive);
    ts_study *study = page_study(&drive, today);
    ts_buffer_close(&drive);
    return study;
}

static ts_study *waived(const char *change, const char *waiver)
{
    return waived_on(change, waiver, PAGE_DAY);
}

static void assert_idle(const char *change, const char *waiver, const char *says)
{
    ts_study *study = waived(change, waiver);
    assert_int_equal(findings_of(study, "A4-waiver-idle"), 1);
    const ts_finding *finding = first_finding_of(study, "A4-waiver-idle");
    assert_int_equal(finding->level, TS_WARN);
    assert_int_equal(finding->state, TS_OPEN);
    assert_string_equal(finding->says, says);
    ts_study_close(study);
}

static void waiver_covers_a_refusal(void **state)
{
    (void)state;
    ts_study         *study   = waived(SHARED_DIVISOR, "{rule: C2-hunting-tooth, "
                                                                 "at: drive/hp/box/clockwise/2, why: re-used}");
    const ts_finding *finding = first_finding_of(study, "C2-hunting-tooth");
    assert_int_equal(finding->state, TS_WAIVED);
    assert_int_equal(finding->waiver, study->drive.waived[0].node);
    assert_int_equal(study->outcome.waived, 1);
    assert_int_equal(study->outcome.open[TS_REFUSE], 0);
    assert_int_equal(study->outcome.verdict, TS_HOLDS);
    assert_int_equal(findings_of(study, "A4-waiver-idle"), 0);
    ts_study_close(study);
}

static void waiver_of_one_condition_leaves_the_others(void **state)
{
    (void)state;
    ts_study *study = waived(
        "-        - {teeth: 35, face: 14 mm, front: generator, rear: breather}\n"
        "+        - {teeth: 33, face: 14 mm, front: generator, rear: breather}\n@@\n",
        "{rule: B2-speed-band, at: drive/hp/box/clockwise/2/front@red line, why: seconds only}");
    size_t open = 0, covered = 0;
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        const ts_finding_view view = ts_study_finding(study, i);
        if (strcmp(view.rule, "B2-speed-band") != 0)
            continue;
        const bool red_line = strcmp(view.condition, "red line") == 0;
        assert_string_equal(view.state, red_line ? "waived" : "open");
        covered += red_line;
        open += !red_line;
    }
    assert_int_equal(covered, 1);
    assert_true(open > 0);
    ts_study_close(study);
}

static void waiver_without_a_condition_covers_all(void **state)
{
    (void)state;
    ts_study *study = waived(SLOW_GENERATOR, "{rule: B2-speed-band, "
                                             "at: drive/hp/box/clockwise/2/front, why: agreed}");
    assert_int_equal(first_finding_of(study, "B2-speed-band")->state, TS_WAIVED);
    assert_int_equal(study->outcome.verdict, TS_HOLDS);
    ts_study_close(study);
}

static void waiver_does_not_cover_the_parent(void **state)
{
    (void)state;
    ts_study *study =
        waived(SLOW_GENERATOR, "{rule: B2-speed-band, at: drive/hp/box/clockwise/2, why: agreed}");
    assert_int_equal(first_finding_of(study, "B2-speed-band")->state, TS_OPEN);
    assert_int_equal(study->outcome.verdict, TS_DOES_NOT_HOLD);
    ts_study_close(study);
}

static void idle_waivers_say_why_they_are_idle(void **state)
{
    (void)state;
    assert_idle("", "{rule: C2-hunting-tooth, at: drive/hp/box/clockwise/2, why: re-used}",
                "C2-hunting-tooth finds nothing at drive/hp/box/clockwise/2");
    assert_idle("", "{rule: C2-hunting-teeth, at: drive/hp/box/clockwise/2, why: re-used}",
                "there is no rule called C2-hunting-teeth");
    assert_idle("", "{rule: C2-hunting-tooth, at: drive/hp/box/clockwise/9, why: re-used}",
                "nothing in this file has the address drive/hp/box/clockwise/9");
    assert_idle(SLOW_GENERATOR,
                "{rule: B2-speed-band, at: drive/hp/box/clockwise/2/front@cruise, why: agreed}",
                "nothing in this file has the address drive/hp/box/clockwise/2/front@cruise");
    assert_idle("", "{rule: A4-waiver-idle, at: waived/1, why: never mind}",
                "A4-waiver-idle judges the waivers, and cannot be waived itself");
}

static void unknown_rule_gets_the_nearest_one(void **state)
{
    (void)state;
    ts_study *study = waived("", "{rule: C2-hunting-teeth, at: drive/hp/box/clockwise/2, why: x}");
    assert_string_equal(first_finding_of(study, "A4-waiver-idle")->remedy,
                        "did you mean C2-hunting-tooth?");
    ts_study_close(study);
}

static void what_is_not_known_cannot_be_waived(void **state)
{
    (void)state;
    ts_study *study = waived(
        "-    speed: {crank: ..17900 rpm, light-off: ..17900 rpm, always: 9600..17900 rpm}\n"
        "+    speed: {crank: unknown, light-off: ..17900 rpm, always: 9600..17900 rpm}\n@@\n",
        "{rule: B2-speed-band, at: drive/hp/box/clockwise/2/front, why: surely}");
    const ts_finding *finding = first_finding_of(study, "B2-speed-band");
    assert_int_equal(finding->state, TS_NOT_COMPUTABLE);
    assert_int_equal(finding->waiver, 0);
    assert_int_equal(study->outcome.verdict, TS_VERDICT_NOT_COMPUTABLE);
    assert_string_equal(first_finding_of(study, "A4-waiver-idle")->says,
                        "what B2-speed-band asks at drive/hp/box/clockwise/2/front could not be "
                        "computed, and that cannot be waived");
    ts_study_close(study);
}

#define UNTIL_2026_05_27                                                                           \
    "{rule: C2-hunting-tooth, at: drive/hp/box/clockwise/2, why: re-used, until: 2026-05-27}"

static void waiver_holds_through_its_last_day(void **state)
{
    (void)state;
    ts_study *study = waived_on(SHARED_DIVISOR, UNTIL_2026_05_27, PAGE_DAY);
    assert_int_equal(study->outcome.verdict, TS_HOLDS);
    ts_study_close(study);
}

static void ended_waiver_covers_nothing_and_is_refused(void **state)
{
    (void)state;
    ts_study *study = waived_on(SHARED_DIVISOR, UNTIL_2026_05_27, PAGE_DAY + 1);
    assert_int_equal(first_finding_of(study, "C2-hunting-tooth")->state, TS_OPEN);
    assert_int_equal(first_finding_of(study, "A4-waiver-expired")->state, TS_OPEN);
    assert_int_equal(first_finding_of(study, "A4-waiver-expired")->level, TS_REFUSE);
    assert_int_equal(findings_of(study, "A4-waiver-idle"), 0);
    ts_study_close(study);
}

static void ended_waiver_of_nothing_is_only_idle(void **state)
{
    (void)state;
    ts_study *study = waived_on("", UNTIL_2026_05_27, PAGE_DAY + 1);
    assert_int_equal(findings_of(study, "A4-waiver-expired"), 0);
    assert_int_equal(findings_of(study, "A4-waiver-idle"), 1);
    assert_int_equal(study->outcome.verdict, TS_HOLDS);
    ts_study_close(study);
}

static void without_a_date_an_ending_waiver_cannot_be_judged(void **state)
{
    (void)state;
    ts_study *study = waived_on(SHARED_DIVISOR, UNTIL_2026_05_27, INT32_MIN);
    assert_int_equal(first_finding_of(study, "C2-hunting-tooth")->state, TS_WAIVED);
    assert_int_equal(first_finding_of(study, "A4-waiver-expired")->state, TS_NOT_COMPUTABLE);
    assert_int_equal(study->outcome.verdict, TS_VERDICT_NOT_COMPUTABLE);
    ts_study_close(study);
}

static void without_a_date_an_endless_waiver_holds(void **state)
{
    (void)state;
    ts_study *study = waived_on(
        SHARED_DIVISOR, "{rule: C2-hunting-tooth, at: drive/hp/box/clockwise/2, why: re-used}",
        INT32_MIN);
    assert_int_equal(study->outcome.verdict, TS_HOLDS);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(waiver_covers_a_refusal),
        cmocka_unit_test(waiver_of_one_condition_leaves_the_others),
        cmocka_unit_test(waiver_without_a_condition_covers_all),
        cmocka_unit_test(waiver_does_not_cover_the_parent),
        cmocka_unit_test(idle_waivers_say_why_they_are_idle),
        cmocka_unit_test(unknown_rule_gets_the_nearest_one),
        cmocka_unit_test(what_is_not_known_cannot_be_waived),
        cmocka_unit_test(waiver_holds_through_its_last_day),
        cmocka_unit_test(ended_waiver_covers_nothing_and_is_refused),
        cmocka_unit_test(ended_waiver_of_nothing_is_only_idle),
        cmocka_unit_test(without_a_date_an_ending_waiver_cannot_be_judged),
        cmocka_unit_test(without_a_date_an_endless_waiver_holds),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
