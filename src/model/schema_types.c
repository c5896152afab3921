/* model/schema_types.c: how does a TypeScript program learn the notation? */
#include "model/schema.h"

#include <string.h>

/* "tower_shaft" as TowerShaft; "rotational speed" as RotationalSpeed.  ASCII letters only. */
static void add_type_name(ts_buffer *out, const char *words)
{
    bool first = true;
    for (const char *at = words; *at != '\0'; at++) {
        if (*at == '_' || *at == ' ') {
            first = true;
            continue;
        }
        const bool lower = *at >= 'a' && *at <= 'z';
        ts_buffer_fill(out, first && lower ? (char)(*at - 'a' + 'A') : *at, 1);
        first = false;
    }
}

/* `Number` is taken in JavaScript. */
static const char *kind_words(ts_kind kind)
{
    return kind == TS_KIND_NUMBER ? "plain number" : ts_kind_name(kind);
}

static void add_key(ts_buffer *out, const ts_field *field)
{
    const bool quoted = strpbrk(field->key, " -") != NULL;
    ts_buffer_print(out, "%s%s%s%s: ", quoted ? "\"" : "", field->key, quoted ? "\"" : "",
                    field->need == TS_OPTIONAL ? "?" : "");
}

static void add_choices(ts_buffer *out, const ts_field *field)
{
    for (size_t i = 0; field->choices[i] != NULL; i++)
        ts_buffer_print(out, "%s\"%s\"", i > 0 ? " | " : "", field->choices[i]);
}

/* The value in short form. */
static void add_value(ts_buffer *out, const ts_field *field)
{
    switch (field->form) {
    case TS_FORM_MEASURE:
    case TS_FORM_MEASURES:
    case TS_FORM_SPOOL_SPEEDS:
    case TS_FORM_BY_CONDITION:
        add_type_name(out, kind_words(field->kind));
        break;
    case TS_FORM_SPAN:
    case TS_FORM_SPAN_BY_CONDITION:
        ts_buffer_add(out, "Span<");
        add_type_name(out, kind_words(field->kind));
        ts_buffer_add(out, "Unit>");
        break;
    case TS_FORM_CLOCK:
        ts_buffer_add(out, "Clock");
        break;
    case TS_FORM_TALLY:
    case TS_FORM_TEETH:
        ts_buffer_add(out, "Tally");
        break;
    case TS_FORM_TALLY_SPAN:
    case TS_FORM_TALLY_SPANS:
        ts_buffer_add(out, "TallySpan");
        break;
    case TS_FORM_PICK:
        add_choices(out, field);
        break;
    case TS_FORM_DATE:
        ts_buffer_add(out, "CalendarDate");
        break;
    case TS_FORM_OVERLOAD:
        ts_buffer_add(out, "Overload");
        break;
    default:
        ts_buffer_add(out, "string");
        break;
    }
    if (ts_field_may_be_unknown(field))
        ts_buffer_add(out, " | Unknown");
}

static void add_form(ts_buffer *out, const ts_field *field)
{
    ts_buffer_add(out, "Sourced<");
    add_value(out, field);
    ts_buffer_add(out, ">");
}

static void add_record_name(ts_buffer *out, const ts_field *field)
{
    add_type_name(out, field->record->id);
}

static void add_type(ts_buffer *out, const ts_field *field)
{
    switch (field->form) {
    case TS_FORM_RECORD:
        add_record_name(out, field);
        break;
    case TS_FORM_LIST:
        add_record_name(out, field);
        ts_buffer_add(out, "[]");
        break;
    case TS_FORM_ONE_OR_LIST:
        add_record_name(out, field);
        ts_buffer_add(out, " | ");
        add_record_name(out, field);
        ts_buffer_add(out, "[]");
        break;
    case TS_FORM_NAMED:
    case TS_FORM_TAPPED:
        ts_buffer_add(out, "{ [name: string]: ");
        add_record_name(out, field);
        ts_buffer_add(out, " }");
        break;
    case TS_FORM_BY_CONDITION:
    case TS_FORM_SPAN_BY_CONDITION:
        ts_buffer_add(out, "{ [condition: string]: ");
        add_form(out, field);
        ts_buffer_add(out, " }");
        break;
    case TS_FORM_TALLY_SPANS:
    case TS_FORM_MEASURES:
        add_form(out, field);
        ts_buffer_add(out, " | ");
        add_form(out, field);
        ts_buffer_add(out, "[]");
        break;
    case TS_FORM_TEETH:
        ts_buffer_add(out, "[");
        add_form(out, field);
        ts_buffer_add(out, ", ");
        add_form(out, field);
        ts_buffer_add(out, "]");
        break;
    default:
        add_form(out, field);
        break;
    }
}

static void add_field(ts_buffer *out, const ts_field *field)
{
    ts_buffer_print(out, "  /** %s", field->says);
    if (field->preset.value != NULL)
        ts_buffer_print(out, "  Default: %s.", field->preset.value);
    ts_buffer_add(out, " */\n  ");
    add_key(out, field);
    add_type(out, field);
    ts_buffer_add(out, ";\n");
}

static const ts_field *spool_speeds(const ts_record_table *table)
{
    for (size_t i = 0; i < table->field_count; i++) {
        if (table->fields[i].form == TS_FORM_SPOOL_SPEEDS)
            return &table->fields[i];
    }
    return NULL;
}

static void add_record(ts_buffer *out, const ts_record_table *table)
{
    const ts_field *speeds = spool_speeds(table);
    ts_buffer_print(out, "\n/** %s */\nexport %s ", table->says,
                    speeds != NULL ? "type" : "interface");
    add_type_name(out, table->id);
    ts_buffer_add(out, speeds != NULL ? " = {\n" : " {\n");
    for (size_t i = 0; i < table->field_count; i++) {
        if (&table->fields[i] != speeds)
            add_field(out, &table->fields[i]);
    }
    ts_buffer_add(out, "}");
    if (speeds != NULL) {
        ts_buffer_print(out, " & {\n  /** %s */\n  [spool: string]: ", speeds->says);
        add_form(out, speeds);
        ts_buffer_add(out, ";\n};");
    }
    ts_buffer_add(out, "\n");
}

/* Only kinds that a field has. */
static bool is_used(ts_kind kind)
{
    for (size_t t = 0; t < ts_table_count; t++) {
        for (size_t i = 0; i < ts_tables[t]->field_count; i++) {
            const ts_field *field = &ts_tables[t]->fields[i];
            const bool      has   = field->form == TS_FORM_MEASURE || field->form == TS_FORM_SPAN ||
                             field->form == TS_FORM_MEASURES ||
                             field->form == TS_FORM_SPOOL_SPEEDS || field->form == TS_FORM_CLOCK ||
                             field->form == TS_FORM_BY_CONDITION ||
                             field->form == TS_FORM_SPAN_BY_CONDITION;
            if (has && field->kind == kind)
                return true;
        }
    }
    return false;
}

static void add_kind(ts_buffer *out, ts_kind kind)
{
    const char *name  = kind_words(kind);
    bool        first = true;
    ts_buffer_add(out, "\nexport type ");
    add_type_name(out, name);
    ts_buffer_add(out, "Unit = ");
    for (size_t i = 0; i < ts_unit_count(); i++) {
        const ts_unit *unit = ts_unit_at(i);
        if (unit->kind != kind || strcmp(unit->name, "1") == 0)
            continue;
        ts_buffer_print(out, "%s\"%s\"", first ? "" : " | ", unit->name);
        first = false;
    }
    ts_buffer_add(out, ";\nexport type ");
    add_type_name(out, name);
    ts_buffer_add(out,
                  kind == TS_KIND_NUMBER ? " = number | `${number}` | Quantity<" : " = Quantity<");
    add_type_name(out, name);
    ts_buffer_add(out, "Unit>;\n");
}

static const char *const head =
    "// The drive file of towershaft, loaded as YAML.\n"
    "// Printed by the program from the tables that its reader runs from; not edited by hand.\n"
    "\n"
    "/** What is not known is said to be so. */\n"
    "export type Unknown = \"unknown\";\n"
    "\n"
    "/** Any value may say where it comes from. */\n"
    "export type Sourced<T> =\n"
    "  | T\n"
    "  | { value: T; source?: string; date?: CalendarDate; confidence?: \"low\" | \"medium\" | "
    "\"high\" };\n"
    "\n"
    "/** 34 N.m */\n"
    "export type Quantity<U extends string> = `${number}${\"\" | \" \"}${U}`;\n"
    "\n"
    "/** 6600..7300 rpm, ..7600 rpm, 900.. rpm */\n"
    "export type Span<U extends string> = `${number | \"\"}..${number | \"\"}${\"\" | \" "
    "\"}${U}`;\n"
    "\n"
    "/** 34 N.m for 5 s */\n"
    "export type Overload = `${string} for ${string}`;\n"
    "\n"
    "/** 2026-06-30 */\n"
    "export type CalendarDate = `${number}-${number}-${number}`;\n"
    "\n"
    "/** 6:30, or an angle clockwise from 12:00 */\n"
    "export type Clock = `${number}:${number}` | Angle;\n"
    "\n"
    "/** A whole number. */\n"
    "export type Tally = number | `${number}`;\n"
    "/** 31..47, both ends counted, or one number. */\n"
    "export type TallySpan = Tally | `${number}..${number}`;\n";

void ts_schema_write_types(ts_buffer *out)
{
    ts_buffer_add(out, head);
    for (int kind = 0; kind < (int)TS_KIND_COUNT; kind++) {
        if (is_used((ts_kind)kind))
            add_kind(out, (ts_kind)kind);
    }
    for (size_t i = 0; i < ts_table_count; i++)
        add_record(out, ts_tables[i]);
}
