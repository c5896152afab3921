/* search/arrange_relax.h: what must one shaft cost at least, wherever it stands?  Of arrange_rest.c
 * alone. */
#ifndef TS_SEARCH_ARRANGE_RELAX_H
#define TS_SEARCH_ARRANGE_RELAX_H

#include "search/arrange_rest.h"

enum { TS_LOAD_LEVELS = 64 }; /* loads are rounded down to one of these */

/* What a shaft may carry, both ways round taken together. */
typedef struct ts_relaxed_carry {
    uint32_t  set;
    uint8_t   senses;
    ts_window window;
    double    pads, halves;
    int8_t    on[2]; /* who, each of them once; -1: nobody */
    /* Least cost of shaft and gear, [arcs of the gear - 1][reversed][level]; NaN: not yet asked. */
    double (*cost)[2][TS_LOAD_LEVELS];
} ts_relaxed_carry;

/* All of one plane. */
typedef struct ts_relaxed_plane {
    const ts_pair_tables *pair;
    ts_relaxed_carry     *carries;
    size_t                carry_count;
    double                level_size; /* N */
    double *least_on[2]; /* [arcs - 1][z]: least cost of a gear of z teeth or more, unloaded */
    double (*idler)[TS_LOAD_LEVELS]; /* [reversed][level], NaN: not yet asked */
    double (*next)[2]; /* [set][sense of the next shaft]: least cost up to there, of a branch */
} ts_relaxed_plane;

bool ts_relaxed_plane_make(ts_relaxed_plane *plane, const ts_pair_tables *pair, ts_arena *arena);
/* Forgets what costs were under another table, and begins this one. */
void ts_relaxed_plane_begin(ts_relaxed_plane *plane, const ts_rest_table *table);

/* A gear alone, with `arcs` meshes, one of which carries the set. */
double ts_relaxed_gear(const ts_rest_table *table, const ts_pair_tables *pair, uint32_t z,
                       uint32_t set, bool reversed, int arcs);

/* A shaft that joins `outer` and its own to `inner`, with the gear that is best for it. */
double ts_relaxed_shaft(ts_relaxed_plane *plane, const ts_rest_table *table,
                        ts_relaxed_carry *carry, uint32_t outer, uint32_t inner);

/* A step shaft of `first` that drives `second`, with what it carries; carry NULL: nothing. */
double ts_relaxed_step(const ts_relaxed_plane *first, const ts_relaxed_plane *second,
                       const ts_rest_table *table, const ts_plane_step *step,
                       const ts_relaxed_carry *carry, uint32_t outer, uint32_t inner);

/* with_last[sense of the last shaft] of a set turned into [sense of the next shaft inwards], with
 * as many idlers between as are best; or the other way round, which is the same. */
void ts_relaxed_idlers(ts_relaxed_plane *plane, const ts_rest_table *table, uint32_t set,
                       const double with_last[2], double with_next[2]);

#endif
