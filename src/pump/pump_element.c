/* pump/pump_element.c: how large is a pump element that brings or takes away so much oil? */
#include "pump/pump_element.h"

#include <math.h>

#define TWO_PI  6.28318530717958647693
#define DERIVED "derived: volume a turn times turns"

static const ts_formula V_g_formula = {
    .symbol  = "V_g",
    .meaning = "displacement of the element a turn",
    .unit    = "m3",
    .text    = "2*pi*Q/(eta_v*n)",
    .source  = DERIVED,
};
static const ts_formula Q_formula = {
    .symbol  = "Q",
    .meaning = "flow of the element",
    .unit    = "m3/s",
    .text    = "eta_v*V_g*n/(2*pi)",
    .source  = DERIVED,
};
static const ts_formula Q_s_formula = {
    .symbol  = "Q_s",
    .meaning = "oil and air that the scavenge element takes away",
    .unit    = "m3/s",
    .text    = "ratio*Q",
    .source  = "derived: the oil that is fed, and air",
};
static const ts_formula air_formula = {
    .symbol  = "air",
    .meaning = "share of air in what is taken away",
    .unit    = "1",
    .text    = "1 - 1/ratio",
    .source  = "derived: what is not oil is air",
};
static const ts_formula P_formula = {
    .symbol  = "P",
    .meaning = "power that the pump takes",
    .unit    = "W",
    .text    = "Q*dp/eta_t",
    .source  = "derived: flow times pressure over the total efficiency",
};
static const ts_formula P_h_formula = {
    .symbol  = "P_h",
    .meaning = "power that the oil gets",
    .unit    = "W",
    .text    = "Q*dp",
    .source  = "derived: flow times pressure",
};

double ts_pump_displacement(double Q, double n, double eta_v, ts_workings *workings)
{
    return TS_STEP(workings, V_g_formula, TWO_PI * Q / (eta_v * n), Q, eta_v, n);
}

double ts_pump_flow(double V_g, double n, double eta_v, ts_workings *workings)
{
    return TS_STEP(workings, Q_formula, eta_v * V_g * n / TWO_PI, eta_v, V_g, n);
}

double ts_scavenge_flow(double Q, double ratio, ts_workings *workings)
{
    return TS_STEP(workings, Q_s_formula, ratio * Q, ratio, Q);
}

double ts_scavenge_air(double ratio, ts_workings *workings)
{
    return TS_STEP(workings, air_formula, 1.0 - 1.0 / ratio, ratio);
}

double ts_pump_hydraulic_power(double Q, double dp, ts_workings *workings)
{
    return TS_STEP(workings, P_h_formula, Q * dp, Q, dp);
}

double ts_pump_power(double Q, double dp, double eta_t, ts_workings *workings)
{
    return TS_STEP(workings, P_formula, Q * dp / eta_t, Q, dp, eta_t);
}

/* ---- by gears --------------------------------------------------------------------------------
 */

static const ts_formula area_formula = {
    .symbol  = "area",
    .meaning = "what two gears sweep, for a width of 1 and a radian",
    .unit    = "m2",
    .text    = "(m*z/2 + m)^2 - (m*z/2)^2 - (pi*m*cos(alpha))^2/12",
    .source  = "derived: two equal gears, relieved so that one contact at a time seals, over one "
               "base pitch",
};
static const ts_formula b_formula = {
    .symbol  = "b",
    .meaning = "width of the gears of an element",
    .unit    = "m",
    .text    = "V_g/(2*pi*area)",
    .source  = DERIVED,
};
static const ts_formula V_of_b_formula = {
    .symbol  = "V_g",
    .meaning = "displacement of the element a turn",
    .unit    = "m3",
    .text    = "2*pi*area*b",
    .source  = DERIVED,
};

double ts_pump_gear_area(double z, double m, double alpha, ts_workings *workings)
{
    const double r_w = m * z / 2.0, r_a = r_w + m, p_b = TWO_PI / 2.0 * m * cos(alpha);

    return TS_STEP(workings, area_formula, r_a * r_a - r_w * r_w - p_b * p_b / 12.0, m, z, alpha);
}

double ts_pump_gear_width(double V_g, double area, ts_workings *workings)
{
    return TS_STEP(workings, b_formula, V_g / (TWO_PI * area), V_g, area);
}

double ts_pump_gear_displacement(double b, double area, ts_workings *workings)
{
    return TS_STEP(workings, V_of_b_formula, TWO_PI * area * b, area, b);
}

/* ---- by Wilson -------------------------------------------------------------------------------
 */

#define WILSON "Wilson, positive-displacement pumps and fluid motors, 1949 (from memory)"

static const ts_formula eta_v_formula = {
    .symbol  = "eta_v",
    .meaning = "volumetric efficiency",
    .unit    = "1",
    .text    = "filling - C_s*dp/(eta*n)",
    .source  = WILSON,
};
static const ts_formula T_formula = {
    .symbol  = "T_e",
    .meaning = "torque of an element",
    .unit    = "N.m",
    .text    = "V_g/(2*pi)*(dp*(1 + C_f) + C_d*eta*n)",
    .source  = WILSON,
};

double ts_pump_volumetric(double filling, double C_s, double dp, double eta, double n,
                          ts_workings *workings)
{
    return TS_STEP(workings, eta_v_formula, filling - C_s * dp / (eta * n), filling, C_s, dp, eta,
                   n);
}

double ts_pump_torque(const ts_pump_drag *of, ts_workings *workings)
{
    const double V_g = of->V_g, dp = of->dp, eta = of->eta, n = of->n, C_d = of->C_d, C_f = of->C_f;

    return TS_STEP(workings, T_formula, V_g / TWO_PI * (dp * (1.0 + C_f) + C_d * eta * n), V_g, dp,
                   C_f, C_d, eta, n);
}
