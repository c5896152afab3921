/* rating/bearing/rolling_life.h: how long do rolling bearings last?  ISO 281:2007, clauses 5 to 9
 * (from memory).
 *
 * Units     L_10 in millions of turns, as the standard has it; times in s, speeds in rad/s, N.
 * Symbols   p: 3 for balls, 10/3 for rollers.  NaN for loads or capacities that are not above 0.
 */
#ifndef TS_RATING_ROLLING_LIFE_H
#define TS_RATING_ROLLING_LIFE_H

#include "base/workings.h"

#define TS_LIFE_BALL   3.0
#define TS_LIFE_ROLLER (10.0 / 3.0)
/* Weibull slopes of the scatter of life that ISO 281 rests on; the a_1 of 2007 uses 1.5. */
#define TS_SLOPE_BALL   (10.0 / 9.0)
#define TS_SLOPE_ROLLER (9.0 / 8.0)

double ts_basic_life(double C, double P, double p, ts_workings *workings);
/* L_10h of L_10 (or of any life in millions of turns) at n. */
double ts_life_in_time(double L_10, double n, ts_workings *workings);
double ts_life_in_turns(double L_10h, double n, ts_workings *workings);
/* The capacity for a life: C = P (L_10/a)^(1/p), with a the factors of the modified life, or 1. */
double ts_capacity_for_life(double P, double L_10, double a, double p, ts_workings *workings);

/* All bearings of a set holding: 1/L^e = sum 1/L_i^e; count >= 1, e the Weibull slope. */
double ts_life_of_set(const double *lives, int count, double e, ts_workings *workings);

/* All holding together: the product of the reliabilities. */
double ts_reliability_of_set(const double *reliabilities, int count);

/* Two-parameter Weibull law: life at reliability R over that at 0.9, slope e; L_50 and so on. */
double ts_life_at_reliability(double L_10, double R, double e, ts_workings *workings);

#endif
