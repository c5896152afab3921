/* How does the working of a number go to a program? */
#include "base/formula_typeset.h"
#include "base/symbol_typeset.h"
#include "report/why_page.h"

#include <math.h>
#include <string.h>

#define DIGITS 6

/* Notes in the order in which they are met, nearest first; a note's place says how deep it lies. */
typedef struct queue {
    uint32_t *notes;
    uint8_t  *levels; /* of every note of the workings; 0: not met; 1: the root */
    size_t    count;
} queue;

typedef struct writer {
    const ts_why *why;
    ts_units      units;
    ts_json      *json;
    ts_buffer     scratch;
    int           levels;
} writer;

static void put_number(writer *w, const char *key, double value)
{
    ts_json_key(w->json, key);
    if (isfinite(value))
        ts_json_number(w->json, value);
    else
        ts_json_null(w->json);
}

static void put_string(writer *w, const char *key, const char *text)
{
    ts_json_key(w->json, key);
    ts_json_string(w->json, text);
}

/* What was put together in the scratch buffer. */
static void put_scratch(writer *w, const char *key)
{
    w->json->out->failed = w->json->out->failed || w->scratch.failed;
    ts_json_key(w->json, key);
    ts_json_text(w->json, (ts_text){w->scratch.bytes, w->scratch.length});
    ts_buffer_clear(&w->scratch);
}

static void put_address(writer *w, const ts_note *note)
{
    ts_why_address(w->why, note, &w->scratch);
    put_scratch(w, "address");
}

static const char *kind_name(ts_note_kind kind)
{
    switch (kind) {
    case TS_NOTE_STEP:
        return "step";
    case TS_NOTE_GIVEN:
        return "given";
    case TS_NOTE_ASSUMED:
        return "assumed";
    case TS_NOTE_ROW:
        return "row";
    case TS_NOTE_SEARCHED:
        return "searched";
    default:
        return "borrowed";
    }
}

static void put_value(writer *w, const ts_note *note)
{
    const ts_unit *shown = ts_why_shown_unit(note, w->units);
    put_number(w, "value", note->value);
    if (!isfinite(note->value))
        put_string(w, "because", isnan(note->value) ? "not computed" : "without bound");
    put_string(w, "unit", ts_why_unit(note));
    if (shown == NULL || !isfinite(note->value))
        return;
    ts_json_key(w->json, "shown");
    ts_json_object(w->json);
    put_number(w, "value", ts_from_si(note->value, shown));
    put_string(w, "unit", shown->name);
    ts_json_end(w->json, '}');
}

static void put_inputs(writer *w, size_t index)
{
    const ts_note *note = ts_workings_at(w->why->workings, index);
    ts_json_key(w->json, "inputs");
    ts_json_array(w->json);
    for (uint32_t i = 0; i < note->input_count; i++) {
        const ts_input *input = &note->inputs[i];
        const size_t    origin =
            ts_why_is_unknown(note, input) ? index : ts_why_origin(w->why, index, i);
        ts_json_object(w->json);
        put_string(w, "symbol", input->name);
        put_number(w, "value", input->value);
        ts_json_key(w->json, "origin");
        if (origin == SIZE_MAX)
            ts_json_null(w->json);
        else
            ts_json_integer(w->json, (int64_t)origin);
        ts_json_end(w->json, '}');
    }
    ts_json_end(w->json, ']');
}

static void put_formula(writer *w, const ts_note *note)
{
    put_string(w, "meaning", note->formula->meaning);
    put_string(w, "text", note->formula->text);
    ts_formula_typeset(&w->scratch, note->formula->text);
    put_scratch(w, "formula");
    ts_formula_typeset_numbers(&w->scratch, note->formula->text, note->inputs, note->input_count,
                               DIGITS);
    put_scratch(w, "numbers");
    put_string(w, "source", note->formula->source);
    if (note->kind == TS_NOTE_SEARCHED)
        put_number(w, "residual", note->residual);
}

static void put_place(writer *w, const ts_note *note)
{
    const ts_why_places *places = w->why->places;
    const uint32_t       line   = places->line(places->context, note->node);
    put_string(w, "stands_at", places->address(places->context, note->node));
    put_string(w, "file", places->file);
    if (line == 0)
        return;
    ts_json_key(w->json, "line");
    ts_json_integer(w->json, line);
    ts_json_key(w->json, "says");
    ts_json_text(w->json, ts_text_trim(places->text(places->context, note->node)));
}

static void put_note(writer *w, size_t index, const queue *met)
{
    const ts_note *note = ts_workings_at(w->why->workings, index);
    ts_json_object(w->json);
    ts_json_key(w->json, "id");
    ts_json_integer(w->json, (int64_t)index);
    put_string(w, "kind", kind_name(note->kind));
    put_string(w, "symbol", note->symbol);
    ts_symbol_typeset(&w->scratch, ts_text_of(note->symbol));
    put_scratch(w, "typeset");
    put_address(w, note);
    put_value(w, note);
    if (note->formula != NULL) {
        put_formula(w, note);
        ts_json_key(w->json, "closed");
        ts_json_bool(w->json, met->levels[index] >= w->levels && note->input_count > 0);
        put_inputs(w, index);
    } else if (note->kind == TS_NOTE_GIVEN) {
        put_place(w, note);
    } else {
        put_string(w, "source", note->source);
    }
    ts_json_end(w->json, '}');
}

static void meet(queue *q, size_t index, int level)
{
    if (q->levels[index] != 0)
        return;
    q->levels[index]     = (uint8_t)level;
    q->notes[q->count++] = (uint32_t)index;
}

static void meet_all(const writer *w, queue *q, size_t root)
{
    meet(q, root, 1);
    for (size_t next = 0; next < q->count; next++) {
        const size_t   index = q->notes[next];
        const int      level = q->levels[index];
        const ts_note *note  = ts_workings_at(w->why->workings, index);
        for (uint32_t i = 0; i < note->input_count && level < w->levels; i++) {
            const size_t origin = ts_why_origin(w->why, index, i);
            if (!ts_why_is_unknown(note, &note->inputs[i]) && origin != SIZE_MAX)
                meet(q, origin, level + 1);
        }
    }
}

static void put_answer(writer *w, queue *q)
{
    const ts_note *asked = ts_workings_at(w->why->workings, w->why->index);
    const size_t   root  = ts_why_root(w->why);
    if (root != SIZE_MAX)
        meet_all(w, q, root);
    ts_json_object(w->json);
    put_address(w, asked);
    ts_json_key(w->json, "root");
    if (root == SIZE_MAX)
        ts_json_null(w->json);
    else
        ts_json_integer(w->json, (int64_t)root);
    ts_json_key(w->json, "notes");
    ts_json_array(w->json);
    for (size_t i = 0; i < q->count; i++)
        put_note(w, q->notes[i], q);
    ts_json_end(w->json, ']');
    ts_json_end(w->json, '}');
}

ts_status ts_why_json(const ts_why *why, ts_units units, ts_json *json)
{
    const size_t        notes = ts_workings_count(why->workings);
    const ts_allocator *from  = json->out->allocator;
    writer w = {.why = why, .units = units, .json = json, .levels = ts_why_levels(why)};
    queue  q = {.notes  = from->resize(from->context, NULL, notes * sizeof *q.notes),
                .levels = from->resize(from->context, NULL, notes)};
    if (q.notes != NULL && q.levels != NULL) {
        memset(q.levels, 0, notes);
        ts_buffer_open(&w.scratch, from);
        put_answer(&w, &q);
        ts_buffer_close(&w.scratch);
    } else {
        json->out->failed = true;
    }
    if (q.notes != NULL)
        from->resize(from->context, q.notes, 0);
    if (q.levels != NULL)
        from->resize(from->context, q.levels, 0);
    return json->out->failed ? TS_NO_MEMORY : TS_OK;
}
