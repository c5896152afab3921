/* rating/agma2101/agma_life.c: which strength is left after so many cycles? */
#include "rating/agma2101/agma_life.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>
#include <stddef.h>

#define CLAUSE_17 AGMA_2101 "17" RECALLED
#define KNEE_Y    3e6
#define KNEE_Z    1e7

/* ---- lines below the knee -------------------------------------------------------------------- */

typedef struct line {
    double hardness; /* HB, read for through-hardened steel */
    double scale, fall;
} line;

/* All meet the upper line at the knee: 6.1514*3e6^-0.1192 = 1.040 (so -0.1182, which a study page
 * prints, is a slip). */
static const line carburised = {0.0, 6.1514, 0.1192};
static const line nitrided   = {0.0, 3.517, 0.0817};
static const line hardened[] = {
    {160.0, 2.3194, 0.0538}, {250.0, 4.9404, 0.1045}, {400.0, 9.4518, 0.148}};
static const line flank          = {0.0, 2.466, 0.056};
static const line flank_nitrided = {0.0, 1.249, 0.0138};

#define HARDENED_COUNT (sizeof hardened / sizeof hardened[0])

static line by_hardness(double hardness)
{
    size_t upper = 1;

    while (upper + 1 < HARDENED_COUNT && hardness > hardened[upper].hardness)
        upper++;
    const line  *a = &hardened[upper - 1], *b = &hardened[upper];
    const double part = (hardness - a->hardness) / (b->hardness - a->hardness);
    const double t    = fmax(0.0, fmin(1.0, part));

    return (line){.hardness = hardness,
                  .scale    = exp(log(a->scale) + t * (log(b->scale) - log(a->scale))),
                  .fall     = a->fall + t * (b->fall - a->fall)};
}

static line bending_line(ts_agma_life_line which, double hardness)
{
    switch (which) {
    case TS_AGMA_LINE_CASE_CARBURISED:
        return carburised;
    case TS_AGMA_LINE_NITRIDED:
        return nitrided;
    case TS_AGMA_LINE_BY_HARDNESS:
        /* Without a hardness the softest line, which rises least. */
        return isnan(hardness) ? hardened[0] : by_hardness(hardness);
    }
    return (line){NAN, NAN, NAN};
}

#define LINE_OF "line of the material below the knee, " CLAUSE_17

ts_agma_life ts_agma_life_of(ts_agma_life_line which, double hardness, bool critical, int gear,
                             ts_workings *workings)
{
    const line Y = bending_line(which, hardness);
    const line Z = which == TS_AGMA_LINE_NITRIDED ? flank_nitrided : flank;

    ts_workings_row(workings, gear == 0 ? "Y_scale1" : "Y_scale2", Y.scale, "1", LINE_OF);
    ts_workings_row(workings, gear == 0 ? "Y_fall1" : "Y_fall2", Y.fall, "1", LINE_OF);
    ts_workings_row(workings, gear == 0 ? "Z_scale1" : "Z_scale2", Z.scale, "1", LINE_OF);
    ts_workings_row(workings, gear == 0 ? "Z_fall1" : "Z_fall2", Z.fall, "1", LINE_OF);
    return (ts_agma_life){.Y_scale  = Y.scale,
                          .Y_fall   = Y.fall,
                          .Z_scale  = Z.scale,
                          .Z_fall   = Z.fall,
                          .critical = critical};
}

/* ---- factors --------------------------------------------------------------------------------- */

#define Y_LOW_TEXT(I)      "Y_scale" I "*max(1e3, n_L" I ")^-Y_fall" I
#define Y_UPPER_TEXT(I)    "1.3558*n_L" I "^-0.0178"
#define Y_CRITICAL_TEXT(I) "1.6831*n_L" I "^-0.0323"
#define Z_LOW_TEXT(I)      "Z_scale" I "*max(1e4, n_L" I ")^-Z_fall" I
#define Z_UPPER_TEXT(I)    "1.4488*n_L" I "^-0.023"
#define Z_CRITICAL_TEXT(I) "2.466*n_L" I "^-0.056"
#define CYCLES(name, symbol, meaning, text)                                                        \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_OF_BOTH_GEARS(symbol, meaning, "1", text, CLAUSE_17)

CYCLES(Y_low, "Y_N", "stress cycle factor for bending, below 3e6 cycles", Y_LOW_TEXT);
CYCLES(Y_upper, "Y_N", "stress cycle factor for bending, upper line", Y_UPPER_TEXT);
CYCLES(Y_critical, "Y_N", "stress cycle factor for bending, critical service", Y_CRITICAL_TEXT);
CYCLES(Z_low, "Z_N", "stress cycle factor for pitting, below 1e7 cycles", Z_LOW_TEXT);
CYCLES(Z_upper, "Z_N", "stress cycle factor for pitting, upper line", Z_UPPER_TEXT);
CYCLES(Z_critical, "Z_N", "stress cycle factor for pitting, critical service", Z_CRITICAL_TEXT);

double ts_agma_cycle_factor_bending(const ts_agma_life *life, double n_L, int gear,
                                    ts_workings *workings)
{
    if (!(n_L > 0.0))
        return NAN;
    if (n_L <= KNEE_Y)
        return TS_GEAR_STEP(
            workings, Y_low_formulas,
            life->Y_scale * pow(fmax(TS_AGMA_CYCLES_LEAST_BENDING, n_L), -life->Y_fall),
            TS_OWN("Y_scale", life->Y_scale), TS_OWN("n_L", n_L), TS_OWN("Y_fall", life->Y_fall));
    if (life->critical)
        return TS_GEAR_STEP(workings, Y_critical_formulas, 1.6831 * pow(n_L, -0.0323),
                            TS_OWN("n_L", n_L));
    return TS_GEAR_STEP(workings, Y_upper_formulas, 1.3558 * pow(n_L, -0.0178), TS_OWN("n_L", n_L));
}

double ts_agma_cycle_factor_contact(const ts_agma_life *life, double n_L, int gear,
                                    ts_workings *workings)
{
    if (!(n_L > 0.0))
        return NAN;
    if (n_L <= KNEE_Z)
        return TS_GEAR_STEP(
            workings, Z_low_formulas,
            life->Z_scale * pow(fmax(TS_AGMA_CYCLES_LEAST_CONTACT, n_L), -life->Z_fall),
            TS_OWN("Z_scale", life->Z_scale), TS_OWN("n_L", n_L), TS_OWN("Z_fall", life->Z_fall));
    if (life->critical)
        return TS_GEAR_STEP(workings, Z_critical_formulas, 2.466 * pow(n_L, -0.056),
                            TS_OWN("n_L", n_L));
    return TS_GEAR_STEP(workings, Z_upper_formulas, 1.4488 * pow(n_L, -0.023), TS_OWN("n_L", n_L));
}
