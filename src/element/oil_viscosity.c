/* element/oil_viscosity.c: how thick is an oil at a temperature, by two points? */
#include "element/oil_viscosity.h"

#include <math.h>

#define D341 "ASTM D341 (Walther)"

static const ts_formula B_formula = {
    .symbol  = "B_nu",
    .meaning = "slope of the viscosity law",
    .unit    = "1",
    .text    = "ln(ln(1e6*nu_1 + 0.7)/ln(1e6*nu_2 + 0.7))/ln(T_2/T_1)",
    .source  = D341,
};
static const ts_formula A_formula = {
    .symbol  = "A_nu",
    .meaning = "height of the viscosity law",
    .unit    = "1",
    .text    = "(ln(ln(1e6*nu_1 + 0.7)/ln(10)) + B_nu*ln(T_1))/ln(10)",
    .source  = D341,
};
static const ts_formula nu_formula = {
    .symbol  = "nu",
    .meaning = "kinematic viscosity",
    .unit    = "m2/s",
    .text    = "(10^(10^(A_nu - B_nu*ln(T)/ln(10))) - 0.7)/1e6",
    .source  = D341,
};

ts_viscosity_law ts_viscosity_law_of(double nu_1, double T_1, double nu_2, double T_2,
                                     ts_workings *workings)
{
    const ts_viscosity_law none = {NAN, NAN};

    if (!(nu_1 > 0.4e-6 && nu_2 > 0.4e-6 && nu_1 < 1e3 && nu_2 < 1e3 && T_1 > 1.0 && T_2 > 1.0 &&
          fabs(T_1 - T_2) > 1e-6 && T_1 < 1e5 && T_2 < 1e5))
        return none;
    const double L_1 = log(1e6 * nu_1 + 0.7), L_2 = log(1e6 * nu_2 + 0.7);
    const double B_nu =
        TS_STEP(workings, B_formula, log(L_1 / L_2) / log(T_2 / T_1), nu_1, nu_2, T_2, T_1);

    return (ts_viscosity_law){
        .A = TS_STEP(workings, A_formula, (log(L_1 / log(10.0)) + B_nu * log(T_1)) / log(10.0),
                     nu_1, B_nu, T_1),
        .B = B_nu,
    };
}

double ts_viscosity_at(const ts_viscosity_law *law, double T, ts_workings *workings)
{
    const double A_nu = law->A, B_nu = law->B;
    const double power = A_nu - B_nu * log(T) / log(10.0);

    /* Beyond 10^300 there is no number for it. */
    if (!(T > 1.0 && power < 2.4))
        return NAN;
    return TS_STEP(workings, nu_formula, (pow(10.0, pow(10.0, power)) - 0.7) / 1e6, A_nu, B_nu, T);
}
