/* rating/agma2101/agma908_bending.c: what do section, arm and notch say together? */
#include "rating/agma2101/agma908_bending.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

#define CLAUSE_5 AGMA_908 "5" RECALLED

static const ts_formula H_f_formula = {
    .symbol  = "H_f",
    .meaning = "constant of the stress correction",
    .unit    = "1",
    .text    = "0.331 - 0.436*alpha_n",
    .source  = CLAUSE_5,
};
static const ts_formula L_f_formula = {
    .symbol  = "L_f",
    .meaning = "exponent of the stress correction",
    .unit    = "1",
    .text    = "0.324 - 0.492*alpha_n",
    .source  = CLAUSE_5,
};
static const ts_formula M_f_formula = {
    .symbol  = "M_f",
    .meaning = "exponent of the stress correction",
    .unit    = "1",
    .text    = "0.261 + 0.545*alpha_n",
    .source  = CLAUSE_5,
};

ts_agma_notch ts_agma_notch_of(double alpha_n, ts_workings *workings)
{
    return (ts_agma_notch){
        .H_f = TS_STEP(workings, H_f_formula, 0.331 - 0.436 * alpha_n, alpha_n),
        .L_f = TS_STEP(workings, L_f_formula, 0.324 - 0.492 * alpha_n, alpha_n),
        .M_f = TS_STEP(workings, M_f_formula, 0.261 + 0.545 * alpha_n, alpha_n),
    };
}

#define K_F_TEXT(I) "H_f + (s_F" I "/rho_F" I ")^L_f*(s_F" I "/h_F" I ")^M_f"
#define Y_TEXT(I)                                                                                  \
    "K_psi/(cos(alpha_nL" I ")/cos(alpha_wn)*(6*h_F" I "/(s_F" I "^2*C_h) - tan(alpha_nL" I        \
    ")/s_F" I "))"
#define Y_J_TEXT(I) "Y_" I "*C_psi/(K_f" I "*m_N)"

static const ts_formula K_f_formulas[2] =
    TS_OF_BOTH_GEARS("K_f", "stress correction factor", "1", K_F_TEXT, CLAUSE_5);
static const ts_formula Y_formulas[2] =
    TS_OF_BOTH_GEARS("Y_", "tooth form factor", "1", Y_TEXT, CLAUSE_5);
static const ts_formula Y_J_formulas[2] =
    TS_OF_BOTH_GEARS("Y_J", "geometry factor for bending strength", "1", Y_J_TEXT, CLAUSE_5);

ts_agma_bending ts_agma_bending_of(const ts_agma_root *root, const ts_agma_mesh *mesh,
                                   const ts_agma_notch *notch, int gear, ts_workings *workings)
{
    const double s_F = root->s_F, h_F = root->h_F, rho_F = root->rho_F, alpha_nL = root->alpha_nL;
    const double H_f = notch->H_f, L_f = notch->L_f, M_f = notch->M_f;
    const double C_h = mesh->C_h, K_psi = mesh->K_psi, alpha_wn = mesh->alpha_wn;
    const double C_psi = mesh->C_psi, m_N = mesh->m_N;
    ts_agma_bending out = {NAN, NAN, NAN};

    const double lever = 6.0 * h_F / (s_F * s_F * C_h) - tan(alpha_nL) / s_F;
    if (!(lever > 0.0) || !(rho_F > 0.0) || isnan(C_psi) || isnan(m_N))
        return out;
    out.K_f = TS_GEAR_STEP(
        workings, K_f_formulas, H_f + pow(s_F / rho_F, L_f) * pow(s_F / h_F, M_f), TS_ALL(H_f),
        TS_OWN("s_F", s_F), TS_OWN("rho_F", rho_F), TS_ALL(L_f), TS_OWN("h_F", h_F), TS_ALL(M_f));
    out.Y   = TS_GEAR_STEP(workings, Y_formulas, K_psi / (cos(alpha_nL) / cos(alpha_wn) * lever),
                           TS_ALL(K_psi), TS_OWN("alpha_nL", alpha_nL), TS_ALL(alpha_wn),
                           TS_OWN("h_F", h_F), TS_OWN("s_F", s_F), TS_ALL(C_h));
    out.Y_J = TS_GEAR_STEP(workings, Y_J_formulas, out.Y * C_psi / (out.K_f * m_N),
                           TS_OWN("Y_", out.Y), TS_ALL(C_psi), TS_OWN("K_f", out.K_f), TS_ALL(m_N));
    return out;
}
