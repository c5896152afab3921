/* rating/iso10300/bevel_contact.c: how hard do bevel flanks press on each other? */
#include "rating/iso10300/bevel_contact.h"

#include "rating/iso10300/bevel_source.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* Straight teeth: inner point of single contact of gear 1.  Overlap of 1 and more: middle of the
 * path.  Between them straight lines. */
#define F1_TEXT "2 + (eps_valpha - 2)*min(1, eps_vbeta)"
#define F2_TEXT "2*eps_valpha - 2 + (2 - eps_valpha)*min(1, eps_vbeta)"
BEVEL_FORMULA(F_1, "place of the mid-zone on gear 1", "1", F1_TEXT, ISO_10300_2 "6.4.1");
BEVEL_FORMULA(F_2, "place of the mid-zone on gear 2", "1", F2_TEXT, ISO_10300_2 "6.4.1");
BEVEL_FORMULA(Z_MB, "mid-zone factor", "1",
              "tan(alpha_vet)/sqrt((sqrt((d_va1/d_vb1)^2 - 1) - F_1*pi/z_v1)*(sqrt((d_va2/d_vb2)^2"
              " - 1) - F_2*pi/z_v2))",
              ISO_10300_2 "6.4.1");

ts_bevel_mid_zone ts_bevel_mid_zone_factor(const ts_bevel_virtual *v, ts_workings *workings)
{
    const double eps_valpha = v->eps_valpha, eps_vbeta = v->eps_vbeta, alpha_vet = v->alpha_vet;
    const double d_va1 = v->d_va[0], d_va2 = v->d_va[1], d_vb1 = v->d_vb[0], d_vb2 = v->d_vb[1];
    const double z_v1 = v->z_v[0], z_v2 = v->z_v[1];
    const double full = fmin(1.0, eps_vbeta), r_1 = d_va1 / d_vb1, r_2 = d_va2 / d_vb2;

    const double F_1 =
        TS_STEP(workings, F_1_formula, 2.0 + (eps_valpha - 2.0) * full, eps_valpha, eps_vbeta);
    const double F_2 =
        TS_STEP(workings, F_2_formula, 2.0 * eps_valpha - 2.0 + (2.0 - eps_valpha) * full,
                eps_valpha, eps_vbeta);
    const double on_1 = sqrt(r_1 * r_1 - 1.0) - F_1 * pi / z_v1;
    const double on_2 = sqrt(r_2 * r_2 - 1.0) - F_2 * pi / z_v2;

    if (!(on_1 > 0.0 && on_2 > 0.0))
        return (ts_bevel_mid_zone){F_1, F_2, NAN};
    return (ts_bevel_mid_zone){F_1, F_2,
                               TS_STEP(workings, Z_MB_formula, tan(alpha_vet) / sqrt(on_1 * on_2),
                                       alpha_vet, d_va1, d_vb1, F_1, z_v1, d_va2, d_vb2, F_2,
                                       z_v2)};
}

BEVEL_FORMULA(Z_E, "elasticity factor", "sqrt(Pa)",
              "sqrt(1/(pi*((1 - nu_1^2)/E_1 + (1 - nu_2^2)/E_2)))", ISO_10300_2 "8.1");
BEVEL_FORMULA(F_n, "force across the teeth", "N", "F_mt/(cos(alpha_n)*cos(beta_m))",
              ISO_10300_2 "6.2");
BEVEL_FORMULA(sigma_H0, "nominal contact stress", "Pa",
              "sqrt(F_n/(l_bm*rho_rel))*Z_MB*Z_LS*Z_E*Z_K", ISO_10300_2 "6.1");
BEVEL_FORMULA(sigma_H, "contact stress", "Pa", "sigma_H0*sqrt(K_A*K_v*K_Hbeta*K_Halpha)",
              ISO_10300_2 "6.1");

double ts_bevel_elasticity_factor(double E_1, double nu_1, double E_2, double nu_2,
                                  ts_workings *workings)
{
    const double give = (1.0 - nu_1 * nu_1) / E_1 + (1.0 - nu_2 * nu_2) / E_2;

    return TS_STEP(workings, Z_E_formula, sqrt(1.0 / (pi * give)), nu_1, E_1, nu_2, E_2);
}

double ts_bevel_normal_force(double F_mt, double alpha_n, double beta_m, ts_workings *workings)
{
    return TS_STEP(workings, F_n_formula, F_mt / (cos(alpha_n) * cos(beta_m)), F_mt, alpha_n,
                   beta_m);
}

double ts_bevel_contact_nominal(const ts_bevel_contact_input *in, ts_workings *workings)
{
    const double F_n = in->F_n, l_bm = in->l_bm, rho_rel = in->rho_rel;
    const double Z_MB = in->Z_MB, Z_LS = in->Z_LS, Z_E = in->Z_E, Z_K = in->Z_K;

    return TS_STEP(workings, sigma_H0_formula,
                   sqrt(F_n / (l_bm * rho_rel)) * Z_MB * Z_LS * Z_E * Z_K, F_n, l_bm, rho_rel, Z_MB,
                   Z_LS, Z_E, Z_K);
}

double ts_bevel_contact_stress(double sigma_H0, const double K[4], ts_workings *workings)
{
    const double K_A = K[0], K_v = K[1], K_Hbeta = K[2], K_Halpha = K[3];

    return TS_STEP(workings, sigma_H_formula, sigma_H0 * sqrt(K_A * K_v * K_Hbeta * K_Halpha),
                   sigma_H0, K_A, K_v, K_Hbeta, K_Halpha);
}
