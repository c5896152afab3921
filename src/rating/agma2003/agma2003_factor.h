/* rating/agma2003/agma2003_factor.h: the factors of ANSI/AGMA 2003-C10 for bevel gears.
 *
 * Units     SI.  Constants of the standard that stand in inches and psi are kept as printed there
 *           and turned exactly; the metric ones of the standard are rounded conversions.
 */
#ifndef TS_RATING_AGMA2003_FACTOR_H
#define TS_RATING_AGMA2003_FACTOR_H

#include "base/workings.h"

#include <stdbool.h>

/* ---- dynamic factor -------------------------------------------------------------------------- */

/* The curve of one accuracy: quality number Q_v 5 .. 11 (A86, B97; fine is high), or transmission
 * accuracy A_v 6 .. 12 (C10; fine is low), A_v = 17 - Q_v.  Finer gears get the finest curve; NaN
 * where they are coarser. */
typedef struct ts_agma2003_dynamic {
    double B, A;  /* exponent, constant                                           */
    double v_max; /* m/s  where the curve ends                                    */
} ts_agma2003_dynamic;
ts_agma2003_dynamic ts_agma2003_dynamic_Q_v(double accuracy, ts_workings *workings);
ts_agma2003_dynamic ts_agma2003_dynamic_A_v(double accuracy, ts_workings *workings);
/* K_v at the outer pitch diameter's speed v_et, m/s. */
double ts_agma2003_dynamic_factor(const ts_agma2003_dynamic *curve, double v_et,
                                  ts_workings *workings);

/* ---- load and size --------------------------------------------------------------------------- */

/* K_mb for gears of which `overhung` (0 .. 2) have bearings on one side only. */
double ts_agma2003_mounting(int overhung, ts_workings *workings);
double ts_agma2003_face_load(double K_mb, double b, ts_workings *workings); /* K_Hbeta */
double ts_agma2003_size_contact(double b, ts_workings *workings);           /* Z_x     */
double ts_agma2003_size_bending(double m_et, ts_workings *workings);        /* Y_x     */
double ts_agma2003_crowning(bool crowned, ts_workings *workings);           /* Z_xc    */
/* Y_beta; 1 without spiral and without a known cutter, on the safe side. */
double ts_agma2003_curvature(double r_c0, double R_m, double beta_m, ts_workings *workings);
double ts_agma2003_elasticity(double E_1, double nu_1, double E_2, double nu_2, /* Z_E     */
                              ts_workings *workings);

/* ---- strength -------------------------------------------------------------------------------- */

/* Stress cycle factors of gear 0 or 1 for n_L > 0; fewer than the first node bear no more, and
 * beyond 1e10 the last line is carried on.  critical: the lower line of Y_NT above 3e6 (so in
 * ANSI/AGMA 2101; a textbook calls that line general and the upper one critical). */
double ts_agma2003_life_contact(double n_L, int gear, ts_workings *workings); /* Z_NT    */
double ts_agma2003_life_bending(double n_L, bool critical, int gear, ts_workings *workings);

/* Z_W of a through-hardened wheel that runs with a harder through-hardened pinion; u >= 1. */
double ts_agma2003_hardness_ratio(double HB_pinion, double HB_wheel, double u, int gear,
                                  ts_workings *workings);
/* K_theta: above 120 degC; T_M in K. */
double ts_agma2003_temperature(double T_M, ts_workings *workings);
/* Y_Z for a reliability 0.9 .. 0.9999, NaN outside; Z_Z is its root. */
double ts_agma2003_reliability(double R, ts_workings *workings);
double ts_agma2003_reliability_contact(double Y_Z, ts_workings *workings);

#endif
