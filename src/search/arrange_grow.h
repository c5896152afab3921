/* search/arrange_grow.h: what do those who grow the branches of one set share?  Of arrange_branch.c
 * alone. */
#ifndef TS_SEARCH_ARRANGE_GROW_H
#define TS_SEARCH_ARRANGE_GROW_H

#include "search/arrange_desk.h"

typedef struct ts_grower {
    const ts_branch_wish *wish;
    const ts_pair_tables *pair;
    ts_branches          *out;
    ts_branch_room       *room;
    const uint32_t       *sets;  /* of the size at hand */
    uint32_t              plane; /* at hand             */
    atomic_bool          *halt;  /* somebody said stop */
    atomic_uint_fast64_t *made;  /* labels, by all workers, where their number has a limit */
} ts_grower;

/* The set at hand. */
typedef struct ts_bench {
    const ts_grower      *g;
    ts_desk              *d;
    uint32_t              set, plane;
    const ts_pair_tables *pair;  /* of that plane */
    ts_label_list        *grown; /* ... [set]     */
    ts_ahead              ahead;
    int      ended; /* -1: growing; 0, 1: being joined to an input that is (not) reversed */
    size_t   worker;
    uint32_t turns; /* since it was last asked whether to stop */
    uint64_t told;  /* labels of this worker that all know of  */
} ts_bench;

/* Tells all how many labels there are; more than allowed end the search. */
static inline void ts_tell_made(ts_bench *b)
{
    const uint64_t most = b->g->wish->labels_most, more = b->d->counts.made - b->told;
    if (most == 0 || more == 0)
        return;
    b->told += more;
    if (atomic_fetch_add_explicit(b->g->made, more, memory_order_relaxed) + more > most)
        atomic_store_explicit(b->g->halt, true, memory_order_relaxed);
}

/* Is the search to end?  One worker asks, now and then, and all of them hear it. */
#define TS_TURNS_BETWEEN 64
static inline bool ts_is_halted(ts_bench *b)
{
    const ts_branch_wish *wish = b->g->wish;
    ts_tell_made(b);
    if (wish->stop != NULL && b->worker == 0 && ++b->turns >= TS_TURNS_BETWEEN) {
        b->turns = 0;
        if (wish->stop(wish->context))
            atomic_store_explicit(b->g->halt, true, memory_order_relaxed);
    }
    return atomic_load_explicit(b->g->halt, memory_order_relaxed);
}

static inline ts_label *ts_label_at(const ts_bench *b, uint32_t i)
{
    return (ts_label *)(void *)(b->d->labels + (size_t)i * b->g->out->label_size);
}

static inline double ts_gear_mass(const ts_pair_tables *pair, uint32_t z, uint32_t steps)
{
    return pair->module->gear_mass[z * (pair->module->steps_top + 1) + steps];
}

/* The width that the last gear will have at least, for the mesh inwards carries the whole set. */
static inline double ts_least_last(const ts_bench *b, const ts_label *l)
{
    const ts_pair_tables *pair  = b->pair;
    const uint32_t        own   = ts_pair_least(pair, b->set, l->z, l->reversed != 0);
    const uint32_t        steps = own > l->need ? own : l->need;
    return steps > pair->module->steps_most[l->z] ? (double)INFINITY
                                                  : ts_gear_mass(pair, l->z, steps);
}

/* Labels of one shaft that carries the whole set (arrange_shaft.c). */
void ts_bench_start(ts_bench *bench, const ts_carry *carry);
/* Labels of the rest of the set, each with one more shaft. */
void ts_bench_extend(ts_bench *bench, const ts_carry *carry);
/* Labels of this set with `before` idlers in a row, each with one more. */
void ts_bench_add_idlers(ts_bench *bench, uint8_t before);
/* Labels of the rest of the set in the plane that the step shaft `at` drives, each with it; carry
 * NULL: it has no pad. */
void ts_bench_step(ts_bench *bench, uint16_t at, const ts_carry *carry);
/* Labels of this set, each meshed with the input. */
void ts_bench_end(ts_bench *bench);

/* Of the labels with so many idlers, leaves as many as the beam is wide (arrange_pack.c). */
void ts_bench_narrow(ts_bench *bench, uint8_t idlers);
/* Packs the living into a list, in the order in which they came or by mass, and clears the desk. */
void ts_bench_pack(ts_bench *bench, ts_label_list *list);
void ts_bench_pack_by_mass(ts_bench *bench, ts_label_list *list);

#endif
