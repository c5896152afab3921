/* How does another program get all that it needs to redo every number of a report? */
#include "report/recheck_json.h"

#include "base/json_writer.h"
#include "report/answer_json.h"
#include "report/json_quantity.h"

#include <math.h>
#include <string.h>

#define SHELVES 4096 /* of formulas; a power of two */

typedef struct writer {
    const ts_answer  *answer;
    ts_json          *json;
    ts_buffer         text;           /* being put together */
    const ts_formula *shelf[SHELVES]; /* formulas by their address */
    uint32_t          number[SHELVES];
    uint32_t          formulas;
    uint32_t         *object;  /* [node], from 1 in the order of their notes; 0: not met */
    size_t            nodes;   /* of `object` */
    uint32_t          objects; /* met so far */
} writer;

/* JSON has no infinity; the texts are those that other languages read back. */
static void put_value(ts_json *json, double value)
{
    if (isfinite(value))
        ts_json_number(json, value);
    else
        ts_json_string(json, isnan(value) ? "nan" : value > 0.0 ? "inf" : "-inf");
}

static void put_text(writer *w)
{
    ts_json_made(w->json, &w->text);
    ts_buffer_clear(&w->text);
}

/* ---- what notes refer to by number ----------------------------------------------------------- */

/* SHELVES - 1 formulas at most are told apart, which is far beyond what this program holds. */
static uint32_t number_of(writer *w, const ts_formula *formula, bool *fresh)
{
    size_t at = ((uintptr_t)formula >> 4) % SHELVES;
    while (w->shelf[at] != NULL && w->shelf[at] != formula)
        at = (at + 1) % SHELVES;
    *fresh = w->shelf[at] == NULL;
    if (*fresh && w->formulas < SHELVES - 1) {
        w->shelf[at]  = formula;
        w->number[at] = w->formulas++;
    }
    return w->number[at];
}

static void formulas(writer *w)
{
    ts_json_key(w->json, "formulas");
    ts_json_array(w->json);
    for (size_t i = 0; i < ts_workings_count(w->answer->workings); i++) {
        const ts_formula *one   = ts_workings_at(w->answer->workings, i)->formula;
        bool              fresh = false;
        if (one != NULL)
            number_of(w, one, &fresh);
        if (!fresh)
            continue;
        ts_json_object(w->json);
        ts_json_string_at(w->json, "symbol", one->symbol);
        ts_json_string_at(w->json, "meaning", one->meaning);
        ts_json_string_at(w->json, "unit", one->unit);
        ts_json_string_at(w->json, "text", one->text);
        ts_json_string_at(w->json, "source", one->source);
        ts_json_end(w->json, '}');
    }
    ts_json_end(w->json, ']');
}

static void objects(writer *w)
{
    ts_json_key(w->json, "objects");
    ts_json_array(w->json);
    for (size_t i = 0; i < ts_workings_count(w->answer->workings); i++) {
        const uint32_t node = ts_workings_at(w->answer->workings, i)->subject.object;
        if (w->object[node] != 0)
            continue;
        w->object[node] = ++w->objects;
        ts_source_address(w->answer->source, node, &w->text);
        put_text(w);
    }
    ts_json_end(w->json, ']');
}

static void conditions(writer *w)
{
    ts_json_key(w->json, "conditions");
    ts_json_array(w->json);
    for (size_t c = 0; c < w->answer->drive->condition_count; c++)
        ts_json_string(w->json, w->answer->drive->conditions[c].name);
    ts_json_end(w->json, ']');
}

/* value in SI = value * factor + offset */
static void units(writer *w)
{
    ts_json_key(w->json, "units");
    ts_json_object(w->json);
    for (size_t i = 0; i < ts_unit_count(); i++) {
        const ts_unit *unit  = ts_unit_at(i);
        bool           again = false;
        for (size_t k = 0; k < i && !again; k++)
            again = strcmp(ts_unit_at(k)->name, unit->name) == 0;
        if (again)
            continue;
        ts_json_key(w->json, unit->name);
        ts_json_array(w->json);
        ts_json_number(w->json, unit->factor);
        ts_json_number(w->json, unit->offset);
        ts_json_end(w->json, ']');
    }
    ts_json_end(w->json, '}');
}

/* ---- notes ----------------------------------------------------------------------------------- */

static void origin(writer *w, size_t index)
{
    if (index == SIZE_MAX)
        ts_json_null(w->json);
    else
        ts_json_integer(w->json, (int64_t)index);
}

/* [symbol, value, number of the note that it comes from] */
static void inputs(writer *w, size_t index, const ts_note *note)
{
    ts_json_array(w->json);
    for (uint32_t i = 0; i < note->input_count; i++) {
        const ts_input *input = &note->inputs[i];
        const bool      sought =
            note->kind == TS_NOTE_SEARCHED && strcmp(note->symbol, input->name) == 0;
        ts_json_array(w->json);
        ts_json_string(w->json, input->name);
        put_value(w->json, input->value);
        origin(w,
               sought ? index : ts_origin(w->answer->workings, index, input->name, input->value));
        ts_json_end(w->json, ']');
    }
    ts_json_end(w->json, ']');
}

static const char *kind_of(const ts_note *note)
{
    static const char *const names[] = {
        [TS_NOTE_STEP] = "step", [TS_NOTE_GIVEN] = "given",       [TS_NOTE_ASSUMED] = "assumed",
        [TS_NOTE_ROW] = "row",   [TS_NOTE_SEARCHED] = "searched", [TS_NOTE_BORROWED] = "borrowed",
    };
    return names[note->kind];
}

static void what_it_rests_on(writer *w, size_t index, const ts_note *note)
{
    bool fresh = false;
    if (note->formula != NULL) {
        ts_json_integer(w->json, number_of(w, note->formula, &fresh));
        inputs(w, index, note);
        if (note->kind == TS_NOTE_SEARCHED)
            put_value(w->json, note->residual);
    } else if (note->kind == TS_NOTE_GIVEN) {
        const ts_node_place *place = &w->answer->source->nodes[note->node];
        ts_json_integer(w->json, place->line);
        ts_json_text(w->json, place->scalar);
    } else if (note->kind == TS_NOTE_BORROWED) {
        origin(w, ts_borrow_origin(w->answer->workings, index));
    } else {
        ts_json_string(w->json, note->source);
    }
}

/* [kind, object, condition, symbol, value, ...] */
static void notes(writer *w)
{
    ts_json_key(w->json, "notes");
    ts_json_array(w->json);
    for (size_t i = 0; i < ts_workings_count(w->answer->workings); i++) {
        const ts_note *note = ts_workings_at(w->answer->workings, i);
        ts_json_array(w->json);
        ts_json_string(w->json, kind_of(note));
        ts_json_integer(w->json, w->object[note->subject.object] - 1);
        ts_json_integer(w->json, note->subject.condition);
        ts_json_string(w->json, note->symbol);
        put_value(w->json, note->value);
        what_it_rests_on(w, i, note);
        ts_json_end(w->json, ']');
        ts_buffer_add(w->json->out, "\n");
    }
    ts_json_end(w->json, ']');
}

/* ---- numbers that are shown ------------------------------------------------------------------ */

/* ["address:symbol@condition", value, number of its note] */
static void shown(writer *w, double si, ts_node node, const char *symbol, int32_t condition)
{
    const ts_json_place place   = {node, condition, symbol};
    const ts_subject    subject = {node, condition};
    ts_json_array(w->json);
    ts_json_address(w->answer, place, &w->text);
    put_text(w);
    put_value(w->json, si);
    origin(w, ts_workings_find(w->answer->workings, subject, symbol));
    ts_json_end(w->json, ']');
    ts_buffer_add(w->json->out, "\n");
}

static void hear(void *context, double si, ts_kind kind, ts_node node, const char *symbol,
                 int32_t condition)
{
    (void)kind;
    shown(context, si, node, symbol, condition);
}

static void all_shown(writer *w)
{
    const ts_listener listener = {hear, w};
    ts_answer         heard    = *w->answer;
    ts_buffer         unread;
    heard.listener = &listener;
    ts_buffer_open(&unread, w->answer->allocator);
    ts_json_key(w->json, "shown");
    ts_json_array(w->json);
    ts_answer_json(&heard, &unread);
    ts_json_end(w->json, ']');
    w->json->out->failed = w->json->out->failed || unread.failed;
    ts_buffer_close(&unread);
}

/* [rule, address, value, limit, margin, number of its note] */
static void judged(writer *w)
{
    const ts_check_outcome *outcome = w->answer->outcome;
    ts_json_key(w->json, "judged");
    ts_json_array(w->json);
    for (size_t i = 0; i < outcome->judgement_count; i++) {
        const ts_judgement *one     = &outcome->judgements[i];
        const ts_subject    subject = {one->node, one->condition};
        if (one->symbol == NULL)
            continue;
        ts_json_array(w->json);
        ts_json_string(w->json, one->rule);
        ts_json_address(w->answer, (ts_json_place){one->node, one->condition, one->symbol},
                        &w->text);
        put_text(w);
        put_value(w->json, one->value);
        put_value(w->json, one->limit);
        put_value(w->json, one->margin);
        origin(w, ts_workings_find(w->answer->workings, subject, one->symbol));
        ts_json_end(w->json, ']');
        ts_buffer_add(w->json->out, "\n");
    }
    ts_json_end(w->json, ']');
}

/* ---- the whole ------------------------------------------------------------------------------- */

static size_t objects_in(const ts_workings *workings)
{
    size_t most = 0;
    for (size_t i = 0; i < ts_workings_count(workings); i++) {
        const size_t object = ts_workings_at(workings, i)->subject.object;
        most                = object >= most ? object + 1 : most;
    }
    return most;
}

void ts_recheck_json(const ts_answer *answer, ts_buffer *out)
{
    const ts_allocator *from = out->allocator;
    ts_json             json;
    const size_t        nodes = objects_in(answer->workings);
    writer             *w     = from->resize(from->context, NULL, sizeof *w);
    uint32_t           *seen  = from->resize(from->context, NULL, (nodes + 1) * sizeof *seen);
    if (w != NULL && seen != NULL) {
        memset(seen, 0, (nodes + 1) * sizeof *seen);
        memset(w, 0, sizeof *w);
        w->answer = answer;
        w->json   = &json;
        w->object = seen;
        w->nodes  = nodes;
        ts_buffer_open(&w->text, answer->allocator);
        ts_json_begin(&json, out, true);
        ts_json_object(&json);
        ts_json_head(&json, answer);
        units(w);
        conditions(w);
        formulas(w);
        objects(w);
        notes(w);
        all_shown(w);
        judged(w);
        ts_json_end(&json, '}');
        ts_buffer_add(out, "\n");
        out->failed = out->failed || w->text.failed;
        ts_buffer_close(&w->text);
    } else {
        out->failed = true;
    }
    if (w != NULL)
        from->resize(from->context, w, 0);
    if (seen != NULL)
        from->resize(from->context, seen, 0);
}
