/* rating/iso6336/reduced_mass.c: how heavy are two gears at their line of action? */
#include "rating/iso6336/reduced_mass.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define MEAN_TEXT(I) "(d_a" I " + d_f" I ")/2"
#define RIM_TEXT(I)  "pi/32*rho_" I "*abs(d_m" I "^4 - d_i" I "^4)"
#define WEB_TEXT(I)                                                                                \
    "pi/32*rho_" I "*(d_m" I "^4 - d_i" I "^4 + b_sb" I "*(d_i" I "^4 - d_web" I "^4))"
#define MASS_TEXT(I) "4*Js_" I "/d_b" I "^2"

static const ts_formula d_m_formulas[2] = TS_OF_BOTH_GEARS(
    "d_m", "diameter at half tooth height", "m", MEAN_TEXT, ISO_6336_1 "6.5.9" RECALLED);
static const ts_formula rim_formulas[2] = TS_OF_BOTH_GEARS(
    "Js_", "moment of inertia per unit face width", "kg.m", RIM_TEXT, ISO_6336_1 "6.5.9" RECALLED);
static const ts_formula web_formulas[2] =
    TS_OF_BOTH_GEARS("Js_", "moment of inertia per unit face width, with the web", "kg.m", WEB_TEXT,
                     "derived: rings about one axis; the standard counts the rim alone");
static const ts_formula ms_formulas[2] =
    TS_OF_BOTH_GEARS("ms_", "mass per unit face width at the base circle", "kg/m", MASS_TEXT,
                     ISO_6336_1 "6.5.9" RECALLED);

static double fourth(double d)
{
    return (d * d) * (d * d);
}

double ts_blank_inertia(const ts_gear_blank *blank, int gear, ts_workings *workings)
{
    const double d_a = blank->d_a, d_f = blank->d_f, d_i = blank->d_i, rho = blank->rho;
    const double b_sb = blank->b_s_per_width, d_web = blank->d_web;
    const double d_m = TS_GEAR_STEP(workings, d_m_formulas, (d_a + d_f) / 2.0, TS_OWN("d_a", d_a),
                                    TS_OWN("d_f", d_f));

    if (!(b_sb > 0.0) || d_m < 0.0)
        return TS_GEAR_STEP(workings, rim_formulas,
                            pi / 32.0 * rho * fabs(fourth(d_m) - fourth(d_i)), TS_OWN("rho_", rho),
                            TS_OWN("d_m", d_m), TS_OWN("d_i", d_i));
    const double rings = fourth(d_m) - fourth(d_i) + b_sb * (fourth(d_i) - fourth(d_web));
    return TS_GEAR_STEP(workings, web_formulas, pi / 32.0 * rho * rings, TS_OWN("rho_", rho),
                        TS_OWN("d_m", d_m), TS_OWN("d_i", d_i), TS_OWN("b_sb", b_sb),
                        TS_OWN("d_web", d_web));
}

double ts_relative_mass(double Js, double d_b, int gear, ts_workings *workings)
{
    return TS_GEAR_STEP(workings, ms_formulas, 4.0 * Js / (d_b * d_b), TS_OWN("Js_", Js),
                        TS_OWN("d_b", d_b));
}

static const ts_formula m_red_formula = {
    .symbol  = "m_red",
    .meaning = "reduced mass of both gears per unit face width",
    .unit    = "kg/m",
    .text    = "1/(1/ms_1 + 1/ms_2)",
    .source  = ISO_6336_1 "6.5.9" RECALLED,
};
static const ts_formula n_E1_formula = {
    .symbol  = "n_E1",
    .meaning = "resonance speed of gear 1",
    .unit    = "rad/s",
    .text    = "sqrt(c_gamma_alpha/m_red)/z_1",
    .source  = ISO_6336_1 "6.5.3" RECALLED,
};

/* Written so that a ring that is held fast (ms_2 infinite) leaves ms_1. */
double ts_reduced_mass(double ms_1, double ms_2, ts_workings *workings)
{
    return TS_STEP(workings, m_red_formula, 1.0 / (1.0 / ms_1 + 1.0 / ms_2), ms_1, ms_2);
}

double ts_resonance_speed(double c_gamma_alpha, double m_red, double z_1, ts_workings *workings)
{
    return TS_STEP(workings, n_E1_formula, sqrt(c_gamma_alpha / m_red) / z_1, c_gamma_alpha, m_red,
                   z_1);
}
