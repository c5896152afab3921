/* rating/iso6336/zone_factor.c: how hard do the flanks press at the pitch point? */
#include "rating/iso6336/zone_factor.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static const ts_formula Z_H_formula = {
    .symbol  = "Z_H",
    .meaning = "zone factor",
    .unit    = "1",
    .text    = "sqrt(2*cos(beta_b)*cos(alpha_wt)/(cos(alpha_t)^2*sin(alpha_wt)))",
    .source  = ISO_6336_2 "6.1" RECALLED,
};

double ts_zone_factor(double alpha_t, double alpha_wt, double beta_b, ts_workings *workings)
{
    const double curvature = 2.0 * cos(beta_b) * cos(alpha_wt) / sin(alpha_wt);

    return TS_STEP(workings, Z_H_formula, sqrt(curvature) / cos(alpha_t), beta_b, alpha_wt,
                   alpha_t);
}

static const ts_formula Z_E_formula = {
    .symbol  = "Z_E",
    .meaning = "elasticity factor (1 sqrt(N/mm2) is 1000 sqrt(Pa))",
    .unit    = "sqrt(Pa)",
    .text    = "sqrt(1/(pi*((1 - nu_1^2)/E_1 + (1 - nu_2^2)/E_2)))",
    .source  = ISO_6336_2 "7" RECALLED,
};

double ts_elasticity_factor(double E_1, double nu_1, double E_2, double nu_2, ts_workings *workings)
{
    const double give = (1.0 - nu_1 * nu_1) / E_1 + (1.0 - nu_2 * nu_2) / E_2;

    return TS_STEP(workings, Z_E_formula, sqrt(1.0 / (pi * give)), E_1, nu_1, E_2, nu_2);
}

#define Z_EPS(name, expression)                                                                    \
    static const ts_formula name##_formula = {.symbol  = "Z_eps",                                  \
                                              .meaning = "contact ratio factor (contact)",         \
                                              .unit    = "1",                                      \
                                              .text    = (expression),                             \
                                              .source  = ISO_6336_2 "8.2" RECALLED}
Z_EPS(spur, "sqrt((4 - eps_alpha)/3)");
Z_EPS(part, "sqrt((4 - eps_alpha)/3*(1 - eps_beta) + eps_beta/eps_alpha)");
Z_EPS(full, "sqrt(1/eps_alpha)");

double ts_contact_ratio_factor(double eps_alpha, double eps_beta, ts_workings *workings)
{
    if (eps_beta >= 1.0)
        return TS_STEP(workings, full_formula, sqrt(1.0 / eps_alpha), eps_alpha);
    if (eps_beta > 0.0)
        return TS_STEP(workings, part_formula,
                       sqrt((4.0 - eps_alpha) / 3.0 * (1.0 - eps_beta) + eps_beta / eps_alpha),
                       eps_alpha, eps_beta);
    return TS_STEP(workings, spur_formula, sqrt((4.0 - eps_alpha) / 3.0), eps_alpha);
}

static const ts_formula Z_beta_formula = {
    .symbol  = "Z_beta",
    .meaning = "helix angle factor (contact)",
    .unit    = "1",
    .text    = "1/sqrt(cos(beta))",
    .source  = ISO_6336_2 "9" RECALLED,
};
static const ts_formula Z_beta_1996_formula = {
    .symbol  = "Z_beta",
    .meaning = "helix angle factor (contact) of 1996",
    .unit    = "1",
    .text    = "sqrt(cos(beta))",
    .source  = "ISO 6336-2:1996, clause 9" RECALLED,
};

double ts_helix_factor_contact(double beta, ts_workings *workings)
{
    return TS_STEP(workings, Z_beta_formula, 1.0 / sqrt(cos(beta)), beta);
}

double ts_helix_factor_contact_1996(double beta, ts_workings *workings)
{
    return TS_STEP(workings, Z_beta_1996_formula, sqrt(cos(beta)), beta);
}

static const ts_formula sigma_H0_formula = {
    .symbol  = "sigma_H0",
    .meaning = "nominal contact stress at the pitch point",
    .unit    = "Pa",
    .text    = "Z_H*Z_E*Z_eps*Z_beta*sqrt(F_t/(d_1*b)*(u + 1)/u)",
    .source  = ISO_6336_2 "5.2.2" RECALLED,
};

double ts_nominal_contact_stress(const ts_contact_stress_input *in, ts_workings *workings)
{
    const double F_t = in->F_t, d_1 = in->d_1, b = in->b, u = in->u;
    const double Z_H = in->Z_H, Z_E = in->Z_E, Z_eps = in->Z_eps, Z_beta = in->Z_beta;

    return TS_STEP(workings, sigma_H0_formula,
                   Z_H * Z_E * Z_eps * Z_beta * sqrt(F_t / (d_1 * b) * (u + 1.0) / u), F_t, d_1, b,
                   u, Z_H, Z_E, Z_eps, Z_beta);
}
