/* search/arrange_desk.h: what one worker needs while branches grow: labels of the set at hand, and
 * a place for the kept ones. */
#ifndef TS_SEARCH_ARRANGE_DESK_H
#define TS_SEARCH_ARRANGE_DESK_H

#include "search/arrange_branch.h"

#define TS_NO_LABEL UINT32_MAX

typedef struct ts_desk {
    ts_arena           *kept;
    const ts_allocator *allocator;
    char               *labels; /* of the set at hand */
    uint32_t            count, room;
    uint32_t           *bucket; /* [4 * z + 2 * sense + reversed] the first label, or TS_NO_LABEL */
    size_t              buckets;
    uint32_t           *order; /* of compaction */
    uint32_t            order_room;
    ts_label           *draft;
    size_t              draft_size;
    ts_label_count      counts;
    bool                no_memory;
} ts_desk;

struct ts_branch_room {
    ts_allocator allocator;
    size_t       workers;
    ts_desk     *desks;
    ts_arena    *lists;
};

/* False without memory; what was taken is given back with the room. */
bool ts_desk_open(ts_desk *desk, const ts_allocator *allocator, const ts_pair_tables *pair,
                  size_t label_size);

/* Gives back what the labels of the pair before have taken. */
void ts_branch_room_clear(ts_branch_room *room);

static inline void *ts_desk_resize(const ts_desk *desk, void *block, size_t size)
{
    return desk->allocator->resize(desk->allocator->context, block, size);
}

#endif
