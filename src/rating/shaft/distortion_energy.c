/* rating/shaft/distortion_energy.c: does a shaft hold by distortion energy and a mean-stress line?
 */
#include "rating/shaft/distortion_energy.h"

#include <math.h>
#include <stdbool.h>

#define SHIGLEY(what) "Shigley's Mechanical Engineering Design, 8th ed., " what

static const double pi = 3.14159265358979323846;

static const ts_formula A_formula = {
    .symbol  = "A",
    .meaning = "equivalent reversing moment",
    .unit    = "N.m",
    .text    = "sqrt(4*(K_f*M_a)^2 + 3*(K_fs*T_a)^2)",
    .source  = SHIGLEY("7-4"),
};
static const ts_formula B_formula = {
    .symbol  = "B",
    .meaning = "equivalent steady moment",
    .unit    = "N.m",
    .text    = "sqrt(4*(K_f*M_m)^2 + 3*(K_fs*T_m)^2)",
    .source  = SHIGLEY("7-4"),
};

/* n_f enters each text in the same way: d^3 = n_f*strain, so one function gives both questions.
 * strain is the volume for safety 1. */
static const ts_formula strain_formulas[TS_MEAN_LINE_COUNT] = {
    [TS_MEAN_GOODMAN]   = {.symbol  = "V_1",
                           .meaning = "cube of the diameter for safety 1, Goodman",
                           .unit    = "1",
                           .text    = "16/pi*(A/S_e + B/S_ut)",
                           .source  = SHIGLEY("7-4")},
    [TS_MEAN_GERBER]    = {.symbol  = "V_1",
                           .meaning = "cube of the diameter for safety 1, Gerber",
                           .unit    = "1",
                           .text    = "8*A/(pi*S_e)*(1 + sqrt(1 + (2*B*S_e/(A*S_ut))^2))",
                           .source  = SHIGLEY("7-4")},
    [TS_MEAN_ELLIPTIC]  = {.symbol  = "V_1",
                           .meaning = "cube of the diameter for safety 1, ellipse",
                           .unit    = "1",
                           .text    = "16/pi*sqrt((A/S_e)^2 + (B/S_y)^2)",
                           .source  = SHIGLEY("7-4")},
    [TS_MEAN_SODERBERG] = {.symbol  = "V_1",
                           .meaning = "cube of the diameter for safety 1, Soderberg",
                           .unit    = "1",
                           .text    = "16/pi*(A/S_e + B/S_y)",
                           .source  = SHIGLEY("7-4")},
};
static const ts_formula steady_formula = {
    .symbol  = "V_1",
    .meaning = "cube of the diameter for safety 1, Gerber without a reversing moment",
    .unit    = "1",
    .text    = "16*B/(pi*S_ut)",
    .source  = SHIGLEY("7-4, its limit"),
};
static const ts_formula d_formula = {
    .symbol  = "d",
    .meaning = "diameter for a safety",
    .unit    = "m",
    .text    = "(n_f*V_1)^(1/3)",
    .source  = SHIGLEY("7-4"),
};
static const ts_formula n_formula = {
    .symbol  = "n_f",
    .meaning = "safety against fatigue",
    .unit    = "1",
    .text    = "d^3/V_1",
    .source  = SHIGLEY("7-4"),
};
static const ts_formula first_formula = {
    .symbol  = "sigma_max",
    .meaning = "greatest equivalent stress of the first cycle",
    .unit    = "Pa",
    .text    = "sqrt((32*K_f*(M_m + M_a)/(pi*d^3))^2 + 3*(16*K_fs*(T_m + T_a)/(pi*d^3))^2)",
    .source  = SHIGLEY("7-4"),
};
static const ts_formula k_a_formula = {
    .symbol  = "k_a",
    .meaning = "surface factor, machined",
    .unit    = "1",
    .text    = "4.51*(S_ut/1e6)^-0.265",
    .source  = SHIGLEY("table 6-2"),
};
static const ts_formula k_b_formula = {
    .symbol  = "k_b",
    .meaning = "size factor",
    .unit    = "1",
    .text    = "(1000*d/7.62)^-0.107",
    .source  = SHIGLEY("6-9, 2.79 to 51 mm"),
};
static const ts_formula k_b_large_formula = {
    .symbol  = "k_b",
    .meaning = "size factor",
    .unit    = "1",
    .text    = "1.51*(1000*d)^-0.157",
    .source  = SHIGLEY("6-9, 51 to 254 mm (from memory)"),
};
static const ts_formula S_e_formula = {
    .symbol  = "S_e",
    .meaning = "endurance limit of the part",
    .unit    = "Pa",
    .text    = "k_a*k_b*min(0.5*S_ut, 700e6)",
    .source  = SHIGLEY("6-7"),
};
static const ts_formula T_e_formula = {
    .symbol  = "T_e",
    .meaning = "equivalent torque",
    .unit    = "N.m",
    .text    = "sqrt((K_b*M)^2 + (K_t*T)^2)",
    .source  = "old shaft code of the ASME, as in U. C. Jindal, Machine Design, chapter 15",
};

ts_shaft_equivalent ts_shaft_equivalent_of(const ts_shaft_moments *moments, ts_workings *workings)
{
    const double M_a = moments->M_a, M_m = moments->M_m, T_a = moments->T_a, T_m = moments->T_m;
    const double K_f = moments->K_f, K_fs = moments->K_fs;
    const double A = sqrt(4.0 * K_f * M_a * K_f * M_a + 3.0 * K_fs * T_a * K_fs * T_a);
    const double B = sqrt(4.0 * K_f * M_m * K_f * M_m + 3.0 * K_fs * T_m * K_fs * T_m);

    if (isnan(A) || isnan(B))
        return (ts_shaft_equivalent){NAN, NAN};
    return (ts_shaft_equivalent){
        .A = TS_STEP(workings, A_formula, A, K_f, M_a, K_fs, T_a),
        .B = TS_STEP(workings, B_formula, B, K_f, M_m, K_fs, T_m),
    };
}

static bool is_strong(const ts_shaft_strength *strength)
{
    return strength->S_e > 0.0 && strength->S_ut > 0.0 && strength->S_y > 0.0;
}

/* Each line needs its own inputs, or a step would name some that its text does not use. */
static double volume_of(ts_mean_line line, ts_shaft_equivalent equivalent,
                        const ts_shaft_strength *strength, ts_workings *workings)
{
    const double      A = equivalent.A, B = equivalent.B;
    const double      S_e = strength->S_e, S_ut = strength->S_ut, S_y = strength->S_y;
    const ts_formula *formula = &strain_formulas[line];

    switch (line) {
    case TS_MEAN_GOODMAN:
        return TS_STEP(workings, *formula, 16.0 / pi * (A / S_e + B / S_ut), A, S_e, B, S_ut);
    case TS_MEAN_SODERBERG:
        return TS_STEP(workings, *formula, 16.0 / pi * (A / S_e + B / S_y), A, S_e, B, S_y);
    case TS_MEAN_ELLIPTIC:
        return TS_STEP(workings, *formula,
                       16.0 / pi * sqrt(A / S_e * (A / S_e) + B / S_y * (B / S_y)), A, S_e, B, S_y);
    case TS_MEAN_GERBER:
    case TS_MEAN_LINE_COUNT:
        break;
    }
    if (!(A > 0.0))
        return TS_STEP(workings, steady_formula, 16.0 * B / (pi * S_ut), B, S_ut);
    const double ratio = 2.0 * B * S_e / (A * S_ut);

    return TS_STEP(workings, *formula, 8.0 * A / (pi * S_e) * (1.0 + sqrt(1.0 + ratio * ratio)), A,
                   S_e, B, S_ut);
}

double ts_shaft_diameter(ts_mean_line line, ts_shaft_equivalent equivalent,
                         const ts_shaft_strength *strength, double n_f, ts_workings *workings)
{
    if (!(is_strong(strength) && equivalent.A >= 0.0 && equivalent.B >= 0.0 &&
          equivalent.A + equivalent.B > 0.0 && n_f > 0.0))
        return NAN;
    const double V_1 = volume_of(line, equivalent, strength, workings);

    return TS_STEP(workings, d_formula, cbrt(n_f * V_1), n_f, V_1);
}

double ts_shaft_safety(ts_mean_line line, ts_shaft_equivalent equivalent,
                       const ts_shaft_strength *strength, double d, ts_workings *workings)
{
    if (!(is_strong(strength) && equivalent.A >= 0.0 && equivalent.B >= 0.0 &&
          equivalent.A + equivalent.B > 0.0 && d > 0.0))
        return NAN;
    const double V_1 = volume_of(line, equivalent, strength, workings);

    return TS_STEP(workings, n_formula, d * d * d / V_1, d, V_1);
}

double ts_shaft_first_cycle(const ts_shaft_moments *moments, double d, ts_workings *workings)
{
    const double M_a = moments->M_a, M_m = moments->M_m, T_a = moments->T_a, T_m = moments->T_m;
    const double K_f = moments->K_f, K_fs = moments->K_fs;
    const double cube  = pi * d * d * d;
    const double sigma = 32.0 * K_f * (M_m + M_a) / cube, tau = 16.0 * K_fs * (T_m + T_a) / cube;

    if (!(d > 0.0) || isnan(sigma) || isnan(tau))
        return NAN;
    return TS_STEP(workings, first_formula, sqrt(sigma * sigma + 3.0 * tau * tau), K_f, M_m, M_a, d,
                   K_fs, T_m, T_a);
}

double ts_surface_factor(double S_ut, ts_workings *workings)
{
    if (!(S_ut > 0.0))
        return NAN;
    return TS_STEP(workings, k_a_formula, 4.51 * pow(S_ut / 1e6, -0.265), S_ut);
}

double ts_size_factor(double d, ts_workings *workings)
{
    if (!(d >= 0.00279 && d <= 0.254))
        return NAN;
    if (d <= 0.051)
        return TS_STEP(workings, k_b_formula, pow(1000.0 * d / 7.62, -0.107), d);
    return TS_STEP(workings, k_b_large_formula, 1.51 * pow(1000.0 * d, -0.157), d);
}

double ts_endurance_limit(double S_ut, double k_a, double k_b, ts_workings *workings)
{
    if (!(S_ut > 0.0 && k_a > 0.0 && k_b > 0.0))
        return NAN;
    return TS_STEP(workings, S_e_formula, k_a * k_b * fmin(0.5 * S_ut, 700e6), k_a, k_b, S_ut);
}

double ts_equivalent_torque(double K_b, double M, double K_t, double T, ts_workings *workings)
{
    if (isnan(K_b * M) || isnan(K_t * T))
        return NAN;
    return TS_STEP(workings, T_e_formula, hypot(K_b * M, K_t * T), K_b, M, K_t, T);
}
