/* element/helical_force.h: axial and radial force of a spur or helical gear. */
#ifndef TS_ELEMENT_HELICAL_FORCE_H
#define TS_ELEMENT_HELICAL_FORCE_H

#include "base/workings.h"

#include <stdbool.h>

typedef struct ts_helical_force {
    double F_r; /* N, >= 0, towards the gear's own axis                                 */
    double F_a; /* N, >= 0, magnitude; its direction is that of ts_helical_thrust_sense */
    double F_n; /* N, normal force on the flank                                         */
} ts_helical_force;

/* Forces at the working pitch circle; friction left out.
 *
 * F_t       N    tangential force at the working pitch circle, >= 0
 * alpha_wn  rad  normal pressure angle at the working pitch circle
 * beta_w    rad  helix angle there, without its hand */
ts_helical_force ts_helical_forces(double F_t, double alpha_wn, double beta_w,
                                   ts_workings *workings);

/* Normal pressure angle and helix angle at the working pitch circle, from those of the pair. */
double ts_working_helix_angle(double beta_b, double alpha_wt, ts_workings *workings);
double ts_working_normal_angle(double beta_b, double alpha_wt, ts_workings *workings);

/* Which way the axial force on this gear points: +1 towards an observer who sees the gear turn
 * anticlockwise for turns = +1, -1 away from that observer, 0 for a spur gear.
 *
 * hand      +1 right, -1 left, 0 spur
 * turns     +1 anticlockwise, -1 clockwise, for that observer
 * drives    does this gear drive its mate?
 *
 * derived: along the axis towards the observer a right-hand tooth winds anticlockwise, so the flank
 * that faces anticlockwise also faces away from the observer; a driver turning that way is pressed
 * on it, towards the observer.  Hand, sense and role each turn the sign. */
int ts_helical_thrust_sense(int hand, int turns, bool drives);

#endif
