/* element/bearing_geometry.c: how do the balls or rollers of a bearing lie on its races? */
#include "element/bearing_geometry.h"

#include <math.h>
#include <stdbool.h>

#define HARRIS "T. A. Harris, Rolling Bearing Analysis, chapter 2 (from memory)"

static const double pi = 3.14159265358979323846;

static const ts_formula gamma_formula = {
    .symbol  = "gamma",
    .meaning = "rolling element over pitch diameter, at the contact angle",
    .unit    = "1",
    .text    = "D_w*cos(alpha)/D_pw",
    .source  = HARRIS,
};
static const ts_formula sum_i_formula = {
    .symbol  = "sum_rho_i",
    .meaning = "sum of curvatures at the inner race, per metre",
    .unit    = "1",
    .text    = "(4 - 1/f_i + 2*gamma/(1 - gamma))/D_w",
    .source  = HARRIS,
};
static const ts_formula F_i_formula = {
    .symbol  = "F_rho_i",
    .meaning = "difference of curvatures at the inner race",
    .unit    = "1",
    .text    = "(1/f_i + 2*gamma/(1 - gamma))/(4 - 1/f_i + 2*gamma/(1 - gamma))",
    .source  = HARRIS,
};
static const ts_formula sum_e_formula = {
    .symbol  = "sum_rho_e",
    .meaning = "sum of curvatures at the outer race, per metre",
    .unit    = "1",
    .text    = "(4 - 1/f_e - 2*gamma/(1 + gamma))/D_w",
    .source  = HARRIS,
};
static const ts_formula F_e_formula = {
    .symbol  = "F_rho_e",
    .meaning = "difference of curvatures at the outer race",
    .unit    = "1",
    .text    = "(1/f_e - 2*gamma/(1 + gamma))/(4 - 1/f_e - 2*gamma/(1 + gamma))",
    .source  = HARRIS,
};
static const ts_formula P_d_formula = {
    .symbol  = "P_d",
    .meaning = "diametral clearance",
    .unit    = "m",
    .text    = "d_e - d_i - 2*D_w",
    .source  = HARRIS,
};
static const ts_formula d_m_formula = {
    .symbol  = "d_m",
    .meaning = "mean diameter of the bearing",
    .unit    = "m",
    .text    = "(d + D)/2",
    .source  = "derived: halfway between bore and outside",
};
static const ts_formula speed_formula = {
    .symbol  = "n_dm",
    .meaning = "speed number, mm times rpm",
    .unit    = "1",
    .text    = "1000*d_m*(30/pi)*n",
    .source  = "common practice, no source",
};

double ts_bearing_gamma(double D_w, double D_pw, double alpha, ts_workings *workings)
{
    if (!(D_w > 0.0 && D_pw > D_w && alpha >= 0.0 && alpha < pi / 2.0))
        return NAN;
    return TS_STEP(workings, gamma_formula, D_w * cos(alpha) / D_pw, D_w, alpha, D_pw);
}

static bool has_groove(double D_w, double f, double gamma)
{
    return D_w > 0.0 && f > 0.5 && f < 10.0 && gamma > 0.0 && gamma < 1.0;
}

ts_race_curvature ts_inner_race_curvature(double D_w, double f_i, double gamma,
                                          ts_workings *workings)
{
    if (!has_groove(D_w, f_i, gamma))
        return (ts_race_curvature){NAN, NAN};
    const double round = 2.0 * gamma / (1.0 - gamma), sum = 4.0 - 1.0 / f_i + round;

    return (ts_race_curvature){
        .sum_rho = TS_STEP(workings, sum_i_formula, sum / D_w, f_i, gamma, D_w),
        .F_rho   = TS_STEP(workings, F_i_formula, (1.0 / f_i + round) / sum, f_i, gamma),
    };
}

ts_race_curvature ts_outer_race_curvature(double D_w, double f_e, double gamma,
                                          ts_workings *workings)
{
    if (!has_groove(D_w, f_e, gamma))
        return (ts_race_curvature){NAN, NAN};
    const double round = -2.0 * gamma / (1.0 + gamma), sum = 4.0 - 1.0 / f_e + round;

    return (ts_race_curvature){
        .sum_rho = TS_STEP(workings, sum_e_formula, sum / D_w, f_e, gamma, D_w),
        .F_rho   = TS_STEP(workings, F_e_formula, (1.0 / f_e + round) / sum, f_e, gamma),
    };
}

double ts_bearing_clearance(double d_i, double d_e, double D_w, ts_workings *workings)
{
    return TS_STEP(workings, P_d_formula, d_e - d_i - 2.0 * D_w, d_e, d_i, D_w);
}

double ts_bearing_mean_diameter(double d, double D, ts_workings *workings)
{
    return TS_STEP(workings, d_m_formula, (d + D) / 2.0, d, D);
}

double ts_bearing_speed_number(double n, double d_m, ts_workings *workings)
{
    return TS_STEP(workings, speed_formula, 1000.0 * d_m * (30.0 / pi) * n, d_m, n);
}
