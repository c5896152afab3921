/* rating/iso6336/running_in.c: how far do new flanks wear themselves smooth? */
#include "rating/iso6336/running_in.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

/* Hard flanks give way by a share up to a limit; soft ones by a share that falls with their
 * strength, limited above 5 and again above 10 m/s.  (In the standard sigma_Hlim is in N/mm2 and
 * the deviation in um: 12800/sigma_Hlim um is 12800/sigma_Hlim m with sigma_Hlim in Pa.) */
#define HARD_TEXT(share, most, F) "min(" share "*" F ", " most ")"
#define SOFT_TEXT(share, F, I)    "min(1, " share "e6/sigma_Hlim" I ")*" F
#define SOFT_MOST_TEXT(share, most, F, I)                                                          \
    "min(" SOFT_TEXT(share, F, I) ", " most "/sigma_Hlim" I ")"

#define SET_OF_GEAR(symbol, what, share_hard, most_hard, share, most_slow, most_fast, F, clause,   \
                    I)                                                                             \
    {                                                                                              \
        {symbol I, what, "m", HARD_TEXT(share_hard, most_hard, F), ISO_6336_1 clause RECALLED},    \
            {symbol I, what, "m", SOFT_TEXT(share, F, I), ISO_6336_1 clause RECALLED},             \
            {symbol            I, what, "m", SOFT_MOST_TEXT(share, most_slow, F, I),               \
             ISO_6336_1 clause RECALLED},                                                          \
            {symbol            I, what, "m", SOFT_MOST_TEXT(share, most_fast, F, I),               \
             ISO_6336_1 clause RECALLED},                                                          \
    }
#define SET_OF_PAIR(symbol, what, share_hard, most_hard, share, most_slow, most_fast, F, clause)   \
    {                                                                                              \
        SET_OF_GEAR(symbol, what, share_hard, most_hard, share, most_slow, most_fast, F, clause,   \
                    "1"),                                                                          \
            SET_OF_GEAR(symbol, what, share_hard, most_hard, share, most_slow, most_fast, F,       \
                        clause, "2"),                                                              \
    }

enum { HARD, SOFT, SOFT_ABOVE_5, SOFT_ABOVE_10, KINDS };

/* [gear][kind] */
static const ts_formula pitch_formulas[2][KINDS] =
    SET_OF_PAIR("y_alpha", "running in of the base pitch", "0.075", "3e-6", "160", "12800", "6400",
                "f_pb", "8.3.5");
static const ts_formula profile_formulas[2][KINDS] =
    SET_OF_PAIR("y_f", "running in of the profile", "0.075", "3e-6", "160", "12800", "6400",
                "f_falpha", "6.5.4");
static const ts_formula lead_formulas[2][KINDS] =
    SET_OF_PAIR("y_beta", "running in of the lead", "0.15", "6e-6", "320", "25600", "12800",
                "F_betax", "7.4.2");

#define MEAN(name, expression, clause)                                                             \
    static const ts_formula name##_formula = {.symbol  = #name,                                    \
                                              .meaning = "running-in allowance of the pair",       \
                                              .unit    = "m",                                      \
                                              .text    = (expression),                             \
                                              .source  = ISO_6336_1 clause RECALLED}
MEAN(y_alpha, "(y_alpha1 + y_alpha2)/2", "8.3.5");
MEAN(y_f, "(y_f1 + y_f2)/2", "6.5.4");
MEAN(y_beta, "(y_beta1 + y_beta2)/2", "7.4.2");

typedef struct running_in_rule {
    double      share_hard, most_hard;       /* 1, m                                       */
    double      share, most_slow, most_fast; /* N/mm2; N/mm2 um above 5, above 10 m/s      */
    const char *deviation;                   /* its name                                   */
    const ts_formula (*formulas)[KINDS];
} running_in_rule;

static const running_in_rule pitch_rule   = {0.075,  3e-6,   160e6,         12800.0,
                                             6400.0, "f_pb", pitch_formulas};
static const running_in_rule profile_rule = {0.075,  3e-6,       160e6,           12800.0,
                                             6400.0, "f_falpha", profile_formulas};
static const running_in_rule lead_rule    = {0.15,    6e-6,      320e6,        25600.0,
                                             12800.0, "F_betax", lead_formulas};

/* The inputs are put together where somebody listens. */
#define SOFT_STEP(kind, result)                                                                    \
    ts_step_list(workings, &formulas[kind], (result),                                              \
                 TS_STEP_NEEDS_INPUTS(workings)                                                    \
                     ? (const ts_input[]){of, TS_OWN("sigma_Hlim", sigma_Hlim)}                    \
                     : NULL,                                                                       \
                 2)

static double allowance(const running_in_rule *rule, const ts_running_in_flank *flank, double v,
                        double deviation, int gear, ts_workings *workings)
{
    const ts_formula *formulas   = rule->formulas[gear];
    const double      sigma_Hlim = flank->sigma_Hlim;
    const ts_input    of         = {rule->deviation, deviation};

    if (ts_gear_class_surface_hardened(flank->class))
        return ts_step_list(workings, &formulas[HARD],
                            fmin(rule->share_hard * deviation, rule->most_hard), &of, 1);
    const double soft = fmin(1.0, rule->share / sigma_Hlim) * deviation;
    if (v <= 5.0)
        return SOFT_STEP(SOFT, soft);
    if (v <= 10.0)
        return SOFT_STEP(SOFT_ABOVE_5, fmin(soft, rule->most_slow / sigma_Hlim));
    return SOFT_STEP(SOFT_ABOVE_10, fmin(soft, rule->most_fast / sigma_Hlim));
}

double ts_running_in_pitch(const ts_running_in_flank flank[2], double v, double f_pb,
                           ts_workings *workings)
{
    const double y_alpha1 = allowance(&pitch_rule, &flank[0], v, f_pb, 0, workings);
    const double y_alpha2 = allowance(&pitch_rule, &flank[1], v, f_pb, 1, workings);

    return TS_STEP(workings, y_alpha_formula, (y_alpha1 + y_alpha2) / 2.0, y_alpha1, y_alpha2);
}

double ts_running_in_profile(const ts_running_in_flank flank[2], double v, double f_falpha,
                             ts_workings *workings)
{
    const double y_f1 = allowance(&profile_rule, &flank[0], v, f_falpha, 0, workings);
    const double y_f2 = allowance(&profile_rule, &flank[1], v, f_falpha, 1, workings);

    return TS_STEP(workings, y_f_formula, (y_f1 + y_f2) / 2.0, y_f1, y_f2);
}

double ts_running_in_lead(const ts_running_in_flank flank[2], double v, double F_betax,
                          ts_workings *workings)
{
    const double y_beta1 = allowance(&lead_rule, &flank[0], v, F_betax, 0, workings);
    const double y_beta2 = allowance(&lead_rule, &flank[1], v, F_betax, 1, workings);

    return TS_STEP(workings, y_beta_formula, (y_beta1 + y_beta2) / 2.0, y_beta1, y_beta2);
}

#define RELIEF_TEXT(I) "((sigma_Hlim" I "/97e6 - 18.45)^2/18 + 1.5)*1e-6"
static const ts_formula relief_formulas[2] = TS_OF_BOTH_GEARS(
    "C_ay", "tip relief by running in", "m", RELIEF_TEXT, ISO_6336_1 "6.5.4" RECALLED);
static const ts_formula C_ay_formula = {
    .symbol  = "C_ay",
    .meaning = "tip relief by running in, mean of the pair",
    .unit    = "m",
    .text    = "(C_ay1 + C_ay2)/2",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};

static double relief(double sigma_Hlim, int gear, ts_workings *workings)
{
    const double past = sigma_Hlim / 97e6 - 18.45;

    return TS_GEAR_STEP(workings, relief_formulas, (past * past / 18.0 + 1.5) * 1e-6,
                        TS_OWN("sigma_Hlim", sigma_Hlim));
}

double ts_running_in_relief(const ts_running_in_flank flank[2], ts_workings *workings)
{
    const double C_ay1 = relief(flank[0].sigma_Hlim, 0, workings);
    const double C_ay2 = relief(flank[1].sigma_Hlim, 1, workings);

    return TS_STEP(workings, C_ay_formula, (C_ay1 + C_ay2) / 2.0, C_ay1, C_ay2);
}
