/* Does the drive hold, and what did the program find? */
#include "report/check_page.h"

#include "report/check_sections.h"
#include "report/verdict_sentence.h"

/* The last line of the page, or the last few on a narrow one. */
static void verdict(const ts_answer *answer, ts_page *page)
{
    const ts_check_outcome *outcome = answer->outcome;
    ts_buffer               says;
    ts_buffer_open(&says, answer->allocator);
    ts_verdict_sentence(outcome, &says);
    ts_buffer_print(&says, " %zu judgements by %zu rules, %zu passed; %zu %s not apply.",
                    outcome->judgement_count, outcome->rules_run, outcome->passed,
                    outcome->rules_skipped, outcome->rules_skipped == 1 ? "rule does" : "rules do");
    ts_buffer_add(page->out, "\n");
    ts_page_tone(page, TS_TONE_STRONG);
    if (!says.failed)
        ts_page_wrap(page, says.bytes, 0, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    page->out->failed = page->out->failed || says.failed;
    ts_buffer_close(&says);
}

void ts_check_page(const ts_answer *answer, ts_page *page)
{
    ts_answer_title(answer, page);
    ts_speed_table(answer, page);
    ts_power_table(answer, page);
    ts_mesh_table(answer, page);
    ts_strength_table(answer, page);
    ts_rubbing_table(answer, page);
    ts_mass_table(answer, page);
    ts_line_table(answer, page);
    ts_spline_table(answer, page);
    ts_float_table(answer, page);
    ts_selectivity_table(answer, page);
    ts_check_oil(answer, page);
    ts_check_effects(answer, page);
    ts_assumption_list(answer, page);
    ts_finding_list(answer, page);
    verdict(answer, page);
}
