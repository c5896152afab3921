/* element/round_torsion.c: how far does a round shaft twist, and which torque shears it off? */
#include "element/round_torsion.h"

#include <math.h>
#include <stdbool.h>

#define STATICS "derived: torsion of circular bars"

static const double pi = 3.14159265358979323846;

static const ts_formula J_formula = {
    .symbol  = "J",
    .meaning = "polar second moment of area, m4",
    .unit    = "1",
    .text    = "pi/32*(d_o^4 - d_i^4)",
    .source  = STATICS,
};
static const ts_formula stress_formula = {
    .symbol  = "tau_t",
    .meaning = "torsional stress at the outside",
    .unit    = "Pa",
    .text    = "16*T*d_o/(pi*(d_o^4 - d_i^4))",
    .source  = STATICS,
};
static const ts_formula twist_formula = {
    .symbol  = "twist",
    .meaning = "angle of twist",
    .unit    = "rad",
    .text    = "T*L/(G*J)",
    .source  = STATICS,
};
static const ts_formula of_twist_formula = {
    .symbol  = "T",
    .meaning = "torque of a twist",
    .unit    = "N.m",
    .text    = "G*J*twist/L",
    .source  = STATICS,
};
static const ts_formula elastic_formula = {
    .symbol  = "T_el",
    .meaning = "torque at which the outside reaches the shear strength",
    .unit    = "N.m",
    .text    = "pi*tau*(d_o^4 - d_i^4)/(16*d_o)",
    .source  = STATICS,
};
static const ts_formula plastic_formula = {
    .symbol  = "T_pl",
    .meaning = "torque at which the whole section bears the shear strength",
    .unit    = "N.m",
    .text    = "pi*tau*(d_o^3 - d_i^3)/12",
    .source  = STATICS,
};
static const ts_formula reserve_formula = {
    .symbol  = "c_pl",
    .meaning = "plastic over elastic torque",
    .unit    = "1",
    .text    = "4/3*d_o*(d_o^3 - d_i^3)/(d_o^4 - d_i^4)",
    .source  = STATICS,
};
static const ts_formula core_formula = {
    .symbol  = "rho_Y",
    .meaning = "radius of the elastic core",
    .unit    = "m",
    .text    = "d/2*(4 - 3*T/T_Y)^(1/3)",
    .source  = STATICS " of an elastic, perfectly plastic material",
};
static const ts_formula yield_twist_formula = {
    .symbol  = "twist",
    .meaning = "angle of twist",
    .unit    = "rad",
    .text    = "tau_Y*L/(G*rho_Y)",
    .source  = STATICS ", the core follows Hooke",
};
static const ts_formula stays_formula = {
    .symbol  = "twist_p",
    .meaning = "angle of twist that stays",
    .unit    = "rad",
    .text    = "twist - 32*T*L/(G*pi*d^4)",
    .source  = STATICS ", unloading is elastic",
};
static const ts_formula diameter_formula = {
    .symbol  = "d",
    .meaning = "diameter that carries a torque",
    .unit    = "m",
    .text    = "(16*T/(pi*tau))^(1/3)",
    .source  = STATICS,
};

static bool is_ring(double d_o, double d_i)
{
    return d_o > d_i && d_i >= 0.0 && d_o < 1e3;
}

static double fourth(double d)
{
    return d * d * d * d;
}

double ts_torsion_J(double d_o, double d_i, ts_workings *workings)
{
    if (!is_ring(d_o, d_i))
        return NAN;
    return TS_STEP(workings, J_formula, pi / 32.0 * (fourth(d_o) - fourth(d_i)), d_o, d_i);
}

double ts_torsion_stress(double T, double d_o, double d_i, ts_workings *workings)
{
    if (!is_ring(d_o, d_i) || isnan(T))
        return NAN;
    return TS_STEP(workings, stress_formula, 16.0 * T * d_o / (pi * (fourth(d_o) - fourth(d_i))), T,
                   d_o, d_i);
}

double ts_torsion_twist(double T, double L, double G, double J, ts_workings *workings)
{
    if (!(L >= 0.0 && G > 0.0 && J > 0.0) || isnan(T))
        return NAN;
    return TS_STEP(workings, twist_formula, T * L / (G * J), T, L, G, J);
}

double ts_torsion_of_twist(double twist, double L, double G, double J, ts_workings *workings)
{
    if (!(L > 0.0 && G > 0.0 && J > 0.0) || isnan(twist))
        return NAN;
    return TS_STEP(workings, of_twist_formula, G * J * twist / L, G, J, twist, L);
}

double ts_torque_elastic(double tau, double d_o, double d_i, ts_workings *workings)
{
    if (!is_ring(d_o, d_i) || !(tau > 0.0))
        return NAN;
    return TS_STEP(workings, elastic_formula, pi * tau * (fourth(d_o) - fourth(d_i)) / (16.0 * d_o),
                   tau, d_o, d_i);
}

double ts_torque_plastic(double tau, double d_o, double d_i, ts_workings *workings)
{
    if (!is_ring(d_o, d_i) || !(tau > 0.0))
        return NAN;
    return TS_STEP(workings, plastic_formula, pi * tau * (d_o * d_o * d_o - d_i * d_i * d_i) / 12.0,
                   tau, d_o, d_i);
}

double ts_torque_reserve(double d_o, double d_i, ts_workings *workings)
{
    if (!is_ring(d_o, d_i))
        return NAN;
    const double cubes = d_o * d_o * d_o - d_i * d_i * d_i;

    return TS_STEP(workings, reserve_formula, 4.0 / 3.0 * d_o * cubes / (fourth(d_o) - fourth(d_i)),
                   d_o, d_i);
}

ts_part_yield ts_part_yield_of(double T, double d, double L, double G, double tau_Y,
                               ts_workings *workings)
{
    const ts_part_yield none = {NAN, NAN, NAN, NAN};
    const double        T_Y  = ts_torque_elastic(tau_Y, d, 0.0, workings);

    if (!(L >= 0.0 && G > 0.0 && T >= T_Y && T < 4.0 / 3.0 * T_Y) || !(tau_Y * L / G < 1e100 * d))
        return none;
    const double rho_Y =
        TS_STEP(workings, core_formula, d / 2.0 * cbrt(4.0 - 3.0 * T / T_Y), d, T, T_Y);
    const double twist =
        TS_STEP(workings, yield_twist_formula, tau_Y * L / (G * rho_Y), tau_Y, L, G, rho_Y);

    return (ts_part_yield){
        .T_Y   = T_Y,
        .rho_Y = rho_Y,
        .twist = twist,
        /* No end less no end is no number. */
        .twist_p = !isfinite(twist)
                       ? (double)NAN
                       : TS_STEP(workings, stays_formula,
                                 twist - 32.0 * T * L / (G * pi * fourth(d)), twist, T, L, G, d),
    };
}

double ts_torsion_diameter(double T, double tau, ts_workings *workings)
{
    if (!(T > 0.0 && tau > 0.0))
        return NAN;
    return TS_STEP(workings, diameter_formula, cbrt(16.0 * T / (pi * tau)), T, tau);
}
