/* element/cylindrical_contact.c: where do the flanks touch, and how do they slide there? */
#include "element/cylindrical_contact.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define ISO_21771 "ISO 21771:2007 (formula from memory)"

static const ts_formula rho_T_formula = {
    .symbol  = "rho_T",
    .meaning = "length of the line of action between the base circles",
    .unit    = "m",
    .text    = "a_w*sin(alpha_wt)",
    .source  = ISO_21771,
};
static const ts_formula rho_A1_formula = {
    .symbol  = "rho_A1",
    .meaning = "curvature of gear 1 where contact begins",
    .unit    = "m",
    .text    = "rho_T - rho_a2",
    .source  = ISO_21771,
};
static const ts_formula rho_B1_formula = {
    .symbol  = "rho_B1",
    .meaning = "curvature of gear 1 at the lowest point of single contact",
    .unit    = "m",
    .text    = "rho_a1 - p_bt",
    .source  = ISO_21771,
};
static const ts_formula rho_C1_formula = {
    .symbol  = "rho_C1",
    .meaning = "curvature of gear 1 at the pitch point",
    .unit    = "m",
    .text    = "d_b1/2*tan(alpha_wt)",
    .source  = ISO_21771,
};
static const ts_formula rho_D1_formula = {
    .symbol  = "rho_D1",
    .meaning = "curvature of gear 1 at the highest point of single contact",
    .unit    = "m",
    .text    = "rho_A1 + p_bt",
    .source  = ISO_21771,
};
static const ts_formula g_alpha_formula = {
    .symbol  = "g_alpha",
    .meaning = "length of the path of contact",
    .unit    = "m",
    .text    = "rho_a1 + rho_a2 - rho_T",
    .source  = ISO_21771,
};
static const ts_formula g_f_formula = {
    .symbol  = "g_f",
    .meaning = "length of the approach path",
    .unit    = "m",
    .text    = "rho_C1 - rho_A1",
    .source  = ISO_21771,
};
static const ts_formula g_a_formula = {
    .symbol  = "g_a",
    .meaning = "length of the recess path",
    .unit    = "m",
    .text    = "rho_a1 - rho_C1",
    .source  = ISO_21771,
};
static const ts_formula eps_alpha_formula = {
    .symbol  = "eps_alpha",
    .meaning = "transverse contact ratio",
    .unit    = "1",
    .text    = "g_alpha/p_bt",
    .source  = ISO_21771,
};
static const ts_formula eps_beta_formula = {
    .symbol  = "eps_beta",
    .meaning = "overlap ratio",
    .unit    = "1",
    .text    = "min(b_1, b_2)*sin(beta)/(pi*m_n)",
    .source  = ISO_21771,
};
static const ts_formula eps_gamma_formula = {
    .symbol  = "eps_gamma",
    .meaning = "total contact ratio",
    .unit    = "1",
    .text    = "eps_alpha + eps_beta",
    .source  = ISO_21771,
};
static const ts_formula clear_Ff1_formula = {
    .symbol  = "clear_Ff1",
    .meaning = "path from the end of the involute at the root of gear 1 to the first contact",
    .unit    = "m",
    .text    = "rho_A1 - rho_Ff1",
    .source  = "derived: difference of curvatures along the line of action",
};
static const ts_formula clear_Ff2_formula = {
    .symbol  = "clear_Ff2",
    .meaning = "path from the last contact to the end of the involute at the root of gear 2",
    .unit    = "m",
    .text    = "rho_T - rho_a1 - rho_Ff2",
    .source  = "derived: difference of curvatures along the line of action",
};
static const ts_formula zeta_A1_formula = {
    .symbol  = "zeta_A1",
    .meaning = "specific sliding of gear 1 where contact begins",
    .unit    = "1",
    .text    = "1 - (rho_T - rho_A1)/(u*rho_A1)",
    .source  = ISO_21771,
};
static const ts_formula zeta_A2_formula = {
    .symbol  = "zeta_A2",
    .meaning = "specific sliding of gear 2 where contact begins",
    .unit    = "1",
    .text    = "1 - u*rho_A1/(rho_T - rho_A1)",
    .source  = ISO_21771,
};
static const ts_formula zeta_E1_formula = {
    .symbol  = "zeta_E1",
    .meaning = "specific sliding of gear 1 where contact ends",
    .unit    = "1",
    .text    = "1 - (rho_T - rho_a1)/(u*rho_a1)",
    .source  = ISO_21771,
};
static const ts_formula zeta_E2_formula = {
    .symbol  = "zeta_E2",
    .meaning = "specific sliding of gear 2 where contact ends",
    .unit    = "1",
    .text    = "1 - u*rho_a1/(rho_T - rho_a1)",
    .source  = ISO_21771,
};
static const ts_formula v_g_formula = {
    .symbol  = "v_g",
    .meaning = "sliding speed of the flanks",
    .unit    = "m/s",
    .text    = "omega_1*(1 + 1/u)*g",
    .source  = ISO_21771,
};

static const ts_formula turn_1_formula = {
    .symbol  = "phi_alpha1",
    .meaning = "turn of gear 1 during transverse contact",
    .unit    = "rad",
    .text    = "2*g_alpha/d_b1",
    .source  = ISO_21771,
};
static const ts_formula turn_2_formula = {
    .symbol  = "phi_alpha2",
    .meaning = "turn of gear 2 during transverse contact",
    .unit    = "rad",
    .text    = "2*g_alpha/abs(d_b2)",
    .source  = ISO_21771,
};
static const ts_formula arc_formula = {
    .symbol  = "g_arc",
    .meaning = "arc of contact on the working pitch circles",
    .unit    = "m",
    .text    = "g_alpha/cos(alpha_wt)",
    .source  = "derived: the base circle turns as far as the pitch circle",
};
static const ts_formula j_opened_formula = {
    .symbol  = "j_opened",
    .meaning = "backlash opened by a growth of the centre distance, first order",
    .unit    = "m",
    .text    = "2*delta_a*tan(alpha_wt)",
    .source  = "derived: first term of the growth of inv(alpha_wt)",
};

static void solve_points(ts_cylindrical_pair *pair, double rho_a2, ts_workings *workings)
{
    const double a_w = pair->a_w, alpha_wt = pair->alpha_wt, d_b1 = pair->d_b1;
    const double p_bt = pair->p_bt, rho_a1 = pair->rho_E1;

    const double rho_T  = TS_STEP(workings, rho_T_formula, a_w * sin(alpha_wt), a_w, alpha_wt);
    const double rho_A1 = TS_STEP(workings, rho_A1_formula, rho_T - rho_a2, rho_T, rho_a2);

    pair->rho_T  = rho_T;
    pair->rho_A1 = rho_A1;
    pair->rho_B1 = TS_STEP(workings, rho_B1_formula, rho_a1 - p_bt, rho_a1, p_bt);
    pair->rho_C1 = TS_STEP(workings, rho_C1_formula, d_b1 / 2.0 * tan(alpha_wt), d_b1, alpha_wt);
    pair->rho_D1 = TS_STEP(workings, rho_D1_formula, rho_A1 + p_bt, rho_A1, p_bt);
    pair->g_alpha =
        TS_STEP(workings, g_alpha_formula, rho_a1 + rho_a2 - rho_T, rho_a1, rho_a2, rho_T);
}

static void solve_ratios(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double rho_a1 = pair->rho_E1, rho_A1 = pair->rho_A1, rho_C1 = pair->rho_C1;
    const double g_alpha = pair->g_alpha, p_bt = pair->p_bt, m_n = pair->in.m_n;
    const double b_1 = pair->in.b_1, b_2 = pair->in.b_2, beta = pair->in.beta;

    pair->g_f = TS_STEP(workings, g_f_formula, rho_C1 - rho_A1, rho_C1, rho_A1);
    pair->g_a = TS_STEP(workings, g_a_formula, rho_a1 - rho_C1, rho_a1, rho_C1);

    const double eps_alpha = TS_STEP(workings, eps_alpha_formula, g_alpha / p_bt, g_alpha, p_bt);
    const double eps_beta  = TS_STEP(workings, eps_beta_formula,
                                     fmin(b_1, b_2) * sin(beta) / (pi * m_n), b_1, b_2, beta, m_n);

    pair->eps_alpha = eps_alpha;
    pair->eps_beta  = eps_beta;
    pair->eps_gamma =
        TS_STEP(workings, eps_gamma_formula, eps_alpha + eps_beta, eps_alpha, eps_beta);
}

double ts_specific_sliding_1(const ts_cylindrical_pair *pair, double rho_1)
{
    return rho_1 > 0.0 ? 1.0 - (pair->rho_T - rho_1) / (pair->u * rho_1) : (double)NAN;
}

/* rho_2 has the sign of gear 2, so that their ratio is positive on the path of contact. */
double ts_specific_sliding_2(const ts_cylindrical_pair *pair, double rho_1)
{
    const double rho_2 = pair->rho_T - rho_1;

    return rho_1 > 0.0 && rho_2 / pair->u > 0.0 ? 1.0 - pair->u * rho_1 / rho_2 : (double)NAN;
}

/* Noted only where they exist: past a base circle the flanks do not slide, they collide. */
static void solve_sliding(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double u = pair->u, rho_T = pair->rho_T, rho_A1 = pair->rho_A1, rho_a1 = pair->rho_E1;

    pair->zeta_A1 = ts_specific_sliding_1(pair, rho_A1);
    pair->zeta_A2 = ts_specific_sliding_2(pair, rho_A1);
    pair->zeta_E1 = ts_specific_sliding_1(pair, rho_a1);
    pair->zeta_E2 = ts_specific_sliding_2(pair, rho_a1);
    if (!isnan(pair->zeta_A1))
        TS_STEP(workings, zeta_A1_formula, pair->zeta_A1, rho_T, rho_A1, u);
    if (!isnan(pair->zeta_A2))
        TS_STEP(workings, zeta_A2_formula, pair->zeta_A2, u, rho_A1, rho_T);
    if (!isnan(pair->zeta_E1))
        TS_STEP(workings, zeta_E1_formula, pair->zeta_E1, rho_T, rho_a1, u);
    if (!isnan(pair->zeta_E2))
        TS_STEP(workings, zeta_E2_formula, pair->zeta_E2, u, rho_a1, rho_T);
}

static void solve_interference(ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double rho_A1 = pair->rho_A1, rho_T = pair->rho_T, rho_a1 = pair->rho_E1;
    const double rho_Ff1 = pair->rho_Ff1, rho_Ff2 = pair->rho_Ff2;

    pair->clear_Ff1 = TS_STEP(workings, clear_Ff1_formula, rho_A1 - rho_Ff1, rho_A1, rho_Ff1);
    pair->clear_Ff2 = NAN;
    if (!isnan(rho_Ff2))
        pair->clear_Ff2 =
            TS_STEP(workings, clear_Ff2_formula, rho_T - rho_a1 - rho_Ff2, rho_T, rho_a1, rho_Ff2);
}

void ts_cylindrical_contact_solve(ts_cylindrical_pair *pair, double rho_a2, ts_workings *workings)
{
    solve_points(pair, rho_a2, workings);
    solve_ratios(pair, workings);
    solve_sliding(pair, workings);
    solve_interference(pair, workings);
}

double ts_sliding_speed(double omega_1, double u, double g, ts_workings *workings)
{
    return TS_STEP(workings, v_g_formula, omega_1 * (1.0 + 1.0 / u) * g, omega_1, u, g);
}

double ts_turn_in_contact_1(const ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double g_alpha = pair->g_alpha, d_b1 = pair->d_b1;

    return TS_STEP(workings, turn_1_formula, 2.0 * g_alpha / d_b1, g_alpha, d_b1);
}

double ts_turn_in_contact_2(const ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double g_alpha = pair->g_alpha, d_b2 = pair->d_b2;

    return TS_STEP(workings, turn_2_formula, 2.0 * g_alpha / fabs(d_b2), g_alpha, d_b2);
}

double ts_arc_of_contact(const ts_cylindrical_pair *pair, ts_workings *workings)
{
    const double g_alpha = pair->g_alpha, alpha_wt = pair->alpha_wt;

    return TS_STEP(workings, arc_formula, g_alpha / cos(alpha_wt), g_alpha, alpha_wt);
}

double ts_backlash_opened(double delta_a, double alpha_wt, ts_workings *workings)
{
    return TS_STEP(workings, j_opened_formula, 2.0 * delta_a * tan(alpha_wt), delta_a, alpha_wt);
}
