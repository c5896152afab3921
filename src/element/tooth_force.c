/* element/tooth_force.c: which tangential force carries this power? */
#include "element/tooth_force.h"

#define MECHANICS "derived: definition of power and torque"

static const ts_formula T_formula = {
    .symbol  = "T",
    .meaning = "torque",
    .unit    = "N.m",
    .text    = "P/omega",
    .source  = MECHANICS,
};
static const ts_formula F_t_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force",
    .unit    = "N",
    .text    = "2*T/d",
    .source  = MECHANICS,
};
static const ts_formula v_formula = {
    .symbol  = "v",
    .meaning = "pitch line velocity",
    .unit    = "m/s",
    .text    = "omega*d/2",
    .source  = MECHANICS,
};

double ts_torque_of_power(double P, double omega, ts_workings *workings)
{
    return TS_STEP(workings, T_formula, P / omega, P, omega);
}

double ts_tangential_force(double T, double d, ts_workings *workings)
{
    return TS_STEP(workings, F_t_formula, 2.0 * T / d, T, d);
}

double ts_pitch_line_velocity(double omega, double d, ts_workings *workings)
{
    return TS_STEP(workings, v_formula, omega * d / 2.0, omega, d);
}
