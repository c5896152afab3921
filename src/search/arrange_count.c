/* search/arrange_count.c: how many arrangements meet every demand? */
#include "search/arrange_join.h"
#include "search/arrange_search.h"
#include "search/locked_memory.h"

#include <string.h>

typedef struct counter {
    ts_arrange_tables tables;
    ts_allocator      allocator;
    ts_arena         *arena;
    ts_branch_room   *room;
    uint64_t         *ways; /* [set] on the boxes so far */
    uint64_t         *own;  /* [set] on the box at hand  */
} counter;

/* Every label is kept: no bound, no dominance. */
static bool add_pair(counter *k, uint32_t box, uint32_t choice)
{
    const ts_branch_wish wish  = {.cutoff = 0.0};
    ts_arena            *arena = ts_arena_open(&k->allocator);
    ts_pair_tables       pair;
    ts_branches          branches;

    bool done = arena != NULL &&
                ts_pair_tables_make(&pair, &k->tables, box, choice, false, arena) &&
                ts_branches_grow(&branches, &pair, &wish, k->room);
    for (uint32_t set = 1; done && set <= k->tables.all; set++)
        k->own[set] += ts_join_count(&branches, set);
    ts_arena_close(arena);
    return done;
}

/* Sets are shared out between the boxes before and this one. */
static bool add_box(counter *k, uint32_t box)
{
    const ts_arrange_problem *p     = k->tables.problem;
    const size_t              sets  = (size_t)k->tables.all + 1;
    uint64_t                 *fresh = TS_TAKE(k->arena, uint64_t, sets);

    memset(k->own, 0, sets * sizeof *k->own);
    k->own[0] = 1; /* without accessories there is no box, which is one way */
    for (uint32_t c = 0; fresh != NULL && c < p->boxes[box].choice_count; c++)
        if (!add_pair(k, box, c))
            return false;
    if (fresh == NULL)
        return false;
    for (uint32_t set = 0; set < sets; set++)
        for (uint32_t part = set;; part = (part - 1) & set) {
            fresh[set] += k->own[part] * k->ways[set & ~part];
            if (part == 0)
                break;
        }
    k->ways = fresh;
    return true;
}

static bool count_all(counter *k, const ts_arrange_problem *problem)
{
    k->arena = ts_arena_open(&k->allocator);
    k->room  = ts_branch_room_open(&k->allocator, 1);
    if (k->arena == NULL || k->room == NULL ||
        !ts_arrange_tables_make(&k->tables, problem, k->arena))
        return false;
    k->ways = TS_TAKE(k->arena, uint64_t, (size_t)k->tables.all + 1);
    k->own  = TS_TAKE(k->arena, uint64_t, (size_t)k->tables.all + 1);
    if (ts_arena_failed(k->arena))
        return false;
    k->ways[0] = 1;
    for (uint32_t b = 0; b < problem->box_count; b++)
        if (!add_box(k, b))
            return false;
    return true;
}

ts_status ts_arrange_count(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                           uint64_t *count)
{
    ts_locked_memory memory;
    counter          k = {0};

    *count = 0;
    if (!ts_locked_memory_open(&memory, wish->allocator, wish->memory_most))
        return TS_NO_MEMORY;
    k.allocator     = ts_locked_memory_allocator(&memory);
    const bool done = count_all(&k, problem);
    if (done)
        *count = k.ways[k.tables.all];
    ts_branch_room_close(k.room);
    ts_arena_close(k.arena);
    ts_locked_memory_close(&memory);
    return done ? TS_OK : TS_NO_MEMORY;
}
