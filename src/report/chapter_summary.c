/* Report: does the drive hold, and where is it nearest to a limit? */
#include "report/report_chapter.h"

#include "check/rulebook.h"
#include "report/verdict_sentence.h"

#include <math.h>

#define NEAREST 12

static void verdict(ts_chapter *chapter)
{
    const ts_check_outcome *outcome = chapter->answer->outcome;
    ts_verdict_sentence(outcome, &chapter->cell);
    ts_buffer_print(&chapter->cell, " %zu judgements by %zu rules, %zu passed.",
                    outcome->judgement_count, outcome->rules_run, outcome->passed);
    if (!chapter->cell.failed)
        ts_manuscript_box(chapter->manuscript,
                          outcome->verdict == TS_HOLDS ? TS_BLOCK_PLAIN : TS_BLOCK_WARNING,
                          chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

/* Notes are told among the findings; here stands what may refuse or warn. */
static bool decides(const char *rule)
{
    const size_t index = ts_rulebook_find(ts_text_of(rule), NULL);
    return index != SIZE_MAX && ts_rulebook_rules()[index]->level != TS_NOTE;
}

/* The judgement with the least margin of those after `last` in the order of margins. */
static size_t next_nearest(const ts_check_outcome *outcome, size_t last)
{
    size_t found = SIZE_MAX;
    for (size_t i = 0; i < outcome->judgement_count; i++) {
        const double margin = outcome->judgements[i].margin;
        if (!isfinite(margin) || !decides(outcome->judgements[i].rule))
            continue;
        if (last != SIZE_MAX) {
            const double before = outcome->judgements[last].margin;
            if (margin < before || (!(margin > before) && i <= last))
                continue;
        }
        if (found == SIZE_MAX || margin < outcome->judgements[found].margin)
            found = i;
    }
    return found;
}

static void nearest(ts_chapter *chapter)
{
    static const ts_column  columns[] = {{"rule", false}, {"at", false}, {"margin", true}};
    const ts_check_outcome *outcome   = chapter->answer->outcome;
    ts_manuscript_table(chapter->manuscript, "Nearest to a limit (margin = capacity / demand - 1)",
                        columns, 3);
    size_t at = SIZE_MAX;
    for (int i = 0; i < NEAREST; i++) {
        at = next_nearest(outcome, at);
        if (at == SIZE_MAX)
            return;
        const ts_judgement *one = &outcome->judgements[at];
        ts_chapter_word(chapter, one->rule);
        ts_chapter_place(chapter, one->node, one->symbol, one->condition);
        ts_chapter_cell(chapter);
        ts_chapter_margin(chapter, one->margin);
        ts_chapter_cell(chapter);
    }
}

static void spools(ts_chapter *chapter)
{
    const ts_answer *answer = chapter->answer;
    const ts_drive  *drive  = answer->drive;
    ts_buffer_print(&chapter->cell,
                    "%zu conditions, %zu accessories, %u shafts, %u meshes; %zu values are "
                    "assumed and %zu assumptions are stated (chapter 3).",
                    drive->condition_count, drive->accessory_count, answer->train->shaft_count,
                    answer->train->mesh_count, drive->assumed_count, drive->assumption_count);
    if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

void ts_chapter_summary(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Summary");
    verdict(chapter);
    spools(chapter);
    nearest(chapter);
}
