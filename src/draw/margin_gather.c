/* draw/margin_gather.c: which reserves share a row, and which of them is shown in a cell? */
#include "draw/margin_chart.h"

#include "check/rulebook.h"
#include "draw/mesh_choice.h"

#include <math.h>
#include <string.h>

/* Rows beyond this make the worst thing of a rule stand for all of them. */
enum { ROWS_MOST = 18 };

/* Nearly always the word of one table. */
static bool same_rule(const char *a, const char *b)
{
    return a == b || strcmp(a, b) == 0;
}

/* Of the rule whose judgements begin at `from`; they stand together. */
static bool has_numbers(const ts_scene *scene, size_t from)
{
    const ts_drawing_subject *subject = scene->subject;
    const char               *rule    = subject->judgements[from].rule;
    for (size_t i = from;
         i < subject->judgement_count && same_rule(subject->judgements[i].rule, rule); i++)
        if (subject->judgements[i].condition >= 0 && !isnan(subject->judgements[i].margin))
            return true;
    return false;
}

static const ts_finding *finding_of(const ts_scene *scene, const ts_judgement *judgement)
{
    const ts_drawing_subject *subject = scene->subject;
    for (size_t i = 0; subject->findings && i < subject->finding_count; i++) {
        const ts_finding *one = &subject->findings[i];
        if (one->node == judgement->node && one->condition == judgement->condition && one->rule &&
            same_rule(one->rule, judgement->rule))
            return one;
    }
    return NULL;
}

static ts_margin_state state_of(const ts_judgement *judgement, const ts_finding *finding)
{
    if (finding && finding->state == TS_NOT_COMPUTABLE)
        return TS_MARGIN_UNKNOWN;
    if (isnan(judgement->margin))
        return judgement->passed ? TS_MARGIN_HOLDS : TS_MARGIN_FAILS;
    return judgement->passed && judgement->margin >= 0.0 ? TS_MARGIN_RESERVE : TS_MARGIN_SHORT;
}

static bool worse(const ts_margin_cell *a, const ts_margin_cell *b)
{
    if (a->state != b->state)
        return a->state > b->state;
    return a->margin < b->margin; /* false without numbers: the first stays */
}

/* `apart`: what this judgement is about gets its own row. */
static ts_margin_row *row_for(const ts_scene *scene, ts_margin_rows *rows,
                              const ts_judgement *judgement, bool apart)
{
    /* Teeth are rated mesh by mesh, and each mesh has its row whatever else is on the sheet. */
    const bool    teeth = ts_judgement_of_teeth(judgement);
    const ts_node node  = teeth || apart ? judgement->node : 0;
    for (size_t i = rows->count; i-- > 0;) /* rule by rule, so it is one of the last */
        if (rows->items[i].node == node && same_rule(rows->items[i].rule, judgement->rule))
            return &rows->items[i];
    ts_margin_row *row   = &rows->items[rows->count];
    const size_t   index = ts_rulebook_find(ts_text_of(judgement->rule), NULL);
    *row                 = (ts_margin_row){
                        .rule    = judgement->rule,
                        .title   = index != SIZE_MAX ? ts_rulebook_rules()[index]->title : judgement->rule,
                        .node    = node,
                        .teeth   = teeth,
                        .cells   = TS_TAKE(scene->arena, ts_margin_cell, scene->drive->condition_count),
                        .least   = -1,
                        .objects = node != 0};
    if (!row->cells)
        return NULL;
    rows->count++;
    return row;
}

static bool put(const ts_scene *scene, ts_margin_rows *rows, const ts_judgement *judgement,
                bool apart)
{
    ts_margin_row *row = row_for(scene, rows, judgement, apart);
    if (!row)
        return false;
    const ts_finding    *finding = finding_of(scene, judgement);
    const ts_margin_cell one     = {.state     = state_of(judgement, finding),
                                    .margin    = judgement->margin,
                                    .node      = judgement->node,
                                    .finding   = finding,
                                    .judgement = judgement};
    ts_margin_cell      *cell    = &row->cells[judgement->condition];
    if (worse(&one, cell))
        *cell = one;
    return true;
}

static void find_least(ts_margin_row *row, size_t conditions)
{
    for (size_t c = 0; c < conditions; c++)
        if (!isnan(row->cells[c].margin) && row->cells[c].state >= TS_MARGIN_RESERVE &&
            (row->least < 0 || row->cells[c].margin < row->cells[row->least].margin))
            row->least = (int32_t)c;
}

/* Each thing that a rule judges is counted once.  `seen` has room for all judgements; what comes
 * again is mostly among the last. */
static void count_objects(const ts_scene *scene, ts_margin_row *row, ts_node *seen)
{
    const ts_drawing_subject *subject = scene->subject;
    size_t                    count   = 0;
    for (size_t i = 0; i < subject->judgement_count; i++) {
        const ts_judgement *one = &subject->judgements[i];
        if (one->condition < 0 || !same_rule(one->rule, row->rule))
            continue;
        size_t k = count;
        while (k > 0 && seen[k - 1] != one->node)
            k--;
        if (k == 0)
            seen[count++] = one->node;
    }
    row->objects = count;
}

/* All rows; `apart`: every thing that has numbers gets its own, until they are too many. */
static bool gather(const ts_scene *scene, bool apart, ts_margin_rows *out)
{
    const ts_drawing_subject *subject = scene->subject;
    const char               *steady = "", *rule = "";
    bool                      numbered = false; /* the rule of the judgements that come now */
    out->count = out->steady = 0;
    for (size_t i = 0; subject->judgements && i < subject->judgement_count; i++) {
        const ts_judgement *one = &subject->judgements[i];
        if (apart && out->count > ROWS_MOST)
            return true; /* they are gathered anew */
        if (one->condition < 0 || (size_t)one->condition >= scene->drive->condition_count) {
            out->steady += !same_rule(steady, one->rule);
            steady = one->rule;
        } else {
            if (!same_rule(rule, one->rule))
                numbered = apart && has_numbers(scene, i);
            rule = one->rule;
            if (!put(scene, out, one, numbered))
                return false;
        }
    }
    return true;
}

ts_status ts_margin_gather(ts_scene *scene, ts_margin_rows *out)
{
    const ts_drawing_subject *subject = scene->subject;
    const size_t              most    = subject->judgements ? subject->judgement_count : 0;
    ts_node                  *seen    = TS_TAKE(scene->arena, ts_node, most + 1);
    *out = (ts_margin_rows){.items = TS_TAKE(scene->arena, ts_margin_row, most + 1)};
    if (!seen || !out->items || !gather(scene, true, out))
        return TS_NO_MEMORY;
    if (out->count > ROWS_MOST && !gather(scene, false, out))
        return TS_NO_MEMORY;
    for (size_t i = 0; i < out->count; i++) {
        find_least(&out->items[i], scene->drive->condition_count);
        if (out->items[i].node == 0)
            count_objects(scene, &out->items[i], seen);
    }
    return TS_OK;
}
