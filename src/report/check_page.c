/* Does the drive hold, and what did the program find? */
#include "report/check_page.h"

const char *ts_answer_condition(const ts_answer *answer, int32_t condition)
{
    return condition < 0 ? NULL : answer->drive->conditions[condition].name;
}

static void title(const ts_answer *answer, ts_page *page)
{
    ts_page_tone(page, TS_TONE_STRONG);
    ts_buffer_add(page->out, answer->drive->title.text);
    ts_page_tone(page, TS_TONE_PLAIN);
    if (answer->drive->revision.text != NULL)
        ts_buffer_print(page->out, ", revision %s", answer->drive->revision.text);
    ts_buffer_print(page->out, "   %s   SHA-256 %.*s   towershaft %s\n", answer->source->name, 12,
                    answer->sha256, answer->version);
    ts_page_wrap(page, answer->caution, 0, 0);
}

static void plural(ts_buffer *out, size_t count, const char *one, const char *many)
{
    ts_buffer_print(out, "%zu %s", count, count == 1 ? one : many);
}

void ts_verdict_sentence(const ts_check_outcome *outcome, ts_buffer *out)
{
    static const char *const words[] = {"holds", "does not hold", "is not computable"};
    ts_buffer_print(out, "The drive %s: ", words[outcome->verdict]);
    plural(out, outcome->open[TS_REFUSE], "refusal", "refusals");
    ts_buffer_add(out, " open, ");
    plural(out, outcome->open[TS_WARN], "warning", "warnings");
    ts_buffer_add(out, ", ");
    plural(out, outcome->open[TS_NOTE], "note", "notes");
    ts_buffer_print(out, "; %zu waived, %zu not computable.", outcome->waived,
                    outcome->not_computable);
}

/* The last line of the page. */
static void verdict(const ts_answer *answer, ts_page *page)
{
    const ts_check_outcome *outcome = answer->outcome;
    ts_buffer_add(page->out, "\n");
    ts_page_tone(page, TS_TONE_STRONG);
    ts_verdict_sentence(outcome, page->out);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_buffer_print(page->out, " %zu judgements by %zu rules, %zu passed; %zu %s not apply.\n",
                    outcome->judgement_count, outcome->rules_run, outcome->passed,
                    outcome->rules_skipped, outcome->rules_skipped == 1 ? "rule does" : "rules do");
}

void ts_check_page(const ts_answer *answer, ts_page *page)
{
    title(answer, page);
    ts_speed_table(answer, page);
    ts_power_table(answer, page);
    ts_mesh_table(answer, page);
    ts_assumption_list(answer, page);
    ts_finding_list(answer, page);
    verdict(answer, page);
}
