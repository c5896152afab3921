/* search/arrange_label.c: what does a branch still owe, and which of two branches is never worse?
 */
#include "search/arrange_label.h"

#include <string.h>

/* Two labels that differ by less are alike: rounding of sums in another order. */
#define ROUNDING 1e-12

ts_ahead ts_ahead_of(const ts_box_tables *box, uint32_t set)
{
    ts_ahead a = {.box = box};
    for (int face = 0; face < 2; face++) {
        a.open[face] = box->open_keys[face][set];
        for (uint8_t key = 0; key < box->key_count; key++) {
            if ((a.open[face] >> key & 1u) == 0)
                continue;
            if ((a.open[face] & ((1u << key) - 1u)) == 0)
                a.least[face] = key;
            a.most[face] = key;
        }
        for (uint32_t i = 0; box->serviced && i < TS_ARRANGE_ACCESSORIES; i++)
            if ((set >> i & 1u) == 0)
                a.in_way[face] += box->lift[face][i];
    }
    return a;
}

/* The difference of what two bodies ask of a third is monotone in the third's radius (the arc sine
 * is convex), so that looking at the smallest and at the largest that may come is enough. */
static bool covers(const ts_ahead *ahead, int face, const ts_reach *a, const ts_reach *b)
{
    const double(*apart)[TS_KEYS_MOST] = ahead->box->apart;
    const uint8_t lo = ahead->least[face], hi = ahead->most[face];

    /* With rounding allowed for, one of two covers the other wherever the difference is constant.
     */
    return apart[lo][a->key] - a->distance >= apart[lo][b->key] - b->distance - ROUNDING &&
           apart[hi][a->key] - a->distance >= apart[hi][b->key] - b->distance - ROUNDING;
}

/* Adds an entry that is further away than those before it, unless one of them says as much. */
static uint8_t add_reach(const ts_ahead *ahead, int face, ts_reach *list, uint8_t count,
                         ts_reach fresh, double nearest)
{
    const double most = ahead->box->apart[ahead->most[face]][fresh.key];

    if (fresh.distance + nearest >= most - TS_ANGLE_SLACK)
        return count;
    for (uint8_t i = 0; i < count; i++)
        if (covers(ahead, face, &list[i], &fresh))
            return count;
    uint8_t kept = 0;
    for (uint8_t i = 0; i < count; i++)
        if (!covers(ahead, face, &fresh, &list[i]))
            list[kept++] = list[i];
    list[kept] = fresh;
    return (uint8_t)(kept + 1);
}

void ts_label_move(const ts_ahead *ahead, const ts_label *from, double angle, const int8_t on[2],
                   double nearest, ts_label *to)
{
    const ts_box_tables *box = ahead->box;

    for (int face = 0; face < 2; face++) {
        const ts_reach *old   = from != NULL ? &from->reach[(size_t)face * box->reach_most] : NULL;
        const uint8_t   olds  = from != NULL ? from->reaches[face] : 0;
        ts_reach       *fresh = &to->reach[(size_t)face * box->reach_most];
        uint8_t         count = 0;
        double          tail  = from != NULL ? from->tail[face] - angle : -(double)INFINITY;

        if (on[face] >= 0) {
            const uint8_t key = box->key[on[face]];
            tail              = fmax(tail, box->half[key]);
            if (ahead->open[face] != 0)
                count = add_reach(ahead, face, fresh, 0, (ts_reach){0.0, key}, nearest);
        }
        for (uint8_t i = 0; i < olds && ahead->open[face] != 0; i++)
            count = add_reach(ahead, face, fresh, count,
                              (ts_reach){old[i].distance + angle, old[i].key}, nearest);
        to->reaches[face] = count;
        to->tail[face]    = tail;
    }
}

static bool owes_no_more(const ts_ahead *ahead, int face, double nearest, const ts_label *a,
                         const ts_label *b)
{
    if (a->reaches[face] == 0)
        return true;
    for (uint32_t open = ahead->open[face], key = 0; open != 0; open >>= 1, key++) {
        if ((open & 1u) == 0)
            continue;
        const double owed = ts_label_owed(ahead->box, a, face, key);
        if (owed <= nearest)
            continue;
        if (owed > ts_label_owed(ahead->box, b, face, key) + ROUNDING)
            return false;
    }
    return true;
}

/* What is still to come is in the way of more on one face and of as many fewer on the other; at
 * most so much more than with the other label. */
static double more_in_way(const ts_ahead *ahead, const ts_label *a, const ts_label *b)
{
    const int more = (int)a->fronts - (int)b->fronts;
    return more >= 0 ? (double)more * ahead->in_way[0] : (double)-more * ahead->in_way[1];
}

bool ts_label_beats(const ts_ahead *ahead, double nearest, const ts_label *a, const ts_label *b)
{
    return a->mass + more_in_way(ahead, a, b) <= b->mass + ROUNDING &&
           a->angle <= b->angle + ROUNDING && a->need <= b->need && a->idlers <= b->idlers &&
           owes_no_more(ahead, 0, nearest, a, b) && owes_no_more(ahead, 1, nearest, a, b);
}
