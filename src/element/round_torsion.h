/* element/round_torsion.h: how far does a round shaft twist, and which torque shears it off?
 *
 * Units     SI; T in N.m, angles in rad.  d_o outside, d_i bore (0: solid).
 * Ranges    d_o > d_i >= 0, or NaN.
 * Sources   Statics of circular bars; closed forms that any textbook has (derived).
 */
#ifndef TS_ELEMENT_ROUND_TORSION_H
#define TS_ELEMENT_ROUND_TORSION_H

#include "base/workings.h"

double ts_torsion_J(double d_o, double d_i, ts_workings *workings); /* m4 */
/* Shear stress at the outside, Pa. */
double ts_torsion_stress(double T, double d_o, double d_i, ts_workings *workings);
/* Twist of the length L, rad. */
double ts_torsion_twist(double T, double L, double G, double J, ts_workings *workings);
/* Torque of that twist. */
double ts_torsion_of_twist(double twist, double L, double G, double J, ts_workings *workings);

/* Torque at which the outside reaches tau; and at which the whole section bears tau. */
double ts_torque_elastic(double tau, double d_o, double d_i, ts_workings *workings);
double ts_torque_plastic(double tau, double d_o, double d_i, ts_workings *workings);
/* The latter over the former, 4/3 of a solid bar down to 1 of a thin tube. */
double ts_torque_reserve(double d_o, double d_i, ts_workings *workings);

/* A solid bar, yielding from the outside in at tau_Y, T between elastic and plastic torque. */
typedef struct ts_part_yield {
    double T_Y;     /* N.m  torque at first yield               */
    double rho_Y;   /* m    radius of the core that is elastic  */
    double twist;   /* rad  under T                             */
    double twist_p; /* rad  that stays                          */
} ts_part_yield;
ts_part_yield ts_part_yield_of(double T, double d, double L, double G, double tau_Y,
                               ts_workings *workings);

/* Diameter of a solid shaft that carries T at tau. */
double ts_torsion_diameter(double T, double tau, ts_workings *workings);

#endif
