/* rating/micropitting/film_oil.c: how thick and how stiff is the oil at a temperature? */
#include "rating/micropitting/film_oil.h"

#include <math.h>

#define ISO_22(what) "ISO/TS 6336-22:2018, " what " (from memory)"

static const ts_formula B_formula = {
    .symbol  = "B_nu",
    .meaning = "slope of the viscosity law",
    .unit    = "1",
    .text    = "(ln(ln(1e6*nu_40 + 0.7)/ln(10)) - ln(ln(1e6*nu_100 + 0.7)/ln(10)))/(ln(373.15) - "
               "ln(313.15))",
    .source  = ISO_22("kinematic viscosity at a temperature; ASTM D341"),
};
static const ts_formula A_formula = {
    .symbol  = "A_nu",
    .meaning = "height of the viscosity law",
    .unit    = "1",
    .text    = "ln(ln(1e6*nu_40 + 0.7)/ln(10))/ln(10) + B_nu*ln(313.15)/ln(10)",
    .source  = ISO_22("kinematic viscosity at a temperature; ASTM D341"),
};
static const ts_formula nu_formula = {
    .symbol  = "nu",
    .meaning = "kinematic viscosity",
    .unit    = "m2/s",
    .text    = "(10^(10^(A_nu - B_nu*ln(theta)/ln(10))) - 0.7)/1e6",
    .source  = ISO_22("kinematic viscosity at a temperature; ASTM D341"),
};
static const ts_formula rho_formula = {
    .symbol  = "rho_oil",
    .meaning = "density of the oil",
    .unit    = "kg/m3",
    .text    = "rho_15*(1 - 0.7*(theta - 289)/rho_15)",
    .source  = ISO_22("density at a temperature"),
};
static const ts_formula eta_formula = {
    .symbol  = "eta",
    .meaning = "dynamic viscosity",
    .unit    = "Pa.s",
    .text    = "nu*rho_oil",
    .source  = ISO_22("dynamic viscosity"),
};
static const ts_formula alpha_formula = {
    .symbol  = "alpha_theta",
    .meaning = "pressure-viscosity coefficient",
    .unit    = "1/Pa",
    .text    = "alpha_38*(1 + 516*(1/theta - 1/311))",
    .source  = ISO_22("pressure-viscosity coefficient at a temperature"),
};

static bool within(double value, double least, double most)
{
    return value > least && value < most; /* false for NaN */
}

static double twofold_logarithm(double nu)
{
    return log(log(1e6 * nu + 0.7) / log(10.0));
}

bool ts_film_law_of(const ts_film_oil *oil, ts_film_law *law, ts_workings *workings)
{
    const double nu_40 = oil->nu_40, nu_100 = oil->nu_100;

    if (!(nu_40 > nu_100) || !within(nu_100, 0.4e-6, 1.0) || !within(nu_40, 0.4e-6, 1.0) ||
        !within(oil->rho_15, 500.0, 2000.0) || !within(oil->alpha_38, 1e-12, 1e-6))
        return false;
    const double slope =
        (twofold_logarithm(nu_40) - twofold_logarithm(nu_100)) / (log(373.15) - log(313.15));
    const double B_nu = TS_STEP(workings, B_formula, slope, nu_40, nu_100);

    law->oil = *oil;
    law->B   = B_nu;
    law->A =
        TS_STEP(workings, A_formula,
                twofold_logarithm(nu_40) / log(10.0) + B_nu * log(313.15) / log(10.0), nu_40, B_nu);
    return true;
}

double ts_film_viscosity(const ts_film_law *law, double theta, ts_workings *workings)
{
    const double A_nu = law->A, B_nu = law->B, rho_15 = law->oil.rho_15;

    const double power = pow(10.0, A_nu - B_nu * log(theta) / log(10.0));
    const double nu =
        TS_STEP(workings, nu_formula, (pow(10.0, power) - 0.7) / 1e6, A_nu, B_nu, theta);
    const double rho_oil = TS_STEP(workings, rho_formula,
                                   rho_15 * (1.0 - 0.7 * (theta - 289.0) / rho_15), rho_15, theta);
    return TS_STEP(workings, eta_formula, nu * rho_oil, nu, rho_oil);
}

double ts_film_pressure_coefficient(const ts_film_law *law, double theta, ts_workings *workings)
{
    const double alpha_38 = law->oil.alpha_38;

    return TS_STEP(workings, alpha_formula, alpha_38 * (1.0 + 516.0 * (1.0 / theta - 1.0 / 311.0)),
                   alpha_38, theta);
}
