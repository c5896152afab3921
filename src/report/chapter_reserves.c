/* Report: how much is left to every limit in every condition? */
#include "report/report_chapter.h"

#include "check/rulebook.h"

#include <math.h>

#define CONDITIONS_MOST 24

typedef struct reserve {
    const char *rule;
    ts_node     node;
    double      margin[CONDITIONS_MOST]; /* the least of its symbols; NaN: not judged there */
} reserve;

/* Notes tell what is unusual, not what is left. */
static bool may_refuse(const char *rule)
{
    const size_t index = ts_rulebook_find(ts_text_of(rule), NULL);
    return index != SIZE_MAX && ts_rulebook_rules()[index]->level != TS_NOTE;
}

static reserve *row_of(reserve *rows, size_t *count, const ts_judgement *one, size_t conditions)
{
    /* Judgements of one rule stand together. */
    for (size_t i = *count; i-- > 0 && rows[i].rule == one->rule;)
        if (rows[i].node == one->node)
            return &rows[i];
    reserve *row = &rows[(*count)++];
    *row         = (reserve){.rule = one->rule, .node = one->node};
    for (size_t c = 0; c < conditions; c++)
        row->margin[c] = (double)NAN;
    return row;
}

static void margin_cell(ts_chapter *chapter, double margin)
{
    if (margin > 9.995)
        ts_buffer_add(&chapter->cell, "> +999 %");
    else
        ts_chapter_margin(chapter, margin);
    ts_chapter_cell(chapter);
}

static void row_cells(ts_chapter *chapter, const reserve *row, size_t conditions)
{
    double least = INFINITY;
    for (size_t c = 0; c < conditions; c++)
        least = fmin(least, row->margin[c]); /* fmin passes NaN over */
    ts_chapter_word(chapter, row->rule);
    ts_chapter_place(chapter, row->node, NULL, -1);
    ts_chapter_cell(chapter);
    margin_cell(chapter, least);
    for (size_t c = 0; c < conditions; c++)
        margin_cell(chapter, row->margin[c]);
}

void ts_chapter_reserves(ts_chapter *chapter)
{
    const ts_check_outcome *outcome = chapter->answer->outcome;
    const ts_drive         *drive   = chapter->answer->drive;
    const size_t            conditions =
        drive->condition_count < CONDITIONS_MOST ? drive->condition_count : CONDITIONS_MOST;
    ts_column columns[3 + CONDITIONS_MOST] = {{"rule", false}, {"at", false}, {"least", true}};
    size_t    count                        = 0;
    reserve  *rows = TS_TAKE(chapter->manuscript->arena, reserve, outcome->judgement_count + 1);
    if (rows == NULL) {
        chapter->manuscript->failed = true;
        return;
    }
    for (size_t i = 0; i < outcome->judgement_count; i++) {
        const ts_judgement *one = &outcome->judgements[i];
        if (one->condition < 0 || one->condition >= (int32_t)conditions || !isfinite(one->margin) ||
            !may_refuse(one->rule))
            continue;
        reserve *row                = row_of(rows, &count, one, conditions);
        row->margin[one->condition] = fmin(row->margin[one->condition], one->margin);
    }
    for (size_t c = 0; c < conditions; c++)
        columns[3 + c] = (ts_column){drive->conditions[c].name, true};
    ts_manuscript_heading(chapter->manuscript, 1, "Reserves");
    ts_manuscript_table(chapter->manuscript,
                        "Reserves in every condition: capacity / demand - 1, the least of what is "
                        "judged by the rule at that place",
                        columns, 3 + conditions);
    for (size_t i = 0; i < count; i++)
        row_cells(chapter, &rows[i], conditions);
}
