/* rating/iso10300/bevel_life.c: which stress lasts how long? */
#include "rating/iso10300/bevel_life.h"

#include "rating/iso10300/bevel_source.h"

#include <math.h>

#define LIFE_LONG 1e10

static ts_bevel_life contact_nodes(ts_gear_class class, bool pitting)
{
    switch (class) {
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
        return (ts_bevel_life){.N = {1e5, 2e6}, .at = {1.3, 1.0}, .count = 3};
    case TS_GEAR_NITROCARBURISED:
        return (ts_bevel_life){.N = {1e5, 2e6}, .at = {1.1, 1.0}, .count = 3};
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    if (pitting)
        return (ts_bevel_life){.N = {6e5, 1e7, 1e9}, .at = {1.6, 1.3, 1.0}, .count = 4};
    return (ts_bevel_life){.N = {1e5, 5e7}, .at = {1.6, 1.0}, .count = 3};
}

static ts_bevel_life bending_nodes(ts_gear_class class)
{
    switch (class) {
    case TS_GEAR_CASE_HARDENED:
    case TS_GEAR_INDUCTION_HARDENED:
        return (ts_bevel_life){.N = {1e3, 3e6}, .at = {2.5, 1.0}, .count = 3};
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
        return (ts_bevel_life){.N = {1e3, 3e6}, .at = {1.6, 1.0}, .count = 3};
    case TS_GEAR_NITROCARBURISED:
        return (ts_bevel_life){.N = {1e3, 3e6}, .at = {1.1, 1.0}, .count = 3};
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
    case TS_GEAR_CLASS_COUNT:
        break;
    }
    return (ts_bevel_life){.N = {1e4, 3e6}, .at = {2.5, 1.0}, .count = 3};
}

ts_bevel_life ts_bevel_life_of(ts_gear_class class, ts_bevel_stress stress, bool pitting,
                               double at_long)
{
    ts_bevel_life life =
        stress == TS_BEVEL_CONTACT ? contact_nodes(class, pitting) : bending_nodes(class);

    life.N[life.count - 1]  = LIFE_LONG;
    life.at[life.count - 1] = at_long;
    for (int k = 0; k + 1 < life.count; k++)
        life.fall[k] = log(life.at[k + 1] / life.at[k]) / log(life.N[k + 1] / life.N[k]);
    return life;
}

/* ---- the factor ------------------------------------------------------------------------------ */

#define TABLE_Z ISO_10300_2 "8.4, table of Z_NT (from memory)"
#define TABLE_Y ISO_10300_3 "8, table of Y_NT (from memory)"

#define LINE_TEXT(I) "at_a*(N_L" I "/N_a)^(ln(at_b/at_a)/ln(N_b/N_a))"
#define FACTOR(symbol, I, table)                                                                   \
    {                                                                                              \
        symbol I, "life factor of gear " I, "1", LINE_TEXT(I), table                               \
    }
static const ts_formula factor_formulas[2][2] = {
    [TS_BEVEL_CONTACT] = {FACTOR("Z_NT", "1", TABLE_Z), FACTOR("Z_NT", "2", TABLE_Z)},
    [TS_BEVEL_BENDING] = {FACTOR("Y_NT", "1", TABLE_Y), FACTOR("Y_NT", "2", TABLE_Y)},
};

double ts_bevel_life_factor(const ts_bevel_life *life, double N_L, ts_bevel_stress stress, int gear,
                            ts_workings *workings)
{
    const ts_formula *formula = &factor_formulas[stress][gear];
    int               line    = 0;

    if (N_L <= life->N[0]) {
        ts_workings_row(workings, formula->symbol, life->at[0], "1", formula->source);
        return life->at[0];
    }
    while (line + 2 < life->count && N_L > life->N[line + 1])
        line++;
    const double N_a = life->N[line], at_a = life->at[line];
    const double N_b = life->N[line + 1], at_b = life->at[line + 1];

    if (workings != NULL) {
        ts_workings_row(workings, "N_a", N_a, "1", formula->source);
        ts_workings_row(workings, "at_a", at_a, "1", formula->source);
        ts_workings_row(workings, "N_b", N_b, "1", formula->source);
        ts_workings_row(workings, "at_b", at_b, "1", formula->source);
    }
    return ts_step_list(workings, formula, at_a * exp(life->fall[line] * log(N_L / N_a)),
                        (const ts_input[]){{gear == 0 ? "N_L1" : "N_L2", N_L},
                                           {"N_a", N_a},
                                           {"N_b", N_b},
                                           {"at_a", at_a},
                                           {"at_b", at_b}},
                        5);
}

double ts_bevel_life_cycles(const ts_bevel_life *life, double wanted)
{
    int line = 0;

    if (!(wanted <= life->at[0]))
        return isnan(wanted) ? wanted : 0.0;
    while (line + 2 < life->count && wanted < life->at[line + 1])
        line++;
    if (!(life->fall[line] < 0.0)) /* level: what is not above it lasts for ever */
        return INFINITY;
    return life->N[line] * exp(log(wanted / life->at[line]) / life->fall[line]);
}
