/* A check takes what it needs beforehand, and gives a clean answer when there is none. */
#include "page_snippet.h"

#include "support/faulty_allocator.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static ts_check_subject subject_of(const ts_study *study)
{
    return (ts_check_subject){.source       = &study->source,
                              .drive        = &study->drive,
                              .train        = &study->train,
                              .motion       = &study->motion,
                              .power        = &study->power,
                              .teeth        = &study->teeth,
                              .lines        = &study->lines,
                              .opinion      = &study->opinion,
                              .select       = &study->select,
                              .rubbing      = &study->rubbing,
                              .floats       = &study->floats,
                              .splines      = &study->splines,
                              .heat         = &study->heat,
                              .whirls       = &study->whirls,
                              .webs         = &study->webs,
                              .forced       = study->twist.forced,
                              .forced_count = study->twist.count,
                              .today        = PAGE_DAY};
}

static ts_study *troubled_study(void)
{
    return changed_study("-        - {teeth: 44, face: 14 mm}\n"
                         "+        - {teeth: 45, face: 14 mm}\n"
                         "@@\n"
                         "-  casing: 230 mm\n"
                         "+  casing: 250 mm\n");
}

static void running_asks_the_allocator_for_nothing(void **state)
{
    (void)state;
    ts_study              *study   = troubled_study();
    const ts_check_subject subject = subject_of(study);
    ts_arena              *arena   = ts_arena_open(NULL);
    ts_check_outcome       outcome;
    assert_non_null(arena);
    assert_int_equal(ts_check_prepare(&subject, arena, &outcome), TS_OK);
    const size_t before = ts_arena_calls(arena);
    for (int turn = 0; turn < 50; turn++) {
        assert_int_equal(ts_check_run(&subject, arena, NULL, &outcome), TS_OK);
        assert_true(outcome.finding_count > 3);
    }
    assert_int_equal(ts_arena_calls(arena), before);
    ts_arena_close(arena);
    ts_study_close(study);
}

static void second_run_gives_the_same_answer(void **state)
{
    (void)state;
    ts_study              *study   = troubled_study();
    const ts_check_subject subject = subject_of(study);
    ts_arena              *arena   = ts_arena_open(NULL);
    ts_check_outcome       outcome;
    assert_int_equal(ts_check_prepare(&subject, arena, &outcome), TS_OK);
    for (int turn = 0; turn < 2; turn++) {
        assert_int_equal(ts_check_run(&subject, arena, NULL, &outcome), TS_OK);
        assert_int_equal(outcome.finding_count, study->outcome.finding_count);
        assert_int_equal(outcome.judgement_count, study->outcome.judgement_count);
        for (size_t i = 0; i < outcome.finding_count; i++) {
            assert_string_equal(outcome.findings[i].says, study->outcome.findings[i].says);
            assert_string_equal(outcome.findings[i].remedy, study->outcome.findings[i].remedy);
        }
    }
    ts_arena_close(arena);
    ts_study_close(study);
}

/* More sentences than were reserved: every body and gear reaches through the casing. */
static void more_findings_than_expected_take_more_memory(void **state)
{
    (void)state;
    ts_buffer drive;
    ts_buffer_open(&drive, NULL);
    page_apply(TS_TEXT("-  casing: 230 mm\n+  casing: 420 mm\n"), &drive);
    ts_buffer_add(&drive, "waived:\n");
    for (int i = 0; i < 400; i++)
        ts_buffer_print(&drive, "  - {rule: C2-hunting-tooth, at: nowhere/%d, why: nothing}\n", i);
    ts_study *study = page_study(&drive, PAGE_DAY);
    assert_int_equal(findings_of(study, "A4-waiver-idle"), 400);
    ts_buffer_close(&drive);
    ts_study_close(study);
}

static ts_status check_with(const ts_check_subject *subject, const ts_allocator *allocator)
{
    ts_arena *arena = ts_arena_open(allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_check_outcome outcome;
    ts_status        status = ts_check_prepare(subject, arena, &outcome);
    if (status == TS_OK)
        status = ts_check_run(subject, arena, NULL, &outcome);
    ts_arena_close(arena);
    return status;
}

static void every_failed_request_is_told(void **state)
{
    (void)state;
    ts_study *study = troubled_study();
    /* Little is reserved for findings and sentences, so that running has to ask as well. */
    const ts_check_subject subject = subject_of(study);
    faulty_allocator       faulty;
    for (size_t n = 1;; n++) {
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
        const ts_status    status    = check_with(&subject, &allocator);
        assert_int_equal(faulty.live_blocks, 0);
        assert_int_equal(status, faulty.failed > 0 ? TS_NO_MEMORY : TS_OK);
        if (faulty.failed == 0)
            break;
        assert_true(n < 100);
    }
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(running_asks_the_allocator_for_nothing),
        cmocka_unit_test(second_run_gives_the_same_answer),
        cmocka_unit_test(more_findings_than_expected_take_more_memory),
        cmocka_unit_test(every_failed_request_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
