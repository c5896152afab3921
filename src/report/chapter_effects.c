/* Report: what stops when a part fails, and what may have stopped it? */
#include "report/effects_report.h"
#include "report/report_chapter.h"

static void matrix(const ts_effects *effects, ts_chapter *chapter)
{
    static const ts_column columns[] = {{"part", false},   {"failure", false},
                                        {"stops", false},  {"in doubt", false},
                                        {"effect", false}, {"seen as", false}};

    ts_manuscript_table(chapter->manuscript,
                        "Every part in every way in which it may fail; what is not named goes on "
                        "as fast and the same way as before",
                        columns, sizeof columns / sizeof columns[0]);
    for (uint32_t i = 0; i < effects->failure_count; i++) {
        const ts_failure  one     = effects->failures[i];
        const ts_outcome *outcome = &effects->outcomes[i];

        ts_effects_part(effects, ts_failing_of(one.mode), one.at, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, ts_failure_name(one.mode));
        ts_effects_pads(effects, outcome, TS_STOPS, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_effects_pads(effects, outcome, TS_IN_DOUBT, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_effects_brief(effects, outcome, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_effects_seen(effects, one, outcome, &chapter->cell);
        ts_chapter_cell(chapter);
    }
}

enum { PAIRS_MOST = 12 };

static void add_failure(const ts_effects *effects, uint32_t i, ts_buffer *out)
{
    const ts_failure one = effects->failures[i];

    ts_effects_part(effects, ts_failing_of(one.mode), one.at, out);
    ts_buffer_print(out, " %s", ts_failure_name(one.mode));
}

static void add_pairs(const ts_effects *effects, const ts_causes *list, ts_buffer *out)
{
    for (size_t i = list->singles; i < list->count; i++) {
        if (i - list->singles == PAIRS_MOST) {
            ts_buffer_print(out, "; and %zu more", list->count - i);
            return;
        }
        ts_buffer_add(out, i > list->singles ? "; " : "");
        add_failure(effects, list->items[i].first, out);
        ts_buffer_add(out, " + ");
        add_failure(effects, list->items[i].second, out);
    }
    if (list->count == list->singles)
        ts_buffer_add(out, "none");
}

static void causes(const ts_effects *effects, ts_chapter *chapter)
{
    static const ts_column columns[] = {
        {"effect", false}, {"single causes", true}, {"pairs", true}, {"pairs, each", false}};

    ts_manuscript_heading(chapter->manuscript, 2, "Causes");
    ts_manuscript_table(chapter->manuscript,
                        "All single failures, and all pairs of which neither does alone; a doubt "
                        "counts as a stop",
                        columns, sizeof columns / sizeof columns[0]);
    for (uint32_t e = 0; e < effects->effect_count; e++) {
        const ts_causes *list  = &effects->causes[e];
        const size_t     pairs = list->count - list->singles;

        ts_effects_effect(&effects->effects[e], &chapter->cell);
        ts_chapter_cell(chapter);
        ts_buffer_print(&chapter->cell, "%zu", list->singles);
        ts_chapter_cell(chapter);
        ts_buffer_print(&chapter->cell, "%zu", pairs);
        ts_chapter_cell(chapter);
        add_pairs(effects, list, &chapter->cell);
        ts_chapter_cell(chapter);
    }
}

void ts_chapter_effects(ts_chapter *chapter, const ts_effects *effects)
{
    ts_manuscript_heading(chapter->manuscript, 1, "What stops when a part fails");
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT,
                       "Found by reachability in the tree and by the weakest part on the way to "
                       "the spool; towershaft effects with the name of a part tells the ways.");
    matrix(effects, chapter);
    ts_effects_lacks_cells(effects, chapter);
    causes(effects, chapter);
    ts_evidence_cells(chapter);
}
