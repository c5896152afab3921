/* Every number that a check judges can be opened: it stands in the workings with its formula, and
 * what goes into the formula stands there too, down to the file, a table or an assumption.
 */
#include "page_snippet.h"

#include "check/rulebook.h"
#include "support/case_count.h"
#include "support/close.h"

#include <string.h>

/* What was searched for is itself an input of the equation. */
static bool has_origin(const ts_study *study, size_t index, const ts_input *input)
{
    const ts_note *note = ts_workings_at(study->workings, index);
    if (note->kind == TS_NOTE_SEARCHED && strcmp(input->name, note->symbol) == 0)
        return true;
    return ts_origin(study->workings, index, input->name, input->value) != SIZE_MAX;
}

/* A whole drive is solved for every page, and its formulas prove themselves: ten times slower under
 * the sanitizers, which take a share of the pages. */
enum { EVERY = TS_CASES(1, 6) };

static void assert_inputs_have_origins(const ts_study *study, const char *rule)
{
    for (size_t i = 0; i < ts_workings_count(study->workings); i++) {
        const ts_note *note = ts_workings_at(study->workings, i);
        if (note->kind != TS_NOTE_STEP && note->kind != TS_NOTE_SEARCHED)
            continue;
        for (uint32_t j = 0; j < note->input_count; j++)
            if (!has_origin(study, i, &note->inputs[j]))
                fail_msg("%s: %s needs %s = %.17g, and nobody says where that comes from", rule,
                         note->symbol, note->inputs[j].name, note->inputs[j].value);
    }
}

static void assert_judgements_stand_in_the_workings(const ts_study *study, const char *rule)
{
    for (size_t i = 0; i < study->outcome.judgement_count; i++) {
        const ts_judgement *each = &study->outcome.judgements[i];
        if (each->symbol == NULL || isnan(each->value))
            continue;
        const ts_subject subject = {each->node, each->condition};
        const size_t     found   = ts_workings_find(study->workings, subject, each->symbol);
        if (found == SIZE_MAX)
            fail_msg("%s: %s judges %s, which is not in the workings", rule, each->rule,
                     each->symbol);
        const ts_note *note = ts_workings_at(study->workings, found);
        if (!close_enough(note->value, each->value, 0.0))
            fail_msg("%s: %s judges %s = %.17g, and the workings say %.17g", rule, each->rule,
                     each->symbol, each->value, note->value);
    }
}

static void judged_numbers_can_be_opened(void **state)
{
    (void)state;
    static const char *const blocks[] = {"diff fails", "diff holds"};
    for (size_t i = 0; i < ts_rulebook_count(); i += EVERY)
        for (size_t j = 0; j < 2; j++) {
            const ts_text diff = page_block(ts_rulebook_page(i), blocks[j]);
            ts_buffer     drive;
            if (diff.length == 0)
                continue;
            ts_buffer_open(&drive, NULL);
            page_apply(diff, &drive);
            ts_study   *study = page_study(&drive, PAGE_DAY);
            const char *rule  = ts_rulebook_rules()[i]->id;
            assert_judgements_stand_in_the_workings(study, rule);
            assert_inputs_have_origins(study, rule);
            ts_study_close(study);
            ts_buffer_close(&drive);
        }
}

static void reserves_can_be_asked_for(void **state)
{
    (void)state;
    const char *const addresses[] = {
        "drive/hp/box/clockwise/2/front:reserve_n@ground idle",
        "drive/hp/box/clockwise/2/front:reserve_i",
        "drive/hp/box/clockwise/2:reserve_eps_alpha",
        "drive/hp/box/clockwise/2:reserve_b_over_d",
        "drive/hp/box/clockwise/2:reserve_s_an",
        "drive/hp/box/clockwise/2:reserve_z_min",
        "drive/hp/box/clockwise/2:reserve_a_cowl",
        "drive/hp/box/clockwise/2:reserve_R",
        "drive/hp/box/anticlockwise/3/rear:reserve_a_body",
        "drive/hp/box:reserve_wrap",
        "drive/hp/take-off:reserve_s",
        "drive/hp/tower shaft:reserve_v_s",
        "accessories/generator/neck:reserve_T_break",
    };
    ts_study *study = changed_study(" towershaft: 1\n");
    for (size_t i = 0; i < sizeof addresses / sizeof addresses[0]; i++)
        if (!(ts_study_number(study, addresses[i]) > 0.0))
            fail_msg("%s is not there", addresses[i]);
    ts_study_close(study);
}

static void workings_change_no_answer(void **state)
{
    (void)state;
    ts_study              *study   = changed_study(" towershaft: 1\n");
    const ts_check_subject subject = {.source       = &study->source,
                                      .drive        = &study->drive,
                                      .train        = &study->train,
                                      .motion       = &study->motion,
                                      .power        = &study->power,
                                      .mass         = &study->mass,
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
    ts_check_outcome       silent;
    assert_int_equal(ts_check_prepare(&subject, study->arena, &silent), TS_OK);
    assert_int_equal(ts_check_run(&subject, study->arena, NULL, &silent), TS_OK);
    assert_int_equal(silent.judgement_count, study->outcome.judgement_count);
    for (size_t i = 0; i < silent.judgement_count; i++) {
        const ts_judgement *a = &silent.judgements[i], *b = &study->outcome.judgements[i];
        assert_memory_equal(&a->value, &b->value, sizeof a->value);
        assert_memory_equal(&a->limit, &b->limit, sizeof a->limit);
        assert_memory_equal(&a->margin, &b->margin, sizeof a->margin);
    }
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(judged_numbers_can_be_opened),
        cmocka_unit_test(reserves_can_be_asked_for),
        cmocka_unit_test(workings_change_no_answer),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
