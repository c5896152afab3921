/* What was found, what is in reserve, and where does each of them lead? */
#include "draw/view.h"

#include "check/rulebook.h"

#include <math.h>
#include <string.h>

static const char *title_of(const char *rule)
{
    const size_t index = ts_rulebook_find(ts_text_of(rule), NULL);
    return index != SIZE_MAX ? ts_rulebook_rules()[index]->title : rule;
}

/* "drive/hp/box/clockwise/2:n@take-off": whose working tells the number; null without a symbol. */
static void working(const ts_view *view, ts_node node, const char *symbol, int32_t condition)
{
    ts_json_key(view->json, "working");
    if (symbol == NULL || node == 0) {
        ts_json_null(view->json);
        return;
    }
    const ts_text address = ts_view_address_of(view, node); /* before the words are begun */
    ts_buffer_clear(view->words);
    ts_buffer_text(view->words, address);
    ts_buffer_print(view->words, ":%s", symbol);
    if (condition >= 0)
        ts_buffer_print(view->words, "@%s", view->scene->drive->conditions[condition].name);
    ts_json_text(view->json, (ts_text){view->words->bytes, view->words->length});
}

static void shaft(const ts_view *view, ts_node node)
{
    const uint32_t found = ts_view_shaft_of(view, node);
    ts_view_count(view, "shaft", found == TS_NOWHERE ? -1 : (int64_t)found);
}

static int64_t index_of(const ts_view *view, const ts_finding *finding)
{
    return finding != NULL ? finding - view->scene->subject->findings : -1;
}

/* ---- reserves ------------------------------------------------------------------------------- */

static void write_cell(const ts_view *view, const ts_margin_cell *cell, int32_t condition)
{
    static const char *const states[] = {"absent", "holds", "reserve", "unknown", "short", "fails"};
    ts_json_object(view->json);
    ts_view_word(view, "state", states[cell->state]);
    if (cell->state != TS_MARGIN_ABSENT) {
        ts_view_number(view, "margin", cell->margin);
        ts_view_address(view, "address", cell->node);
        ts_view_count(view, "finding", index_of(view, cell->finding));
        shaft(view, cell->node);
        working(view, cell->node, cell->judgement != NULL ? cell->judgement->symbol : NULL,
                condition);
        ts_view_word(view, "symbol", cell->judgement != NULL ? cell->judgement->symbol : NULL);
        ts_view_number(view, "limit",
                       cell->judgement != NULL ? cell->judgement->limit : (double)NAN);
    }
    ts_json_end(view->json, '}');
}

static void write_row(const ts_view *view, const ts_margin_row *row)
{
    ts_json_object(view->json);
    ts_view_word(view, "rule", row->rule);
    ts_view_word(view, "title", row->title);
    ts_view_address(view, "address", row->node);
    shaft(view, row->node);
    ts_view_count(view, "objects", (int64_t)row->objects);
    ts_view_count(view, "least", row->least);
    ts_json_key(view->json, "cells");
    ts_json_array(view->json);
    for (uint32_t c = 0; c < view->scene->drive->condition_count; c++)
        write_cell(view, &row->cells[c], (int32_t)c);
    ts_json_end(view->json, ']');
    ts_json_end(view->json, '}');
}

void ts_view_margins(const ts_view *view)
{
    ts_margin_rows rows;
    ts_json_key(view->json, "margins");
    ts_json_array(view->json);
    if (ts_margin_gather(view->face->scene, &rows) == TS_OK)
        for (size_t i = 0; i < rows.count; i++)
            write_row(view, &rows.items[i]);
    ts_json_end(view->json, ']');
}

/* ---- findings ------------------------------------------------------------------------------- */

static void write_finding(const ts_view *view, const ts_finding *finding)
{
    static const char *const levels[] = {"refuse", "warn", "note"};
    static const char *const states[] = {"open", "waived", "not computable"};
    const ts_node_place     *place    = &view->scene->subject->source->nodes[finding->node];
    ts_json_object(view->json);
    ts_view_word(view, "rule", finding->rule);
    ts_view_word(view, "title", title_of(finding->rule));
    ts_view_word(view, "level", levels[finding->level]);
    ts_view_word(view, "state", states[finding->state]);
    ts_view_address(view, "address", finding->node);
    ts_view_count(view, "line", place->line);
    ts_view_count(view, "condition", finding->condition);
    shaft(view, finding->node);
    working(view, finding->node, finding->symbol, finding->condition);
    ts_view_word(view, "symbol", finding->symbol);
    ts_view_word(view, "says", finding->says);
    ts_view_word(view, "remedy", finding->remedy);
    ts_view_word(view, "source", finding->source);
    ts_view_number(view, "margin", finding->margin);
    ts_view_word(view, "fingerprint", finding->fingerprint);
    ts_view_address(view, "waiver", finding->waiver);
    ts_json_end(view->json, '}');
}

void ts_view_findings(const ts_view *view)
{
    const ts_drawing_subject *subject = view->scene->subject;
    ts_json_key(view->json, "findings");
    ts_json_array(view->json);
    for (size_t i = 0; i < subject->finding_count; i++)
        write_finding(view, &subject->findings[i]);
    ts_json_end(view->json, ']');
}
