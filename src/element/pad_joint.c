/* element/pad_joint.c: what do the bolts and the flange of an accessory's pad carry? */
#include "element/pad_joint.h"

#include <math.h>

#define WENTZELL "T. H. Wentzell, Machine Design, example "

static const double pi = 3.14159265358979323846;

static const ts_formula preload_formula = {
    .symbol  = "F_i",
    .meaning = "preload of the bolt",
    .unit    = "N",
    .text    = "share*A_s*S_p",
    .source  = WENTZELL "6.1",
};
static const ts_formula torque_formula = {
    .symbol  = "T_b",
    .meaning = "tightening torque",
    .unit    = "N.m",
    .text    = "K*D*F_i",
    .source  = WENTZELL "6.1",
};
static const ts_formula turn_formula = {
    .symbol  = "turn",
    .meaning = "angle of turning",
    .unit    = "rad",
    .text    = "2*pi*F_i*L/(A_s*E)/pitch",
    .source  = WENTZELL "6.2",
};
static const ts_formula moment_formula = {
    .symbol  = "M",
    .meaning = "overhang moment",
    .unit    = "N.m",
    .text    = "n_g*W*x",
    .source  = "derived: statics",
};
static const ts_formula bolt_formula = {
    .symbol  = "F_b",
    .meaning = "greatest pull of a bolt",
    .unit    = "N",
    .text    = "4*M/(N_b*BC)",
    .source  = "derived: pulls in proportion to the distance from the middle line",
};
static const ts_formula speed_formula = {
    .symbol  = "n_pad",
    .meaning = "speed of the pad",
    .unit    = "rad/s",
    .text    = "n*ratio",
    .source  = "derived",
};
static const ts_formula power_formula = {
    .symbol  = "P",
    .meaning = "power at the pad",
    .unit    = "W",
    .text    = "T*n_pad",
    .source  = "derived",
};

double ts_bolt_preload(double share, double A_s, double S_p, ts_workings *workings)
{
    if (!(share > 0.0 && A_s > 0.0 && S_p > 0.0))
        return NAN;
    return TS_STEP(workings, preload_formula, share * A_s * S_p, share, A_s, S_p);
}

double ts_bolt_torque(double K, double D, double F_i, ts_workings *workings)
{
    if (!(K > 0.0 && D > 0.0 && F_i >= 0.0))
        return NAN;
    return TS_STEP(workings, torque_formula, K * D * F_i, K, D, F_i);
}

double ts_bolt_turn(double F_i, double L, double A_s, double E, double pitch, ts_workings *workings)
{
    if (!(F_i >= 0.0 && L > 0.0 && A_s > 0.0 && E > 0.0 && pitch > 0.0))
        return NAN;
    return TS_STEP(workings, turn_formula, 2.0 * pi * F_i * L / (A_s * E) / pitch, F_i, L, A_s, E,
                   pitch);
}

double ts_overhang_moment(double W, double x, double n_g, ts_workings *workings)
{
    if (isnan(W * x * n_g))
        return NAN;
    return TS_STEP(workings, moment_formula, n_g * W * x, n_g, W, x);
}

double ts_overhang_bolt_load(double M, double N_b, double BC, ts_workings *workings)
{
    if (!(N_b >= 3.0 && BC > 0.0) || isnan(M))
        return NAN;
    return TS_STEP(workings, bolt_formula, 4.0 * M / (N_b * BC), M, N_b, BC);
}

double ts_pad_speed(double n, double ratio, ts_workings *workings)
{
    return TS_STEP(workings, speed_formula, n * ratio, n, ratio);
}

double ts_pad_power(double T, double n_pad, ts_workings *workings)
{
    return TS_STEP(workings, power_formula, T * n_pad, T, n_pad);
}
