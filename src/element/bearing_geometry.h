/* element/bearing_geometry.h: how do the balls or rollers of a bearing lie on its races?
 *
 * Units     m, rad, rad/s.
 * Symbols   D_w ball or roller diameter, D_pw pitch diameter, alpha contact angle, f_i and f_e
 *           groove radii over D_w, gamma = D_w cos(alpha)/D_pw.
 * Ranges    0 < gamma < 1, f > 0.5; NaN comes back outside of these.
 * Sources   T. A. Harris, Rolling Bearing Analysis, chapter 2 (from memory).
 */
#ifndef TS_ELEMENT_BEARING_GEOMETRY_H
#define TS_ELEMENT_BEARING_GEOMETRY_H

#include "base/workings.h"

double ts_bearing_gamma(double D_w, double D_pw, double alpha, ts_workings *workings);

/* A ball in the groove of a race: sum of the four curvatures, and their difference over the sum. */
typedef struct ts_race_curvature {
    double sum_rho; /* 1/m */
    double F_rho;   /* 1   0: circle, near 1: nearly a line */
} ts_race_curvature;
ts_race_curvature ts_inner_race_curvature(double D_w, double f_i, double gamma,
                                          ts_workings *workings);
ts_race_curvature ts_outer_race_curvature(double D_w, double f_e, double gamma,
                                          ts_workings *workings);

/* P_d of races with groove bottoms d_i and d_e, m; below 0 the balls are pressed in. */
double ts_bearing_clearance(double d_i, double d_e, double D_w, ts_workings *workings);

/* Mean diameter of bore d and outside D, m. */
double ts_bearing_mean_diameter(double d, double D, ts_workings *workings);

/* The trade's speed number: mean diameter in mm times speed in rpm; n in rad/s, d_m in m. */
double ts_bearing_speed_number(double n, double d_m, ts_workings *workings);

#endif
