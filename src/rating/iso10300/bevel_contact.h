/* rating/iso10300/bevel_contact.h: the contact stress of bevel teeth, ISO 10300-2:2014, method B1.
 *
 * Units     m, Pa.
 */
#ifndef TS_RATING_BEVEL_CONTACT_H
#define TS_RATING_BEVEL_CONTACT_H

#include "base/workings.h"
#include "element/bevel_virtual.h"

typedef struct ts_bevel_mid_zone {
    double F_1, F_2; /* 1    where contact is judged, by the overlap                      */
    double Z_MB;     /* 1    mid-zone factor: from the pitch point to there; NaN: past a
                             base circle                                                  */
} ts_bevel_mid_zone;
ts_bevel_mid_zone ts_bevel_mid_zone_factor(const ts_bevel_virtual *v, ts_workings *workings);

/* Z_E, sqrt(Pa). */
double ts_bevel_elasticity_factor(double E_1, double nu_1, double E_2, double nu_2,
                                  ts_workings *workings);

/* F_n, N: across the teeth at the mean point. */
double ts_bevel_normal_force(double F_mt, double alpha_n, double beta_m, ts_workings *workings);

typedef struct ts_bevel_contact_input {
    double F_n, l_bm, rho_rel;
    double Z_MB, Z_LS, Z_E, Z_K;
} ts_bevel_contact_input;
/* sigma_H0: without load factors. */
double ts_bevel_contact_nominal(const ts_bevel_contact_input *in, ts_workings *workings);

double ts_bevel_contact_stress(double sigma_H0, const double K[4], ts_workings *workings);

/* Z_K: what bevels bear less or more than cylindrical gears, by experience (method B1). */
#define TS_BEVEL_Z_K 0.85

#endif
