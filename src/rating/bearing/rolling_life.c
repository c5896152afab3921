/* rating/bearing/rolling_life.c: how long do rolling bearings last? */
#include "rating/bearing/rolling_life.h"

#include <math.h>

#define ISO_281(what) "ISO 281:2007, " what " (from memory)"

static const double pi = 3.14159265358979323846;

static const ts_formula L_10_formula = {
    .symbol  = "L_10",
    .meaning = "basic rating life, millions of turns",
    .unit    = "1",
    .text    = "(C/P)^p",
    .source  = ISO_281("5.3, 7.3"),
};
static const ts_formula L_10h_formula = {
    .symbol  = "L_10h",
    .meaning = "rating life in time",
    .unit    = "s",
    .text    = "1e6*2*pi*L_10/n",
    .source  = "derived: turns over speed",
};
static const ts_formula turns_formula = {
    .symbol  = "L_10",
    .meaning = "life, millions of turns",
    .unit    = "1",
    .text    = "L_10h*n/(1e6*2*pi)",
    .source  = "derived: time by speed",
};
static const ts_formula C_formula = {
    .symbol  = "C",
    .meaning = "capacity needed for a life",
    .unit    = "N",
    .text    = "P*(L_10/a)^(1/p)",
    .source  = ISO_281("5.3 solved for the capacity"),
};
static const ts_formula hazard_formula = {
    .symbol  = "hazard",
    .meaning = "sum of the bearings' inverse lives to the Weibull slope",
    .unit    = "1",
    .text    = "sum(1/L^e)",
    .source  = "derived: product of the reliabilities (Lundberg, Palmgren 1947)",
};
static const ts_formula set_formula = {
    .symbol  = "L_set",
    .meaning = "life of the set of bearings",
    .unit    = "s",
    .text    = "hazard^(-1/e)",
    .source  = "derived: product of the reliabilities (Lundberg, Palmgren 1947)",
};
static const ts_formula reliability_formula = {
    .symbol  = "L_R",
    .meaning = "life at a reliability",
    .unit    = "1",
    .text    = "L_10*(ln(1/R)/ln(1/0.9))^(1/e)",
    .source  = "derived: two-parameter Weibull law",
};

/* That of balls is asked for thousands of times in a choice of bearings. */
static double raised(double x, double p)
{
    return p == 3.0 ? x * x * x : pow(x, p);
}

double ts_basic_life(double C, double P, double p, ts_workings *workings)
{
    if (!(C > 0.0 && P > 0.0 && p > 0.0))
        return NAN;
    return TS_STEP(workings, L_10_formula, raised(C / P, p), C, P, p);
}

double ts_life_in_time(double L_10, double n, ts_workings *workings)
{
    if (!(L_10 > 0.0 && n > 0.0))
        return NAN;
    return TS_STEP(workings, L_10h_formula, 1e6 * 2.0 * pi * L_10 / n, L_10, n);
}

double ts_life_in_turns(double L_10h, double n, ts_workings *workings)
{
    if (!(L_10h >= 0.0 && n >= 0.0))
        return NAN;
    return TS_STEP(workings, turns_formula, L_10h * n / (1e6 * 2.0 * pi), L_10h, n);
}

double ts_capacity_for_life(double P, double L_10, double a, double p, ts_workings *workings)
{
    if (!(P > 0.0 && L_10 > 0.0 && a > 0.0 && p > 0.0))
        return NAN;
    return TS_STEP(workings, C_formula, P * pow(L_10 / a, 1.0 / p), P, L_10, a, p);
}

static void note_hazard(const double *lives, int count, double e, double hazard,
                        ts_workings *workings)
{
    enum { MOST = 64 };
    if (!TS_STEP_NEEDS_INPUTS(workings))
        return;
    ts_input inputs[MOST + 1] = {{NULL, 0.0}};

    if (count > MOST) {
        ts_workings_row(workings, "hazard", hazard, "1", "sum over all bearings of 1/L^e");
        return;
    }
    for (int i = 0; i < count; i++)
        inputs[i] = (ts_input){"L", lives[i]};
    inputs[count] = (ts_input){"e", e};
    ts_step_list(workings, &hazard_formula, hazard, inputs, (size_t)count + 1);
}

double ts_life_of_set(const double *lives, int count, double e, ts_workings *workings)
{
    double hazard = 0.0;

    for (int i = 0; i < count; i++) {
        if (!(lives[i] > 0.0))
            return NAN;
        hazard += 1.0 / pow(lives[i], e);
    }
    if (!(hazard > 0.0 && e > 0.0))
        return NAN;
    note_hazard(lives, count, e, hazard, workings);
    return TS_STEP(workings, set_formula, pow(hazard, -1.0 / e), hazard, e);
}

double ts_reliability_of_set(const double *reliabilities, int count)
{
    double product = 1.0;

    for (int i = 0; i < count; i++)
        product *= reliabilities[i];
    return product;
}

double ts_life_at_reliability(double L_10, double R, double e, ts_workings *workings)
{
    if (!(L_10 > 0.0 && R > 0.0 && R < 1.0 && e > 0.0))
        return NAN;
    const double L_R = L_10 * pow(log(1.0 / R) / log(1.0 / 0.9), 1.0 / e);

    return TS_STEP(workings, reliability_formula, L_R, L_10, R, e);
}
