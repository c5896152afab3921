/* pump/separator.h: which drops does the rotor of a breather throw out, and what does that cost?
 *
 * Rotor     Air and drops enter at its rim and go inward between walls that turn with it; drops
 *           that the swirl drives outward faster than the air runs inward do not pass.
 * Law       Stokes: good to a Reynolds number of the drop of about 1 (told by its own step).
 * Units     SI.
 */
#ifndef TS_PUMP_SEPARATOR_H
#define TS_PUMP_SEPARATOR_H

#include "base/workings.h"

typedef struct ts_separator_rotor {
    double r, d, L; /* m  radius of the rim, bore of the hollow shaft, length */
} ts_separator_rotor;

/* Pa.s by Sutherland, kg/m3 of an ideal gas. */
double ts_air_viscosity(double theta, ts_workings *workings);
double ts_air_density(double p, double theta, ts_workings *workings);

typedef struct ts_swirl {
    double Q, n;                 /* m3/s, rad/s            */
    double rho_oil, rho_air, mu; /* kg/m3, kg/m3, Pa.s     */
} ts_swirl;

/* m: the largest drop that still passes. */
double ts_separator_cut(const ts_separator_rotor *rotor, const ts_swirl *swirl,
                        ts_workings *workings);
/* Reynolds number of that drop at the speed with which the air comes. */
double ts_separator_reynolds(const ts_separator_rotor *rotor, const ts_swirl *swirl, double d_cut,
                             ts_workings *workings);
/* Pa that drops over the rotor: against the swirl, and out of the bore. */
double ts_separator_drop(const ts_separator_rotor *rotor, const ts_swirl *swirl,
                         ts_workings *workings);
/* N.m that gives the air its swirl. */
double ts_separator_torque(const ts_separator_rotor *rotor, const ts_swirl *swirl,
                           ts_workings *workings);

#endif
