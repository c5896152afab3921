/* What does a command take for granted that reads a record of its own? */
#include "report/register.h"

#include <string.h>

enum { INDENT = 2, DIGITS = 4 };

/* Of what kind a default is its text does not say; one of these reads it.  "35 K" is a difference,
 * for temperatures are written in degC. */
static const ts_kind kinds[] = {TS_KIND_TEMPERATURE_DIFFERENCE,
                                TS_KIND_TEMPERATURE,
                                TS_KIND_LENGTH,
                                TS_KIND_VOLUME_FLOW,
                                TS_KIND_PRESSURE_GAUGE,
                                TS_KIND_MASS,
                                TS_KIND_DENSITY,
                                TS_KIND_FORCE,
                                TS_KIND_TORQUE,
                                TS_KIND_POWER};

void ts_register_value(const ts_assumption *one, ts_units units, ts_buffer *out)
{
    ts_buffer_add(out, one->value);
    for (size_t k = 0; units == TS_UNITS_US && k < sizeof kinds / sizeof kinds[0]; k++) {
        const ts_unit *unit;
        double         si;
        if (!ts_quantity_parse(ts_text_of(one->value), kinds[k], &si, &unit, NULL))
            continue;
        const ts_unit *shown = ts_kind_shown(kinds[k], units);
        if (shown != NULL && strcmp(shown->name, unit->name) != 0) {
            ts_buffer_add(out, " (");
            ts_page_short(out, ts_from_si(si, shown), DIGITS);
            ts_buffer_print(out, " %s)", shown->name);
        }
        return;
    }
}

void ts_register_page(ts_page *page, const ts_assumption *items, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "%s = ", items[i].key);
        ts_register_value(&items[i], page->units, &text);
        ts_buffer_print(&text, ": %s", items[i].reason);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &text, 2 * INDENT, INDENT);
    }
}

void ts_register_cells(ts_chapter *chapter, const ts_assumption *items, size_t count)
{
    static const ts_column columns[] = {{"assumed", false}, {"value", false}, {"why", false}};

    if (count == 0)
        return;
    ts_manuscript_table(chapter->manuscript, "", columns, 3);
    for (size_t i = 0; i < count; i++) {
        ts_chapter_word(chapter, items[i].key);
        ts_register_value(&items[i], chapter->page.units, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, items[i].reason);
    }
}

void ts_register_json(ts_json *json, const ts_assumption *items, size_t count)
{
    ts_register_json_at(json, "assumptions", items, count);
}

void ts_register_json_at(ts_json *json, const char *key, const ts_assumption *items, size_t count)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "key", items[i].key);
        ts_json_string_at(json, "value", items[i].value);
        ts_json_string_at(json, "reason", items[i].reason);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
