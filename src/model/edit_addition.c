/* model/edit_addition.c: where and how does a key or item enter a file that has it not? */
#include "model/edit_plan.h"
#include "model/field.h"
#include "model/scalar_write.h"

#include <string.h>

/* The words of an address below the deepest node that exists. */
typedef struct missing {
    ts_text first;
    ts_text second; /* empty when there is one word only */
    size_t  count;
} missing;

static missing split(ts_text words)
{
    missing out  = {.first = words, .count = 1};
    size_t  from = 0;
    for (size_t i = 0; i < words.length; i++) {
        if (words.at[i] != '/')
            continue;
        if (out.count == 1)
            out.first.length = i;
        else if (out.count == 2)
            out.second = (ts_text){words.at + from, i - from};
        out.count++;
        from = i + 1;
    }
    if (out.count == 2)
        out.second = (ts_text){words.at + from, words.length - from};
    return out;
}

/* ---- what is written ------------------------------------------------------------------------ */

static void write_value(ts_buffer *out, ts_text value, bool in_brackets)
{
    if (ts_value_is_written(value))
        ts_buffer_text(out, value);
    else if (ts_scalar_misleads(value))
        ts_scalar_write(out, value, '"');
    else
        ts_scalar_write(out, value, ts_scalar_needs_quotes(value, in_brackets) ? '\'' : 0);
}

static void write_pair(ts_buffer *out, ts_text key, ts_text value, bool in_brackets)
{
    ts_scalar_write(out, key, ts_scalar_needs_quotes(key, in_brackets) ? '\'' : 0);
    ts_buffer_add(out, ": ");
    write_value(out, value, in_brackets);
}

/* The new entry itself: a pair, a pair that holds a pair, an item, or an item that holds a pair. */
static void write_entry(ts_edit_plan *plan, ts_node parent, const missing *words, ts_text value)
{
    const ts_node_place *place = &plan->source->nodes[parent];
    const bool           in    = place->flow || ts_node_in_brackets(plan->source, parent);
    ts_buffer           *out   = &plan->text;
    if (place->form == TS_NODE_MAPPING && words->count == 1) {
        write_pair(out, words->first, value, in);
        return;
    }
    if (place->form == TS_NODE_MAPPING) {
        ts_scalar_write(out, words->first, ts_scalar_needs_quotes(words->first, in) ? '\'' : 0);
        ts_buffer_add(out, ": ");
    }
    if (words->count == 1) {
        write_value(out, value, in);
        return;
    }
    ts_buffer_add(out, "{");
    write_pair(out, words->second, value, true);
    ts_buffer_add(out, "}");
}

/* ---- where it is written -------------------------------------------------------------------- */

static ts_node last_child(const ts_source *source, ts_node node)
{
    ts_node child = source->nodes[node].first;
    while (child != 0 && source->nodes[child].next != 0)
        child = source->nodes[child].next;
    return child;
}

static void add_in_brackets(ts_edit_plan *plan, ts_node parent, const missing *words, ts_text value)
{
    const ts_node last = last_child(plan->source, parent);
    plan->from = last != 0 ? plan->source->nodes[last].end : plan->source->nodes[parent].start + 1;
    plan->to   = plan->from;
    if (last != 0)
        ts_buffer_add(&plan->text, ", ");
    write_entry(plan, parent, words, value);
}

/* A line behind the last of its neighbours, and as far in as they are. */
static void add_line(ts_edit_plan *plan, ts_node parent, const missing *words, ts_text value)
{
    const ts_source     *source = plan->source;
    const ts_text        bytes  = source->bytes;
    const ts_node_place *place  = &source->nodes[parent];
    const size_t         first  = ts_entry_start(source, place->first);
    const size_t         end    = source->nodes[last_child(source, parent)].end;
    plan->from = plan->to = ts_line_end(bytes, end);
    ts_buffer_add(&plan->text, ts_line_ending(bytes));
    ts_buffer_fill(&plan->text, ' ', first - ts_line_start(bytes, first));
    if (place->form == TS_NODE_SEQUENCE)
        ts_buffer_add(&plan->text, "- ");
    write_entry(plan, parent, words, value);
}

/* A short form becomes a long one: 57 kg, {value: 57 kg, source: ...}. */
static bool add_to_scalar(ts_edit_plan *plan, ts_node node, const missing *words, ts_text value)
{
    const ts_source     *source = plan->source;
    const ts_node_place *place  = &source->nodes[node];
    bool                 known  = false;
    for (size_t i = 1; i < 4; i++)
        known = known || ts_text_is(words->first, ts_long_form_keys[i]);
    if (words->count != 1 || !known || place->start == place->end)
        return ts_plan_refuse(plan, "no-such-place",
                              "a single value stands here, without such a key",
                              "source, date or confidence");
    plan->from = place->start;
    plan->to   = place->end;
    ts_buffer_add(&plan->text, "{value: ");
    if (place->quote == 0 && ts_scalar_needs_quotes(place->scalar, true))
        ts_scalar_write(&plan->text, place->scalar, '\'');
    else
        ts_buffer_bytes(&plan->text, source->bytes.at + place->start, place->end - place->start);
    ts_buffer_add(&plan->text, ", ");
    write_pair(&plan->text, words->first, value, true);
    ts_buffer_add(&plan->text, "}");
    return true;
}

/* The number of a new item is one more than there are. */
static bool is_next_item(const ts_source *source, ts_node sequence, ts_text word)
{
    const ts_node  last     = last_child(source, sequence);
    const uint32_t next     = (last != 0 ? source->nodes[last].position : 0) + 1;
    uint32_t       position = 0;
    if (word.length == 0 || word.length > 6)
        return false;
    for (size_t i = 0; i < word.length; i++) {
        if (word.at[i] < '0' || word.at[i] > '9')
            return false;
        position = position * 10 + (uint32_t)(word.at[i] - '0');
    }
    return position == next;
}

/* The first table of the set that knows the first key of the mapping. */
static const ts_record_table *table_of(const ts_table_set *set, const ts_source *source,
                                       ts_node mapping)
{
    const ts_node first = source->nodes[mapping].first;
    for (size_t i = 0; i < set->count && first != 0; i++) {
        if (ts_field_named(set->tables[i], source->nodes[first].key) != NULL)
            return set->tables[i];
    }
    return NULL;
}

/* The child whose key is nearest to what was asked for, by a list that is kept short. */
static const char *nearest_key(const ts_source *source, ts_node mapping, ts_text word)
{
    const ts_record_table *found = table_of(&ts_drive_tables, source, mapping);
    if (found == NULL)
        found = table_of(&ts_rate_tables, source, mapping);
    if (found == NULL)
        found = table_of(&ts_sampling_tables, source, mapping);
    if (found == NULL)
        return NULL;
    const char *keys[TS_FIELDS_MOST];
    size_t      count = 0;
    for (size_t i = 0; i < found->field_count && count < TS_FIELDS_MOST; i++)
        keys[count++] = found->fields[i].key;
    return ts_text_nearest(word, keys, count);
}

bool ts_plan_addition(ts_edit_plan *plan, ts_node deepest, ts_text words, ts_text value)
{
    const ts_source     *source = plan->source;
    const ts_node_place *place  = &source->nodes[deepest];
    const missing        rest   = split(words);
    plan->at                    = deepest;
    if (place->form == TS_NODE_SCALAR)
        return add_to_scalar(plan, deepest, &rest, value);
    if (rest.count > 2 || rest.first.length == 0 || (rest.count == 2 && rest.second.length == 0)) {
        if (place->form == TS_NODE_MAPPING)
            plan->nearest = nearest_key(source, deepest, rest.first);
        return ts_plan_refuse(plan, "no-such-place", "there is nothing at this address",
                              "an address of the file, or a key next to one");
    }
    if (place->form == TS_NODE_SEQUENCE && !is_next_item(source, deepest, rest.first))
        return ts_plan_refuse(plan, "no-such-place", "there is no such item in this list",
                              "the number of an item, or the next one");
    if (place->flow)
        add_in_brackets(plan, deepest, &rest, value);
    else
        add_line(plan, deepest, &rest, value);
    return true;
}
