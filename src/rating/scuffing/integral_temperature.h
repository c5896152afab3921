/* rating/scuffing/integral_temperature.h: how hot are two flanks on average while they touch?
 * ISO/TS 6336-21: the flash temperature at E, weighted over the path of contact.
 *
 * Units     SI, temperatures in K (the standard counts degrees Celsius: its factors on temperatures
 *           are taken from 273.15 K).
 */
#ifndef TS_RATING_INTEGRAL_TEMPERATURE_H
#define TS_RATING_INTEGRAL_TEMPERATURE_H

#include "base/workings.h"

/* X_M, the thermo-elastic factor of both materials: E_r^(1/4)/B_M of one, in K.m.s^0.5/N^0.75; the
 * standard's 50.0 for steel is 0.0500 here. */
double ts_thermoelastic_factor(double E_r, double B_M, ts_workings *workings);
/* The same of two materials, at E. */
typedef struct ts_thermoelastic_input {
    double E_r, B_M1, B_M2, Gamma_E, u;
} ts_thermoelastic_input;
double ts_thermoelastic_pair(const ts_thermoelastic_input *in, ts_workings *workings);

/* X_BE, geometry at the tip of gear 1: curvatures there, rho_E2 and u < 0 for an internal gear. */
double ts_geometry_factor_E(double rho_E1, double rho_E2, double u, ts_workings *workings);

/* X_alphabeta: pressure and helix angles. */
typedef struct ts_angle_factor_input {
    double alpha_wt, alpha_t, alpha_n, beta;
} ts_angle_factor_input;
double ts_angle_factor(const ts_angle_factor_input *in, ts_workings *workings);

/* X_Q: a long approach under load heats more; 0.6 to 1.  eps_f approach, eps_a recess, both of the
 * driving gear, not below 0. */
double ts_approach_factor(double eps_f, double eps_a, ts_workings *workings);

/* X_eps: from the flash temperature at E to its mean.  eps_1 (recess), eps_2 (approach) not below
 * 0; NaN where their sum is 3 or more, for which there is no formula. */
double ts_contact_ratio_factor_scuffing(double eps_1, double eps_2, ts_workings *workings);

/* What the method asks of the path of contact, by the pinion: where gear 1 is the larger one, gear
 * 2 is the pinion.  Curvatures of gear 1 at A, C and E, m, transverse; eps_1, eps_2 > 0. */
typedef struct ts_integral_path {
    double E_r, B_M[2]; /* Pa, J/(m2.K.s^0.5)                     */
    double u;
    double rho_T, rho_A1, rho_C1, rho_E1;
    double eps_1, eps_2;
    int    driver; /* 1 or 2 */
} ts_integral_path;

typedef struct ts_integral_ends {
    double X_M, X_BE, X_Q, X_eps;
} ts_integral_ends;
ts_integral_ends ts_integral_ends_of(const ts_integral_path *path, ts_workings *workings);

/* X_E: flanks that have not run in are hotter.  phi_E: 1 run in, 0 as made. */
double ts_running_in_factor(double phi_E, double Ra, double rho_redC, ts_workings *workings);

typedef struct ts_integral_input {
    double mu_mC, X_M, X_BE, X_alphabeta, X_E, X_Q, X_Ca, X_eps;
    double w_Bt, K_Bgamma, v, a_w;
} ts_integral_input;
/* theta_flaint, K: mean flash temperature over the path. */
double ts_mean_flash(const ts_integral_input *in, ts_workings *workings);

/* theta_M (K) by the integral method, and theta_int (K) from any theta_M. */
double ts_bulk_integral(double theta_oil, double theta_flaint, double X_S, ts_workings *workings);
double ts_integral_temperature(double theta_M, double theta_flaint, ts_workings *workings);

/* theta_intS (K): what an oil of the load stage S_FZG (test A/8.3/90) stands; nu_40 in m2/s. */
typedef struct ts_integral_limit_input {
    double S_FZG, nu_40, X_L, X_W;
} ts_integral_limit_input;
double ts_integral_limit(const ts_integral_limit_input *in, ts_workings *workings);

/* S_intS of temperatures (in degrees Celsius, as the standard has it), and the safety in load that
 * it comes to. */
double ts_integral_safety(double theta_intS, double theta_int, ts_workings *workings);
double ts_integral_load_safety(double theta_intS, double theta_int, double theta_oil,
                               ts_workings *workings);

#endif
