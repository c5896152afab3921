/* rating/bearing/paired_thrust.h: which axial load does a radial load call up in the bearing
 * opposite?  Two single angular contact bearings, back to back or face to face.
 *
 * Units     N, rad.  K_a acts on the shaft from bearing A towards bearing B, and may be negative.
 * Ranges    No clearance, no preload, equal angles.
 * Source    A maker's catalogue rule (bank: brg-ac-axial-rule); see docs/method/bearings.md.
 */
#ifndef TS_RATING_PAIRED_THRUST_H
#define TS_RATING_PAIRED_THRUST_H

#include "base/workings.h"

typedef struct ts_paired_thrust {
    double F_aA, F_aB; /* N   on bearing A and on bearing B */
} ts_paired_thrust;

/* Thrust over radial load of one bearing: 0.50, 0.57, 0.66, 0.88 at 20, 25, 30, 40 degrees. */
double ts_thrust_ratio(double alpha, ts_workings *workings);

/* R_a: thrust over radial load of one bearing; F_rA, F_rB >= 0. */
ts_paired_thrust ts_paired_thrust_of(double R_a, double F_rA, double F_rB, double K_a,
                                     ts_workings *workings);

#endif
