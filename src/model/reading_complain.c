/* model/reading_complain.c: how does a message of the reader say what is wrong and what is right?
 */
#include "model/reading.h"

#include "base/number.h"

#include <string.h>

bool ts_is_spent(const ts_reading *reading)
{
    return ts_diagnostics_count(reading->list) >= TS_DIAGNOSTICS_MOST;
}

#define QUOTED_MOST 60

ts_text ts_quoted(ts_text text)
{
    if (text.length <= QUOTED_MOST)
        return text;
    size_t length = QUOTED_MOST;
    while (length > 0 && (text.at[length] & 0xC0) == 0x80)
        length--;
    return (ts_text){text.at, length};
}

/* ---- places --------------------------------------------------------------------------------- */

static uint32_t columns_of(const ts_source *source, size_t start, size_t end)
{
    const ts_text bytes = source->bytes;
    size_t        to    = start;
    while (to < end && to < bytes.length && bytes.at[to] != '\n' && bytes.at[to] != '\r')
        to++;
    uint32_t columns = 0;
    for (size_t i = start; i < to; i++)
        columns += (bytes.at[i] & 0xC0) != 0x80 ? 1 : 0;
    return columns > 0 ? columns : 1;
}

/* Does the scalar stand in the file as it reads, so that bytes of it are bytes of the file? */
static bool is_in_place(const ts_source *source, ts_text scalar)
{
    const char *bytes = source->bytes.at;
    return scalar.at >= bytes && scalar.at + scalar.length <= bytes + source->bytes.length;
}

static void place_fault(const ts_reading *reading, const ts_fault *fault, ts_diagnostic *out)
{
    const ts_source     *source = reading->source;
    const ts_node_place *place  = &source->nodes[fault->node];
    if (fault->node == 0) {
        out->line = out->column = out->columns = 1;
    } else if (fault->at_key && place->key_end > place->key_start) {
        out->line    = place->key_line;
        out->column  = place->key_column;
        out->columns = columns_of(source, place->key_start, place->key_end);
    } else if (place->form != TS_NODE_SCALAR) {
        out->line    = place->line;
        out->column  = place->column;
        out->columns = 1;
    } else {
        out->line    = place->line;
        out->column  = place->column;
        out->columns = columns_of(source, place->start, place->end);
        if (fault->length > 0 && fault->at + fault->length <= place->scalar.length &&
            is_in_place(source, place->scalar)) {
            const size_t from = (size_t)(place->scalar.at - source->bytes.at) + fault->at;
            out->column += from > place->start ? columns_of(source, place->start, from) : 0;
            out->columns = columns_of(source, from, from + fault->length);
        }
    }
}

void ts_complain(ts_reading *reading, const ts_fault *fault, const char *format, ...)
{
    ts_diagnostic what = {
        .code = fault->code, .expected = fault->expected, .nearest = fault->nearest};
    place_fault(reading, fault, &what);
    if (ts_is_spent(reading)) {
        what.says = format;
        ts_diagnose(reading->list, &what);
        return;
    }
    ts_buffer says, address;
    ts_buffer_open(&says, ts_arena_allocator(reading->arena));
    ts_buffer_open(&address, ts_arena_allocator(reading->arena));
    va_list arguments;
    va_start(arguments, format);
    ts_buffer_print_list(&says, format, arguments);
    va_end(arguments);
    ts_source_address(reading->source, fault->node, &address);
    reading->no_memory = reading->no_memory || says.failed || address.failed;
    what.says          = says.bytes != NULL ? says.bytes : format;
    what.address       = address.bytes;
    ts_diagnose(reading->list, &what);
    ts_buffer_close(&says);
    ts_buffer_close(&address);
}

/* ---- what was expected ---------------------------------------------------------------------- */

static const char *article(const char *noun)
{
    return strchr("aeiou", noun[0]) != NULL ? "an " : "a ";
}

static void add_limit(ts_buffer *out, const ts_range *range, double si)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(range->unit));
    if (strcmp(range->unit, "1") == 0 || unit == NULL)
        ts_buffer_number(out, si);
    else
        ts_quantity_print(out, si, unit);
}

static void add_range(ts_buffer *out, const ts_field *field)
{
    const ts_range *range = &field->range;
    if (range->unit == NULL)
        return;
    if (range->above) {
        ts_buffer_add(out, " above ");
        add_limit(out, range, range->least);
        ts_buffer_add(out, " and up to ");
    } else {
        ts_buffer_add(out, " from ");
        add_limit(out, range, range->least);
        ts_buffer_add(out, " to ");
    }
    add_limit(out, range, range->most);
}

#define CHOICES_SHOWN 12 /* more are a table, which is in the manual */

static void add_choices(ts_buffer *out, const ts_field *field)
{
    size_t count = 0;
    while (field->choices[count] != NULL)
        count++;
    if (count > CHOICES_SHOWN) {
        ts_buffer_print(out, "one of the %zu words that the manual lists, such as %s", count,
                        field->example);
        return;
    }
    for (size_t i = 0; field->choices[i] != NULL; i++) {
        if (i > 0)
            ts_buffer_add(out, field->choices[i + 1] == NULL ? " or " : ", ");
        ts_buffer_add(out, field->choices[i]);
    }
}

static void add_noun(ts_buffer *out, const ts_field *field)
{
    const char *kind = ts_kind_name(field->kind);
    switch (field->form) {
    case TS_FORM_MEASURE:
        ts_buffer_print(out, "%s%s", article(kind), kind);
        break;
    case TS_FORM_CLOCK:
        ts_buffer_add(out, "a clock position or an angle");
        break;
    case TS_FORM_SPAN:
        if (field->closed)
            ts_buffer_print(out, "two ends of %s%s", article(kind), kind);
        else
            ts_buffer_print(out, "a range of %s", kind);
        break;
    case TS_FORM_TALLY:
        ts_buffer_add(out, "a whole number");
        break;
    case TS_FORM_TEETH:
        ts_buffer_add(out, "two tooth numbers");
        break;
    case TS_FORM_TALLY_SPAN:
        ts_buffer_add(out, "a whole number or a range of them");
        break;
    case TS_FORM_TALLY_SPANS:
        ts_buffer_add(out, "a whole number, a range of them, or a list of these");
        break;
    case TS_FORM_MEASURES:
        ts_buffer_print(out, "%s%s, or a list of them", article(kind), kind);
        break;
    case TS_FORM_WORD:
        ts_buffer_add(out, "a text");
        break;
    case TS_FORM_DATE:
        ts_buffer_add(out, "a date");
        break;
    case TS_FORM_OVERLOAD:
        ts_buffer_add(out, "a torque and a time");
        break;
    case TS_FORM_PAD:
        ts_buffer_add(out, "the name of an accessory, cover, hand turning or open");
        break;
    case TS_FORM_SPOOL_SPEEDS:
        ts_buffer_add(out, "a rotational speed");
        break;
    case TS_FORM_BY_CONDITION:
    case TS_FORM_SPAN_BY_CONDITION:
        ts_buffer_add(out, "values by condition");
        break;
    case TS_FORM_LIST:
        ts_buffer_add(out, "a list");
        break;
    case TS_FORM_NAMED:
    case TS_FORM_TAPPED:
        ts_buffer_add(out, "records by name");
        break;
    default:
        ts_buffer_add(out, "a record");
        break;
    }
}

/* What was written, in the arena; the buffer is closed. */
static const char *kept(ts_reading *reading, ts_buffer *out)
{
    const char *copy = out->failed ? NULL : ts_arena_copy(reading->arena, out->bytes, out->length);
    reading->no_memory = reading->no_memory || copy == NULL;
    ts_buffer_close(out);
    return copy;
}

/* Of "{crank: 220 N.m, light-off: 180 N.m}" the first value, for a field that holds one. */
static ts_text one_example(const ts_field *field)
{
    const char *colon = field->example[0] == '{' ? strstr(field->example, ": ") : NULL;
    const bool  whole = field->record != NULL || field->form == TS_FORM_BY_CONDITION ||
                       field->form == TS_FORM_SPAN_BY_CONDITION;
    if (colon == NULL || whole)
        return ts_text_of(field->example);
    return (ts_text){colon + 2, strcspn(colon + 2, ",}")};
}

const char *ts_field_expected(ts_reading *reading, const ts_field *field)
{
    ts_buffer out;
    if (ts_is_spent(reading))
        return NULL;
    ts_buffer_open(&out, ts_arena_allocator(reading->arena));
    if (field->form == TS_FORM_PICK) {
        add_choices(&out, field);
    } else {
        add_noun(&out, field);
        add_range(&out, field);
        ts_buffer_add(&out, ", such as ");
        ts_buffer_text(&out, one_example(field));
    }
    return kept(reading, &out);
}

#define NAMES_SEARCHED_MOST 500

const char *ts_nearest_name(const ts_reading *reading, ts_text word, const ts_name_index *names)
{
    if (ts_is_spent(reading) || names->count > NAMES_SEARCHED_MOST)
        return NULL;
    return ts_text_nearest(ts_quoted(word), names->names, names->count);
}

/* ---- keys ----------------------------------------------------------------------------------- */

/* The field whose key is nearest, or NULL. */
static const ts_field *nearest_field(const ts_record_table *table, ts_text key)
{
    const char *keys[TS_FIELDS_MOST];
    size_t      count = 0;
    for (size_t i = 0; i < table->field_count && count < TS_FIELDS_MOST; i++) {
        if (table->fields[i].form != TS_FORM_SPOOL_SPEEDS)
            keys[count++] = table->fields[i].key;
    }
    const char *nearest = ts_text_nearest(key, keys, count);
    return nearest != NULL ? ts_field_named(table, ts_text_of(nearest)) : NULL;
}

/* Where the names of spools are keys, and no spool could be read, any key may be one. */
static bool may_be_spool(const ts_reading *reading, const ts_record_table *table)
{
    bool speeds = false;
    for (size_t i = 0; i < table->field_count; i++)
        speeds = speeds || table->fields[i].form == TS_FORM_SPOOL_SPEEDS;
    return speeds && ts_names_are_missing(&reading->spools);
}

#define KEYS_LISTED_MOST 32

/* More keys than a message can hold are told by the manual. */
static const char *list_keys(ts_reading *reading, const ts_record_table *table)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(reading->arena));
    if (table->field_count > KEYS_LISTED_MOST)
        ts_buffer_print(&out, "one of the %zu keys of %s that the manual lists", table->field_count,
                        table->name);
    else
        ts_buffer_add(&out, "one of ");
    for (size_t i = 0; i < table->field_count && table->field_count <= KEYS_LISTED_MOST; i++)
        ts_buffer_print(&out, "%s%s", i > 0 ? ", " : "", table->fields[i].key);
    return kept(reading, &out);
}

const ts_field *ts_complain_unknown_key(ts_reading *reading, const ts_record_table *table,
                                        ts_node node)
{
    const ts_text key   = ts_quoted(reading->source->nodes[node].key);
    ts_fault      fault = {.code = "unknown-key", .node = node, .at_key = true};
    if (ts_is_spent(reading)) {
        ts_complain(reading, &fault, "unknown key");
        return NULL;
    }
    const ts_field        *meant     = nearest_field(table, key);
    const ts_record_table *elsewhere = ts_table_with_key(reading->tables, key, table);
    if (meant == NULL && may_be_spool(reading, table))
        return NULL;
    fault.nearest  = meant != NULL ? meant->key : NULL;
    fault.expected = list_keys(reading, table);
    if (elsewhere != NULL)
        ts_complain(reading, &fault, "`%.*s` is not a key of %s; it belongs to %s", (int)key.length,
                    key.at, table->name, elsewhere->name);
    else
        ts_complain(reading, &fault, "`%.*s` is not a key of %s", (int)key.length, key.at,
                    table->name);
    return meant;
}

void ts_complain_form(ts_reading *reading, const ts_field *field, ts_node node, const char *what)
{
    ts_complain(reading,
                &(ts_fault){.code     = "wrong-form",
                            .node     = node,
                            .at_key   = true,
                            .expected = ts_field_expected(reading, field)},
                "`%s` needs %s", field->key, what);
}
