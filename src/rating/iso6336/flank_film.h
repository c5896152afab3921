/* rating/iso6336/flank_film.h: how do oil, speed and roughness help the flanks?  ISO 6336-2, clause
 * 12 (Z_L, Z_v, Z_R).  All rest on sigma_Hlim of the softer flank, Pa.
 */
#ifndef TS_RATING_FLANK_FILM_H
#define TS_RATING_FLANK_FILM_H

#include "base/workings.h"

/* Z_L of the kinematic viscosity nu_40 (m2/s) at 40 degrees Celsius. */
double ts_lubricant_factor(double sigma_Hlim, double nu_40, ts_workings *workings);

/* C_Zv, and Z_v at the pitch line velocity v (m/s, >= 0). */
double ts_velocity_constant(double sigma_Hlim, ts_workings *workings);
double ts_velocity_factor(double C_Zv, double v, ts_workings *workings);

/* Z_R of the flank roughnesses R_z1, R_z2 and the radius of relative curvature rho_red (m). */
double ts_roughness_factor(double sigma_Hlim, double R_z1, double R_z2, double rho_red,
                           ts_workings *workings);

/* rho_red, m, at the pitch point from the base diameters (d_b2 < 0 for an internal gear). */
double ts_relative_radius(double d_b1, double d_b2, double alpha_wt, ts_workings *workings);

/* Ra that the standards of scuffing and micropitting ask for, as a sixth of R_z, m; gear 0 or 1. */
double ts_mean_roughness(double R_z, int gear, ts_workings *workings);

#endif
