/* rating/iso6336/reduced_mass.h: which mass swings in the mesh, and at which speed does it
 * resonate?  ISO 6336-1, clause 6.5.
 *
 * Units     SI per unit face width: J_s in kg.m2/m, m_s and m_red in kg/m.
 */
#ifndef TS_RATING_REDUCED_MASS_H
#define TS_RATING_REDUCED_MASS_H

#include "base/workings.h"

/* The blank of a gear as rings about its axis.  An internal gear has d_a, d_f < 0 and d_i is the
 * outer diameter of its rim. */
typedef struct ts_gear_blank {
    double d_a, d_f;      /* m   tip and root diameter, signed as in the pair                   */
    double d_i;           /* m   inner diameter of the rim; 0: a solid disc                     */
    double d_web;         /* m   bore of the web below the rim; read when b_s > 0               */
    double b_s_per_width; /* 1   web thickness over face width; 0: no web                       */
    double rho;           /* kg/m3                                                              */
} ts_gear_blank;

/* J*, the moment of inertia per unit face width.  gear: 0 or 1. */
double ts_blank_inertia(const ts_gear_blank *blank, int gear, ts_workings *workings);
/* m*, the same as a mass on the base circle d_b. */
double ts_relative_mass(double Js, double d_b, int gear, ts_workings *workings);
double ts_reduced_mass(double ms_1, double ms_2, ts_workings *workings);
/* n_E1, rad/s of gear 1, at which the teeth meet as often as the mesh swings. */
double ts_resonance_speed(double c_gamma_alpha, double m_red, double z_1, ts_workings *workings);

#endif
