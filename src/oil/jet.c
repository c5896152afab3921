/* oil/jet.c: how fast, how much, how deep does a jet of oil go? */
#include "oil/jet.h"

#include <math.h>

#define PI 3.14159265358979323846

/* ---- the orifice ----------------------------------------------------------------------------- */

static const ts_formula v_jet_formula = {
    .symbol  = "v_jet",
    .meaning = "speed of the jet",
    .unit    = "m/s",
    .text    = "sqrt(2*dp/rho_oil)",
    .source  = "derived: Bernoulli, without loss of speed",
};
static const ts_formula Q_formula = {
    .symbol  = "Q",
    .meaning = "oil that a hole passes",
    .unit    = "m3/s",
    .text    = "C_d*pi/4*d_jet^2*v_jet",
    .source  = "law of the orifice",
};
static const ts_formula d_jet_formula = {
    .symbol  = "d_jet",
    .meaning = "diameter of a hole that passes the oil",
    .unit    = "m",
    .text    = "sqrt(4*Q/(pi*C_d*v_jet))",
    .source  = "law of the orifice",
};
static const ts_formula dp_formula = {
    .symbol  = "dp",
    .meaning = "pressure that drops over a hole which passes the oil",
    .unit    = "Pa",
    .text    = "rho_oil/2*(4*Q/(pi*C_d*d_jet^2))^2",
    .source  = "law of the orifice",
};
static const ts_formula drop_formula = {
    .symbol  = "dp",
    .meaning = "pressure that drops over a jet in a chamber",
    .unit    = "Pa",
    .text    = "p_set - p_chamber",
    .source  = "derived: a relief valve set against the atmosphere",
};

double ts_jet_speed(double dp, double rho_oil, ts_workings *workings)
{
    return TS_STEP(workings, v_jet_formula, sqrt(2.0 * dp / rho_oil), dp, rho_oil);
}

double ts_jet_flow(double C_d, double d_jet, double v_jet, ts_workings *workings)
{
    return TS_STEP(workings, Q_formula, C_d * PI / 4.0 * d_jet * d_jet * v_jet, C_d, d_jet, v_jet);
}

double ts_jet_diameter(double Q, double C_d, double v_jet, ts_workings *workings)
{
    return TS_STEP(workings, d_jet_formula, sqrt(4.0 * Q / (PI * C_d * v_jet)), Q, C_d, v_jet);
}

double ts_jet_pressure(double Q, double C_d, double d_jet, double rho_oil, ts_workings *workings)
{
    const double v = 4.0 * Q / (PI * C_d * d_jet * d_jet);

    return TS_STEP(workings, dp_formula, rho_oil / 2.0 * v * v, rho_oil, Q, C_d, d_jet);
}

double ts_jet_drop(double p_set, double p_chamber, ts_workings *workings)
{
    return TS_STEP(workings, drop_formula, p_set - p_chamber, p_set, p_chamber);
}

/* ---- the teeth ------------------------------------------------------------------------------- */

static const ts_formula depth_formula = {
    .symbol  = "depth",
    .meaning = "how deep a radial jet comes into a tooth space",
    .unit    = "m",
    .text    = "(pi*m_n/2 + 2*m_n*tan(alpha))/(v_t/v_jet + tan(alpha))",
    .source  = "derived: rack model of the radial jet of Akin, Mross and Townsend 1975",
};
static const ts_formula drift_formula = {
    .symbol  = "drift",
    .meaning = "how far the wind of the teeth carries a jet aside",
    .unit    = "m",
    .text    = "rho_air*u^2/(pi*rho_oil*d_jet)*(gap/v_jet)^2",
    .source  = "derived: a round jet across the wind, drag coefficient 1, from rest",
};

double ts_jet_depth(double m_n, double alpha, double v_t, double v_jet, ts_workings *workings)
{
    const double depth = (PI * m_n / 2.0 + 2.0 * m_n * tan(alpha)) / (v_t / v_jet + tan(alpha));

    return TS_STEP(workings, depth_formula, depth, m_n, alpha, v_t, v_jet);
}

double ts_jet_drift(double gap, double v_jet, double d_jet, double u, double rho_oil,
                    ts_workings *workings)
{
    const double rho_air = 1.0, t = gap / v_jet;

    ts_workings_assumed(workings, "rho_air", rho_air, "kg/m3", "warm air at ground level");
    return TS_STEP(workings, drift_formula, rho_air * u * u / (PI * rho_oil * d_jet) * t * t,
                   rho_air, u, rho_oil, d_jet, gap, v_jet);
}

/* Common practice, no source: docs/method/oil.md. */
ts_jet_side ts_jet_side_at(double v_t)
{
    if (v_t > 150.0)
        return TS_JET_BOTH;
    return v_t > 100.0 ? TS_JET_LEAVING : TS_JET_ENTERING;
}

const char *ts_jet_side_says(ts_jet_side side)
{
    static const char *const says[] = {
        [TS_JET_ENTERING] = "entering", [TS_JET_LEAVING] = "leaving", [TS_JET_BOTH] = "both"};
    return says[side];
}

/* ---- heat in oil ----------------------------------------------------------------------------- */

static const ts_formula rho_formula = {
    .symbol  = "rho_oil",
    .meaning = "density of the oil",
    .unit    = "kg/m3",
    .text    = "rho_15 - 0.7*(theta - 289)",
    .source  = "ISO/TS 6336-22:2018, density at a temperature (from memory)",
};
static const ts_formula c_formula = {
    .symbol  = "c_oil",
    .meaning = "heat capacity of the oil",
    .unit    = "J/(kg.K)",
    .text    = "c_100 + 2.5*(theta - 373.15)",
    .source  = "common practice, no source: ester oils gain about 2.5 J/(kg.K) a kelvin",
};
static const ts_formula rise_formula = {
    .symbol  = "dtheta",
    .meaning = "by how much the heat warms the oil",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "P/(rho_oil*Q*c_oil)",
    .source  = "derived: conservation of energy",
};
static const ts_formula flow_formula = {
    .symbol  = "Q",
    .meaning = "oil that carries the heat away",
    .unit    = "m3/s",
    .text    = "P/(rho_oil*(c_oil*dtheta - v_t^2))",
    .source  = "derived: conservation of energy, the oil thrown off at v_t",
};

double ts_oil_density(double rho_15, double theta, ts_workings *workings)
{
    return TS_STEP(workings, rho_formula, rho_15 - 0.7 * (theta - 289.0), rho_15, theta);
}

double ts_oil_heat_capacity(double c_100, double theta, ts_workings *workings)
{
    return TS_STEP(workings, c_formula, c_100 + 2.5 * (theta - 373.15), c_100, theta);
}

double ts_oil_rise(double P, double rho_oil, double Q, double c_oil, ts_workings *workings)
{
    return TS_STEP(workings, rise_formula, P / (rho_oil * Q * c_oil), P, rho_oil, Q, c_oil);
}

double ts_oil_flow(double P, double rho_oil, double c_oil, double dtheta, double v_t,
                   ts_workings *workings)
{
    if (!(c_oil * dtheta > v_t * v_t))
        return (double)NAN;
    return TS_STEP(workings, flow_formula, P / (rho_oil * (c_oil * dtheta - v_t * v_t)), P, rho_oil,
                   c_oil, dtheta, v_t);
}
