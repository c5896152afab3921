/* element/spline_tolerance.c: how wide may the spaces of a hub and the teeth of a shaft be? */
#include "element/spline_tolerance.h"

#include <math.h>

#define CLAUSE "ISO 4156-1:2005, clause 9 (from memory)"

static const double pi = 3.14159265358979323846;

/* Coefficients by class; lengths in mm and results in um, as the standard has them. */
typedef struct grade_row {
    double K_1, K_2;       /* of the units of tolerance     */
    double p_root, p_add;  /* pitch, over the arc           */
    double f_times, f_add; /* profile, over phi_f           */
    double b_root, b_add;  /* helix, over the engaged length */
} grade_row;

static const grade_row grades[] = {
    {10.0, 40.0, 2.5, 6.3, 1.6, 10.0, 0.8, 4.0},
    {16.0, 64.0, 3.55, 9.0, 2.5, 16.0, 1.0, 5.0},
    {25.0, 100.0, 5.0, 12.5, 4.0, 25.0, 1.25, 6.3},
    {40.0, 160.0, 7.1, 18.0, 6.3, 40.0, 2.0, 10.0},
};

static const ts_formula T_lambda_formula = {
    .symbol  = "T_lambda",
    .meaning = "total tolerance of a space or tooth, T + lambda",
    .unit    = "m",
    .text    = "(K_1*(0.45*(1000*D)^(1/3) + D) + K_2*(0.45*(1000*s_v)^(1/3) + s_v))/1e6",
    .source  = CLAUSE,
};
static const ts_formula F_p_formula = {
    .symbol  = "F_p",
    .meaning = "total pitch deviation",
    .unit    = "m",
    .text    = "(p_root*sqrt(1000*pi*D/2) + p_add)/1e6",
    .source  = CLAUSE,
};
static const ts_formula F_alpha_formula = {
    .symbol  = "F_alpha",
    .meaning = "total profile deviation",
    .unit    = "m",
    .text    = "(f_times*1000*(D/N + 0.0125*D) + f_add)/1e6",
    .source  = CLAUSE,
};
static const ts_formula F_beta_formula = {
    .symbol  = "F_beta",
    .meaning = "total helix deviation",
    .unit    = "m",
    .text    = "(b_root*sqrt(1000*g) + b_add)/1e6",
    .source  = CLAUSE,
};
static const ts_formula lambda_formula = {
    .symbol  = "lambda",
    .meaning = "effective variation",
    .unit    = "m",
    .text    = "0.6*sqrt(F_p^2 + F_alpha^2 + F_beta^2)",
    .source  = CLAUSE,
};
static const ts_formula E_min_formula = {
    .symbol  = "E_min",
    .meaning = "least actual space of the hub",
    .unit    = "m",
    .text    = "s_v + lambda",
    .source  = CLAUSE,
};
static const ts_formula E_max_formula = {
    .symbol  = "E_max",
    .meaning = "greatest actual space of the hub",
    .unit    = "m",
    .text    = "s_v + T_lambda",
    .source  = CLAUSE,
};
static const ts_formula S_max_formula = {
    .symbol  = "S_max",
    .meaning = "greatest actual tooth of the shaft, fit h",
    .unit    = "m",
    .text    = "s_v - lambda",
    .source  = CLAUSE,
};
static const ts_formula S_min_formula = {
    .symbol  = "S_min",
    .meaning = "least actual tooth of the shaft, fit h",
    .unit    = "m",
    .text    = "s_v - T_lambda",
    .source  = CLAUSE,
};
static const ts_formula c_vmax_formula = {
    .symbol  = "c_vmax",
    .meaning = "greatest effective clearance between hub and shaft, fit H/h",
    .unit    = "m",
    .text    = "2*(T_lambda - lambda)",
    .source  = CLAUSE,
};

static void find_deviations(const ts_spline *spline, double g, const grade_row *by,
                            ts_spline_limits *out, ts_workings *workings)
{
    const double D = spline->D, N = spline->N, p_root = by->p_root, p_add = by->p_add;
    const double f_times = by->f_times, f_add = by->f_add, b_root = by->b_root, b_add = by->b_add;

    ts_workings_row(workings, "p_root", p_root, "1", "by class; " CLAUSE);
    ts_workings_row(workings, "p_add", p_add, "1", "by class; " CLAUSE);
    ts_workings_row(workings, "f_times", f_times, "1", "by class; " CLAUSE);
    ts_workings_row(workings, "f_add", f_add, "1", "by class; " CLAUSE);
    ts_workings_row(workings, "b_root", b_root, "1", "by class; " CLAUSE);
    ts_workings_row(workings, "b_add", b_add, "1", "by class; " CLAUSE);
    const double F_p =
        TS_STEP(workings, F_p_formula, (p_root * sqrt(1000.0 * pi * D / 2.0) + p_add) / 1e6, p_root,
                D, p_add);
    const double F_alpha =
        TS_STEP(workings, F_alpha_formula, (f_times * 1000.0 * (D / N + 0.0125 * D) + f_add) / 1e6,
                f_times, D, N, f_add);
    const double F_beta = TS_STEP(workings, F_beta_formula,
                                  (b_root * sqrt(1000.0 * g) + b_add) / 1e6, b_root, g, b_add);
    out->F_p            = F_p;
    out->F_alpha        = F_alpha;
    out->F_beta         = F_beta;
    out->lambda =
        TS_STEP(workings, lambda_formula,
                0.6 * sqrt(F_p * F_p + F_alpha * F_alpha + F_beta * F_beta), F_p, F_alpha, F_beta);
}

bool ts_spline_limits_of(const ts_spline *spline, double g, int grade, ts_spline_limits *out,
                         ts_workings *workings)
{
    const double D = spline->D, s_v = spline->s_v;

    if (!(grade >= 4 && grade <= 7 && g > 0.0 && D > 0.0 && s_v > 0.0))
        return false;
    const grade_row *by  = &grades[grade - 4];
    const double     K_1 = by->K_1, K_2 = by->K_2;

    find_deviations(spline, g, by, out, workings);
    ts_workings_row(workings, "K_1", K_1, "1", "by class; " CLAUSE);
    ts_workings_row(workings, "K_2", K_2, "1", "by class; " CLAUSE);
    const double whole =
        K_1 * (0.45 * cbrt(1000.0 * D) + D) + K_2 * (0.45 * cbrt(1000.0 * s_v) + s_v);
    const double T_lambda = TS_STEP(workings, T_lambda_formula, whole / 1e6, K_1, D, K_2, s_v);
    const double lambda   = out->lambda;

    out->T_lambda = T_lambda;
    out->E_vmin = out->S_vmax = s_v;
    out->E_min                = TS_STEP(workings, E_min_formula, s_v + lambda, s_v, lambda);
    out->E_max                = TS_STEP(workings, E_max_formula, s_v + T_lambda, s_v, T_lambda);
    out->E_vmax               = out->E_max - lambda;
    out->S_max                = TS_STEP(workings, S_max_formula, s_v - lambda, s_v, lambda);
    out->S_min                = TS_STEP(workings, S_min_formula, s_v - T_lambda, s_v, T_lambda);
    out->S_vmin               = out->S_min + lambda;
    out->c_vmin               = 0.0;
    out->c_vmax = TS_STEP(workings, c_vmax_formula, 2.0 * (T_lambda - lambda), T_lambda, lambda);
    return true;
}
