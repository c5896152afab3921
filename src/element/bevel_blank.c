/* element/bevel_blank.c: which diameters and crowns do the blanks of a bevel pair have? */
#include "element/bevel_blank.h"

#include "element/bevel_step.h"

#include <math.h>

#define ISO_23509 "ISO 23509:2016, clause 7 (formula from memory)"
#define DERIVED   "derived: where the cone's line meets the axis"

#define D_I_TEXT(I, M)  "2*R_i*sin(delta_" I ")"
#define D_AE_TEXT(I, M) "d_e" I " + 2*h_ae" I "*cos(delta_" I ")"
#define D_FE_TEXT(I, M) "d_e" I " - 2*h_fe" I "*cos(delta_" I ")"
#define D_AI_TEXT(I, M) "d_i" I " + 2*h_ai" I "*cos(delta_" I ")"
#define D_FI_TEXT(I, M) "d_i" I " - 2*h_fi" I "*cos(delta_" I ")"
#define T_XO_TEXT(I, M) "R_e*cos(delta_" I ") - h_ae" I "*sin(delta_" I ")"
#define T_XI_TEXT(I, M) "R_i*cos(delta_" I ") - h_ai" I "*sin(delta_" I ")"
#define T_ZF_TEXT(I, M) "(R_m*sin(theta_a" I ") - h_am" I "*cos(theta_a" I "))/sin(delta_a" I ")"
#define T_ZR_TEXT(I, M) "(h_fm" I "*cos(theta_f" I ") - R_m*sin(theta_f" I "))/sin(delta_f" I ")"

static const ts_formula d_i_formulas[2] =
    TS_BEVEL_BOTH("d_i", "inner pitch diameter", "m", D_I_TEXT, ISO_23509);
static const ts_formula d_ae_formulas[2] =
    TS_BEVEL_BOTH("d_ae", "outer tip diameter", "m", D_AE_TEXT, ISO_23509);
static const ts_formula d_fe_formulas[2] =
    TS_BEVEL_BOTH("d_fe", "outer root diameter", "m", D_FE_TEXT, ISO_23509);
static const ts_formula d_ai_formulas[2] =
    TS_BEVEL_BOTH("d_ai", "inner tip diameter", "m", D_AI_TEXT, ISO_23509);
static const ts_formula d_fi_formulas[2] =
    TS_BEVEL_BOTH("d_fi", "inner root diameter", "m", D_FI_TEXT, ISO_23509);
static const ts_formula t_xo_formulas[2] =
    TS_BEVEL_BOTH("t_xo", "pitch apex to outer crown", "m", T_XO_TEXT, ISO_23509);
static const ts_formula t_xi_formulas[2] =
    TS_BEVEL_BOTH("t_xi", "pitch apex to inner crown", "m", T_XI_TEXT, ISO_23509);
static const ts_formula t_zF_formulas[2] =
    TS_BEVEL_BOTH("t_zF", "pitch apex to face apex", "m", T_ZF_TEXT, DERIVED);
static const ts_formula t_zR_formulas[2] =
    TS_BEVEL_BOTH("t_zR", "pitch apex to root apex", "m", T_ZR_TEXT, DERIVED);

#define OWN_2(a, b) TS_BEVEL_SELF(#a, a), TS_BEVEL_SELF(#b, b)
#define DELTA       TS_BEVEL_SELF("delta_", delta)

static void solve_diameters(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, int gear,
                            ts_bevel_blank *blank, ts_workings *workings)
{
    const double d_e   = gear == 0 ? pair->d_e1 : pair->d_e2;
    const double delta = gear == 0 ? pair->delta_1 : pair->delta_2;
    const double h_ae = teeth->h_ae[gear], h_fe = teeth->h_fe[gear], slope = cos(delta);
    const double h_ai = teeth->h_ai[gear], h_fi = teeth->h_fi[gear], R_i = teeth->R_i;

    const double d_i =
        TS_BEVEL_STEP(workings, d_i_formulas, 2.0 * R_i * sin(delta), TS_BEVEL_PAIR(R_i), DELTA);
    blank->d_i[gear] = d_i;
    blank->d_ae[gear] =
        TS_BEVEL_STEP(workings, d_ae_formulas, d_e + 2.0 * h_ae * slope, OWN_2(d_e, h_ae), DELTA);
    blank->d_fe[gear] =
        TS_BEVEL_STEP(workings, d_fe_formulas, d_e - 2.0 * h_fe * slope, OWN_2(d_e, h_fe), DELTA);
    blank->d_ai[gear] =
        TS_BEVEL_STEP(workings, d_ai_formulas, d_i + 2.0 * h_ai * slope, OWN_2(d_i, h_ai), DELTA);
    blank->d_fi[gear] =
        TS_BEVEL_STEP(workings, d_fi_formulas, d_i - 2.0 * h_fi * slope, OWN_2(d_i, h_fi), DELTA);
}

static void solve_lengths(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, int gear,
                          ts_bevel_blank *blank, ts_workings *workings)
{
    const double delta = gear == 0 ? pair->delta_1 : pair->delta_2;
    const double R_e = pair->R_e, R_m = pair->R_m, R_i = teeth->R_i;
    const double h_ae = teeth->h_ae[gear], h_ai = teeth->h_ai[gear];
    const double h_am = teeth->h_am[gear], h_fm = teeth->h_fm[gear];
    const double theta_a = teeth->theta_a[gear], delta_a = teeth->delta_a[gear];
    const double theta_f = teeth->theta_f[gear], delta_f = teeth->delta_f[gear];

    blank->t_xo[gear] = TS_BEVEL_STEP(workings, t_xo_formulas, R_e * cos(delta) - h_ae * sin(delta),
                                      TS_BEVEL_PAIR(R_e), DELTA, TS_BEVEL_SELF("h_ae", h_ae));
    blank->t_xi[gear] = TS_BEVEL_STEP(workings, t_xi_formulas, R_i * cos(delta) - h_ai * sin(delta),
                                      TS_BEVEL_PAIR(R_i), DELTA, TS_BEVEL_SELF("h_ai", h_ai));
    blank->t_zF[gear] = TS_BEVEL_STEP(
        workings, t_zF_formulas, (R_m * sin(theta_a) - h_am * cos(theta_a)) / sin(delta_a),
        TS_BEVEL_PAIR(R_m), OWN_2(theta_a, h_am), TS_BEVEL_SELF("delta_a", delta_a));
    blank->t_zR[gear] = TS_BEVEL_STEP(
        workings, t_zR_formulas, (h_fm * cos(theta_f) - R_m * sin(theta_f)) / sin(delta_f),
        TS_BEVEL_PAIR(R_m), OWN_2(theta_f, h_fm), TS_BEVEL_SELF("delta_f", delta_f));
}

void ts_bevel_blank_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                          ts_bevel_blank *blank, ts_workings *workings)
{
    for (int gear = 0; gear < 2; gear++) {
        solve_diameters(pair, teeth, gear, blank, workings);
        solve_lengths(pair, teeth, gear, blank, workings);
    }
}
