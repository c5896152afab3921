/* model/schema_manual.c: how do people learn the notation? */
#include "model/manual_prose.h"
#include "model/schema.h"

#include <string.h>

/* ---- what a key takes ----------------------------------------------------------------------- */

static void add_link(ts_buffer *out, const ts_record_table *table)
{
    ts_buffer_print(out, "[%s](#", table->name);
    for (const char *at = table->name; *at != '\0'; at++)
        ts_buffer_fill(out, *at == ' ' ? '-' : *at, 1);
    ts_buffer_add(out, ")");
}

static void add_choices(ts_buffer *out, const ts_field *field)
{
    for (size_t i = 0; field->choices[i] != NULL; i++)
        ts_buffer_print(out, "%s`%s`", i > 0 ? ", " : "", field->choices[i]);
}

static void add_takes(ts_buffer *out, const ts_field *field)
{
    const char *kind = ts_kind_name(field->kind);
    switch (field->form) {
    case TS_FORM_MEASURE:
    case TS_FORM_SPOOL_SPEEDS:
        ts_buffer_add(out, kind);
        break;
    case TS_FORM_CLOCK:
        ts_buffer_add(out, "clock position or angle");
        break;
    case TS_FORM_SPAN:
        ts_buffer_print(out, "%s of %s", field->closed ? "closed range" : "range", kind);
        break;
    case TS_FORM_TALLY:
        ts_buffer_add(out, "whole number");
        break;
    case TS_FORM_TEETH:
        ts_buffer_add(out, "two whole numbers");
        break;
    case TS_FORM_TALLY_SPAN:
        ts_buffer_add(out, "whole number or range");
        break;
    case TS_FORM_TALLY_SPANS:
        ts_buffer_print(out, "whole number or range, or at most %zu of them", field->most);
        break;
    case TS_FORM_MEASURES:
        ts_buffer_print(out, "%s, or at most %zu of them", kind, field->most);
        break;
    case TS_FORM_PICK:
        add_choices(out, field);
        break;
    case TS_FORM_WORD:
        ts_buffer_add(out, "text");
        break;
    case TS_FORM_DATE:
        ts_buffer_add(out, "date");
        break;
    case TS_FORM_OVERLOAD:
        ts_buffer_add(out, "torque for time");
        break;
    case TS_FORM_PAD:
        ts_buffer_add(out, "an accessory, `cover`, `hand turning`, `open`");
        break;
    case TS_FORM_LIST:
        ts_buffer_print(out, "at most %zu of ", field->most);
        add_link(out, field->record);
        break;
    case TS_FORM_ONE_OR_LIST:
        ts_buffer_print(out, "one or at most %zu of ", field->most);
        add_link(out, field->record);
        break;
    case TS_FORM_NAMED:
        ts_buffer_print(out, "by name, at most %zu of ", field->most);
        add_link(out, field->record);
        break;
    case TS_FORM_TAPPED:
        ts_buffer_add(out, "by spool, ");
        add_link(out, field->record);
        break;
    case TS_FORM_BY_CONDITION:
        ts_buffer_print(out, "%s by condition", kind);
        break;
    case TS_FORM_SPAN_BY_CONDITION:
        ts_buffer_print(out, "range of %s by condition", kind);
        break;
    default:
        add_link(out, field->record);
        break;
    }
}

static void add_limit(ts_buffer *out, const ts_range *range, double si)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(range->unit));
    if (strcmp(range->unit, "1") == 0 || unit == NULL)
        ts_buffer_number(out, si);
    else
        ts_quantity_print(out, si, unit);
}

static void add_range(ts_buffer *out, const ts_range *range)
{
    if (range->unit == NULL)
        return;
    ts_buffer_add(out, range->above ? "above " : "");
    add_limit(out, range, range->least);
    ts_buffer_add(out, " to ");
    add_limit(out, range, range->most);
}

/* ---- tables --------------------------------------------------------------------------------- */

static const char *need_word(ts_need need)
{
    switch (need) {
    case TS_REQUIRED:
        return "required";
    case TS_STATED:
        return "required, may be `unknown`";
    default:
        return "";
    }
}

static void add_row(ts_buffer *out, const ts_field *field)
{
    const bool described = field->form == TS_FORM_SPOOL_SPEEDS;
    ts_buffer_print(out, described ? "| %s | " : "| `%s` | ", field->key);
    add_takes(out, field);
    ts_buffer_add(out, " | ");
    add_range(out, &field->range);
    ts_buffer_print(out, " | %s", need_word(field->need));
    if (field->preset.value != NULL)
        ts_buffer_print(out, "default %s: %s", field->preset.value, field->preset.reason);
    ts_buffer_print(out, " | %s | `%s` |\n", field->says, field->example);
}

static void add_table(ts_buffer *out, const ts_record_table *table)
{
    ts_buffer_print(out,
                    "\n### %s\n\n%s\n\n"
                    "| key | takes | range | if it is left out | meaning | example |\n"
                    "|---|---|---|---|---|---|\n",
                    table->name, table->says);
    for (size_t i = 0; i < table->field_count; i++)
        add_row(out, &table->fields[i]);
}

/* ---- units ---------------------------------------------------------------------------------- */

static void add_unit(ts_buffer *out, const ts_unit *unit)
{
    ts_buffer_print(out, "| `%s` | ", unit->name);
    ts_buffer_number(out, unit->factor);
    if (unit->offset > 0.0) {
        ts_buffer_add(out, ", plus ");
        ts_buffer_number(out, unit->offset);
    }
    ts_buffer_print(out, " | %s |\n", unit->source);
}

static void add_units(ts_buffer *out)
{
    ts_buffer_add(out,
                  "\n## Units\n\n"
                  "No others are taken, and none of another kind: torque is not energy, and a\n"
                  "rotational speed is not a frequency. The factor turns a value into the SI "
                  "unit.\n");
    for (int kind = 0; kind < (int)TS_KIND_COUNT; kind++) {
        ts_buffer_print(out, "\n### %s\n\n| unit | factor | source |\n|---|---|---|\n",
                        ts_kind_name((ts_kind)kind));
        for (size_t i = 0; i < ts_unit_count(); i++) {
            const ts_unit *unit = ts_unit_at(i);
            if ((int)unit->kind == kind && strcmp(unit->name, "1") != 0)
                add_unit(out, unit);
        }
        if (kind == (int)TS_KIND_NUMBER)
            ts_buffer_add(out, "\nA number may also stand without a unit.\n");
    }
}

static void write_manual(const char *const *prose, const ts_table_set *set, ts_buffer *out)
{
    for (size_t i = 0; prose[i] != NULL; i++)
        ts_buffer_print(out, "%s%s", i > 0 ? "\n" : "", prose[i]);
    ts_buffer_add(out, "\n## Every key\n");
    for (size_t i = 0; i < set->count; i++)
        add_table(out, set->tables[i]);
}

void ts_schema_write_manual(ts_buffer *out)
{
    write_manual(ts_manual_prose, &ts_drive_tables, out);
    add_units(out);
}

void ts_schema_write_rate_manual(ts_buffer *out)
{
    write_manual(ts_rate_prose, &ts_rate_tables, out);
}

void ts_schema_write_sampling_manual(ts_buffer *out)
{
    write_manual(ts_sampling_prose, &ts_sampling_tables, out);
}
