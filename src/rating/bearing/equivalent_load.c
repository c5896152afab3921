/* rating/bearing/equivalent_load.c: which radial load wears a bearing as much as these two do? */
#include "rating/bearing/equivalent_load.h"

#include "base/table_line.h"

#include <math.h>

#define ISO_281(what) "ISO 281:2007, " what " (from memory)"

static const double degree = 3.14159265358979323846 / 180.0;

static const ts_formula relative_formula = {
    .symbol  = "relative",
    .meaning = "axial load relative to the static capacity",
    .unit    = "1",
    .text    = "f_0*F_a/C_0r",
    .source  = ISO_281("table 3"),
};
static const ts_formula low_formula = {
    .symbol  = "P",
    .meaning = "equivalent dynamic load",
    .unit    = "N",
    .text    = "X_1*F_r + Y_1*F_a",
    .source  = ISO_281("5.2, F_a/F_r up to e"),
};
static const ts_formula high_formula = {
    .symbol  = "P",
    .meaning = "equivalent dynamic load",
    .unit    = "N",
    .text    = "X_2*F_r + Y_2*F_a",
    .source  = ISO_281("5.2, F_a/F_r above e"),
};
static const ts_formula turns_formula = {
    .symbol  = "turns",
    .meaning = "angle turned in all steps",
    .unit    = "1",
    .text    = "sum(n*t)",
    .source  = "derived: sum over the steps",
};
static const ts_formula harm_formula = {
    .symbol  = "harm",
    .meaning = "sum of turned angle by load to the exponent of life",
    .unit    = "1",
    .text    = "sum(n*t*P^p)",
    .source  = "derived: equal harm for equal turns (Palmgren, Miner)",
};
static const ts_formula mean_formula = {
    .symbol  = "P_m",
    .meaning = "mean equivalent load of a spectrum",
    .unit    = "N",
    .text    = "(harm/turns)^(1/p)",
    .source  = "derived: equal harm for equal turns (Palmgren, Miner)",
};

double ts_relative_axial_load(double f_0, double F_a, double C_0r, ts_workings *workings)
{
    if (!(f_0 > 0.0 && F_a >= 0.0 && C_0r > 0.0))
        return NAN;
    return TS_STEP(workings, relative_formula, f_0 * F_a / C_0r, f_0, F_a, C_0r);
}

static void note_factors(const ts_load_factors *factors, const char *row, ts_workings *workings)
{
    ts_workings_row(workings, "e", factors->e, "1", row);
    ts_workings_row(workings, "X_1", factors->X_1, "1", row);
    ts_workings_row(workings, "Y_1", factors->Y_1, "1", row);
    ts_workings_row(workings, "X_2", factors->X_2, "1", row);
    ts_workings_row(workings, "Y_2", factors->Y_2, "1", row);
}

#define RELATIVES 9

ts_load_factors ts_deep_groove_factors(double relative, ts_workings *workings)
{
    static const double   at[RELATIVES] = {0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89};
    static const double   e[RELATIVES]  = {0.19, 0.22, 0.26, 0.28, 0.30, 0.34, 0.38, 0.42, 0.44};
    static const double   Y[RELATIVES]  = {2.30, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1.00};
    const ts_load_factors factors       = {
              .e      = ts_table_between(at, e, RELATIVES, relative),
              .X_1    = 1.0,
              .Y_1    = 0.0,
              .X_2    = 0.56,
              .Y_2    = ts_table_between(at, Y, RELATIVES, relative),
              .within = relative <= at[RELATIVES - 1],
    };

    note_factors(&factors, ISO_281("table 3, radial contact groove, straight between rows"),
                 workings);
    return factors;
}

static ts_load_factors fifteen_degrees(int rows, double relative)
{
    static const double at[RELATIVES]  = {0.178, 0.357, 0.714, 1.07, 1.43, 2.14, 3.57, 5.35, 7.14};
    static const double e[RELATIVES]   = {0.38, 0.40, 0.43, 0.46, 0.47, 0.50, 0.55, 0.56, 0.56};
    static const double Y[RELATIVES]   = {1.47, 1.40, 1.30, 1.23, 1.19, 1.12, 1.02, 1.00, 1.00};
    static const double Y_1[RELATIVES] = {1.65, 1.57, 1.46, 1.38, 1.34, 1.26, 1.14, 1.12, 1.12};
    static const double Y_2[RELATIVES] = {2.39, 2.28, 2.11, 2.00, 1.93, 1.82, 1.66, 1.63, 1.63};
    const bool          pair           = rows > 1;

    return (ts_load_factors){
        .e      = ts_table_between(at, e, RELATIVES, relative),
        .X_1    = 1.0,
        .Y_1    = pair ? ts_table_between(at, Y_1, RELATIVES, relative) : 0.0,
        .X_2    = pair ? 0.72 : 0.44,
        .Y_2    = ts_table_between(at, pair ? Y_2 : Y, RELATIVES, relative),
        .within = relative <= at[RELATIVES - 1],
    };
}

#define ANGLES 6

static ts_load_factors steep(int rows, double angle)
{
    static const double at[ANGLES]  = {20, 25, 30, 35, 40, 45};
    static const double e[ANGLES]   = {0.57, 0.68, 0.80, 0.95, 1.14, 1.34};
    static const double X[ANGLES]   = {0.43, 0.41, 0.39, 0.37, 0.35, 0.33};
    static const double Y[ANGLES]   = {1.00, 0.87, 0.76, 0.66, 0.57, 0.50};
    static const double Y_1[ANGLES] = {1.09, 0.92, 0.78, 0.66, 0.55, 0.47};
    static const double X_2[ANGLES] = {0.70, 0.67, 0.63, 0.60, 0.57, 0.54};
    static const double Y_2[ANGLES] = {1.63, 1.41, 1.24, 1.07, 0.93, 0.81};
    const bool          pair        = rows > 1;

    return (ts_load_factors){
        .e      = ts_table_between(at, e, ANGLES, angle),
        .X_1    = 1.0,
        .Y_1    = pair ? ts_table_between(at, Y_1, ANGLES, angle) : 0.0,
        .X_2    = ts_table_between(at, pair ? X_2 : X, ANGLES, angle),
        .Y_2    = ts_table_between(at, pair ? Y_2 : Y, ANGLES, angle),
        .within = true,
    };
}

ts_load_factors ts_angular_contact_factors(double alpha, int rows, double relative,
                                           ts_workings *workings)
{
    const double angle = alpha / degree, slack = 1e-9;

    if (fabs(angle - 15.0) <= slack && relative >= 0.0) {
        const ts_load_factors factors = fifteen_degrees(rows, relative);

        note_factors(&factors, ISO_281("table 3, 15 degrees, straight between rows"), workings);
        return factors;
    }
    if (angle >= 20.0 - slack && angle <= 45.0 + slack) {
        const ts_load_factors factors = steep(rows, angle);

        note_factors(&factors, ISO_281("table 3, from 20 degrees, straight between rows"),
                     workings);
        return factors;
    }
    return (ts_load_factors){NAN, NAN, NAN, NAN, NAN, false};
}

ts_load_factors ts_cylindrical_roller_factors(void)
{
    return (ts_load_factors){.e = INFINITY, .X_1 = 1.0, .X_2 = 1.0, .within = true};
}

double ts_bearing_load(const ts_load_factors *factors, double F_r, double F_a,
                       ts_workings *workings)
{
    const double X_1 = factors->X_1, Y_1 = factors->Y_1, X_2 = factors->X_2, Y_2 = factors->Y_2;

    if (!(F_r >= 0.0 && F_a >= 0.0) || isnan(factors->e))
        return NAN;
    if (!(F_a > 0.0) || F_a <= factors->e * F_r)
        return TS_STEP(workings, low_formula, X_1 * F_r + Y_1 * F_a, X_1, F_r, Y_1, F_a);
    return TS_STEP(workings, high_formula, X_2 * F_r + Y_2 * F_a, X_2, F_r, Y_2, F_a);
}

/* Told step by step only when somebody listens, for the number of inputs varies. */
static void note_sums(const ts_bearing_step *steps, int count, double turns, double harm, double p,
                      ts_workings *workings)
{
    enum { MOST = 64 };
    if (!TS_STEP_NEEDS_INPUTS(workings))
        return;
    ts_input inputs[3 * MOST + 1] = {{NULL, 0.0}};

    if (count > MOST) {
        ts_workings_row(workings, "turns", turns, "1", "sum over all steps of n*t");
        ts_workings_row(workings, "harm", harm, "1", "sum over all steps of n*t*P^p");
        return;
    }
    for (int j = 0; j < count; j++) {
        inputs[2 * j]     = (ts_input){"n", steps[j].n};
        inputs[2 * j + 1] = (ts_input){"t", steps[j].t};
    }
    ts_step_list(workings, &turns_formula, turns, inputs, 2 * (size_t)count);
    for (int j = 0; j < count; j++) {
        inputs[3 * j]     = (ts_input){"n", steps[j].n};
        inputs[3 * j + 1] = (ts_input){"t", steps[j].t};
        inputs[3 * j + 2] = (ts_input){"P", steps[j].P};
    }
    inputs[3 * count] = (ts_input){"p", p};
    ts_step_list(workings, &harm_formula, harm, inputs, 3 * (size_t)count + 1);
}

double ts_mean_bearing_load(const ts_bearing_step *steps, int count, double p,
                            ts_workings *workings)
{
    double turns = 0.0, harm = 0.0;

    for (int j = 0; j < count; j++) {
        const double n = steps[j].n, t = steps[j].t;

        if (!(n >= 0.0 && t >= 0.0 && steps[j].P >= 0.0))
            return NAN;
        turns += n * t;
        harm += n * t * pow(steps[j].P, p);
    }
    if (!(turns > 0.0 && p > 0.0))
        return NAN;
    note_sums(steps, count, turns, harm, p, workings);
    return TS_STEP(workings, mean_formula, pow(harm / turns, 1.0 / p), harm, turns, p);
}
