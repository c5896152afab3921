/* rating/agma2101/agma_life.h: how does strength fall with the number of load cycles?
 * ANSI/AGMA 2101-D04, clause 17: Y_N, Z_N.
 */
#ifndef TS_RATING_AGMA_LIFE_H
#define TS_RATING_AGMA_LIFE_H

#include "base/workings.h"

#include <stdbool.h>

/* Which lines hold below the knee (3e6 cycles in bending, 1e7 in contact). */
typedef enum ts_agma_life_line {
    TS_AGMA_LINE_CASE_CARBURISED,
    TS_AGMA_LINE_NITRIDED,
    TS_AGMA_LINE_BY_HARDNESS /* through hardened: between the lines of 160, 250 and 400 HB      */
} ts_agma_life_line;

/* Strength at n_L cycles is scale*n_L^-fall below the knee. */
typedef struct ts_agma_life {
    double Y_scale, Y_fall;
    double Z_scale, Z_fall;
    bool   critical; /* above the knee: the lower of the standard's two lines (critical service:
                        little wear, vibration or noise is allowed); else the upper              */
} ts_agma_life;

/* hardness: Brinell, read by TS_AGMA_LINE_BY_HARDNESS; between the printed lines logarithms are
 * interpolated (common practice, no source), outside them the end lines hold.  gear: 0 or 1. */
ts_agma_life ts_agma_life_of(ts_agma_life_line line, double hardness, bool critical, int gear,
                             ts_workings *workings);

/* n_L > 0 cycles of one tooth.  The lines are level below 1e3 (bending) and 1e4 (contact), where
 * yielding decides, and are drawn up to 1e10. */
double ts_agma_cycle_factor_bending(const ts_agma_life *life, double n_L, int gear,
                                    ts_workings *workings);
double ts_agma_cycle_factor_contact(const ts_agma_life *life, double n_L, int gear,
                                    ts_workings *workings);

#define TS_AGMA_CYCLES_LEAST_BENDING 1e3
#define TS_AGMA_CYCLES_LEAST_CONTACT 1e4
#define TS_AGMA_CYCLES_MOST          1e10

#endif
