/* rating/agma2101/agma_strength.c: how much of the printed allowable stress may be used? */
#include "rating/agma2101/agma_strength.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>
#include <stddef.h>

/* ---- reliability ----------------------------------------------------------------------------- */

#define CLAUSE_18 AGMA_2101 "18, table 11" RECALLED

typedef struct reliability_row {
    double fails; /* 1 - R */
    double Y_Z;
} reliability_row;

static const reliability_row reliability[] = {
    {0.5, 0.70}, {0.1, 0.85}, {0.01, 1.00}, {0.001, 1.25}, {0.0001, 1.50},
};
#define RELIABILITY_COUNT (sizeof reliability / sizeof reliability[0])

static const ts_formula Y_Z_formula = {
    .symbol  = "Y_Z",
    .meaning = "reliability factor, between two rows",
    .unit    = "1",
    .text    = "Y_Zlow + (Y_Zhigh - Y_Zlow)*ln((1 - R)/P_low)/ln(P_high/P_low)",
    .source  = CLAUSE_18 "; between its rows common practice, no source",
};

double ts_agma_reliability_factor(double R, ts_workings *workings)
{
    const double fails = 1.0 - R;
    size_t       upper = 1;

    /* 1 - 0.9999 is a little more than 0.0001. */
    if (!(R >= 0.5 && R <= 0.9999))
        return NAN;
    while (upper + 1 < RELIABILITY_COUNT && fails < reliability[upper].fails)
        upper++;
    const double Y_Zlow = reliability[upper - 1].Y_Z, Y_Zhigh = reliability[upper].Y_Z;
    const double P_low = reliability[upper - 1].fails, P_high = reliability[upper].fails;

    ts_workings_row(workings, "Y_Zlow", Y_Zlow, "1", CLAUSE_18);
    ts_workings_row(workings, "Y_Zhigh", Y_Zhigh, "1", CLAUSE_18);
    ts_workings_row(workings, "P_low", P_low, "1", CLAUSE_18);
    ts_workings_row(workings, "P_high", P_high, "1", CLAUSE_18);
    return TS_STEP(workings, Y_Z_formula,
                   Y_Zlow + (Y_Zhigh - Y_Zlow) * log(fails / P_low) / log(P_high / P_low), Y_Zlow,
                   Y_Zhigh, R, P_low, P_high);
}

#define SHIGLEY                                                                                    \
    "Shigley's Mechanical Engineering Design, chapter 14, fit of the table (from memory)"
static const ts_formula Y_Z_low_formula = {
    .symbol  = "Y_Z",
    .meaning = "reliability factor, R < 0.99",
    .unit    = "1",
    .text    = "0.658 - 0.0759*ln(1 - R)",
    .source  = SHIGLEY,
};
static const ts_formula Y_Z_high_formula = {
    .symbol  = "Y_Z",
    .meaning = "reliability factor, R >= 0.99",
    .unit    = "1",
    .text    = "0.50 - 0.109*ln(1 - R)",
    .source  = SHIGLEY,
};

double ts_agma_reliability_fit(double R, ts_workings *workings)
{
    if (!(R >= 0.5 && R <= 0.9999))
        return NAN;
    if (R < 0.99)
        return TS_STEP(workings, Y_Z_low_formula, 0.658 - 0.0759 * log(1.0 - R), R);
    return TS_STEP(workings, Y_Z_high_formula, 0.50 - 0.109 * log(1.0 - R), R);
}

/* ---- temperature ----------------------------------------------------------------------------- */

static const ts_formula Y_theta_formula = {
    .symbol  = "Y_theta",
    .meaning = "temperature factor above 120 degC",
    .unit    = "1",
    .text    = "T_M/393.15",
    .source =
        "ANSI/AGMA 2003, temperature factor (from memory); 2101-D04, clause 19, leaves it to the "
        "designer",
};

double ts_agma_temperature_factor(double T_M, ts_workings *workings)
{
    if (!(T_M > 0.0))
        return NAN;
    if (T_M <= TS_AGMA_TEMPERATURE_MOST) {
        ts_workings_row(workings, "Y_theta", 1.0, "1", AGMA_2101 "19" RECALLED);
        return 1.0;
    }
    return TS_STEP(workings, Y_theta_formula, T_M / TS_AGMA_TEMPERATURE_MOST, T_M);
}

/* ---- reversed bending ------------------------------------------------------------------------ */

#define Y_M_TEXT(I) "1/(1 + q_" I "*(1 - 0.4)/(1 + 0.4))"
static const ts_formula Y_M_formulas[2] = TS_OF_BOTH_GEARS(
    "Y_M", "factor for bending in both directions", "1", Y_M_TEXT,
    AGMA_2101 "16 (0.7 for idlers, from memory); derived between 0 and 1: straight "
              "mean-stress line with M = 0.4, which gives that 0.7");

double ts_agma_reversal_factor(double q, int gear, ts_workings *workings)
{
    if (!(q >= 0.0 && q <= 1.0))
        return NAN;
    return TS_GEAR_STEP(workings, Y_M_formulas, 1.0 / (1.0 + q * (1.0 - 0.4) / (1.0 + 0.4)),
                        TS_OWN("q_", q));
}

/* ---- hardness ratio -------------------------------------------------------------------------- */

#define CLAUSE_14 AGMA_2101 "14" RECALLED

static const ts_formula slope_formula = {
    .symbol  = "A_W",
    .meaning = "slope of the hardness ratio factor",
    .unit    = "1",
    .text    = "0.00898*H_B1/H_B2 - 0.00829",
    .source  = CLAUSE_14,
};
static const ts_formula Z_W_formula = {
    .symbol  = "Z_W",
    .meaning = "hardness ratio factor of the wheel",
    .unit    = "1",
    .text    = "1 + A_W*(min(20, m_G) - 1)",
    .source  = CLAUSE_14,
};
static const ts_formula B_W_formula = {
    .symbol  = "B_W",
    .meaning = "slope of the hardness ratio factor under a hard pinion of roughness R_a",
    .unit    = "1",
    .text    = "0.00075*exp(-0.0112*R_a/0.0254e-6)",
    .source  = CLAUSE_14,
};
static const ts_formula Z_W_hard_formula = {
    .symbol  = "Z_W",
    .meaning = "hardness ratio factor of the wheel under a hard pinion",
    .unit    = "1",
    .text    = "1 + B_W*max(0, 450 - max(180, H_B2))",
    .source  = CLAUSE_14,
};

double ts_agma_hardness_slope(double H_B1, double H_B2, ts_workings *workings)
{
    const double ratio = H_B1 / H_B2;

    if (ratio < 1.2) {
        ts_workings_row(workings, "A_W", 0.0, "1", "0 below a ratio of 1.2, " CLAUSE_14);
        return 0.0;
    }
    if (ratio > 1.7) {
        ts_workings_row(workings, "A_W", 0.00698, "1", "above a ratio of 1.7, " CLAUSE_14);
        return 0.00698;
    }
    if (isnan(ratio))
        return NAN;
    return TS_STEP(workings, slope_formula, 0.00898 * H_B1 / H_B2 - 0.00829, H_B1, H_B2);
}

double ts_agma_hardness_ratio(double A_W, double m_G, ts_workings *workings)
{
    if (!isfinite(A_W) || !(m_G > 0.0))
        return NAN;
    return TS_STEP(workings, Z_W_formula, 1.0 + A_W * (fmin(20.0, m_G) - 1.0), A_W, m_G);
}

static double under_hard_pinion(double H_B2, double R_a, ts_workings *workings)
{
    if (!(R_a >= 0.0) || isnan(H_B2))
        return NAN;
    const double B_W =
        TS_STEP(workings, B_W_formula, 0.00075 * exp(-0.0112 * R_a / 0.0254e-6), R_a);

    return TS_STEP(workings, Z_W_hard_formula, 1.0 + B_W * fmax(0.0, 450.0 - fmax(180.0, H_B2)),
                   B_W, H_B2);
}

double ts_agma_hardness_factor(const ts_agma_hardness *in, ts_workings *workings)
{
    if (in->wheel_hard) {
        ts_workings_row(workings, "Z_W", 1.0, "1", "the wheel's flank is hard itself, " CLAUSE_14);
        return 1.0;
    }
    if (in->pinion_hard)
        return under_hard_pinion(in->H_B2, in->R_a, workings);
    return ts_agma_hardness_ratio(ts_agma_hardness_slope(in->H_B1, in->H_B2, workings), in->m_G,
                                  workings);
}
