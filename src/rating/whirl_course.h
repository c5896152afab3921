/* rating/whirl_course.h: how do the whirl speeds of a rotor go with its speed, how far does its
 * unbalance bend it, and which tubes would be allowed?
 *
 * Unbalance   Each body (both gearshafts and the tube, or a box shaft) keeps what its balance grade
 *             allows at the highest speed, half of it near each of its ends, all on one side: the
 *             worst for the first shape.
 * Map         First forward critical at the set margin over the highest speed; gearshafts stay, the
 *             tube keeps its share of bore.
 */
#ifndef TS_RATING_WHIRL_COURSE_H
#define TS_RATING_WHIRL_COURSE_H

#include "rating/drive_whirl.h"

#define TS_CAMPBELL_MODES 3   /* of either sense                   */
#define TS_WHIRL_REACH    1.5 /* speeds up to so much of the highest */
#define TS_MAP_PLACES     4
extern const double ts_map_places[TS_MAP_PLACES]; /* NaN: no mid bearing; shares of the length */

typedef struct ts_whirl_course {
    const ts_whirl_item *item;
    int                  speeds;
    double              *Omega;    /* [speed] rad/s                                        */
    double              *forward;  /* [mode * speeds + speed] rad/s                         */
    double              *backward; /* the same                                              */
    double               criticals[2][TS_CAMPBELL_MODES]; /* backward, forward; INFINITY: none */
    int                  nodes;
    double              *x;      /* [node] m                                             */
    double              *shapes; /* [mode * nodes + node] of the forward criticals          */

    double  U;                   /* kg.m, of all bodies together                             */
    double *swing;               /* [speed] m, largest deflection by unbalance              */
    double *load;                /* [speed] N, largest load of a bearing by it              */
    int     loaded;              /* which bearing that is at the highest speed               */
    double  top_swing, top_load; /* at the highest speed of the shaft             */
    double  top_x;               /* m, where it swings most then                   */

    int     diameters; /* of the map; 0: the rotor is no radial shaft             */
    double *outside;   /* [diameter] m                                            */
    double *longest;   /* [place * diameters + diameter] m; NaN: none              */
} ts_whirl_course;

enum { TS_COURSE_SPEEDS = 1, TS_COURSE_MAP = 2 };

/* `wanted`: TS_COURSE_SPEEDS for all that goes with speed, TS_COURSE_MAP for the tubes; what is not
 * wanted stays 0. */
ts_status ts_whirl_course_of(const ts_whirls *whirls, uint32_t item, int speeds, unsigned wanted,
                             ts_arena *arena, ts_whirl_course *out);

/* The radial shaft whose first forward critical is nearest to its highest speed, of solved ones;
 * UINT32_MAX: there is none. */
uint32_t ts_whirls_nearest(const ts_whirls *whirls);

#endif
