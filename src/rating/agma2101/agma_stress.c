/* rating/agma2101/agma_stress.c: how much stress, and how much is allowed? */
#include "rating/agma2101/agma_stress.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static const ts_formula Z_E_formula = {
    .symbol  = "Z_E",
    .meaning = "elastic coefficient (1 sqrt(N/mm2) is 1000 sqrt(Pa))",
    .unit    = "sqrt(Pa)",
    .text    = "sqrt(1/(pi*((1 - nu_1^2)/E_1 + (1 - nu_2^2)/E_2)))",
    .source  = AGMA_2101 "12" RECALLED,
};

double ts_agma_elastic_coefficient(double E_1, double nu_1, double E_2, double nu_2,
                                   ts_workings *workings)
{
    if (!(E_1 > 0.0) || !(E_2 > 0.0) || !(fabs(nu_1) < 1.0) || !(fabs(nu_2) < 1.0))
        return NAN;
    const double give = (1.0 - nu_1 * nu_1) / E_1 + (1.0 - nu_2 * nu_2) / E_2;

    return TS_STEP(workings, Z_E_formula, sqrt(1.0 / (pi * give)), E_1, nu_1, E_2, nu_2);
}

#define CLAUSE_5        AGMA_2101 "5" RECALLED
#define SIGMA_H_TEXT(I) "Z_E*sqrt(F_t*K_o*K_v*K_s" I "*K_H*Z_R/(d_P*b*Z_I))"
#define SIGMA_F_TEXT(I) "F_t*K_o*K_v*K_s" I "*K_H*K_B" I "/(b*m_t*Y_J" I ")"
#define S_H_TEXT(I)     "sigma_HP" I "*Z_N" I "*Z_W" I "/(Y_theta*Y_Z*sigma_H" I ")"
#define S_F_TEXT(I)     "sigma_FP" I "*Y_N" I "*Y_M" I "/(Y_theta*Y_Z*sigma_F" I ")"

static const ts_formula sigma_H_formulas[2] =
    TS_OF_BOTH_GEARS("sigma_H", "contact stress number", "Pa", SIGMA_H_TEXT, CLAUSE_5);
static const ts_formula sigma_F_formulas[2] =
    TS_OF_BOTH_GEARS("sigma_F", "bending stress number", "Pa", SIGMA_F_TEXT, CLAUSE_5);
static const ts_formula S_H_formulas[2] =
    TS_OF_BOTH_GEARS("S_H", "safety against pitting", "1", S_H_TEXT, CLAUSE_5);
static const ts_formula S_F_formulas[2] =
    TS_OF_BOTH_GEARS("S_F", "safety against tooth breakage", "1", S_F_TEXT, CLAUSE_5);

/* Sums and quotients run in the order of the text, so that both overflow alike. */
double ts_agma_contact_stress(const ts_agma_overload *load, const ts_agma_contact_input *in,
                              int gear, ts_workings *workings)
{
    const double F_t = load->F_t, K_o = load->K_o, K_v = load->K_v, K_H = load->K_H;
    const double K_s = in->K_s, Z_E = in->Z_E, Z_R = in->Z_R, d_P = in->d_w, b = in->b;
    const double Z_I     = in->Z_I;
    const double sigma_H = Z_E * sqrt(F_t * K_o * K_v * K_s * K_H * Z_R / (d_P * b * Z_I));

    if (!(sigma_H >= 0.0) || !(d_P * b * Z_I > 0.0)) /* NaN, or a factor below 0 */
        return NAN;
    return TS_GEAR_STEP(workings, sigma_H_formulas, sigma_H, TS_ALL(Z_E), TS_ALL(F_t), TS_ALL(K_o),
                        TS_ALL(K_v), TS_OWN("K_s", K_s), TS_ALL(K_H), TS_ALL(Z_R), TS_ALL(d_P),
                        TS_ALL(b), TS_ALL(Z_I));
}

double ts_agma_bending_stress(const ts_agma_overload *load, const ts_agma_bending_stress_input *in,
                              int gear, ts_workings *workings)
{
    const double F_t = load->F_t, K_o = load->K_o, K_v = load->K_v, K_H = load->K_H;
    const double K_s = in->K_s, K_B = in->K_B, m_t = in->m_t, b = in->b, Y_J = in->Y_J;
    const double sigma_F = F_t * K_o * K_v * K_s * K_H * K_B / (b * m_t * Y_J);

    if (!(sigma_F >= 0.0) || !(b * m_t * Y_J > 0.0))
        return NAN;
    return TS_GEAR_STEP(workings, sigma_F_formulas, sigma_F, TS_ALL(F_t), TS_ALL(K_o), TS_ALL(K_v),
                        TS_OWN("K_s", K_s), TS_ALL(K_H), TS_OWN("K_B", K_B), TS_ALL(b), TS_ALL(m_t),
                        TS_OWN("Y_J", Y_J));
}

double ts_agma_safety_contact(double sigma_H, const ts_agma_contact_strength *in, int gear,
                              ts_workings *workings)
{
    const double sigma_HP = in->sigma_HP, Z_N = in->Z_N, Z_W = in->Z_W, Y_Z = in->Y_Z;
    const double Y_theta = in->Y_theta, S_H = sigma_HP * Z_N * Z_W / (Y_theta * Y_Z * sigma_H);

    if (!(S_H >= 0.0) || !(sigma_H >= 0.0))
        return NAN;
    return TS_GEAR_STEP(workings, S_H_formulas, S_H, TS_OWN("sigma_HP", sigma_HP),
                        TS_OWN("Z_N", Z_N), TS_OWN("Z_W", Z_W), TS_ALL(Y_theta), TS_ALL(Y_Z),
                        TS_OWN("sigma_H", sigma_H));
}

double ts_agma_safety_bending(double sigma_F, const ts_agma_bending_strength *in, int gear,
                              ts_workings *workings)
{
    const double sigma_FP = in->sigma_FP, Y_N = in->Y_N, Y_M = in->Y_M, Y_Z = in->Y_Z;
    const double Y_theta = in->Y_theta, S_F = sigma_FP * Y_N * Y_M / (Y_theta * Y_Z * sigma_F);

    if (!(S_F >= 0.0) || !(sigma_F >= 0.0))
        return NAN;
    return TS_GEAR_STEP(workings, S_F_formulas, S_F, TS_OWN("sigma_FP", sigma_FP),
                        TS_OWN("Y_N", Y_N), TS_OWN("Y_M", Y_M), TS_ALL(Y_theta), TS_ALL(Y_Z),
                        TS_OWN("sigma_F", sigma_F));
}
