/* model/schema_json.c: how does an editor learn the notation? */
#include "base/json_writer.h"
#include "model/schema.h"

#include <stdio.h>
#include <string.h>

#define NUMBER "[+-]?[0-9]+(\\.[0-9]+)?([eE][+-]?[0-9]+)?"

/* ---- small pieces --------------------------------------------------------------------------- */

static void member(ts_json *json, const char *key, const char *text)
{
    ts_json_key(json, key);
    ts_json_string(json, text);
}

static void reference(ts_json *json, const char *prefix, const char *id)
{
    char path[96];
    snprintf(path, sizeof path, "#/$defs/%s%s", prefix, id);
    ts_json_object(json);
    member(json, "$ref", path);
    ts_json_end(json, '}');
}

/* "rpm|rad/s", with the dots of N.m taken literally. */
static void add_units(ts_buffer *out, ts_kind kind)
{
    bool first = true;
    for (size_t i = 0; i < ts_unit_count(); i++) {
        const ts_unit *unit = ts_unit_at(i);
        if (unit->kind != kind || strcmp(unit->name, "1") == 0)
            continue;
        ts_buffer_add(out, first ? "" : "|");
        for (const char *at = unit->name; *at != '\0'; at++)
            ts_buffer_print(out, "%s%c", *at == '.' ? "\\" : "", *at);
        first = false;
    }
}

static void pattern(ts_json *json, ts_buffer *text)
{
    ts_json_key(json, "pattern");
    ts_json_text(json, (ts_text){text->bytes, text->length});
    json->out->failed = json->out->failed || text->failed;
    ts_buffer_close(text);
}

static const char *or_unknown(const ts_field *field)
{
    return ts_field_may_be_unknown(field) ? "|unknown" : "";
}

/* ---- values --------------------------------------------------------------------------------- */

static void quantity(ts_json *json, const ts_field *field)
{
    const ts_kind kind = field->kind;
    ts_buffer     text;
    ts_buffer_open(&text, json->out->allocator);
    ts_buffer_add(&text, "^(" NUMBER " *(");
    add_units(&text, kind);
    ts_buffer_print(&text, ")%s%s)$", kind == TS_KIND_NUMBER ? "?" : "", or_unknown(field));
    ts_json_key(json, "type");
    if (kind == TS_KIND_NUMBER) {
        ts_json_array(json);
        ts_json_string(json, "string");
        ts_json_string(json, "number");
        ts_json_end(json, ']');
    } else {
        ts_json_string(json, "string");
    }
    pattern(json, &text);
}

static void span(ts_json *json, const ts_field *field)
{
    const ts_kind kind = field->kind;
    ts_buffer     text;
    ts_buffer_open(&text, json->out->allocator);
    ts_buffer_add(&text, "^((" NUMBER " *(");
    add_units(&text, kind);
    ts_buffer_add(&text, ")?)? *\\.\\. *(" NUMBER ")? *(");
    add_units(&text, kind);
    ts_buffer_print(&text, ")?%s)$", or_unknown(field));
    member(json, "type", "string");
    pattern(json, &text);
}

static void overload(ts_json *json, const ts_field *field)
{
    ts_buffer text;
    ts_buffer_open(&text, json->out->allocator);
    ts_buffer_add(&text, "^(" NUMBER " *(");
    add_units(&text, TS_KIND_TORQUE);
    ts_buffer_add(&text, ") +for +" NUMBER " *(");
    add_units(&text, TS_KIND_TIME);
    ts_buffer_print(&text, ")%s)$", or_unknown(field));
    member(json, "type", "string");
    pattern(json, &text);
}

static void clock_position(ts_json *json, const ts_field *field)
{
    ts_buffer text;
    ts_buffer_open(&text, json->out->allocator);
    ts_buffer_add(&text, "^((0?[0-9]|1[0-2]):[0-5][0-9]|" NUMBER " *(");
    add_units(&text, TS_KIND_ANGLE);
    ts_buffer_print(&text, ")%s)$", or_unknown(field));
    member(json, "type", "string");
    pattern(json, &text);
}

static void tally(ts_json *json, const ts_field *field)
{
    const ts_range *range = &field->range;
    ts_json_key(json, "type");
    ts_json_array(json);
    ts_json_string(json, "integer");
    ts_json_string(json, "string");
    ts_json_end(json, ']');
    const bool minus = range->least < 0.0;
    member(json, "pattern",
           ts_field_may_be_unknown(field)
               ? (minus ? "^(-?[0-9]{1,15}|unknown)$" : "^([0-9]{1,15}|unknown)$")
               : (minus ? "^-?[0-9]{1,15}$" : "^[0-9]{1,15}$"));
    if (range->unit != NULL) {
        ts_json_key(json, "minimum");
        ts_json_number(json, range->least);
        ts_json_key(json, "maximum");
        ts_json_number(json, range->most);
    }
}

static void choices(ts_json *json, const ts_field *field)
{
    ts_json_key(json, "enum");
    ts_json_array(json);
    for (size_t i = 0; field->choices[i] != NULL; i++)
        ts_json_string(json, field->choices[i]);
    if (ts_field_may_be_unknown(field))
        ts_json_string(json, "unknown");
    ts_json_end(json, ']');
}

static void free_text(ts_json *json)
{
    ts_json_key(json, "type");
    ts_json_array(json);
    ts_json_string(json, "string");
    ts_json_string(json, "number");
    ts_json_end(json, ']');
    ts_json_key(json, "minLength");
    ts_json_integer(json, 1);
}

static void tally_span(ts_json *json)
{
    ts_json_key(json, "type");
    ts_json_array(json);
    ts_json_string(json, "string");
    ts_json_string(json, "integer");
    ts_json_end(json, ']');
    member(json, "pattern", "^[0-9]+(\\.\\.[0-9]+)?$");
}

/* The value itself, in short form. */
static void value(ts_json *json, const ts_field *field)
{
    ts_json_object(json);
    switch (field->form) {
    case TS_FORM_MEASURE:
    case TS_FORM_MEASURES:
    case TS_FORM_SPOOL_SPEEDS:
    case TS_FORM_BY_CONDITION:
        quantity(json, field);
        break;
    case TS_FORM_CLOCK:
        clock_position(json, field);
        break;
    case TS_FORM_SPAN:
    case TS_FORM_SPAN_BY_CONDITION:
        span(json, field);
        break;
    case TS_FORM_TALLY:
    case TS_FORM_TEETH:
        tally(json, field);
        break;
    case TS_FORM_TALLY_SPAN:
    case TS_FORM_TALLY_SPANS:
        tally_span(json);
        break;
    case TS_FORM_PICK:
        choices(json, field);
        break;
    case TS_FORM_DATE:
        member(json, "type", "string");
        member(json, "pattern", "^([0-9]{4}-[0-9]{2}-[0-9]{2}|unknown)$");
        break;
    case TS_FORM_OVERLOAD:
        overload(json, field);
        break;
    default:
        free_text(json);
        break;
    }
    ts_json_end(json, '}');
}

/* Short form, or long form with a source. */
static void either_form(ts_json *json, const ts_field *field)
{
    ts_json_key(json, "anyOf");
    ts_json_array(json);
    value(json, field);
    ts_json_object(json);
    member(json, "type", "object");
    ts_json_key(json, "properties");
    ts_json_object(json);
    ts_json_key(json, "value");
    value(json, field);
    for (size_t i = 1; i < 4; i++) {
        ts_json_key(json, ts_long_form_keys[i]);
        reference(json, "", ts_long_form_keys[i]);
    }
    ts_json_end(json, '}');
    ts_json_key(json, "required");
    ts_json_array(json);
    ts_json_string(json, "value");
    ts_json_end(json, ']');
    ts_json_key(json, "additionalProperties");
    ts_json_bool(json, false);
    ts_json_end(json, '}');
    ts_json_end(json, ']');
}

/* ---- fields --------------------------------------------------------------------------------- */

static void list_of(ts_json *json, const ts_field *field)
{
    member(json, "type", "array");
    ts_json_key(json, "maxItems");
    ts_json_integer(json, (int64_t)field->most);
    ts_json_key(json, "items");
    reference(json, "", field->record->id);
}

static void one_or_list_of(ts_json *json, const ts_field *field)
{
    ts_json_key(json, "anyOf");
    ts_json_array(json);
    reference(json, "", field->record->id);
    ts_json_object(json);
    list_of(json, field);
    ts_json_key(json, "minItems");
    ts_json_integer(json, 1);
    ts_json_end(json, '}');
    ts_json_end(json, ']');
}

static void by_name(ts_json *json, const ts_field *field)
{
    member(json, "type", "object");
    ts_json_key(json, "minProperties");
    ts_json_integer(json, 1);
    ts_json_key(json, "maxProperties");
    ts_json_integer(json, (int64_t)field->most);
    ts_json_key(json, "additionalProperties");
    reference(json, "", field->record->id);
}

static void by_condition(ts_json *json, const ts_field *field)
{
    member(json, "type", "object");
    ts_json_key(json, "additionalProperties");
    ts_json_object(json);
    either_form(json, field);
    ts_json_end(json, '}');
}

static void teeth(ts_json *json, const ts_field *field)
{
    member(json, "type", "array");
    ts_json_key(json, "minItems");
    ts_json_integer(json, 2);
    ts_json_key(json, "maxItems");
    ts_json_integer(json, 2);
    ts_json_key(json, "items");
    ts_json_object(json);
    either_form(json, field);
    ts_json_end(json, '}');
}

static void several(ts_json *json, const ts_field *field)
{
    ts_json_key(json, "anyOf");
    ts_json_array(json);
    ts_json_object(json);
    either_form(json, field);
    ts_json_end(json, '}');
    ts_json_object(json);
    member(json, "type", "array");
    ts_json_key(json, "minItems");
    ts_json_integer(json, 1);
    ts_json_key(json, "maxItems");
    ts_json_integer(json, (int64_t)field->most);
    ts_json_key(json, "items");
    ts_json_object(json);
    either_form(json, field);
    ts_json_end(json, '}');
    ts_json_end(json, '}');
    ts_json_end(json, ']');
}

static void describe(ts_json *json, const ts_field *field)
{
    ts_buffer text;
    ts_buffer_open(&text, json->out->allocator);
    ts_buffer_print(&text, "%s  Example: %s", field->says, field->example);
    if (field->preset.value != NULL)
        ts_buffer_print(&text, "  Default: %s (%s)", field->preset.value, field->preset.reason);
    ts_json_key(json, "description");
    ts_json_text(json, (ts_text){text.bytes, text.length});
    json->out->failed = json->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void field_schema(ts_json *json, const ts_field *field)
{
    ts_json_object(json);
    describe(json, field);
    switch (field->form) {
    case TS_FORM_RECORD: /* beside $ref a description may stand since draft 2019-09 */
        ts_json_key(json, "allOf");
        ts_json_array(json);
        reference(json, "", field->record->id);
        ts_json_end(json, ']');
        break;
    case TS_FORM_LIST:
        list_of(json, field);
        break;
    case TS_FORM_ONE_OR_LIST:
        one_or_list_of(json, field);
        break;
    case TS_FORM_NAMED:
    case TS_FORM_TAPPED:
        by_name(json, field);
        break;
    case TS_FORM_BY_CONDITION:
    case TS_FORM_SPAN_BY_CONDITION:
        by_condition(json, field);
        break;
    case TS_FORM_TEETH:
        teeth(json, field);
        break;
    case TS_FORM_TALLY_SPANS:
    case TS_FORM_MEASURES:
        several(json, field);
        break;
    default:
        either_form(json, field);
        break;
    }
    ts_json_end(json, '}');
}

/* ---- records -------------------------------------------------------------------------------- */

static void required(ts_json *json, const ts_record_table *table)
{
    ts_json_key(json, "required");
    ts_json_array(json);
    for (size_t i = 0; i < table->field_count; i++) {
        if (table->fields[i].need != TS_OPTIONAL)
            ts_json_string(json, table->fields[i].key);
    }
    ts_json_end(json, ']');
}

static void record(ts_json *json, const ts_record_table *table)
{
    const ts_field *speeds = NULL;
    member(json, "description", table->says);
    member(json, "type", "object");
    ts_json_key(json, "properties");
    ts_json_object(json);
    for (size_t i = 0; i < table->field_count; i++) {
        const ts_field *field = &table->fields[i];
        if (field->form == TS_FORM_SPOOL_SPEEDS) {
            speeds = field;
            continue;
        }
        ts_json_key(json, field->key);
        field_schema(json, field);
    }
    ts_json_end(json, '}');
    required(json, table);
    ts_json_key(json, "additionalProperties");
    if (speeds != NULL)
        field_schema(json, speeds);
    else
        ts_json_bool(json, false);
}

static void long_form_parts(ts_json *json)
{
    ts_json_key(json, "source");
    ts_json_object(json);
    member(json, "description", "Who says so.");
    free_text(json);
    ts_json_end(json, '}');
    ts_json_key(json, "date");
    ts_json_object(json);
    member(json, "description", "Since when.");
    member(json, "type", "string");
    member(json, "pattern", "^([0-9]{4}-[0-9]{2}-[0-9]{2}|unknown)$");
    ts_json_end(json, '}');
    ts_json_key(json, "confidence");
    ts_json_object(json);
    member(json, "description", "How sure one is.");
    ts_json_key(json, "enum");
    ts_json_array(json);
    for (size_t i = 0; ts_confidences[i] != NULL; i++)
        ts_json_string(json, ts_confidences[i]);
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

static void write_schema(const ts_table_set *set, const char *title, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    member(&json, "$schema", "https://json-schema.org/draft/2020-12/schema");
    member(&json, "title", title);
    record(&json, set->tables[0]);
    ts_json_key(&json, "$defs");
    ts_json_object(&json);
    for (size_t i = 1; i < set->count; i++) {
        ts_json_key(&json, set->tables[i]->id);
        ts_json_object(&json);
        record(&json, set->tables[i]);
        ts_json_end(&json, '}');
    }
    long_form_parts(&json);
    ts_json_end(&json, '}');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}

void ts_schema_write_json(ts_buffer *out)
{
    write_schema(&ts_drive_tables, "The drive file of towershaft", out);
}

void ts_schema_write_rate_json(ts_buffer *out)
{
    write_schema(&ts_rate_tables, "The rate file of towershaft", out);
}

void ts_schema_write_sampling_json(ts_buffer *out)
{
    write_schema(&ts_sampling_tables, "The study file of towershaft", out);
}
