/* rating/bearing/dynamic_capacity.h: which load lets 90 of 100 bearings run a million turns?
 * Radial bearings from their inside, ISO 281:2007, clauses 5 and 7 (from memory).
 *
 * Units     SI; alpha in rad; i rows of Z elements each.
 * Ranges    0 < gamma < 0.5 or NaN; thrust bearings are not covered.
 * Doubt     The standard gives f_c of ball bearings as a table.  The formula behind it (ISO/TR
 *           1281-1) carries a reduction factor that the bare textbook constant, 39.9, leaves out:
 *           TS_BALL_LEVEL is the constant that meets the table (docs/method/bearings.md).
 */
#ifndef TS_RATING_DYNAMIC_CAPACITY_H
#define TS_RATING_DYNAMIC_CAPACITY_H

#include "base/workings.h"

#define TS_BALL_LEVEL  38.19 /* fitted to the table of single-row bearings, spread 0.12 % */
#define TS_BALL_RATING 1.3   /* b_m of radial ball bearings of today's steel, table 1     */
#define TS_ROLLER_RATING                                                                           \
    1.1 /* b_m of cylindrical roller bearings with machined rings, table 6: from memory */

/* f_c from gamma and the groove radii over the ball's diameter; `level` is the factor in front. */
double ts_ball_f_c(double gamma, double f_i, double f_e, double level, ts_workings *workings);
double ts_roller_f_c(double gamma, ts_workings *workings);

typedef struct ts_ball_set {
    int    i, Z; /* 1   rows, balls in one row */
    double D_w;  /* m                          */
    double alpha;
    double b_m, f_c;
} ts_ball_set;
double ts_ball_capacity(const ts_ball_set *set, ts_workings *workings);

typedef struct ts_roller_set {
    int    i, Z;
    double D_we, L_we; /* m   diameter, effective length */
    double alpha;
    double b_m, f_c;
} ts_roller_set;
double ts_roller_capacity(const ts_roller_set *set, ts_workings *workings);

/* Capacity of `i` equal bearings side by side over that of one. */
double ts_ball_rows_gain(double i, ts_workings *workings);
double ts_roller_rows_gain(double i, ts_workings *workings);

#endif
