/* model/source.c: which place has an address, and which address has a place? */
#include "model/source.h"

#include <string.h>

#define DEPTH_MOST 64 /* more than any tree is deep */

void ts_source_address(const ts_source *source, ts_node node, ts_buffer *out)
{
    ts_node way[DEPTH_MOST] = {0};
    size_t  depth = 0;
    for (ts_node at = node; at != 0 && source->nodes[at].parent != 0;
         at         = source->nodes[at].parent) {
        if (depth < DEPTH_MOST)
            way[depth++] = at;
    }
    for (size_t i = depth; i-- > 0;) {
        const ts_node_place *place = &source->nodes[way[i]];
        if (i + 1 < depth)
            ts_buffer_add(out, "/");
        if (place->position > 0)
            ts_buffer_integer(out, place->position);
        else
            ts_buffer_text(out, place->key);
    }
}

ts_node ts_source_child(const ts_source *source, ts_node mapping, ts_text key)
{
    if (source->nodes[mapping].form != TS_NODE_MAPPING)
        return 0;
    ts_node child = source->nodes[mapping].first;
    while (child != 0 && !ts_text_equal(source->nodes[child].key, key))
        child = source->nodes[child].next;
    return child;
}

ts_node ts_source_value(const ts_source *source, ts_node node)
{
    if (source->nodes[node].form == TS_NODE_SCALAR)
        return node;
    const ts_node value = ts_source_child(source, node, TS_TEXT("value"));
    return value != 0 && source->nodes[value].form == TS_NODE_SCALAR ? value : 0;
}

/* A position as addresses write it: digits without a leading zero; 0 for anything else. */
static uint32_t position_of(ts_text word)
{
    uint64_t position = 0;
    if (word.length == 0 || word.length > 9 || word.at[0] == '0')
        return 0;
    for (size_t i = 0; i < word.length; i++) {
        if (word.at[i] < '0' || word.at[i] > '9')
            return 0;
        position = position * 10 + (uint64_t)(word.at[i] - '0');
    }
    return (uint32_t)position;
}

static ts_node item(const ts_source *source, ts_node sequence, ts_text word)
{
    const uint32_t position = position_of(word);
    if (position == 0)
        return 0;
    ts_node child = source->nodes[sequence].first;
    while (child != 0 && source->nodes[child].position != position)
        child = source->nodes[child].next;
    return child;
}

ts_node ts_source_find(const ts_source *source, ts_text address, ts_node *deepest)
{
    ts_node node = source->node_count > 0 ? 1 : 0;
    size_t  from = 0;
    ts_node unused = 0;
    deepest  = deepest != NULL ? deepest : &unused;
    *deepest = node;
    while (node != 0 && from < address.length) {
        size_t to = from;
        while (to < address.length && address.at[to] != '/')
            to++;
        const ts_text word = {address.at + from, to - from};
        const bool    list = source->nodes[node].form == TS_NODE_SEQUENCE;
        node               = list ? item(source, node, word) : ts_source_child(source, node, word);
        if (node != 0)
            *deepest = node;
        if (to + 1 == address.length)
            return 0; /* an address does not end in a slash */
        from = to + 1;
    }
    return node;
}

/* ---- parts without a place in the file --------------------------------------------------------
 */

ts_status ts_source_make_room(ts_source *source, uint32_t count, ts_arena *arena)
{
    if (source->made_room - source->made_count >= count)
        return TS_OK; /* what others asked for and did not need */
    const size_t   used  = (size_t)source->node_count + source->made_count + 1;
    ts_node_place *nodes = TS_TAKE(arena, ts_node_place, used + count);
    if (nodes == NULL)
        return TS_NO_MEMORY;
    memcpy(nodes, source->nodes, used * sizeof *nodes);
    source->nodes     = nodes;
    source->made_room = source->made_count + count;
    return TS_OK;
}

ts_node ts_source_make(ts_source *source, ts_node parent, const char *key)
{
    if (parent == 0 || source->nodes[parent].form != TS_NODE_MAPPING)
        return 0;
    const ts_text name = ts_text_of(key);
    ts_node       last = 0;
    for (ts_node child = source->nodes[parent].first; child != 0;
         child         = source->nodes[child].next) {
        if (ts_text_equal(source->nodes[child].key, name))
            return child;
        last = child;
    }
    if (source->made_count == source->made_room)
        return 0;
    const ts_node  node   = source->node_count + ++source->made_count;
    ts_node_place *record = &source->nodes[parent];
    source->nodes[node]   = (ts_node_place){.parent     = parent,
                                            .form       = TS_NODE_MAPPING,
                                            .key        = name,
                                            .line       = record->line,
                                            .column     = record->column,
                                            .key_line   = record->key_line,
                                            .key_column = record->key_column,
                                            .start      = record->end,
                                            .end        = record->end};
    if (last == 0)
        record->first = node;
    else
        source->nodes[last].next = node;
    return node;
}
