/* rating/agma2003/agma2003_strength.c: what do bevel teeth bear by ANSI/AGMA 2003-C10? */
#include "rating/agma2003/agma2003_factor.h"
#include "rating/agma2003/agma2003_step.h"

#include <math.h>
#include <stddef.h>

/* ---- life ------------------------------------------------------------------------------------ */

#define CONTACT_LIFE       AGMA2003 ", stress cycle factor for pitting" AGMA2003_RECALLED
#define BENDING_LIFE       AGMA2003 ", stress cycle factor for bending" AGMA2003_RECALLED
#define CONTACT_LINE(I, M) "3.4822*n_L" I "^(-0.0602)"
#define SHORT_LINE(I, M)   "6.1514*n_L" I "^(-0.1192)"
#define LOWER_LINE(I, M)   "1.683*n_L" I "^(-0.0323)"
#define UPPER_LINE(I, M)   "1.3558*n_L" I "^(-0.0178)"

static const ts_formula contact_formulas[2] =
    TS_BEVEL_BOTH("Z_NT", "stress cycle factor (contact)", "1", CONTACT_LINE, CONTACT_LIFE);
static const ts_formula short_formulas[2] =
    TS_BEVEL_BOTH("Y_NT", "stress cycle factor (bending)", "1", SHORT_LINE, BENDING_LIFE);
static const ts_formula lower_formulas[2] = TS_BEVEL_BOTH(
    "Y_NT", "stress cycle factor (bending), lower line", "1", LOWER_LINE, BENDING_LIFE);
static const ts_formula upper_formulas[2] = TS_BEVEL_BOTH(
    "Y_NT", "stress cycle factor (bending), upper line", "1", UPPER_LINE, BENDING_LIFE);

static double level(double value, const char *const symbols[2], const char *source, int gear,
                    ts_workings *workings)
{
    ts_workings_row(workings, symbols[gear], value, "1", source);
    return value;
}

double ts_agma2003_life_contact(double n_L, int gear, ts_workings *workings)
{
    static const char *const symbols[2] = {"Z_NT1", "Z_NT2"};

    if (n_L < 1e4)
        return level(2.0, symbols, CONTACT_LIFE, gear, workings);
    return TS_BEVEL_STEP(workings, contact_formulas, 3.4822 * pow(n_L, -0.0602),
                         TS_BEVEL_SELF("n_L", n_L));
}

double ts_agma2003_life_bending(double n_L, bool critical, int gear, ts_workings *workings)
{
    static const char *const symbols[2] = {"Y_NT1", "Y_NT2"};

    if (n_L < 1e3)
        return level(2.7, symbols, BENDING_LIFE, gear, workings);
    if (n_L < 3e6)
        return TS_BEVEL_STEP(workings, short_formulas, 6.1514 * pow(n_L, -0.1192),
                             TS_BEVEL_SELF("n_L", n_L));
    if (critical)
        return TS_BEVEL_STEP(workings, lower_formulas, 1.683 * pow(n_L, -0.0323),
                             TS_BEVEL_SELF("n_L", n_L));
    return TS_BEVEL_STEP(workings, upper_formulas, 1.3558 * pow(n_L, -0.0178),
                         TS_BEVEL_SELF("n_L", n_L));
}

/* ---- hardness, temperature, reliability ------------------------------------------------------ */

#define RATIO_TEXT(I, M) "1 + (0.00898*min(1.7, hardness" M "/hardness" I ") - 0.00829)*(u_w - 1)"
AGMA2003_FORMULAS(Z_W, "hardness ratio factor", "1", RATIO_TEXT, "hardness ratio factor");
AGMA2003_FORMULA(K_theta, "temperature factor", "1", "max(1, (T_M - 0.15)/393)",
                 "temperature factor");
AGMA2003_FORMULA(Z_Z, "reliability factor (contact)", "1", "sqrt(Y_Z)", "reliability factors");
#define Y_Z_LINE(name, expression)                                                                 \
    static const ts_formula name##_formula = {.symbol  = "Y_Z",                                    \
                                              .meaning = "reliability factor (bending)",           \
                                              .unit    = "1",                                      \
                                              .text    = (expression),                             \
                                              .source  = AGMA2003                                  \
                                              ", reliability factors" AGMA2003_RECALLED}
Y_Z_LINE(high, "0.5 - 0.25*ln(1 - R)/ln(10)");
Y_Z_LINE(low, "0.7 - 0.15*ln(1 - R)/ln(10)");

double ts_agma2003_hardness_ratio(double HB_pinion, double HB_wheel, double u, int gear,
                                  ts_workings *workings)
{
    static const char *const symbols[2] = {"Z_W1", "Z_W2"};
    const double             ratio = HB_pinion / HB_wheel, u_w = u;

    if (isnan(ratio) || isnan(u))
        return NAN;
    if (ratio < 1.2)
        return level(1.0, symbols, AGMA2003 ", hardness ratio factor below a ratio of 1.2", gear,
                     workings);
    const double slope = 0.00898 * fmin(1.7, ratio) - 0.00829;
    return TS_BEVEL_STEP(workings, Z_W_formulas, 1.0 + slope * (u_w - 1.0),
                         TS_BEVEL_MATE("hardness", HB_pinion), TS_BEVEL_SELF("hardness", HB_wheel),
                         TS_BEVEL_PAIR(u_w));
}

double ts_agma2003_temperature(double T_M, ts_workings *workings)
{
    return TS_STEP(workings, K_theta_formula, fmax(1.0, (T_M - 0.15) / 393.0), T_M);
}

double ts_agma2003_reliability(double R, ts_workings *workings)
{
    if (!(R >= 0.9 && R <= 0.9999))
        return NAN;
    if (R < 0.99)
        return TS_STEP(workings, low_formula, 0.7 - 0.15 * log(1.0 - R) / log(10.0), R);
    return TS_STEP(workings, high_formula, 0.5 - 0.25 * log(1.0 - R) / log(10.0), R);
}

double ts_agma2003_reliability_contact(double Y_Z, ts_workings *workings)
{
    return TS_STEP(workings, Z_Z_formula, sqrt(Y_Z), Y_Z);
}
