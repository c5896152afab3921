/* search/arrange_label.h: a branch as far as it is built, from its free end inwards.
 *
 * A label stands for one branch carrying one set, whose last shaft is known.  It keeps what decides
 * how it may go on and what that will cost, and nothing else:
 *
 *   mass     of all that is settled: everything but the last gear, whose width may still grow
 *   angle    from the free end to the last shaft
 *   need     width of the last gear so far
 *   reach    per face, the bodies that may still be met by one to come, with their distance
 *   fronts   how many accessories are on the front: what is still to come is in their way
 *   z, sense, reversed, idlers in a row: of the last shaft
 */
#ifndef TS_SEARCH_ARRANGE_LABEL_H
#define TS_SEARCH_ARRANGE_LABEL_H

#include "search/arrange_tables.h"

#include <math.h>

typedef struct ts_reach {
    double   distance; /* from the axis of the last shaft, rad */
    uint32_t key;      /* class of the body                    */
} ts_reach;

typedef struct ts_label {
    double   mass, angle;
    double   tail[2];    /* per face: the most of half[body] - distance; -inf without a body */
    uint64_t shape;      /* says which accessories stand in which order on which faces      */
    uint32_t parent;     /* index in the list of `parent_set`                               */
    uint16_t parent_set; /* 0: the free end                                                 */
    uint16_t step;       /* 0, or 1 + index of the step shaft that it is: the parent is a label of
                            the plane that this drives                                      */
    uint32_t next;       /* while a list is built: the next label of the same bucket        */
    uint16_t z, need;
    int8_t   on[2];
    uint8_t  sense, reversed, idlers;
    uint8_t  fronts; /* how many of the set are on the front */
    uint8_t  dead;
    uint8_t  reaches[2]; /* how many entries of reach[] each face has, nearest first */
    ts_reach reach[];    /* [face * reach_most + i] */
} ts_label;

static inline size_t ts_label_size(const ts_box_tables *box)
{
    return sizeof(ts_label) + 2 * box->reach_most * sizeof(ts_reach);
}

/* What is common to all labels of one set. */
typedef struct ts_ahead {
    const ts_box_tables *box;
    uint32_t             open[2];           /* classes that may still come, per face */
    uint8_t              least[2], most[2]; /* of them */
    /* Per face, what all that may still come there counts as for each that it is in the way of. */
    double in_way[2];
} ts_ahead;

ts_ahead ts_ahead_of(const ts_box_tables *box, uint32_t set);

/* Moves the bodies of `from` outwards by `angle`, puts those of `on` on the new last shaft, and
 * forgets what can no longer be met by a body at least `nearest` further in. */
void ts_label_move(const ts_ahead *ahead, const ts_label *from, double angle, const int8_t on[2],
                   double nearest, ts_label *to);

/* Is whatever `b` can become also open to `a`, at no higher mass?  Both have the same set, teeth,
 * sense and flanks; `nearest` as above. */
bool ts_label_beats(const ts_ahead *ahead, double nearest, const ts_label *a, const ts_label *b);

/* How far from the last shaft a body of class `key` must stay because of those on `face`. */
static inline double ts_label_owed(const ts_box_tables *box, const ts_label *l, int face,
                                   uint32_t key)
{
    const ts_reach *r    = &l->reach[(size_t)face * box->reach_most];
    double          owed = -(double)INFINITY;
    for (uint32_t i = 0; i < l->reaches[face]; i++) {
        const double one = box->apart[key][r[i].key] - r[i].distance;
        if (one > owed)
            owed = one;
    }
    return owed;
}

#endif
