/* element/oil_viscosity.c: how thick, how heavy and how stiff is an oil at a temperature? */
#include "element/oil_viscosity.h"

#include <math.h>

#define D341         "ASTM D341 (Walther)"
#define ISO_22(what) "ISO/TS 6336-22:2018, " what " (from memory)"

/* ---- the law of Walther ---------------------------------------------------------------------- */

static const ts_formula B_formula = {
    .symbol  = "B_nu",
    .meaning = "slope of the viscosity law",
    .unit    = "1",
    .text    = "ln(ln(1e6*nu_a + 0.7)/ln(1e6*nu_b + 0.7))/ln(theta_b/theta_a)",
    .source  = D341,
};
static const ts_formula A_formula = {
    .symbol  = "A_nu",
    .meaning = "height of the viscosity law",
    .unit    = "1",
    .text    = "(ln(ln(1e6*nu_a + 0.7)/ln(10)) + B_nu*ln(theta_a))/ln(10)",
    .source  = D341,
};
static const ts_formula nu_formula = {
    .symbol  = "nu",
    .meaning = "kinematic viscosity",
    .unit    = "m2/s",
    .text    = "(10^(10^(A_nu - B_nu*ln(theta)/ln(10))) - 0.7)/1e6",
    .source  = D341,
};

ts_viscosity_law ts_viscosity_law_of(double nu_a, double theta_a, double nu_b, double theta_b,
                                     ts_workings *workings)
{
    const ts_viscosity_law none = {NAN, NAN};

    if (!(nu_a > 0.4e-6 && nu_b > 0.4e-6 && nu_a < 1e3 && nu_b < 1e3 && theta_a > 1.0 &&
          theta_b > 1.0 && fabs(theta_a - theta_b) > 1e-6 && theta_a < 1e5 && theta_b < 1e5))
        return none;
    const double L_1 = log(1e6 * nu_a + 0.7), L_2 = log(1e6 * nu_b + 0.7);
    const double B_nu = TS_STEP(workings, B_formula, log(L_1 / L_2) / log(theta_b / theta_a), nu_a,
                                nu_b, theta_b, theta_a);

    return (ts_viscosity_law){
        .A = TS_STEP(workings, A_formula, (log(L_1 / log(10.0)) + B_nu * log(theta_a)) / log(10.0),
                     nu_a, B_nu, theta_a),
        .B = B_nu,
    };
}

double ts_viscosity_at(const ts_viscosity_law *law, double theta, ts_workings *workings)
{
    const double A_nu = law->A, B_nu = law->B;
    const double power = A_nu - B_nu * log(theta) / log(10.0);

    /* Beyond 10^300 there is no number for it. */
    if (!(theta > 1.0 && power < 2.4))
        return NAN;
    return TS_STEP(workings, nu_formula, (pow(10.0, pow(10.0, power)) - 0.7) / 1e6, A_nu, B_nu,
                   theta);
}

/* ---- an oil ---------------------------------------------------------------------------------- */

static const ts_formula nu_a_formula = {
    .symbol  = "nu_a",
    .meaning = "first point of the viscosity law, at 40 degrees Celsius",
    .unit    = "m2/s",
    .text    = "nu_40",
    .source  = D341,
};
static const ts_formula nu_b_formula = {
    .symbol  = "nu_b",
    .meaning = "second point of the viscosity law, at 100 degrees Celsius",
    .unit    = "m2/s",
    .text    = "nu_100",
    .source  = D341,
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

static bool is_oil(const ts_film_oil *oil)
{
    return oil->nu_40 > oil->nu_100 && within(oil->nu_100, 0.4e-6, 1.0) &&
           within(oil->nu_40, 0.4e-6, 1.0) && within(oil->rho_15, 500.0, 2000.0);
}

ts_viscosity_law ts_viscosity_law_of_oil(double nu_40, double nu_100, ts_workings *workings)
{
    const double nu_a = TS_STEP(workings, nu_a_formula, nu_40, nu_40);
    const double nu_b = TS_STEP(workings, nu_b_formula, nu_100, nu_100);

    ts_workings_row(workings, "theta_a", 313.15, "K", "40 degrees Celsius");
    ts_workings_row(workings, "theta_b", 373.15, "K", "100 degrees Celsius");
    return ts_viscosity_law_of(nu_a, 313.15, nu_b, 373.15, workings);
}

bool ts_film_law_of(const ts_film_oil *oil, ts_film_law *law, ts_workings *workings)
{
    if (!is_oil(oil) || !within(oil->alpha_38, 1e-12, 1e-6))
        return false;
    *law = (ts_film_law){*oil, ts_viscosity_law_of_oil(oil->nu_40, oil->nu_100, workings)};
    return true;
}

double ts_film_density(const ts_film_law *law, double theta, ts_workings *workings)
{
    const double rho_15 = law->oil.rho_15;

    return TS_STEP(workings, rho_formula, rho_15 * (1.0 - 0.7 * (theta - 289.0) / rho_15), rho_15,
                   theta);
}

double ts_film_viscosity(const ts_film_law *law, double theta, ts_workings *workings)
{
    const double nu      = ts_viscosity_at(&law->viscosity, theta, workings);
    const double rho_oil = ts_film_density(law, theta, workings);
    return TS_STEP(workings, eta_formula, nu * rho_oil, nu, rho_oil);
}

double ts_film_pressure_coefficient(const ts_film_law *law, double theta, ts_workings *workings)
{
    const double alpha_38 = law->oil.alpha_38;

    return TS_STEP(workings, alpha_formula, alpha_38 * (1.0 + 516.0 * (1.0 / theta - 1.0 / 311.0)),
                   alpha_38, theta);
}

/* ---- pressure, by the kind of oil -------------------------------------------------------------
 */

#define ALPHA_SOURCE                                                                               \
    "ISO/TS 6336-22:2018, pressure-viscosity coefficient of this kind of oil (from memory)"
#define ALPHA_LIKE(kind)                                                                           \
    "as of " kind ", for the standard has no formula of this kind of oil: common practice, no "    \
    "source"
#define ALPHA(text_, source_)                                                                      \
    {                                                                                              \
        .symbol = "alpha_38", .meaning = "pressure-viscosity coefficient at 38 degrees Celsius",   \
        .unit = "1/Pa", .text = (text_), .source = (source_)                                       \
    }
#define MINERAL "2.657e-8*eta_38^0.1348"
#define PAO     "1.466e-8*eta_38^0.0507"
#define PAG     "1.392e-8*eta_38^0.1572"

typedef struct pressure_law {
    ts_formula formula;
    double     scale, power;
} pressure_law;

static const pressure_law pressure_laws[TS_LUBRICANT_COUNT] = {
    [TS_LUBRICANT_MINERAL]   = {ALPHA(MINERAL, ALPHA_SOURCE), 2.657e-8, 0.1348},
    [TS_LUBRICANT_PAO]       = {ALPHA(PAO, ALPHA_SOURCE), 1.466e-8, 0.0507},
    [TS_LUBRICANT_PAG]       = {ALPHA(PAG, ALPHA_SOURCE), 1.392e-8, 0.1572},
    [TS_LUBRICANT_PAG_WATER] = {ALPHA(PAG, ALPHA_SOURCE), 1.392e-8, 0.1572},
    [TS_LUBRICANT_TRACTION]  = {ALPHA(MINERAL, ALPHA_LIKE("mineral oil")), 2.657e-8, 0.1348},
    [TS_LUBRICANT_PHOSPHATE] = {ALPHA(MINERAL, ALPHA_LIKE("mineral oil")), 2.657e-8, 0.1348},
    [TS_LUBRICANT_POLYOL]    = {ALPHA(PAO, ALPHA_LIKE("polyalphaolefin")), 1.466e-8, 0.0507},
};
static const ts_formula eta_38_formula = {
    .symbol  = "eta_38",
    .meaning = "dynamic viscosity at 38 degrees Celsius",
    .unit    = "Pa.s",
    .text    = "eta",
    .source  = ISO_22("pressure-viscosity coefficient"),
};

bool ts_film_law_of_kind(const ts_film_oil *oil, ts_lubricant kind, ts_film_law *law,
                         ts_workings *workings)
{
    const pressure_law *pressure = &pressure_laws[kind];
    const double        theta_38 = 311.15;

    if (!is_oil(oil))
        return false;
    *law = (ts_film_law){*oil, ts_viscosity_law_of_oil(oil->nu_40, oil->nu_100, workings)};
    ts_workings_row(workings, "theta", theta_38, "K", "38 degrees Celsius");
    const double eta    = ts_film_viscosity(law, theta_38, workings);
    const double eta_38 = TS_STEP(workings, eta_38_formula, eta, eta);
    law->oil.alpha_38   = TS_STEP(workings, pressure->formula,
                                  pressure->scale * pow(eta_38, pressure->power), eta_38);
    return true;
}
