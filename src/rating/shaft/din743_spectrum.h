/* rating/shaft/din743_spectrum.h: does a section of a shaft hold for as long as it is asked to?
 * Line of DIN 743-4:2012 (from memory); consequent form of Miner's rule (Haibach, from memory), in
 * place of the sum of DIN 743-4.
 *
 * Units     Steps are counted; their use is 1/S_D of DIN 743-1, the share of what the section bears
 *           for ever.  Overload raises all steps alike.
 * Ranges    1e3 cycles and more: below, yield decides, so that no safety is told above that of 1e3.
 *           Above the knee at 1e6 nothing falls any more.
 * Sources   docs/method/shafts.md
 */
#ifndef TS_RATING_DIN743_SPECTRUM_H
#define TS_RATING_DIN743_SPECTRUM_H

#include "rating/shaft/din743.h"

#define TS_DIN_KNEE       1e6 /* N_D                                                 */
#define TS_DIN_LEAST_LIFE 1e3
#define TS_DIN_DAMAGE     0.3 /* D_M, at which a section is counted as broken        */
#define TS_DIN_STEPS_MOST 40

typedef struct ts_din_step {
    double u; /* 1/S_D; 0: it does no harm           */
    double n; /* cycles in the life; INFINITY: ever  */
} ts_din_step;

/* Slope q of the line below the knee: 5 in pull and bending, 8 in torsion, 10 of a hard surface. */
double ts_din_slope(ts_din_steel_kind kind, ts_din_part part);

typedef struct ts_din_spectrum {
    ts_din_part part; /* TS_DIN_B: pull and bending, or TS_DIN_T */
    double      q;    /* ts_din_slope                            */
    double      D_M;  /* TS_DIN_DAMAGE                           */
} ts_din_spectrum;

/* By how much all steps may rise until the damage sum is D_M at the end of the life: at least the
 * safety of the worst step held for ever, at most (N_D/1e3)^(1/q) of it.  The fatigue limit falls
 * with the damage D as (1 - D)^(1/(q - 1)), so that smaller steps harm later.  Infinite without a
 * step that harms; NaN where a use or a count is not known.  count: up to TS_DIN_STEPS_MOST. */
double ts_din_spectrum_safety(const ts_din_step *steps, int count, const ts_din_spectrum *how,
                              ts_workings *workings);

#endif
