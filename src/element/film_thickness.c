/* element/film_thickness.c: how thick is the oil film between two rolling surfaces? */
#include "element/film_thickness.h"

#include <math.h>

#define HAMROCK_DOWSON "B. J. Hamrock, D. Dowson, Journal of Lubrication Technology 99 (1977), 264"

static const ts_formula U_formula = {
    .symbol  = "U",
    .meaning = "speed group of the film",
    .unit    = "1",
    .text    = "eta_0*u/(E_r*R)",
    .source  = HAMROCK_DOWSON,
};
static const ts_formula G_formula = {
    .symbol  = "G",
    .meaning = "material group of the film",
    .unit    = "1",
    .text    = "alpha_p*E_r",
    .source  = HAMROCK_DOWSON,
};
static const ts_formula W_point_formula = {
    .symbol  = "W",
    .meaning = "load group of the film, point contact",
    .unit    = "1",
    .text    = "Q/(E_r*R^2)",
    .source  = HAMROCK_DOWSON,
};
static const ts_formula W_line_formula = {
    .symbol  = "W",
    .meaning = "load group of the film, line contact",
    .unit    = "1",
    .text    = "w/(E_r*R)",
    .source  = "D. Dowson, G. R. Higginson, Elasto-hydrodynamic Lubrication (1966) (from memory)",
};
static const ts_formula k_1977_formula = {
    .symbol  = "k",
    .meaning = "ellipticity",
    .unit    = "1",
    .text    = "1.03*(R_y/R_x)^0.64",
    .source  = HAMROCK_DOWSON,
};
static const ts_formula k_brewe_formula = {
    .symbol  = "k",
    .meaning = "ellipticity",
    .unit    = "1",
    .text    = "1.0339*(R_y/R_x)^0.636",
    .source  = "D. E. Brewe, B. J. Hamrock, Journal of Lubrication Technology 99 (1977), 485 (from "
               "memory)",
};
static const ts_formula H_min_formula = {
    .symbol  = "H_min",
    .meaning = "least film over radius, point contact",
    .unit    = "1",
    .text    = "3.63*U^0.68*G^0.49*W^-0.073*(1 - exp(-0.68*k))",
    .source  = HAMROCK_DOWSON,
};
static const ts_formula H_c_formula = {
    .symbol  = "H_c",
    .meaning = "central film over radius, point contact",
    .unit    = "1",
    .text    = "2.69*U^0.67*G^0.53*W^-0.067*(1 - 0.61*exp(-0.73*k))",
    .source  = HAMROCK_DOWSON " (from memory)",
};
static const ts_formula H_line_formula = {
    .symbol  = "H_min",
    .meaning = "least film over radius, line contact",
    .unit    = "1",
    .text    = "2.65*U^0.7*G^0.54*W^-0.13",
    .source  = "D. Dowson, Proceedings of the Institution of Mechanical Engineers 182 (1967), 3A "
               "(from memory)",
};

double ts_film_speed_group(double eta_0, double u, double E_r, double R, ts_workings *workings)
{
    return TS_STEP(workings, U_formula, eta_0 * u / (E_r * R), eta_0, u, E_r, R);
}

double ts_film_material_group(double alpha_p, double E_r, ts_workings *workings)
{
    return TS_STEP(workings, G_formula, alpha_p * E_r, alpha_p, E_r);
}

double ts_film_load_group_point(double Q, double E_r, double R, ts_workings *workings)
{
    return TS_STEP(workings, W_point_formula, Q / (E_r * R * R), Q, E_r, R);
}

double ts_film_load_group_line(double w, double E_r, double R, ts_workings *workings)
{
    return TS_STEP(workings, W_line_formula, w / (E_r * R), w, E_r, R);
}

double ts_ellipticity_1977(double R_x, double R_y, ts_workings *workings)
{
    return TS_STEP(workings, k_1977_formula, 1.03 * pow(R_y / R_x, 0.64), R_y, R_x);
}

double ts_ellipticity_brewe(double R_x, double R_y, ts_workings *workings)
{
    return TS_STEP(workings, k_brewe_formula, 1.0339 * pow(R_y / R_x, 0.636), R_y, R_x);
}

double ts_film_point_least(double U, double G, double W, double k, ts_workings *workings)
{
    const double H_min =
        3.63 * pow(U, 0.68) * pow(G, 0.49) * pow(W, -0.073) * (1.0 - exp(-0.68 * k));

    return TS_STEP(workings, H_min_formula, H_min, U, G, W, k);
}

double ts_film_point_central(double U, double G, double W, double k, ts_workings *workings)
{
    const double H_c =
        2.69 * pow(U, 0.67) * pow(G, 0.53) * pow(W, -0.067) * (1.0 - 0.61 * exp(-0.73 * k));

    return TS_STEP(workings, H_c_formula, H_c, U, G, W, k);
}

double ts_film_line_least(double U, double G, double W, ts_workings *workings)
{
    return TS_STEP(workings, H_line_formula, 2.65 * pow(U, 0.7) * pow(G, 0.54) * pow(W, -0.13), U,
                   G, W);
}

/* ---- pressure and viscosity ------------------------------------------------------------------ */

#define ISO_22 "ISO/TS 6336-22:2018, pressure-viscosity coefficient (from memory)"
#define AGMA_925                                                                                   \
    "AGMA 925-A03, table of viscosities and pressure-viscosity coefficients (from memory)"
#define ALPHA_P(formula_text, where)                                                               \
    {                                                                                              \
        .symbol = "alpha_p", .meaning = "pressure-viscosity coefficient", .unit = "1/Pa",          \
        .text = (formula_text), .source = (where)                                                  \
    }

typedef struct base_oil {
    const char *name;
    double      at_unit, exponent, per; /* at_unit*(per*eta)^exponent, as the source writes it */
    ts_formula  formula;
} base_oil;

static const base_oil oils[TS_OIL_COUNT] = {
    [TS_OIL_MINERAL] = {"mineral", 2.657e-8, 0.1348, 1.0, ALPHA_P("2.657e-8*eta^0.1348", ISO_22)},
    [TS_OIL_PAO]     = {"polyalphaolefin", 1.466e-8, 0.0507, 1.0,
                        ALPHA_P("1.466e-8*eta^0.0507", ISO_22)},
    [TS_OIL_PAG] = {"polyglycol", 1.392e-8, 0.1572, 1.0, ALPHA_P("1.392e-8*eta^0.1572", ISO_22)},
    [TS_OIL_MIL_7808]  = {"MIL-PRF-7808 ester", 0.005492e-6, 0.25472, 1000.0,
                          ALPHA_P("0.005492e-6*(1000*eta)^0.25472", AGMA_925)},
    [TS_OIL_MIL_23699] = {"MIL-PRF-23699 ester", 0.006515e-6, 0.16530, 1000.0,
                          ALPHA_P("0.006515e-6*(1000*eta)^0.16530", AGMA_925)},
};

double ts_pressure_viscosity(ts_base_oil oil, double eta, ts_workings *workings)
{
    const base_oil *row     = &oils[oil];
    const double    alpha_p = row->at_unit * pow(row->per * eta, row->exponent);

    return TS_STEP(workings, row->formula, alpha_p, eta);
}

const char *ts_base_oil_name(ts_base_oil oil)
{
    return oils[oil].name;
}
