/* rating/iso6336/life_limit.c: how long does a tooth last under its stress? */
#include "rating/iso6336/life_limit.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

/* Q is H or F, I the index: the line between two nodes, solved for the cycles. */
#define LINE(Q, from, to, I)                                                                       \
    "N_" Q to I "*(sigma_" Q "G" to I "/(S_" Q "min*sigma_" Q I "))^(ln(N_" Q to I "/N_" Q from I  \
    ")/ln(sigma_" Q "G" from I "/sigma_" Q "G" to I "))"
#define UPPER_TEXT(F, Q, I) LINE(Q, "stat", "mid", I)
#define LOWER_TEXT(F, Q, I) LINE(Q, "mid", "ref", I)
#define WHOLE_TEXT(F, Q, I) LINE(Q, "stat", "ref", I)
#define LONG_TEXT(F, Q, I)                                                                         \
    "N_" Q "ref" I "*(S_" Q "min*sigma_" Q I "/sigma_" Q "Gref" I ")^(ln(1e10/N_" Q "ref" I        \
    ")/ln(" F "long" I "))"

enum { UPPER, LOWER, WHOLE, LONG, LINES };

/* what: where it is used up */
#define LIMIT(F, Q, I, what, text, source)                                                         \
    {                                                                                              \
        "N_L" Q I, "cycles of gear " I " at which its limit stress is used up (" what ")", "1",    \
            text(F, Q, I), source                                                                  \
    }
#define LIMITS(F, Q, I, what, source)                                                              \
    {                                                                                              \
        LIMIT(F, Q, I, what, UPPER_TEXT, source), LIMIT(F, Q, I, what, LOWER_TEXT, source),        \
            LIMIT(F, Q, I, what, WHOLE_TEXT, source), LIMIT(F, Q, I, what, LONG_TEXT, source),     \
    }
#define H_SOURCE "derived: Z_NT of ISO 6336-2:2019, 11.3 (from memory), solved for the cycles"
#define F_SOURCE "derived: Y_NT of ISO 6336-3:2019, 12.3 (from memory), solved for the cycles"
static const ts_formula limit_formulas[2][2][LINES] = {
    {LIMITS("Z_NT", "H", "1", "contact", H_SOURCE), LIMITS("Z_NT", "H", "2", "contact", H_SOURCE)},
    {LIMITS("Y_NT", "F", "1", "bending", F_SOURCE), LIMITS("Y_NT", "F", "2", "bending", F_SOURCE)},
};

#define BROKEN_SOURCE "not one cycle: the stress, times its least safety, is above the static limit"
#define ENDLESS_SOURCE                                                                             \
    "endless: the stress, times its least safety, is below endurance, and the life factor at "     \
    "1e10 cycles is 1"

#define LEVEL_SOURCE "the static limit is no higher than that of long life: the line is level"

typedef struct limit_names {
    const char *sigma, *S_min, *N_stat, *N_mid, *N_ref, *G_stat, *G_mid, *G_ref, *at_long;
} limit_names;

#define NAMES(F, Q, I)                                                                             \
    {                                                                                              \
        "sigma_" Q I, "S_" Q "min", "N_" Q "stat" I, "N_" Q "mid" I, "N_" Q "ref" I,               \
            "sigma_" Q "Gstat" I, "sigma_" Q "Gmid" I, "sigma_" Q "Gref" I, F "long" I             \
    }
static const limit_names names[2][2] = {
    {NAMES("Z_NT", "H", "1"), NAMES("Z_NT", "H", "2")},
    {NAMES("Y_NT", "F", "1"), NAMES("Y_NT", "F", "2")},
};

double ts_life_limit_cycles(const ts_life_limit *limit, ts_workings *workings)
{
    const ts_life_curve *curve    = limit->curve;
    const limit_names   *name     = &names[limit->stress][limit->gear];
    const ts_formula    *formulas = limit_formulas[limit->stress][limit->gear];
    const double         used     = limit->S_min * limit->sigma;
    const double         N        = ts_life_curve_cycles(curve, used);
    const ts_input       sigma = {name->sigma, limit->sigma}, S_min = {name->S_min, limit->S_min};
    const ts_input       N_stat = {name->N_stat, curve->N_stat};
    const ts_input       N_mid = {name->N_mid, curve->N_mid}, N_ref = {name->N_ref, curve->N_ref};
    const ts_input       G_stat = {name->G_stat, curve->sigma_stat};
    const ts_input       G_mid  = {name->G_mid, curve->sigma_mid};
    const ts_input       G_ref  = {name->G_ref, curve->sigma_ref};

    if (isnan(N))
        return N;
    /* A level line has no slope to be solved for. */
    if (!(N > 0.0) || isinf(N) || !(ts_life_curve_slope(curve, used) > 0.0)) {
        TS_ROW(workings, formulas[WHOLE].symbol, N, "1",
               isinf(N) ? ENDLESS_SOURCE : (N > 0.0 ? LEVEL_SOURCE : BROKEN_SOURCE));
        return N;
    }
    if (used < curve->sigma_ref)
        return ts_step_list(
            workings, &formulas[LONG], N,
            (const ts_input[]){N_ref, S_min, sigma, G_ref, {name->at_long, limit->lines->at_long}},
            5);
    if (!(curve->N_mid > 0.0))
        return ts_step_list(workings, &formulas[WHOLE], N,
                            (const ts_input[]){N_ref, G_ref, S_min, sigma, N_stat, G_stat}, 6);
    if (used < curve->sigma_mid)
        return ts_step_list(workings, &formulas[LOWER], N,
                            (const ts_input[]){N_ref, G_ref, S_min, sigma, N_mid, G_mid}, 6);
    return ts_step_list(workings, &formulas[UPPER], N,
                        (const ts_input[]){N_mid, G_mid, S_min, sigma, N_stat, G_stat}, 6);
}
