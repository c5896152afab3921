/* rating/iso6336/root_stress.c: how far is the stress at the root above plain bending? */
#include "rating/iso6336/root_stress.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* ---- notches --------------------------------------------------------------------------------- */

#define L_TEXT(I)    "s_Fn" I "/h_Fe" I
#define Q_S_TEXT(I)  "s_Fn" I "/(2*rho_F" I ")"
#define Y_S_TEXT(I)  "(1.2 + 0.13*L_" I ")*q_s" I "^(1/(1.21 + 2.3/L_" I "))"
#define Y_SG_TEXT(I) "1.3*Y_S" I "/(1.3 - 0.6*sqrt(t_g" I "/rho_g" I "))"

static const ts_formula L_formulas[2] =
    TS_OF_BOTH_GEARS("L_", "root chord over bending arm", "1", L_TEXT, ISO_6336_3 "7.2" RECALLED);
static const ts_formula q_s_formulas[2] =
    TS_OF_BOTH_GEARS("q_s", "notch parameter", "1", Q_S_TEXT, ISO_6336_3 "7.2" RECALLED);
static const ts_formula Y_S_formulas[2] =
    TS_OF_BOTH_GEARS("Y_S", "stress correction factor", "1", Y_S_TEXT, ISO_6336_3 "7.2" RECALLED);
static const ts_formula Y_Sg_formulas[2] =
    TS_OF_BOTH_GEARS("Y_S", "stress correction factor with a grinding notch, Y_Sg,", "1", Y_SG_TEXT,
                     ISO_6336_3 "7.3" RECALLED);

ts_root_notch ts_root_notch_of(double s_Fn, double h_Fe, double rho_F, int gear,
                               ts_workings *workings)
{
    const double L =
        TS_GEAR_STEP(workings, L_formulas, s_Fn / h_Fe, TS_OWN("s_Fn", s_Fn), TS_OWN("h_Fe", h_Fe));
    const double q_s = TS_GEAR_STEP(workings, q_s_formulas, s_Fn / (2.0 * rho_F),
                                    TS_OWN("s_Fn", s_Fn), TS_OWN("rho_F", rho_F));
    const double Y_S =
        TS_GEAR_STEP(workings, Y_S_formulas, (1.2 + 0.13 * L) * pow(q_s, 1.0 / (1.21 + 2.3 / L)),
                     TS_OWN("L_", L), TS_OWN("q_s", q_s));

    return (ts_root_notch){L, q_s, Y_S};
}

double ts_grinding_notch(double Y_S, double t_g, double rho_g, int gear, ts_workings *workings)
{
    const double rest = 1.3 - 0.6 * sqrt(t_g / rho_g);

    if (!(rest > 0.0))
        return NAN;
    return TS_GEAR_STEP(workings, Y_Sg_formulas, 1.3 * Y_S / rest, TS_OWN("Y_S", Y_S),
                        TS_OWN("t_g", t_g), TS_OWN("rho_g", rho_g));
}

/* ---- sharing --------------------------------------------------------------------------------- */

#define ISO_6336_3_2019 "ISO 6336-3:2019, clause 6.3" RECALLED
#define F_EPS(name, expression)                                                                    \
    static const ts_formula name##_formula = {.symbol  = "f_eps",                                  \
                                              .meaning = "influence of load sharing",              \
                                              .unit    = "1",                                      \
                                              .text    = (expression),                             \
                                              .source  = ISO_6336_3_2019}
F_EPS(full, "1/sqrt(eps_alphan)");
F_EPS(part, "sqrt(1 - eps_beta + eps_beta/eps_alphan)");
F_EPS(deep, "sqrt((1 - eps_beta)/2 + eps_beta/eps_alphan)");

double ts_load_share_2006(double eps_alphan, double eps_beta, ts_workings *workings)
{
    (void)eps_alphan;
    (void)eps_beta;
    ts_workings_assumed(workings, "f_eps", 1.0, "1", "the edition of 2006 has no such factor");
    return 1.0;
}

static double of_table(double f_eps, ts_workings *workings)
{
    ts_workings_row(workings, "f_eps", f_eps, "1", ISO_6336_3_2019);
    return f_eps;
}

double ts_load_share_2019(double eps_alphan, double eps_beta, ts_workings *workings)
{
    if (!(eps_alphan > 0.0) || !(eps_beta >= 0.0))
        return NAN;
    if (eps_beta >= 1.0)
        return TS_STEP(workings, full_formula, 1.0 / sqrt(eps_alphan), eps_alphan);
    if (eps_beta > 0.0 && eps_alphan < 2.0)
        return TS_STEP(workings, part_formula, sqrt(1.0 - eps_beta + eps_beta / eps_alphan),
                       eps_beta, eps_alphan);
    if (eps_beta > 0.0)
        return TS_STEP(workings, deep_formula, sqrt((1.0 - eps_beta) / 2.0 + eps_beta / eps_alphan),
                       eps_beta, eps_alphan);
    return of_table(eps_alphan < 2.0 ? 1.0 : 0.7, workings);
}

#define HELIX "(1 - min(1, eps_beta)*min(30, beta*180/pi)/120)"
static const ts_formula Y_beta_2006_formula = {
    .symbol  = "Y_beta",
    .meaning = "helix angle factor (bending)",
    .unit    = "1",
    .text    = HELIX,
    .source  = "ISO 6336-3:2006, clause 8" RECALLED,
};
static const ts_formula Y_beta_2019_formula = {
    .symbol  = "Y_beta",
    .meaning = "helix angle factor (bending)",
    .unit    = "1",
    .text    = HELIX "/cos(beta)^3",
    .source  = "ISO 6336-3:2019, clause 8" RECALLED,
};

static double helix(double beta, double eps_beta)
{
    return 1.0 - fmin(1.0, eps_beta) * fmin(30.0, beta * 180.0 / pi) / 120.0;
}

double ts_helix_factor_bending_2006(double beta, double eps_beta, ts_workings *workings)
{
    return TS_STEP(workings, Y_beta_2006_formula, helix(beta, eps_beta), eps_beta, beta);
}

double ts_helix_factor_bending_2019(double beta, double eps_beta, ts_workings *workings)
{
    const double c = cos(beta);

    return TS_STEP(workings, Y_beta_2019_formula, helix(beta, eps_beta) / (c * c * c), eps_beta,
                   beta);
}

static const ts_formula Y_DT_formula = {
    .symbol  = "Y_DT",
    .meaning = "deep tooth factor",
    .unit    = "1",
    .text    = "2.366 - 0.666*eps_alphan",
    .source  = "ISO 6336-3:2006, clause 10" RECALLED,
};

double ts_deep_tooth_2006(double eps_alphan, int accuracy, ts_workings *workings)
{
    double Y_DT = 1.0;

    if (!(eps_alphan > 0.0))
        return NAN;
    if (accuracy <= 4 && eps_alphan > 2.05 && eps_alphan <= 2.5)
        return TS_STEP(workings, Y_DT_formula, 2.366 - 0.666 * eps_alphan, eps_alphan);
    if (accuracy <= 4 && eps_alphan > 2.5)
        Y_DT = 0.7;
    ts_workings_row(workings, "Y_DT", Y_DT, "1", Y_DT_formula.source);
    return Y_DT;
}

double ts_deep_tooth_2019(double eps_alphan, int accuracy, ts_workings *workings)
{
    (void)eps_alphan;
    (void)accuracy;
    ts_workings_assumed(workings, "Y_DT", 1.0, "1",
                        "the sharing of deep teeth is in f_eps already; to count it twice would be "
                        "unsafe");
    return 1.0;
}

/* ---- rim ------------------------------------------------------------------------------------- */

#define Y_B_TEXT(I)          "1.6*ln(2.242*h_t" I "/s_R" I ")"
#define Y_B_INTERNAL_TEXT(I) "1.15*ln(8.324*m_n/s_R" I ")"
static const ts_formula Y_B_formulas[2] =
    TS_OF_BOTH_GEARS("Y_B", "rim thickness factor", "1", Y_B_TEXT, ISO_6336_3 "9" RECALLED);
static const ts_formula Y_B_internal_formulas[2] = TS_OF_BOTH_GEARS(
    "Y_B", "rim thickness factor", "1", Y_B_INTERNAL_TEXT, ISO_6336_3 "9" RECALLED);

static double thick_rim(int gear, ts_workings *workings)
{
    ts_workings_row(workings, gear == 0 ? "Y_B1" : "Y_B2", 1.0, "1",
                    ISO_6336_3 "9: the rim is thick" RECALLED);
    return 1.0;
}

double ts_rim_factor(double s_R, double h_t, int gear, ts_workings *workings)
{
    if (s_R >= 1.2 * h_t)
        return thick_rim(gear, workings);
    if (!(s_R > 0.5 * h_t))
        return NAN;
    return TS_GEAR_STEP(workings, Y_B_formulas, 1.6 * log(2.242 * h_t / s_R), TS_OWN("h_t", h_t),
                        TS_OWN("s_R", s_R));
}

double ts_rim_factor_internal(double s_R, double m_n, int gear, ts_workings *workings)
{
    if (s_R >= 3.5 * m_n)
        return thick_rim(gear, workings);
    if (!(s_R > 1.75 * m_n))
        return NAN;
    return TS_GEAR_STEP(workings, Y_B_internal_formulas, 1.15 * log(8.324 * m_n / s_R), TS_ALL(m_n),
                        TS_OWN("s_R", s_R));
}

/* ---- stress ---------------------------------------------------------------------------------- */

#define SIGMA_F0_TEXT(I) "F_t/(b_F" I "*m_n)*Y_F" I "*Y_S" I "*Y_beta*Y_B" I "*Y_DT"
static const ts_formula sigma_F0_formulas[2] = TS_OF_BOTH_GEARS(
    "sigma_F0", "nominal root stress", "Pa", SIGMA_F0_TEXT, ISO_6336_3 "5.2" RECALLED);

double ts_nominal_root_stress(const ts_root_stress_input *in, int gear, ts_workings *workings)
{
    const double F_t = in->F_t, b_F = in->b_F, m_n = in->m_n, Y_F = in->Y_F, Y_S = in->Y_S;
    const double Y_beta = in->Y_beta, Y_B = in->Y_B, Y_DT = in->Y_DT;

    return TS_GEAR_STEP(workings, sigma_F0_formulas,
                        F_t / (b_F * m_n) * Y_F * Y_S * Y_beta * Y_B * Y_DT, TS_ALL(F_t),
                        TS_OWN("b_F", b_F), TS_ALL(m_n), TS_OWN("Y_F", Y_F), TS_OWN("Y_S", Y_S),
                        TS_ALL(Y_beta), TS_OWN("Y_B", Y_B), TS_ALL(Y_DT));
}
