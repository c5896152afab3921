/* pump/separator.c: which drops does the rotor of a breather throw out, and what does that cost? */
#include "pump/separator.h"

#include <math.h>

#define PI 3.14159265358979323846

static const ts_formula mu_formula = {
    .symbol  = "mu",
    .meaning = "dynamic viscosity of air",
    .unit    = "Pa.s",
    .text    = "1.458e-6*theta^1.5/(theta + 110.4)",
    .source  = "Sutherland's law, constants of ISO 2533:1975 (from memory)",
};
static const ts_formula rho_air_formula = {
    .symbol  = "rho_air",
    .meaning = "density of air",
    .unit    = "kg/m3",
    .text    = "p/(287.05287*theta)",
    .source  = "ideal gas, constant of ISO 2533:1975 (from memory)",
};
static const ts_formula d_cut_formula = {
    .symbol  = "d_cut",
    .meaning = "largest drop that still passes",
    .unit    = "m",
    .text    = "sqrt(9*mu*Q/(pi*L*(rho_oil - rho_air)))/(n*r)",
    .source  = "derived: Stokes drag at the rim against the swirl, air running inward",
};
static const ts_formula Re_formula = {
    .symbol  = "Re",
    .meaning = "Reynolds number of that drop",
    .unit    = "1",
    .text    = "rho_air*Q/(2*pi*r*L)*d_cut/mu",
    .source  = "definition; Stokes' law holds to about 1",
};
static const ts_formula dp_formula = {
    .symbol  = "dp",
    .meaning = "pressure that drops over the rotor",
    .unit    = "Pa",
    .text    = "rho_air*n^2*(r^2 - (d/2)^2)/2 + rho_air/2*(Q/(0.7*pi*d^2/4))^2",
    .source  = "derived: air that turns with the rotor, then the law of the orifice with 0.7 for "
               "the bore (common practice, no source)",
};
static const ts_formula T_formula = {
    .symbol  = "T_e",
    .meaning = "torque that gives the air its swirl",
    .unit    = "N.m",
    .text    = "rho_air*Q*n*r^2",
    .source  = "derived: change of moment of momentum, air that comes without swirl",
};

double ts_air_viscosity(double theta, ts_workings *workings)
{
    return TS_STEP(workings, mu_formula, 1.458e-6 * pow(theta, 1.5) / (theta + 110.4), theta);
}

double ts_air_density(double p, double theta, ts_workings *workings)
{
    return TS_STEP(workings, rho_air_formula, p / (287.05287 * theta), p, theta);
}

double ts_separator_cut(const ts_separator_rotor *rotor, const ts_swirl *swirl,
                        ts_workings *workings)
{
    const double r = rotor->r, L = rotor->L, Q = swirl->Q, n = swirl->n, mu = swirl->mu;
    const double rho_oil = swirl->rho_oil, rho_air = swirl->rho_air;

    return TS_STEP(workings, d_cut_formula,
                   sqrt(9.0 * mu * Q / (PI * L * (rho_oil - rho_air))) / (n * r), mu, Q, L, rho_oil,
                   rho_air, n, r);
}

double ts_separator_reynolds(const ts_separator_rotor *rotor, const ts_swirl *swirl, double d_cut,
                             ts_workings *workings)
{
    const double r = rotor->r, L = rotor->L, Q = swirl->Q, mu = swirl->mu;
    const double rho_air = swirl->rho_air;

    return TS_STEP(workings, Re_formula, rho_air * Q / (2.0 * PI * r * L) * d_cut / mu, rho_air, Q,
                   r, L, d_cut, mu);
}

double ts_separator_drop(const ts_separator_rotor *rotor, const ts_swirl *swirl,
                         ts_workings *workings)
{
    const double r = rotor->r, d = rotor->d, Q = swirl->Q, n = swirl->n;
    const double rho_air = swirl->rho_air, v = Q / (0.7 * PI * d * d / 4.0);

    return TS_STEP(workings, dp_formula,
                   rho_air * n * n * (r * r - d * d / 4.0) / 2.0 + rho_air / 2.0 * v * v, rho_air,
                   n, r, d, Q);
}

double ts_separator_torque(const ts_separator_rotor *rotor, const ts_swirl *swirl,
                           ts_workings *workings)
{
    const double r = rotor->r, Q = swirl->Q, n = swirl->n, rho_air = swirl->rho_air;

    return TS_STEP(workings, T_formula, rho_air * Q * n * r * r, rho_air, Q, n, r);
}
