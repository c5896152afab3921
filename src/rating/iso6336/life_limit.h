/* rating/iso6336/life_limit.h: how many load cycles does one tooth bear with the safety wanted?
 * Z_NT of ISO 6336-2, clause 11, and Y_NT of ISO 6336-3, clause 12, read from stress to cycles.
 */
#ifndef TS_RATING_LIFE_LIMIT_H
#define TS_RATING_LIFE_LIMIT_H

#include "rating/iso6336/stress_cycle.h"

/* One tooth under one load. */
typedef struct ts_life_limit {
    const ts_life_curve *curve;
    const ts_life_lines *lines; /* of the same tooth                     */
    ts_rated_stress      stress;
    int                  gear;  /* 0 or 1                                */
    double               sigma; /* Pa  sigma_H or sigma_F of that gear   */
    double               S_min; /* 1   > 0                               */
} ts_life_limit;

/* Cycles at which sigma*S_min is the limit stress: N_LH1 and the like.  0: the static limit lies
 * below it; INFINITY: the last line is level and lies above it.  Beyond 1e10 cycles the last line
 * is carried on. */
double ts_life_limit_cycles(const ts_life_limit *limit, ts_workings *workings);

#endif
