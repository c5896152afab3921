/* rating/iso6336/zone_factor.h: how do geometry and material turn force into contact stress?
 * ISO 6336-2, clauses 6 (Z_H), 7 (Z_E), 8 (Z_eps), 9 (Z_beta).
 */
#ifndef TS_RATING_ZONE_FACTOR_H
#define TS_RATING_ZONE_FACTOR_H

#include "base/workings.h"

/* Z_H: a larger working pressure angle gives flatter contact.  0 < alpha_wt < pi/2. */
double ts_zone_factor(double alpha_t, double alpha_wt, double beta_b, ts_workings *workings);

/* Z_E, sqrt(Pa): 189.8 sqrt(N/mm2) is 189.8e3 here. */
double ts_elasticity_factor(double E_1, double nu_1, double E_2, double nu_2,
                            ts_workings *workings);

/* Z_eps: how much length of contact carries.  1 <= eps_alpha < 4. */
double ts_contact_ratio_factor(double eps_alpha, double eps_beta, ts_workings *workings);

/* Z_beta of 2006 and 2019: 1/sqrt(cos(beta)).  (The edition of 1996 had sqrt(cos(beta)).) */
double ts_helix_factor_contact(double beta, ts_workings *workings);
double ts_helix_factor_contact_1996(double beta, ts_workings *workings);

/* sigma_H0, Pa: nominal contact stress at the pitch point.  F_t in N at the reference circle, d_1
 * and b in m; u = z_2/z_1, negative for an internal gear. */
typedef struct ts_contact_stress_input {
    double F_t, d_1, b, u;
    double Z_H, Z_E, Z_eps, Z_beta;
} ts_contact_stress_input;
double ts_nominal_contact_stress(const ts_contact_stress_input *in, ts_workings *workings);

#endif
