/* Which values of the file changed, came or went? */
#include "report/comparison_parts.h"

#include <math.h>
#include <string.h>

static void add(ts_changes *list, const char *address, const char *before, const char *after)
{
    ts_change_add(list, (ts_change){.kind     = TS_CHANGE_INPUT,
                                    .subject  = address,
                                    .before   = before,
                                    .after    = after,
                                    .relative = NAN});
}

static const char *keep(ts_changes *list, ts_text text)
{
    const char *kept = ts_arena_copy(list->arena, text.at, text.length);
    list->failed     = list->failed || kept == NULL;
    return kept != NULL ? kept : "";
}

/* Values of `here` that the other file has otherwise, or not at all. */
static void pass(ts_changes *list, const ts_answer *here, const ts_answer *there, bool forward)
{
    for (ts_node n = 1; n <= here->source->node_count; n++) {
        const ts_node_place *place = &here->source->nodes[n];
        if (place->form != TS_NODE_SCALAR)
            continue;
        const char   *address = ts_change_address(list, here, n);
        ts_node       deepest;
        const ts_node other  = ts_source_find(there->source, ts_text_of(address), &deepest);
        const bool    scalar = other != 0 && there->source->nodes[other].form == TS_NODE_SCALAR;
        if (!scalar && forward)
            add(list, address, NULL, keep(list, place->scalar));
        else if (!scalar)
            add(list, address, keep(list, place->scalar), NULL);
        else if (forward && !ts_text_equal(place->scalar, there->source->nodes[other].scalar))
            add(list, address, keep(list, there->source->nodes[other].scalar),
                keep(list, place->scalar));
    }
}

void ts_compare_inputs(ts_changes *list, const ts_answer *before, const ts_answer *after)
{
    pass(list, after, before, true);
    pass(list, before, after, false);
}
