/* How is a note called, in which unit, and where do its inputs come from? */
#include "report/why_page.h"

#include <string.h>

void ts_why_address(const ts_why *why, const ts_note *note, ts_buffer *out)
{
    const ts_why_places *places = why->places;
    const char          *object = places->address(places->context, note->subject.object);
    if (object != NULL && object[0] != '\0')
        ts_buffer_print(out, "%s:", object);
    ts_buffer_add(out, note->symbol);
    if (note->subject.condition != TS_EVERY_CONDITION)
        ts_buffer_print(out, "@%s", places->condition(places->context, note->subject.condition));
}

static const char *noted_unit(const ts_note *note)
{
    const char *unit = note->formula != NULL ? note->formula->unit : note->unit;
    return unit == NULL ? "1" : unit;
}

/* A temperature and a difference of two have one SI unit, and only the first has degrees. */
const char *ts_why_unit(const ts_note *note)
{
    const char *unit = noted_unit(note);
    return strcmp(unit, TS_UNIT_DIFFERENCE) == 0 ? "K" : unit;
}

const ts_unit *ts_why_shown_unit(const ts_note *note, ts_units units)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(noted_unit(note)));
    if (unit == NULL || unit != ts_kind_si(unit->kind))
        return NULL;
    const ts_unit *shown = ts_kind_shown(unit->kind, units);
    return shown == unit ? NULL : shown;
}

const char *ts_why_stands(const ts_note *note)
{
    if (note->source != NULL && strncmp(note->source, "derived", 7) == 0)
        return "computed";
    return note->kind == TS_NOTE_ROW ? "table" : "assumed";
}

size_t ts_why_origin(const ts_why *why, size_t index, uint32_t input)
{
    const ts_input *asked = &ts_workings_at(why->workings, index)->inputs[input];
    return ts_origin(why->workings, index, asked->name, asked->value);
}

bool ts_why_is_unknown(const ts_note *note, const ts_input *input)
{
    return note->kind == TS_NOTE_SEARCHED && strcmp(note->symbol, input->name) == 0;
}

int ts_why_levels(const ts_why *why)
{
    const bool said = why->levels > 0 && why->levels < TS_WHY_LEVELS_MOST;
    return said ? why->levels : TS_WHY_LEVELS_MOST;
}

size_t ts_why_root(const ts_why *why)
{
    const ts_note *asked = ts_workings_at(why->workings, why->index);
    if (asked->kind != TS_NOTE_BORROWED)
        return why->index;
    return ts_borrow_origin(why->workings, why->index);
}
