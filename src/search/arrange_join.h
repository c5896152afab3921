/* search/arrange_join.h: which left branch, input shaft and right branch make the lightest box? */
#ifndef TS_SEARCH_ARRANGE_JOIN_H
#define TS_SEARCH_ARRANGE_JOIN_H

#include "search/arrange_branch.h"

/* One box with a set of accessories. */
typedef struct ts_joint {
    double          mass;
    uint64_t        shape; /* order and faces; a mirror image has the same where sides are free */
    const ts_label *branches[2];
    const ts_carry *input; /* NULL: nothing on the input shaft */
} ts_joint;

/* Offers box after box that carries `set` to `best`, at most `room` of different shapes, by mass.
 * Entries without branches are limits: only what is lighter than the last entry is taken.  Returns
 * whether anything was; adds to `tally`. */
bool ts_join_set(const ts_branches *branches, uint32_t set, ts_joint *best, size_t room,
                 ts_join_tally *tally);

/* How many boxes that carry `set` there are; the labels must have been grown without a cutoff and
 * with `shapes` 0. */
uint64_t ts_join_count(const ts_branches *branches, uint32_t set);

/* Writes out what the labels stand for. */
void ts_join_write(const ts_branches *branches, const ts_joint *joint, ts_arranged_box *box);

#endif
