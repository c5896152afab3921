/* rating/iso10300/bevel_dynamic.h: how much load does a bevel mesh add to itself by running?
 * ISO 10300-1:2014, clause 7, method B, and clause 9 for stiffness and running in.
 */
#ifndef TS_RATING_BEVEL_DYNAMIC_H
#define TS_RATING_BEVEL_DYNAMIC_H

#include "base/workings.h"
#include "catalog/gear_material.h"

/* c_v12 .. c_v7: how strongly deviations and the changing stiffness act. */
typedef struct ts_bevel_dynamic_constants {
    double c_v12, c_v3, c_v4, c_v56, c_v7;
} ts_bevel_dynamic_constants;

/* eps_vgamma > 1; NaN elsewhere */
ts_bevel_dynamic_constants ts_bevel_dynamic_constants_of(double eps_vgamma, ts_workings *workings);

/* Single and mesh stiffness of average bevel teeth of steel at full load, Pa: 14 and 20 N/(mm um).
 */
#define TS_BEVEL_CP_0     14e9
#define TS_BEVEL_CGAMMA_0 20e9

/* C_F: below 100 N/mm teeth are softer.  w: F_mt K_A/b_veff, N/m. */
double ts_bevel_stiffness_share(double F_mt, double K_A, double b_veff, ts_workings *workings);

/* Mass per unit face width of a gear as a disc, kg/m, and of both at the line of action. */
double ts_bevel_mass(double rho, double d_m, double alpha_n, int gear, ts_workings *workings);
double ts_bevel_reduced_mass(double ms_1, double ms_2, ts_workings *workings);

/* y_p of one gear, m: by how much running in lessens the pitch deviation f_pt. */
double ts_bevel_running_in(ts_gear_class class, double sigma_Hlim, double f_pt, double v_mt,
                           int gear, ts_workings *workings);

typedef enum ts_bevel_speed {
    TS_BEVEL_SPEED_SUBCRITICAL,  /* N <= 0.75 */
    TS_BEVEL_SPEED_RESONANCE,    /* N <= 1.25 */
    TS_BEVEL_SPEED_INTERMEDIATE, /* N < 1.5   */
    TS_BEVEL_SPEED_SUPERCRITICAL
} ts_bevel_speed;
ts_bevel_speed ts_bevel_speed_of(double N);
const char    *ts_bevel_speed_says(ts_bevel_speed range);

/* K_v at the resonance ratio N.  B: deviation over deflection, b_v f_peff c'/(F_mt K_A). */
double ts_bevel_dynamic_factor(double N, const ts_bevel_dynamic_constants *c, double B,
                               ts_workings *workings);

#endif
