/* How is the sheet of a pad written as JSON, by docs/schema/sheet.schema.json? */
#include "report/sheet_report.h"

#include <math.h>

static void amount(ts_json *json, const ts_sheet_row *row, ts_units units)
{
    const ts_unit *unit = ts_kind_shown(row->kind, units);
    ts_json_key(json, units == TS_UNITS_METRIC ? "metric" : "us");
    ts_json_object(json);
    ts_json_key(json, "value");
    if (isfinite(row->si))
        ts_json_number(json, ts_json_shown(json, row->si, unit));
    else
        ts_json_null(json);
    ts_json_string_at(json, "unit", unit->name);
    ts_json_end(json, '}');
}

/* `before` NULL: it is new, or nothing is compared, as `compared` says. */
static void value(ts_json *json, const ts_answer *answer, const ts_sheet_row *row, bool compared,
                  const ts_sheet_row *before)
{
    ts_buffer address;
    ts_json_object(json);
    ts_json_string_at(json, "what", row->what);
    amount(json, row, TS_UNITS_METRIC);
    amount(json, row, TS_UNITS_US);
    ts_buffer_open(&address, answer->allocator);
    if (row->place.symbol != NULL)
        ts_json_address(answer, row->place, &address);
    else
        ts_source_address(answer->source, row->place.node, &address);
    ts_json_key(json, "address");
    ts_json_made(json, &address);
    ts_buffer_close(&address);
    if (row->note != NULL)
        ts_json_string_at(json, "note", row->note);
    if (compared)
        ts_json_bool_at(json, "changed", before == NULL || ts_sheet_value_changed(row, before));
    if (before != NULL && ts_sheet_value_changed(row, before)) {
        ts_json_key(json, "was");
        ts_json_object(json);
        amount(json, before, TS_UNITS_METRIC);
        amount(json, before, TS_UNITS_US);
        ts_json_end(json, '}');
    }
    ts_json_end(json, '}');
}

static void conditions(ts_json *json, const ts_sheet *sheet)
{
    const ts_drive *drive = sheet->answer->drive;
    ts_json_key(json, "conditions");
    ts_json_array(json);
    for (size_t c = 0; c < drive->condition_count; c++) {
        ts_json_object(json);
        ts_json_string_at(json, "condition", drive->conditions[c].name);
        if (sheet->states[c] != NULL)
            ts_json_string_at(json, "state", sheet->states[c]);
        ts_json_key(json, "values");
        ts_json_array(json);
        const size_t old = ts_sheet_issued_condition(sheet, drive->conditions[c].name);
        for (int i = 0; i < TS_SHEET_COLUMNS; i++)
            value(json, sheet->answer, &sheet->conditions[c][i], sheet->before != NULL,
                  sheet->before != NULL && old != SIZE_MAX ? &sheet->before->conditions[old][i]
                                                           : NULL);
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void parts(ts_json *json, const ts_sheet *sheet)
{
    ts_json_key(json, "parts");
    ts_json_array(json);
    for (int which = 0; which < TS_SHEET_PARTS; which++) {
        ts_json_object(json);
        ts_json_string_at(json, "title", ts_sheet_titles[which]);
        ts_json_key(json, "values");
        ts_json_array(json);
        for (size_t i = 0; i < sheet->row_count[which]; i++)
            value(json, sheet->answer, &sheet->rows[which][i], sheet->before != NULL,
                  ts_sheet_issued_row(sheet, (ts_sheet_part)which, sheet->rows[which][i].what));
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void lines(ts_json *json, const ts_sheet *sheet, const char *key, const ts_sheet_line *list,
                  size_t count)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "standing", list[i].label);
        ts_json_string_at(json, "says", list[i].says);
        ts_json_node(json, sheet->answer, "address", list[i].node);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void name_of(ts_json *json, const char *key, ts_word word)
{
    ts_json_key(json, key);
    if (word.text != NULL)
        ts_json_string(json, word.text);
    else
        ts_json_null(json);
}

void ts_sheet_json(const ts_sheet *sheet, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, sheet->answer);
    name_of(&json, "title", sheet->answer->drive->title);
    name_of(&json, "revision", sheet->answer->drive->revision);
    if (sheet->before != NULL) {
        name_of(&json, "against", sheet->before->answer->drive->revision);
        ts_json_string_at(&json, "against_file", sheet->before->answer->source->name);
        ts_json_string_at(&json, "against_sha256", sheet->before->answer->sha256);
    }
    ts_json_key(&json, "pad");
    ts_json_object(&json);
    for (size_t i = 0; i < sheet->word_count; i++)
        ts_json_string_at(&json, sheet->words[i].label, sheet->words[i].says);
    ts_json_end(&json, '}');
    conditions(&json, sheet);
    parts(&json, sheet);
    lines(&json, sheet, "assumptions", sheet->assumptions, sheet->assumption_count);
    lines(&json, sheet, "findings", sheet->findings, sheet->finding_count);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
