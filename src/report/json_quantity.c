/* How is one number, and where it stands, written as JSON? */
#include "report/json_quantity.h"

#include "base/number.h"

#include <math.h>

void ts_json_address(const ts_answer *answer, ts_json_place place, ts_buffer *out)
{
    ts_source_address(answer->source, place.node, out);
    ts_buffer_print(out, ":%s", place.symbol);
    if (place.condition >= 0)
        ts_buffer_print(out, "@%s", ts_answer_condition(answer, place.condition));
}

void ts_json_made(ts_json *json, const ts_buffer *made)
{
    json->out->failed = json->out->failed || made->failed;
    ts_json_text(json, (ts_text){made->bytes != NULL ? made->bytes : "", made->length});
}

void ts_json_node(ts_json *json, const ts_answer *answer, const char *key, ts_node node)
{
    ts_buffer address;
    ts_buffer_open(&address, answer->allocator);
    ts_source_address(answer->source, node, &address);
    ts_json_key(json, key);
    ts_json_made(json, &address);
    ts_buffer_close(&address);
}

/* What the file says of the source of its value, or that it is the file's. */
static ts_text given_source(const ts_answer *answer, ts_node node)
{
    const ts_node source = answer->source->nodes[node].source;
    return source != 0 ? answer->source->nodes[source].scalar : TS_TEXT("given in the file");
}

static ts_text source_of(const ts_answer *answer, ts_json_place place)
{
    const ts_subject subject = {place.node, place.condition};
    const size_t     found   = answer->workings != NULL
                                   ? ts_workings_find(answer->workings, subject, place.symbol)
                                   : SIZE_MAX;
    if (found == SIZE_MAX)
        return (ts_text){NULL, 0};
    const ts_note *asked = ts_workings_at(answer->workings, found);
    const size_t   lent =
        asked->kind == TS_NOTE_BORROWED ? ts_borrow_origin(answer->workings, found) : found;
    if (lent == SIZE_MAX)
        return (ts_text){NULL, 0};
    const ts_note *note = ts_workings_at(answer->workings, lent);
    if (note->kind == TS_NOTE_GIVEN)
        return given_source(answer, note->node);
    return ts_text_of(note->formula != NULL ? note->formula->source : note->source);
}

double ts_json_shown(ts_json *json, double si, const ts_unit *unit)
{
    ts_buffer text;
    double    value = NAN;
    size_t    taken = 0;
    /* What is shown in SI, factor exactly 1, is the value itself. */
    if (unit == ts_kind_si(unit->kind))
        return si;
    ts_buffer_open(&text, json->out->allocator);
    ts_quantity_print(&text, si, unit);
    const bool read   = !text.failed && ts_number_parse((ts_text){text.bytes, text.length}, &value,
                                                        &taken) == TS_NUMBER_FINE;
    json->out->failed = json->out->failed || text.failed;
    ts_buffer_close(&text);
    return read ? value : ts_from_si(si, unit);
}

void ts_json_quantity(ts_json *json, const ts_answer *answer, double si, ts_kind kind,
                      ts_json_place place)
{
    const ts_unit *unit = ts_kind_shown(kind, TS_UNITS_METRIC);
    ts_buffer      address;
    if (answer->listener != NULL)
        answer->listener->hear(answer->listener->context, si, kind, place.node, place.symbol,
                               place.condition);
    ts_buffer_open(&address, answer->allocator);
    ts_json_address(answer, place, &address);
    ts_json_object(json);
    ts_json_key(json, "value");
    if (isfinite(si))
        ts_json_number(json, ts_json_shown(json, si, unit));
    else
        ts_json_null(json);
    if (!isfinite(si)) {
        ts_json_key(json, "because");
        ts_json_string(json, "the file does not give what it needs; see the findings");
    }
    ts_json_key(json, "unit");
    ts_json_string(json, unit->name);
    ts_json_key(json, "symbol");
    ts_json_string(json, place.symbol);
    ts_json_key(json, "address");
    ts_json_made(json, &address);
    const ts_text source = source_of(answer, place);
    if (source.length > 0) {
        ts_json_key(json, "source");
        ts_json_text(json, source);
    }
    ts_json_end(json, '}');
    ts_buffer_close(&address);
}

void ts_json_head(ts_json *json, const ts_answer *answer)
{
    ts_json_string_at(json, "tool", "towershaft");
    ts_json_string_at(json, "version", answer->version);
    ts_json_string_at(json, "caution", answer->caution);
    ts_json_key(json, "input");
    ts_json_object(json);
    ts_json_string_at(json, "path", answer->source->name);
    ts_json_string_at(json, "sha256", answer->sha256);
    ts_json_end(json, '}');
}

void ts_json_rounded(ts_json *json, double value)
{
    if (!isfinite(value)) {
        ts_json_null(json);
        return;
    }
    const double ten = value == 0.0 ? 1.0 : pow(10.0, 8.0 - floor(log10(fabs(value))));
    ts_json_number(json, round(value * ten) / ten);
}

void ts_json_rounded_at(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    ts_json_rounded(json, value);
}
