/* rating/iso6336/dynamic_factor.h: how much load does the mesh add to itself by running?
 * ISO 6336-1, clause 6.5, method B.
 */
#ifndef TS_RATING_DYNAMIC_FACTOR_H
#define TS_RATING_DYNAMIC_FACTOR_H

#include "base/workings.h"

/* C_v1 .. C_v7: how strongly pitch, profile and stiffness act in each range of speed. */
typedef struct ts_dynamic_constants {
    double C_v1, C_v2, C_v3, C_v4, C_v5, C_v6, C_v7;
} ts_dynamic_constants;

/* eps_gamma > 1 */
ts_dynamic_constants ts_dynamic_constants_of(double eps_gamma, ts_workings *workings);

/* Deviations and relief measured by the deflection under the specific load. */
typedef struct ts_dynamic_parameters {
    double B_p; /* pitch              */
    double B_f; /* profile            */
    double B_k; /* tip relief         */
} ts_dynamic_parameters;

typedef struct ts_dynamic_parameters_input {
    double cp;          /* Pa   single stiffness                                               */
    double w_t;         /* N/m  specific load F_t K_A K_gamma/b                                */
    double f_pbeff;     /* m    base pitch deviation after running in                          */
    double f_falphaeff; /* m  profile form deviation after running in                        */
    double C_a;         /* m    tip relief; NaN: of no use (grade 6 and coarser), B_k = 1      */
} ts_dynamic_parameters_input;
ts_dynamic_parameters ts_dynamic_parameters_of(const ts_dynamic_parameters_input *in,
                                               ts_workings                       *workings);

typedef enum ts_speed_range {
    TS_SPEED_SUBCRITICAL,
    TS_SPEED_RESONANCE,
    TS_SPEED_INTERMEDIATE,
    TS_SPEED_SUPERCRITICAL
} ts_speed_range;
const char *ts_speed_range_says(ts_speed_range range); /* "below resonance" */

/* N_S, the lower end of resonance at the specific load w_t (N/m). */
double ts_resonance_start(double w_t, ts_workings *workings);
/* N = n_1/n_E1, both rad/s. */
double         ts_resonance_ratio(double omega_1, double n_E1, ts_workings *workings);
ts_speed_range ts_speed_range_of(double N, double N_S);

/* K_v of each range by itself ... */
double ts_dynamic_subcritical(double N, const ts_dynamic_constants *C,
                              const ts_dynamic_parameters *B, ts_workings *workings);
double ts_dynamic_resonance(const ts_dynamic_constants *C, const ts_dynamic_parameters *B,
                            ts_workings *workings);
double ts_dynamic_supercritical(const ts_dynamic_constants *C, const ts_dynamic_parameters *B,
                                ts_workings *workings);
/* ... and of the range that N is in, straight lines between 1.15 and 1.5. */
double ts_dynamic_factor(double N, double N_S, const ts_dynamic_constants *C,
                         const ts_dynamic_parameters *B, ts_workings *workings);

#endif
