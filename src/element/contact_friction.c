/* element/contact_friction.c: how strongly do two flanks rub? */
#include "element/contact_friction.h"

#include <math.h>

#define ISO_20 "ISO/TS 6336-20:2017, mean coefficient of friction (from memory)"
#define ISO_21 "ISO/TS 6336-21:2017, mean coefficient of friction (from memory)"

static const ts_formula Ra_formula = {
    .symbol  = "Ra",
    .meaning = "mean roughness of both flanks",
    .unit    = "m",
    .text    = "(Ra_1 + Ra_2)/2",
    .source  = ISO_20,
};
static const ts_formula mu_m_formula = {
    .symbol  = "mu_m",
    .meaning = "mean coefficient of friction",
    .unit    = "1",
    .text    = "0.06*(w_Bt/(1e6*v_SigmaC*rho_redC))^0.2*X_L*(1000*eta_oil)^-0.05*X_R",
    .source  = ISO_20,
};
static const ts_formula X_R_flash_formula = {
    .symbol  = "X_R",
    .meaning = "roughness factor",
    .unit    = "1",
    .text    = "(1e6*Ra)^0.25",
    .source  = ISO_20,
};
static const ts_formula X_R_integral_formula = {
    .symbol  = "X_R",
    .meaning = "roughness factor",
    .unit    = "1",
    .text    = "2.2*(1000*Ra/rho_redC)^0.25",
    .source  = ISO_21,
};
static const ts_formula mu_mC_formula = {
    .symbol  = "mu_mC",
    .meaning = "mean coefficient of friction",
    .unit    = "1",
    .text    = "0.045*(w_Btmu/(1e6*v_SigmaC*rho_redC))^0.2*(1000*eta_oil)^-0.05*X_R*X_L",
    .source  = ISO_21,
};
static const ts_formula K_Bgamma_formula = {
    .symbol  = "K_Bgamma",
    .meaning = "helical load factor",
    .unit    = "1",
    .text    = "1 + 0.2*sqrt((min(3.5, max(2, eps_gamma)) - 2)*(5 - min(3.5, max(2, eps_gamma))))",
    .source  = "ISO/TS 6336-21:2017, helical load factor (from memory)",
};
static const ts_formula v_SigmaC_formula = {
    .symbol  = "v_SigmaC",
    .meaning = "sum of the surface speeds at the pitch point",
    .unit    = "m/s",
    .text    = "2*v*tan(alpha_wt)*cos(alpha_t)",
    .source  = ISO_21,
};
static const ts_formula rho_redC_formula = {
    .symbol  = "rho_redC",
    .meaning = "reduced radius of curvature at the pitch point, normal to the flanks",
    .unit    = "m",
    .text    = "u/(1 + u)^2*a_w*sin(alpha_wt)/cos(beta_b)",
    .source  = ISO_21,
};
static const ts_formula B_M1_formula = {
    .symbol  = "B_M1",
    .meaning = "thermal contact coefficient of gear 1",
    .unit    = "J/(m2.K.s^0.5)",
    .text    = "sqrt(lambda_1*rho_M1*c_M1)",
    .source  = "ISO/TS 6336-20:2017, thermal contact coefficient (from memory)",
};
static const ts_formula B_M2_formula = {
    .symbol  = "B_M2",
    .meaning = "thermal contact coefficient of gear 2",
    .unit    = "J/(m2.K.s^0.5)",
    .text    = "sqrt(lambda_2*rho_M2*c_M2)",
    .source  = "ISO/TS 6336-20:2017, thermal contact coefficient (from memory)",
};

typedef struct lubricant_row {
    const char *name;
    double      X_L;
    const char *source;
} lubricant_row;

#define TABLE "ISO/TS 6336-21:2017, lubricant factor (from memory)"

static const lubricant_row lubricants[TS_LUBRICANT_COUNT] = {
    [TS_LUBRICANT_MINERAL]   = {"mineral oil", 1.0, TABLE},
    [TS_LUBRICANT_PAO]       = {"polyalphaolefin", 0.8, TABLE},
    [TS_LUBRICANT_PAG]       = {"polyglycol that water does not dissolve", 0.7, TABLE},
    [TS_LUBRICANT_PAG_WATER] = {"polyglycol that water dissolves", 0.6, TABLE},
    [TS_LUBRICANT_TRACTION]  = {"traction fluid", 1.5, TABLE},
    [TS_LUBRICANT_PHOSPHATE] = {"phosphate ester", 1.3, TABLE},
    [TS_LUBRICANT_POLYOL]    = {"polyol ester", 1.0, "as mineral oil: common practice, no source"},
};

double ts_lubricant_friction(ts_lubricant lubricant)
{
    return lubricants[lubricant].X_L;
}

const char *ts_lubricant_name(ts_lubricant lubricant)
{
    return lubricants[lubricant].name;
}

const char *ts_lubricant_source(ts_lubricant lubricant)
{
    return lubricants[lubricant].source;
}

static double mean_roughness(const ts_friction_input *in, ts_workings *workings)
{
    const double Ra_1 = in->Ra_1, Ra_2 = in->Ra_2;

    return TS_STEP(workings, Ra_formula, (Ra_1 + Ra_2) / 2.0, Ra_1, Ra_2);
}

double ts_friction_flash(const ts_friction_input *in, ts_workings *workings)
{
    const double w_Bt = in->w_Bt, v_SigmaC = in->v_SigmaC, rho_redC = in->rho_redC;
    const double X_L = in->X_L, eta_oil = in->eta_oil;

    const double Ra   = mean_roughness(in, workings);
    const double X_R  = TS_STEP(workings, X_R_flash_formula, sqrt(sqrt(1e6 * Ra)), Ra);
    const double mu_m = 0.06 * pow(w_Bt / (1e6 * v_SigmaC * rho_redC), 0.2) * X_L *
                        pow(1000.0 * eta_oil, -0.05) * X_R;
    return TS_STEP(workings, mu_m_formula, mu_m, w_Bt, v_SigmaC, rho_redC, X_L, eta_oil, X_R);
}

double ts_friction_integral(const ts_friction_input *in, ts_workings *workings)
{
    const double w_Btmu = in->w_Bt, v_SigmaC = in->v_SigmaC, rho_redC = in->rho_redC;
    const double X_L = in->X_L, eta_oil = in->eta_oil;

    const double Ra    = mean_roughness(in, workings);
    const double X_R   = TS_STEP(workings, X_R_integral_formula,
                                 2.2 * sqrt(sqrt(1000.0 * Ra / rho_redC)), Ra, rho_redC);
    const double mu_mC = 0.045 * pow(w_Btmu / (1e6 * v_SigmaC * rho_redC), 0.2) *
                         pow(1000.0 * eta_oil, -0.05) * X_R * X_L;
    return TS_STEP(workings, mu_mC_formula, mu_mC, w_Btmu, v_SigmaC, rho_redC, eta_oil, X_R, X_L);
}

double ts_helical_load_factor(double eps_gamma, ts_workings *workings)
{
    const double held = fmin(3.5, fmax(2.0, eps_gamma));

    return TS_STEP(workings, K_Bgamma_formula, 1.0 + 0.2 * sqrt((held - 2.0) * (5.0 - held)),
                   eps_gamma);
}

double ts_sum_of_speeds(double v, double alpha_wt, double alpha_t, ts_workings *workings)
{
    return TS_STEP(workings, v_SigmaC_formula, 2.0 * v * tan(alpha_wt) * cos(alpha_t), v, alpha_wt,
                   alpha_t);
}

double ts_pitch_point_radius(double a_w, double u, double alpha_wt, double beta_b,
                             ts_workings *workings)
{
    const double rho_redC = u / ((1.0 + u) * (1.0 + u)) * a_w * sin(alpha_wt) / cos(beta_b);

    return TS_STEP(workings, rho_redC_formula, rho_redC, u, a_w, alpha_wt, beta_b);
}

double ts_thermal_contact(double lambda, double rho, double c_M, int gear, ts_workings *workings)
{
    const double lambda_1 = lambda, rho_M1 = rho, c_M1 = c_M;
    const double lambda_2 = lambda, rho_M2 = rho, c_M2 = c_M;

    if (gear == 1)
        return TS_STEP(workings, B_M1_formula, sqrt(lambda_1 * rho_M1 * c_M1), lambda_1, rho_M1,
                       c_M1);
    return TS_STEP(workings, B_M2_formula, sqrt(lambda_2 * rho_M2 * c_M2), lambda_2, rho_M2, c_M2);
}
