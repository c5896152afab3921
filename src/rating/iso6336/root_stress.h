/* rating/iso6336/root_stress.h: what raises or lowers the stress at the root besides its shape?
 * ISO 6336-3, clauses 6.3 (f_eps), 7 (Y_S, Y_Sg), 8 (Y_beta), 9 (Y_B), 10 (Y_DT).
 */
#ifndef TS_RATING_ROOT_STRESS_H
#define TS_RATING_ROOT_STRESS_H

#include "base/workings.h"

/* What the fillet concentrates; all lengths in m.  gear: 0 or 1. */
typedef struct ts_root_notch {
    double L;   /* s_Fn/h_Fe                                                                    */
    double q_s; /* s_Fn/(2 rho_F), the notch parameter; the formula holds for 1 <= q_s < 8      */
    double Y_S;
} ts_root_notch;
ts_root_notch ts_root_notch_of(double s_Fn, double h_Fe, double rho_F, int gear,
                               ts_workings *workings);

/* Y_Sg: a grinding notch of depth t_g and radius rho_g (m, both > 0) near the critical section.
 * NaN where sqrt(t_g/rho_g) reaches 1.3/0.6. */
double ts_grinding_notch(double Y_S, double t_g, double rho_g, int gear, ts_workings *workings);

/* f_eps, how much of the load one pair carries at the worst point: in 2006 it is not a factor of
 * its own (1). */
double ts_load_share_2006(double eps_alphan, double eps_beta, ts_workings *workings);
double ts_load_share_2019(double eps_alphan, double eps_beta, ts_workings *workings);

/* Y_beta for 0 <= beta (used up to 30 degrees in the first part) and eps_beta (used up to 1). */
double ts_helix_factor_bending_2006(double beta, double eps_beta, ts_workings *workings);
double ts_helix_factor_bending_2019(double beta, double eps_beta, ts_workings *workings);

/* Y_DT: deep teeth of accuracy grade 4 and better share the load between two pairs at least.  In
 * 2019 f_eps says that already (1). */
double ts_deep_tooth_2006(double eps_alphan, int accuracy, ts_workings *workings);
double ts_deep_tooth_2019(double eps_alphan, int accuracy, ts_workings *workings);

/* Y_B of a rim of thickness s_R (m): external gears by the tooth height h_t (m), internal ones by
 * the module.  NaN at and below s_R = 0.5 h_t and 1.75 m_n, where the standard ends. */
double ts_rim_factor(double s_R, double h_t, int gear, ts_workings *workings);
double ts_rim_factor_internal(double s_R, double m_n, int gear, ts_workings *workings);

/* sigma_F0, Pa */
typedef struct ts_root_stress_input {
    double F_t, b_F, m_n; /* N, m, m */
    double Y_F, Y_S, Y_beta, Y_B, Y_DT;
} ts_root_stress_input;
double ts_nominal_root_stress(const ts_root_stress_input *in, int gear, ts_workings *workings);

#endif
