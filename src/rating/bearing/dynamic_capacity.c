/* rating/bearing/dynamic_capacity.c: which load lets 90 of 100 bearings run a million turns? */
#include "rating/bearing/dynamic_capacity.h"

#include <math.h>

#define ISO_281(what) "ISO 281:2007, " what " (from memory)"
#define TR_1281(what) "ISO/TR 1281-1:2008, " what " (from memory)"

static const ts_formula ball_f_c_formula = {
    .symbol  = "f_c",
    .meaning = "geometry factor of a ball bearing",
    .unit    = "1",
    .text    = "level*(1 + (1.04*((1 - gamma)/(1 + gamma))^1.72*(f_i*(2*f_e - 1)/(f_e*(2*f_i - "
               "1)))^0.41)^(10/3))^-0.3*gamma^0.3*(1 - gamma)^1.39/(1 + gamma)^(1/3)*(2*f_i/(2*f_i - "
               "1))^0.41",
    .source  = TR_1281("ball bearings; the factor in front is fitted to ISO 281, table 2"),
};
static const ts_formula roller_f_c_formula = {
    .symbol  = "f_c",
    .meaning = "geometry factor of a roller bearing",
    .unit    = "1",
    .text = "208*0.83*(1 + (1.04*((1 - gamma)/(1 + gamma))^(143/108))^(9/2))^(-2/9)*gamma^(2/9)*(1 "
            "- gamma)^(29/27)/(1 + gamma)^(1/4)",
    .source = TR_1281("roller bearings"),
};
static const ts_formula small_ball_formula = {
    .symbol  = "C_r",
    .meaning = "basic dynamic capacity",
    .unit    = "N",
    .text    = "b_m*f_c*(i*cos(alpha))^0.7*Z^(2/3)*(1000*D_w)^1.8",
    .source  = ISO_281("5.1, balls up to 25.4 mm"),
};
static const ts_formula large_ball_formula = {
    .symbol  = "C_r",
    .meaning = "basic dynamic capacity",
    .unit    = "N",
    .text    = "b_m*f_c*(i*cos(alpha))^0.7*Z^(2/3)*3.647*(1000*D_w)^1.4",
    .source  = ISO_281("5.1, balls above 25.4 mm"),
};
static const ts_formula roller_formula = {
    .symbol  = "C_r",
    .meaning = "basic dynamic capacity",
    .unit    = "N",
    .text    = "b_m*f_c*(i*1000*L_we*cos(alpha))^(7/9)*Z^(3/4)*(1000*D_we)^(29/27)",
    .source  = ISO_281("7.1"),
};
static const ts_formula ball_rows_formula = {
    .symbol  = "gain_C",
    .meaning = "capacity of the set over that of one bearing",
    .unit    = "1",
    .text    = "i^0.7",
    .source  = ISO_281("5.1.2, a set rated as one bearing of i rows"),
};
static const ts_formula roller_rows_formula = {
    .symbol  = "gain_C",
    .meaning = "capacity of the set over that of one bearing",
    .unit    = "1",
    .text    = "i^(7/9)",
    .source  = ISO_281("7.1.2, a set rated as one bearing of i rows"),
};

double ts_ball_f_c(double gamma, double f_i, double f_e, double level, ts_workings *workings)
{
    if (!(gamma > 0.0 && gamma < 0.5 && f_i > 0.5 && f_e > 0.5 && level > 0.0))
        return NAN;
    const double slim  = (1.0 - gamma) / (1.0 + gamma);
    const double snug  = f_i * (2.0 * f_e - 1.0) / (f_e * (2.0 * f_i - 1.0));
    const double races = pow(1.04 * pow(slim, 1.72) * pow(snug, 0.41), 10.0 / 3.0);
    const double f_c   = level * pow(1.0 + races, -0.3) * pow(gamma, 0.3) * pow(1.0 - gamma, 1.39) /
                       cbrt(1.0 + gamma) * pow(2.0 * f_i / (2.0 * f_i - 1.0), 0.41);

    return TS_STEP(workings, ball_f_c_formula, f_c, level, gamma, f_i, f_e);
}

double ts_roller_f_c(double gamma, ts_workings *workings)
{
    if (!(gamma > 0.0 && gamma < 0.5))
        return NAN;
    const double races = pow(1.04 * pow((1.0 - gamma) / (1.0 + gamma), 143.0 / 108.0), 4.5);
    const double f_c   = 208.0 * 0.83 * pow(1.0 + races, -2.0 / 9.0) * pow(gamma, 2.0 / 9.0) *
                       pow(1.0 - gamma, 29.0 / 27.0) / pow(1.0 + gamma, 0.25);

    return TS_STEP(workings, roller_f_c_formula, f_c, gamma);
}

double ts_ball_capacity(const ts_ball_set *set, ts_workings *workings)
{
    const double i = set->i, Z = set->Z, D_w = set->D_w, alpha = set->alpha;
    const double b_m = set->b_m, f_c = set->f_c;

    if (!(i >= 1.0 && Z >= 1.0 && D_w > 0.0 && alpha >= 0.0 && cos(alpha) > 0.0 && b_m > 0.0 &&
          f_c > 0.0))
        return NAN;
    const double set_of = b_m * f_c * pow(i * cos(alpha), 0.7) * pow(Z, 2.0 / 3.0);

    if (D_w <= 0.0254)
        return TS_STEP(workings, small_ball_formula, set_of * pow(1000.0 * D_w, 1.8), b_m, f_c, i,
                       alpha, Z, D_w);
    return TS_STEP(workings, large_ball_formula, set_of * 3.647 * pow(1000.0 * D_w, 1.4), b_m, f_c,
                   i, alpha, Z, D_w);
}

double ts_roller_capacity(const ts_roller_set *set, ts_workings *workings)
{
    const double i = set->i, Z = set->Z, D_we = set->D_we, L_we = set->L_we, alpha = set->alpha;
    const double b_m = set->b_m, f_c = set->f_c;

    if (!(i >= 1.0 && Z >= 1.0 && D_we > 0.0 && L_we > 0.0 && alpha >= 0.0 && cos(alpha) > 0.0 &&
          b_m > 0.0 && f_c > 0.0))
        return NAN;
    const double C_r = b_m * f_c * pow(i * 1000.0 * L_we * cos(alpha), 7.0 / 9.0) * pow(Z, 0.75) *
                       pow(1000.0 * D_we, 29.0 / 27.0);

    return TS_STEP(workings, roller_formula, C_r, b_m, f_c, i, L_we, alpha, Z, D_we);
}

double ts_ball_rows_gain(double i, ts_workings *workings)
{
    return TS_STEP(workings, ball_rows_formula, pow(i, 0.7), i);
}

double ts_roller_rows_gain(double i, ts_workings *workings)
{
    return TS_STEP(workings, roller_rows_formula, pow(i, 7.0 / 9.0), i);
}
