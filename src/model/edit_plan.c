/* model/edit_plan.c: which bytes give way when a value is replaced or removed? */
#include "model/edit_plan.h"

#include "model/scalar_write.h"

#include <string.h>

bool ts_plan_refuse(ts_edit_plan *plan, const char *code, const char *says, const char *expected)
{
    plan->code     = code;
    plan->says     = says;
    plan->expected = expected;
    return false;
}

/* ---- places --------------------------------------------------------------------------------- */

bool ts_node_in_brackets(const ts_source *source, ts_node node)
{
    for (ts_node at = source->nodes[node].parent; at != 0; at = source->nodes[at].parent) {
        if (source->nodes[at].flow)
            return true;
    }
    return false;
}

bool ts_value_is_written(ts_text value)
{
    if (value.length < 2)
        return false;
    const char first = value.at[0], last = value.at[value.length - 1];
    return ((first == '"' || first == '\'') && last == first) || (first == '{' && last == '}') ||
           (first == '[' && last == ']');
}

size_t ts_line_start(ts_text bytes, size_t at)
{
    while (at > 0 && bytes.at[at - 1] != '\n')
        at--;
    return at;
}

size_t ts_line_end(ts_text bytes, size_t at)
{
    while (at < bytes.length && bytes.at[at] != '\n')
        at++;
    return at > 0 && at < bytes.length && bytes.at[at - 1] == '\r' ? at - 1 : at;
}

const char *ts_line_ending(ts_text bytes)
{
    const char *first = memchr(bytes.at, '\n', bytes.length);
    return first != NULL && first > bytes.at && first[-1] == '\r' ? "\r\n" : "\n";
}

static bool is_gap(char byte)
{
    return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}

size_t ts_entry_start(const ts_source *source, ts_node node)
{
    const ts_node_place *place  = &source->nodes[node];
    const ts_node_place *parent = &source->nodes[place->parent];
    if (parent->form == TS_NODE_MAPPING)
        return place->key_start;
    if (parent->flow)
        return place->start;
    size_t at = place->start;
    while (at > 0 && source->bytes.at[at] != '-')
        at--;
    return at;
}

static ts_node before(const ts_source *source, ts_node node)
{
    ts_node child = source->nodes[source->nodes[node].parent].first;
    while (child != node && source->nodes[child].next != node)
        child = source->nodes[child].next;
    return child == node ? 0 : child;
}

/* ---- replacement ---------------------------------------------------------------------------- */

/* Quotes of the old value stay.  Single quotes are what this program adds where a plain text needs
 * some, so they go when they were needed and no longer are. */
static char quote_for(const ts_source *source, ts_node node, ts_text value)
{
    const ts_node_place *place = &source->nodes[node];
    const bool           in    = ts_node_in_brackets(source, node);
    const bool           needs = ts_scalar_needs_quotes(value, in);
    if (place->quote == '"')
        return '"';
    if (place->quote == '\'')
        return needs || !ts_scalar_needs_quotes(place->scalar, in) ? '\'' : 0;
    return needs ? '\'' : 0;
}

static bool replace_container(ts_edit_plan *plan, ts_node node, ts_text value)
{
    const ts_node_place *place = &plan->source->nodes[node];
    if (!place->flow || !ts_value_is_written(value) ||
        value.at[0] != plan->source->bytes.at[place->start])
        return ts_plan_refuse(plan, "not-one-value", "this address holds more than one value",
                              "the address of one value");
    plan->from = place->start;
    plan->to   = place->end;
    ts_buffer_text(&plan->text, value);
    return true;
}

bool ts_plan_replacement(ts_edit_plan *plan, ts_node node, ts_text value)
{
    const ts_node scalar = ts_source_value(plan->source, node);
    plan->at             = node;
    if (scalar == 0)
        return replace_container(plan, node, value);
    const ts_node_place *place = &plan->source->nodes[scalar];
    const bool           blank = place->start == place->end; /* a key without a value */
    plan->at                   = scalar;
    plan->from                 = place->start;
    plan->to                   = place->end;
    if (!blank && ts_text_equal(place->scalar, value)) {
        ts_buffer_bytes(&plan->text, plan->source->bytes.at + place->start,
                        place->end - place->start);
        return true;
    }
    if (blank)
        ts_buffer_add(&plan->text, " ");
    if (ts_value_is_written(value))
        ts_buffer_text(&plan->text, value);
    else
        ts_scalar_write(&plan->text, value, quote_for(plan->source, scalar, value));
    return true;
}

/* ---- removal -------------------------------------------------------------------------------- */

static size_t skip_blanks(ts_text bytes, size_t at)
{
    while (at < bytes.length && (bytes.at[at] == ' ' || bytes.at[at] == '\t'))
        at++;
    return at;
}

static bool has_line_end(ts_text bytes, size_t from, size_t to)
{
    return memchr(bytes.at + from, '\n', to - from) != NULL;
}

/* In brackets a comma goes as well, and nothing beyond the line: a comment may stand there. */
static bool remove_in_brackets(ts_edit_plan *plan, ts_node node)
{
    const ts_source     *source   = plan->source;
    const ts_text        bytes    = source->bytes;
    const ts_node_place *place    = &source->nodes[node];
    const ts_node        previous = before(source, node);
    const size_t         start    = ts_entry_start(source, node);
    plan->from                    = start;
    plan->to                      = place->end;
    if (place->next == 0) {
        const size_t end = source->nodes[previous].end;
        if (!has_line_end(bytes, end, start))
            plan->from = end;
        return true;
    }
    const size_t comma = skip_blanks(bytes, place->end);
    if (comma >= bytes.length || bytes.at[comma] != ',')
        return ts_plan_refuse(plan, "not-removable",
                              "the comma behind this entry stands on another line",
                              "an edit by hand");
    plan->to = skip_blanks(bytes, comma + 1);
    return true;
}

static bool is_first_on_line(ts_text bytes, size_t at)
{
    for (size_t i = ts_line_start(bytes, at); i < at; i++) {
        if (!is_gap(bytes.at[i]))
            return false;
    }
    return true;
}

/* Whole lines go; of a file without a last line end, the line end before them. */
static void remove_lines(ts_edit_plan *plan, size_t start, size_t end)
{
    const ts_text bytes = plan->source->bytes;
    plan->from          = ts_line_start(bytes, start);
    plan->to            = ts_line_end(bytes, end);
    if (plan->to < bytes.length) {
        plan->to += bytes.at[plan->to] == '\r' ? 2 : 1;
        return;
    }
    if (plan->from > 0)
        plan->from--;
    if (plan->from > 0 && bytes.at[plan->from - 1] == '\r')
        plan->from--;
}

static bool remove_from_block(ts_edit_plan *plan, ts_node node)
{
    const ts_source     *source = plan->source;
    const ts_node_place *place  = &source->nodes[node];
    const size_t         start  = ts_entry_start(source, node);
    if (is_first_on_line(source->bytes, start)) {
        remove_lines(plan, start, place->end);
        return true;
    }
    /* The first key behind a dash: the next one takes its place. */
    const size_t line_end = ts_line_end(source->bytes, place->end);
    const size_t next     = place->next != 0 ? ts_entry_start(source, place->next) : 0;
    if (next == 0 || memchr(source->bytes.at + line_end, '#', next - line_end) != NULL)
        return ts_plan_refuse(plan, "not-removable",
                              "a comment stands between this entry and the next one",
                              "an edit by hand");
    plan->from = start;
    plan->to   = next;
    return true;
}

bool ts_plan_removal(ts_edit_plan *plan, ts_node node)
{
    const ts_source     *source = plan->source;
    const ts_node_place *place  = &source->nodes[node];
    plan->at                    = node;
    if (place->parent == 0)
        return ts_plan_refuse(plan, "not-removable", "this is the whole file",
                              "the address of a key");
    if (source->nodes[place->parent].first == node && place->next == 0)
        return ts_plan_refuse(plan, "not-removable", "nothing would be left beside this entry",
                              "the address of what it stands in");
    return source->nodes[place->parent].flow ? remove_in_brackets(plan, node)
                                             : remove_from_block(plan, node);
}
