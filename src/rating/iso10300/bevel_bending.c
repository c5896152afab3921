/* rating/iso10300/bevel_bending.c: how much does a slanting, shared load bend the root? */
#include "rating/iso10300/bevel_root.h"

#include "rating/iso10300/bevel_source.h"

#include <math.h>

BEVEL_FORMULA(Y_eps, "contact ratio factor (bending)", "1",
              "max(0.625, 0.25 + 0.75/eps_valpha - min(1, eps_vbeta)*(0.75/eps_valpha - 0.375))",
              ISO_10300_3 "6.4.3");

double ts_bevel_bending_overlap(double eps_valpha, double eps_vbeta, ts_workings *workings)
{
    const double alone = 0.75 / eps_valpha;

    return TS_STEP(workings, Y_eps_formula,
                   fmax(0.625, 0.25 + alone - fmin(1.0, eps_vbeta) * (alone - 0.375)), eps_valpha,
                   eps_vbeta);
}

#define SLANT ISO_10300_3 "6.4.4"
BEVEL_FORMULA(b_a, "face width along the tooth", "m", "b_v/cos(beta_m)", SLANT);
BEVEL_FORMULA(l_bb, "part of it that the line of contact covers", "m",
              "l_bm*cos(beta_vb)/cos(beta_m)", SLANT);
BEVEL_FORMULA(a_BS, "curve of the spiral angle factor", "1",
              "-0.0182*(b_a/h_m)^2 + 0.4736*b_a/h_m + 0.32", SLANT);
BEVEL_FORMULA(b_BS, "curve of the spiral angle factor", "1",
              "-0.0032*(b_a/h_m)^2 + 0.0526*b_a/h_m + 0.712", SLANT);
BEVEL_FORMULA(c_BS, "curve of the spiral angle factor", "1",
              "-0.005*(b_a/h_m)^2 + 0.085*b_a/h_m + 0.54", SLANT);
BEVEL_FORMULA(Y_BS, "bevel spiral angle factor", "1", "a_BS/c_BS*(l_bb/b_a - 1.05*b_BS)^2 + 1",
              SLANT);

ts_bevel_slant ts_bevel_slant_factor(const ts_bevel_slant_input *in, ts_workings *workings)
{
    const double b_v = in->b_v, beta_m = in->beta_m, beta_vb = in->beta_vb, l_bm = in->l_bm;
    const double h_m = in->h_m;

    const double b_a = TS_STEP(workings, b_a_formula, b_v / cos(beta_m), b_v, beta_m);
    const double l_bb =
        TS_STEP(workings, l_bb_formula, l_bm * cos(beta_vb) / cos(beta_m), l_bm, beta_vb, beta_m);
    const double slim = b_a / h_m;
    const double a_BS =
        TS_STEP(workings, a_BS_formula, -0.0182 * (slim * slim) + 0.4736 * slim + 0.32, b_a, h_m);
    const double b_BS =
        TS_STEP(workings, b_BS_formula, -0.0032 * (slim * slim) + 0.0526 * slim + 0.712, b_a, h_m);
    const double c_BS =
        TS_STEP(workings, c_BS_formula, -0.005 * (slim * slim) + 0.085 * slim + 0.54, b_a, h_m);
    const double off = l_bb / b_a - 1.05 * b_BS;

    return (ts_bevel_slant){b_a,
                            l_bb,
                            a_BS,
                            b_BS,
                            c_BS,
                            TS_STEP(workings, Y_BS_formula, a_BS / c_BS * (off * off) + 1.0, a_BS,
                                    c_BS, l_bb, b_a, b_BS)};
}

#define NOMINAL_TEXT(I, M) "F_mt/(b_v*m_mn)*Y_Fa" I "*Y_Sa" I "*Y_eps*Y_BS*Y_LS"
#define STRESS_TEXT(I, M)  "sigma_F0" I "*K_A*K_v*K_Fbeta*K_Falpha"
BEVEL_FORMULAS(sigma_F0, "nominal tooth root stress", "Pa", NOMINAL_TEXT, ISO_10300_3 "6.1");
BEVEL_FORMULAS(sigma_F, "tooth root stress", "Pa", STRESS_TEXT, ISO_10300_3 "6.1");

double ts_bevel_bending_nominal(const ts_bevel_bending_input *in, int gear, ts_workings *workings)
{
    const double F_mt = in->F_mt, b_v = in->b_v, m_mn = in->m_mn, Y_Fa = in->Y_Fa, Y_Sa = in->Y_Sa;
    const double Y_eps = in->Y_eps, Y_BS = in->Y_BS, Y_LS = in->Y_LS;

    return TS_BEVEL_STEP(workings, sigma_F0_formulas,
                         F_mt / (b_v * m_mn) * Y_Fa * Y_Sa * Y_eps * Y_BS * Y_LS,
                         TS_BEVEL_PAIR(F_mt), TS_BEVEL_PAIR(b_v), TS_BEVEL_PAIR(m_mn),
                         TS_BEVEL_SELF("Y_Fa", Y_Fa), TS_BEVEL_SELF("Y_Sa", Y_Sa),
                         TS_BEVEL_PAIR(Y_eps), TS_BEVEL_PAIR(Y_BS), TS_BEVEL_PAIR(Y_LS));
}

double ts_bevel_bending_stress(double sigma_F0, const double K[4], int gear, ts_workings *workings)
{
    const double K_A = K[0], K_v = K[1], K_Fbeta = K[2], K_Falpha = K[3];

    return TS_BEVEL_STEP(workings, sigma_F_formulas, sigma_F0 * K_A * K_v * K_Fbeta * K_Falpha,
                         TS_BEVEL_SELF("sigma_F0", sigma_F0), TS_BEVEL_PAIR(K_A),
                         TS_BEVEL_PAIR(K_v), TS_BEVEL_PAIR(K_Fbeta), TS_BEVEL_PAIR(K_Falpha));
}
