/* rating/bearing/equivalent_load.h: which radial load wears a bearing as much as these two do?
 * P = X F_r + Y F_a, ISO 281:2007, table 3 (from memory).
 *
 * Units     N, rad.  F_r and F_a without sign.
 * Ranges    Between printed entries straight lines; below the first and above the last relative
 *           axial load the end row holds (factors.within says so).
 * Check     At F_a = e F_r both branches must give the same load: tests hold them to 1 %.
 */
#ifndef TS_RATING_EQUIVALENT_LOAD_H
#define TS_RATING_EQUIVALENT_LOAD_H

#include "base/workings.h"

#include <stdbool.h>

typedef struct ts_load_factors {
    double e;        /* 1   ratio F_a/F_r above which the second pair of factors holds */
    double X_1, Y_1; /* 1   up to e                                                    */
    double X_2, Y_2; /* 1   above e                                                    */
    bool   within;   /*     was the relative axial load inside the table?              */
} ts_load_factors;

/* One row of balls, normal clearance; relative = f_0 F_a/C_0r. */
double          ts_relative_axial_load(double f_0, double F_a, double C_0r, ts_workings *workings);
ts_load_factors ts_deep_groove_factors(double relative, ts_workings *workings);

/* alpha 15 degrees (with relative = f_0 i F_a/C_0r), or from 20 to 45 degrees.  NaN factors for
 * other angles.  rows 2: a pair back to back or face to face, rated as one bearing; a pair in
 * tandem is rated as a single bearing with the set's capacity. */
ts_load_factors ts_angular_contact_factors(double alpha, int rows, double relative,
                                           ts_workings *workings);
/* Cylindrical rollers: P = F_r; an axial load is for the flanges and not part of this. */
ts_load_factors ts_cylindrical_roller_factors(void);

double ts_bearing_load(const ts_load_factors *factors, double F_r, double F_a,
                       ts_workings *workings);

/* Loads P_j while n_j turns for t_j: the load that does the same harm, exponent p. */
typedef struct ts_bearing_step {
    double P; /* N      */
    double n; /* rad/s  */
    double t; /* s, or a share of the time */
} ts_bearing_step;
/* count >= 1; NaN when nothing turns. */
double ts_mean_bearing_load(const ts_bearing_step *steps, int count, double p,
                            ts_workings *workings);

#endif
