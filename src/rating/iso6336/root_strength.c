/* rating/iso6336/root_strength.c: how strong is this root against that of a test gear? */
#include "rating/iso6336/root_strength.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>
#include <stddef.h>

/* ---- notch ----------------------------------------------------------------------------------- */

#define TABLE_RHO ISO_6336_3 "13.3.1, table of rho' (from memory)"

typedef struct slip_row {
    double yield, rho; /* N/mm2, mm */
} slip_row;

static const slip_row quenched[]   = {{500, 0.0281}, {600, 0.0194}, {800, 0.0064}, {1000, 0.0014}};
static const slip_row normalised[] = {{300, 0.0833}, {400, 0.0445}};

static double slip_at(const slip_row *rows, size_t count, double yield)
{
    size_t upper = 1;

    while (upper + 1 < count && yield > rows[upper].yield)
        upper++;
    const slip_row low = rows[upper - 1], high = rows[upper];
    const double   part = (yield - low.yield) / (high.yield - low.yield);
    return low.rho + fmin(1.0, fmax(0.0, part)) * (high.rho - low.rho);
}

double ts_slip_layer(ts_gear_class class, double yield, int gear, ts_workings *workings)
{
    double rho = NAN;

    switch (class) {
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
        rho = 0.0030;
        break;
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        rho = 0.1005;
        break;
    case TS_GEAR_THROUGH_HARDENED:
        if (yield > 0.0)
            rho = slip_at(quenched, sizeof quenched / sizeof quenched[0], yield / 1e6);
        break;
    case TS_GEAR_NORMALISED:
        if (yield > 0.0)
            rho = slip_at(normalised, sizeof normalised / sizeof normalised[0], yield / 1e6);
        break;
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    ts_workings_row(workings, gear == 0 ? "rho_p1" : "rho_p2", rho * 1e-3, "m", TABLE_RHO);
    return rho * 1e-3;
}

/* chi* of the gear is (1 + 2 q_s)/5 per mm, that of the test gear with q_s = 2.5 is 1.2. */
#define NOTCH_TEXT(I) "(1 + sqrt(rho_p" I "*1e3*(1 + 2*q_s" I ")/5))/(1 + sqrt(rho_p" I "*1e3*1.2))"
static const ts_formula notch_formulas[2] =
    TS_OF_BOTH_GEARS("Y_deltarelT", "relative notch sensitivity factor", "1", NOTCH_TEXT,
                     ISO_6336_3 "13.3.1" RECALLED);

double ts_notch_sensitivity(double rho_p, double q_s, int gear, ts_workings *workings)
{
    const double own = sqrt(rho_p * 1e3 * (1.0 + 2.0 * q_s) / 5.0), test = sqrt(rho_p * 1e3 * 1.2);

    return TS_GEAR_STEP(workings, notch_formulas, (1.0 + own) / (1.0 + test),
                        TS_OWN("rho_p", rho_p), TS_OWN("q_s", q_s));
}

#define STATIC_CASE_TEXT(I)    "0.44*Y_S" I " + 0.12"
#define STATIC_NITRIDE_TEXT(I) "0.20*Y_S" I " + 0.60"
#define STATIC_SOFT(factor, base, I)                                                               \
    "(1 + " factor "*(Y_S" I " - 1)*(" base "e6/sigma_y" I ")^0.25)/(1 + " factor "*(" base        \
    "e6/sigma_y" I ")^0.25)"
#define STATIC_QUENCHED_TEXT(I)   STATIC_SOFT("0.82", "300", I)
#define STATIC_NORMALISED_TEXT(I) STATIC_SOFT("0.93", "200", I)
#define STATIC(name, expression)                                                                   \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_OF_BOTH_GEARS("Y_deltastat", "relative notch sensitivity factor at static strength",    \
                         "1", expression, ISO_6336_3 "13.3.2" RECALLED)
STATIC(static_case, STATIC_CASE_TEXT);
STATIC(static_nitride, STATIC_NITRIDE_TEXT);
STATIC(static_quenched, STATIC_QUENCHED_TEXT);
STATIC(static_normalised, STATIC_NORMALISED_TEXT);

static double static_soft(double factor, double base, double yield, double Y_S)
{
    const double soft = factor * sqrt(sqrt(base / yield));

    return (1.0 + soft * (Y_S - 1.0)) / (1.0 + soft);
}

double ts_notch_sensitivity_static(ts_gear_class class, double yield, double Y_S, int gear,
                                   ts_workings *workings)
{
    switch (class) {
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
        return TS_GEAR_STEP(workings, static_case_formulas, 0.44 * Y_S + 0.12, TS_OWN("Y_S", Y_S));
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return TS_GEAR_STEP(workings, static_nitride_formulas, 0.20 * Y_S + 0.60,
                            TS_OWN("Y_S", Y_S));
    case TS_GEAR_THROUGH_HARDENED:
        if (yield > 0.0)
            return TS_GEAR_STEP(workings, static_quenched_formulas,
                                static_soft(0.82, 300e6, yield, Y_S), TS_OWN("Y_S", Y_S),
                                TS_OWN("sigma_y", yield));
        break;
    case TS_GEAR_NORMALISED:
        if (yield > 0.0)
            return TS_GEAR_STEP(workings, static_normalised_formulas,
                                static_soft(0.93, 200e6, yield, Y_S), TS_OWN("Y_S", Y_S),
                                TS_OWN("sigma_y", yield));
        break;
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    return NAN;
}

/* ---- surface and size ------------------------------------------------------------------------ */

/* Below 1 um a fixed value holds; the standard leaves a small step there. */
#define SURFACE_HARD_TEXT(I)    "1.674 - 0.529*(min(40e-6, R_zF" I ")*1e6 + 1)^0.1"
#define SURFACE_NITRIDE_TEXT(I) "4.299 - 3.259*(min(40e-6, R_zF" I ")*1e6 + 1)^0.005"
#define SURFACE_SOFT_TEXT(I)    "5.306 - 4.203*(min(40e-6, R_zF" I ")*1e6 + 1)^0.01"
#define SURFACE(name, expression)                                                                  \
    static const ts_formula name##_formulas[2] = TS_OF_BOTH_GEARS(                                 \
        "Y_RrelT", "relative surface factor", "1", expression, ISO_6336_3 "14.3.1" RECALLED)
SURFACE(surface_hard, SURFACE_HARD_TEXT);
SURFACE(surface_nitride, SURFACE_NITRIDE_TEXT);
SURFACE(surface_soft, SURFACE_SOFT_TEXT);

typedef struct surface_rule {
    const ts_formula *formulas; /* of both gears */
    double            smooth;   /* below 1 um    */
    double            most, slope, exponent;
} surface_rule;

static const surface_rule surface_of_hard    = {surface_hard_formulas, 1.120, 1.674, 0.529, 0.1};
static const surface_rule surface_of_nitride = {surface_nitride_formulas, 1.025, 4.299, 3.259,
                                                0.005};
static const surface_rule surface_of_soft    = {surface_soft_formulas, 1.070, 5.306, 4.203, 0.01};

double ts_root_surface(ts_gear_class class, double R_z, int gear, ts_workings *workings)
{
    const bool nitrided = class == TS_GEAR_NITRIDED || class == TS_GEAR_THROUGH_NITRIDED ||
                          class == TS_GEAR_NITROCARBURISED;
    const surface_rule *rule = class == TS_GEAR_NORMALISED ? &surface_of_soft
                               : nitrided                  ? &surface_of_nitride
                                                           : &surface_of_hard;

    if (R_z < 1e-6) {
        ts_workings_row(workings, gear == 0 ? "Y_RrelT1" : "Y_RrelT2", rule->smooth, "1",
                        ISO_6336_3 "14.3.1, below 1 um" RECALLED);
        return rule->smooth;
    }
    const double rough = fmin(40e-6, R_z) * 1e6 + 1.0;
    return TS_GEAR_STEP(workings, rule->formulas,
                        rule->most - rule->slope * pow(rough, rule->exponent), TS_OWN("R_zF", R_z));
}

#define SIZE_SOFT_TEXT(I) "max(0.85, min(1, 1.03 - 0.006*m_n*1e3))"
#define SIZE_HARD_TEXT(I) "max(0.8, min(1, 1.05 - 0.01*m_n*1e3))"
static const ts_formula size_soft_formulas[2] =
    TS_OF_BOTH_GEARS("Y_X", "size factor (bending)", "1", SIZE_SOFT_TEXT, ISO_6336_3 "15" RECALLED);
static const ts_formula size_hard_formulas[2] =
    TS_OF_BOTH_GEARS("Y_X", "size factor (bending)", "1", SIZE_HARD_TEXT, ISO_6336_3 "15" RECALLED);

double ts_root_size(ts_gear_class class, double m_n, int gear, ts_workings *workings)
{
    if (ts_gear_class_surface_hardened(class))
        return TS_GEAR_STEP(workings, size_hard_formulas,
                            fmax(0.8, fmin(1.0, 1.05 - 0.01 * m_n * 1e3)), TS_ALL(m_n));
    return TS_GEAR_STEP(workings, size_soft_formulas,
                        fmax(0.85, fmin(1.0, 1.03 - 0.006 * m_n * 1e3)), TS_ALL(m_n));
}

/* ---- mean stress ----------------------------------------------------------------------------- */

#define TABLE_M          ISO_6336_3 "B.2, table of M (from memory)"
#define M_TEXT(I)        "0.8 - 0.15*Y_S" I
#define Y_M_TEXT(I)      "1/(1 - R_" I "*(1 - M_" I ")/(1 + M_" I "))"
#define Y_M_STAT_TEXT(I) "1/(1 - R_" I "*(1 - M_stat" I ")/(1 + M_stat" I "))"
static const ts_formula M_formulas[2] =
    TS_OF_BOTH_GEARS("M_", "mean stress ratio", "1", M_TEXT, ISO_6336_3 "annex B" RECALLED);
static const ts_formula Y_M_formulas[2] = TS_OF_BOTH_GEARS(
    "Y_M", "mean stress influence factor", "1", Y_M_TEXT, ISO_6336_3 "annex B" RECALLED);
static const ts_formula Y_M_stat_formulas[2] =
    TS_OF_BOTH_GEARS("Y_Mstat", "mean stress influence factor at static strength", "1",
                     Y_M_STAT_TEXT, ISO_6336_3 "annex B" RECALLED);

typedef struct mean_stress_row {
    double M, M_stat;
} mean_stress_row;

static mean_stress_row mean_stress_row_of(ts_gear_class class, bool shot_peened)
{
    switch (class) {
    case TS_GEAR_CASE_HARDENED:
        return shot_peened ? (mean_stress_row){0.4, 0.6} : (mean_stress_row){NAN, 0.7};
    case TS_GEAR_INDUCTION_HARDENED:
        return (mean_stress_row){0.4, 0.6};
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return (mean_stress_row){0.3, 0.3};
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
        return (mean_stress_row){0.3, 0.5};
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    return (mean_stress_row){NAN, NAN};
}

ts_mean_stress_ratio ts_mean_stress_of(ts_gear_class class, bool shot_peened, double Y_S, int gear,
                                       ts_workings *workings)
{
    const mean_stress_row row = mean_stress_row_of(class, shot_peened);
    ts_mean_stress_ratio  out = {row.M, row.M_stat};

    if (class == TS_GEAR_CASE_HARDENED && !shot_peened)
        out.M = TS_GEAR_STEP(workings, M_formulas, 0.8 - 0.15 * Y_S, TS_OWN("Y_S", Y_S));
    else
        ts_workings_row(workings, gear == 0 ? "M_1" : "M_2", out.M, "1", TABLE_M);
    ts_workings_row(workings, gear == 0 ? "M_stat1" : "M_stat2", out.M_stat, "1", TABLE_M);
    return out;
}

double ts_mean_stress_factor(double R, double M, int gear, ts_workings *workings)
{
    return TS_GEAR_STEP(workings, Y_M_formulas, 1.0 / (1.0 - R * (1.0 - M) / (1.0 + M)),
                        TS_OWN("R_", R), TS_OWN("M_", M));
}

double ts_mean_stress_factor_static(double R, double M_stat, int gear, ts_workings *workings)
{
    return TS_GEAR_STEP(workings, Y_M_stat_formulas,
                        1.0 / (1.0 - R * (1.0 - M_stat) / (1.0 + M_stat)), TS_OWN("R_", R),
                        TS_OWN("M_stat", M_stat));
}

static const ts_formula R_formula = {
    .symbol  = "R",
    .meaning = "ratio of least to greatest root stress, loaded on both flanks",
    .unit    = "1",
    .text    = "-1.2*w_less/w_more",
    .source  = ISO_6336_3 "annex B" RECALLED,
};

double ts_stress_ratio(double w_more, double w_less, ts_workings *workings)
{
    return TS_STEP(workings, R_formula, -1.2 * w_less / w_more, w_less, w_more);
}
