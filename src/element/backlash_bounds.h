/* element/backlash_bounds.h: between which bounds does the play of two gears lie?
 *
 * Bounds    Play grows with the distance of the axes and with every bit by which teeth are thinner,
 *           and with nothing else; so its bounds are at the ends of those, and hold for whatever
 *           lies between.  Temperatures enter as an interval each: how far the axes move apart over
 *           how much the gears grow is monotonic in both of them, so that its ends are exact; the
 *           growth of the play itself is taken apart from it, which is a little wide and safe.
 * Built     At 20 degrees Celsius, where lengths are measured (ISO 1).
 * Units     m, K, 1/K.  Allowances: thinner teeth and closer axes are negative.
 */
#ifndef TS_ELEMENT_BACKLASH_BOUNDS_H
#define TS_ELEMENT_BACKLASH_BOUNDS_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"

#define TS_TEMPERATURE_BUILT 293.15 /* K; ISO 1 */

typedef enum ts_backlash_end {
    TS_BACKLASH_MIN, /* as built: j_bnmin, from E_sns1, E_sns2 and A_ai */
    TS_BACKLASH_MAX, /*           j_bnmax, from E_sni1, E_sni2 and A_ae */
    TS_BACKLASH_LOW, /* over all temperatures: j_bnlow  */
    TS_BACKLASH_HIGH /*                        j_bnhigh */
} ts_backlash_end;
enum { TS_BACKLASH_ENDS = 4 };

/* What the makers are allowed; one row an end, the least play first. */
typedef struct ts_backlash_allowance {
    double E_sn1[2], E_sn2[2]; /* of the normal tooth thickness at the reference circle:
                                  E_sns, E_sni     */
    double A_a[2];             /* of the centre distance: A_ai, A_ae */
} ts_backlash_allowance;

typedef struct ts_backlash_warmth {
    double theta[2];    /* K, both gears: the coldest and the warmest       */
    double dtheta[2];   /* K, casing above the gears: the least and the most */
    double alpha_gears; /* 1/K, linear expansion                            */
    double alpha_casing;
} ts_backlash_warmth;

typedef struct ts_backlash {
    double j_bn[TS_BACKLASH_ENDS]; /* m, normal; NaN at the last two: the warmth is not known */
    double j_wt[TS_BACKLASH_ENDS]; /* m, along the working pitch circles                      */
    double shrink;                 /* 1, growth of j_bnlow: what an allowance is worth there */
} ts_backlash;

/* Of a solved external pair.  `warmth` NULL: not known.  < 0: teeth would have to overlap; NaN:
 * the axes come closer than the base circles allow. */
void ts_backlash_solve(const ts_cylindrical_pair *pair, const ts_backlash_allowance *allowance,
                       const ts_backlash_warmth *warmth, ts_backlash *out, ts_workings *workings);

#endif
