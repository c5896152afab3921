/* model/duplicate_key.c: does a record say the same key twice? */
#include "model/duplicate_key.h"

#include "base/buffer.h"

#include <string.h>

#define FEW 12 /* up to here comparing each with each is quicker than sorting */

/* False without memory. */
static bool complain(const ts_source *source, ts_node first, ts_node second, ts_arena *arena,
                     ts_diagnostics *list)
{
    const ts_node_place *a = &source->nodes[first];
    const ts_node_place *b = &source->nodes[second];
    ts_buffer            says;
    ts_buffer_open(&says, ts_arena_allocator(arena));
    ts_buffer_print(&says, "`%.*s` stands twice in this record, first on line %u",
                    (int)(b->key.length < 60 ? b->key.length : 60), b->key.at, a->key_line);
    const bool sound = !says.failed;
    if (sound)
        ts_diagnose(list, &(ts_diagnostic){.code     = "duplicate-key",
                                           .line     = b->key_line,
                                           .column   = b->key_column,
                                           .columns  = (uint32_t)ts_text_columns(b->key),
                                           .says     = says.bytes,
                                           .expected = "each key once in a record"});
    ts_buffer_close(&says);
    return sound;
}

static int compare(const ts_source *source, ts_node a, ts_node b)
{
    const ts_text key_a = source->nodes[a].key, key_b = source->nodes[b].key;
    const size_t  shorter = key_a.length < key_b.length ? key_a.length : key_b.length;
    const int     order   = shorter == 0 ? 0 : memcmp(key_a.at, key_b.at, shorter);
    if (order != 0)
        return order;
    return (key_a.length > key_b.length) - (key_a.length < key_b.length);
}

static bool compare_each_with_each(const ts_source *source, const ts_node *children, size_t count,
                                   ts_arena *arena, ts_diagnostics *list)
{
    bool sound = true;
    for (size_t i = 1; i < count; i++) {
        for (size_t k = 0; k < i; k++) {
            if (ts_text_equal(source->nodes[children[k]].key, source->nodes[children[i]].key)) {
                sound = complain(source, children[k], children[i], arena, list) && sound;
                break;
            }
        }
    }
    return sound;
}

/* Merges the sorted runs [from, middle) and [middle, to) of `in` into `out`; equal keys stay in the
 * order of the file. */
static void merge(const ts_source *source, const ts_node *in, ts_node *out, const size_t ends[3])
{
    size_t a = ends[0], b = ends[1];
    for (size_t k = ends[0]; k < ends[2]; k++) {
        const bool from_a = a < ends[1] && (b >= ends[2] || compare(source, in[a], in[b]) <= 0);
        out[k]            = from_a ? in[a++] : in[b++];
    }
}

/* The C library's qsort asks for memory of its own, so this sorts by merging. */
static const ts_node *sorted(const ts_source *source, ts_node *children, ts_node *spare,
                             size_t count)
{
    for (size_t width = 1; width < count; width *= 2) {
        for (size_t from = 0; from < count; from += 2 * width) {
            const size_t middle = from + width < count ? from + width : count;
            const size_t to     = from + 2 * width < count ? from + 2 * width : count;
            merge(source, children, spare, (const size_t[3]){from, middle, to});
        }
        ts_node *swap = children;
        children      = spare;
        spare         = swap;
    }
    return children;
}

bool ts_diagnose_duplicates(const ts_source *source, ts_node mapping, ts_arena *arena,
                            ts_diagnostics *list)
{
    ts_node few[FEW];
    size_t  count = 0;
    for (ts_node child = source->nodes[mapping].first; child != 0;
         child         = source->nodes[child].next) {
        if (count < FEW)
            few[count] = child;
        count++;
    }
    if (count <= FEW)
        return compare_each_with_each(source, few, count, arena, list);
    ts_node *children = TS_TAKE(arena, ts_node, 2 * count);
    if (children == NULL)
        return false;
    size_t k = 0;
    for (ts_node child = source->nodes[mapping].first; child != 0;
         child         = source->nodes[child].next)
        children[k++] = child;
    const ts_node *order = sorted(source, children, children + count, count);
    bool           sound = true;
    for (size_t i = 1; i < count && sound; i++) {
        if (compare(source, order[i - 1], order[i]) == 0)
            sound = complain(source, order[i - 1], order[i], arena, list);
    }
    return sound;
}
