/* oil/pump.c: how large is a pump element that brings or takes away so much oil? */
#include "oil/pump.h"

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
