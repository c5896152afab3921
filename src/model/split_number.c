/* model/split_number.c: does a comma inside of a number cut it in two? */
#include "model/split_number.h"

#include "quantity/quantity.h"

#include <string.h>

/* "2", or "6600..7", or "6..7" behind a comma met before. */
static bool is_bare_number(ts_text text)
{
    for (size_t i = 0; i < text.length; i++) {
        if (strchr("+-.0123456789", text.at[i]) == NULL)
            return false;
    }
    return text.length > 0 && text.at[text.length - 1] >= '0';
}

/* Does this child go on with the number that ends at `end`: ",25 mm", without blank or colon? */
static bool goes_on(const ts_source *source, const ts_node_place *child, size_t end)
{
    const ts_text bytes = source->bytes;
    if (child->form != TS_NODE_SCALAR || child->scalar.length > 0 || child->quote != 0 ||
        child->key_start != end + 1 || bytes.at[end] != ',' || child->key.length == 0 ||
        bytes.at[child->key_start] < '0' || bytes.at[child->key_start] > '9')
        return false;
    size_t behind = child->key_end;
    while (behind < bytes.length && bytes.at[behind] == ' ')
        behind++;
    return behind == bytes.length || bytes.at[behind] != ':';
}

/* The last child of the number that begins as the value of `first`; `first` itself when none. */
static ts_node last_part(const ts_source *source, ts_node first)
{
    const ts_node_place *nodes = source->nodes;
    ts_node              last  = first;
    ts_text              part  = nodes[first].scalar;
    size_t               end   = nodes[first].end;
    while (nodes[last].next != 0 && is_bare_number(part) &&
           goes_on(source, &nodes[nodes[last].next], end)) {
        last = nodes[last].next;
        part = nodes[last].key;
        end  = nodes[last].key_end;
    }
    return last;
}

static bool is_range(ts_text text)
{
    for (size_t i = 0; i + 1 < text.length; i++) {
        if (text.at[i] == '.' && text.at[i + 1] == '.')
            return true;
    }
    return false;
}

static void complain(const ts_source *source, ts_node first, ts_text text, const char *address,
                     ts_diagnostics *list)
{
    double            value;
    ts_quantity_fault fault;
    const char       *says = "a comma stands inside a number of this range";
    if (!is_range(text) && !ts_quantity_parse(text, TS_KIND_NUMBER, &value, NULL, &fault))
        says = fault.says;
    ts_diagnose(list, &(ts_diagnostic){.code     = "decimal-comma",
                                       .line     = source->nodes[first].line,
                                       .column   = source->nodes[first].column,
                                       .columns  = (uint32_t)ts_text_columns(text),
                                       .says     = says,
                                       .expected = is_range(text) ? "a decimal point" : NULL,
                                       .address  = address});
}

/* False without memory. */
static bool take_number(ts_source *source, ts_node first, ts_node last, ts_arena *arena,
                        ts_diagnostics *list)
{
    ts_node_place *nodes = source->nodes;
    const size_t   start = nodes[first].start;
    ts_buffer      address;
    ts_buffer_open(&address, ts_arena_allocator(arena));
    ts_source_address(source, first, &address);
    complain(source, first, (ts_text){source->bytes.at + start, nodes[last].key_end - start},
             address.bytes, list);
    const bool sound = !address.failed;
    ts_buffer_close(&address);
    for (ts_node node = first; node != last; node = nodes[node].next)
        nodes[node].spoiled = true;
    nodes[last].spoiled = true;
    return sound;
}

bool ts_diagnose_split_numbers(ts_source *source, ts_arena *arena, ts_diagnostics *list)
{
    const ts_node_place *nodes = source->nodes;
    for (ts_node node = 1; node <= source->node_count; node++) {
        const ts_node_place *place = &nodes[node];
        if (place->form != TS_NODE_SCALAR || place->quote != 0 || place->spoiled ||
            !nodes[place->parent].flow || nodes[place->parent].form != TS_NODE_MAPPING)
            continue;
        const ts_node last = last_part(source, node);
        if (last != node && !take_number(source, node, last, arena, list))
            return false;
    }
    return true;
}
