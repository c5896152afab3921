/* rating/agma2101/agma_strength.h: what lowers or raises an allowable stress?  ANSI/AGMA 2101-D04:
 * reliability Y_Z (clause 18), temperature Y_theta (19), reversed bending (16), hardness ratio Z_W
 * (14).
 */
#ifndef TS_RATING_AGMA_STRENGTH_H
#define TS_RATING_AGMA_STRENGTH_H

#include "base/workings.h"

#include <stdbool.h>

/* Y_Z by the standard's table, logarithms of the failure rate interpolated between its rows (common
 * practice, no source).  0.5 <= R <= 0.9999, outside NaN. */
double ts_agma_reliability_factor(double R, ts_workings *workings);
/* The same as Shigley's fit of the table, within 2 % of it; 0.5 <= R <= 0.9999. */
double ts_agma_reliability_fit(double R, ts_workings *workings);

/* Y_theta: 1 up to 120 degC (393.15 K); above, where the standard leaves it to the designer, the
 * rule of AGMA 2003 for bevel gears.  T: gear blank, K. */
double ts_agma_temperature_factor(double T, ts_workings *workings);
#define TS_AGMA_TEMPERATURE_MOST 393.15

/* Y_M, on the allowable bending stress of a tooth that the other flank bends too, by the share q of
 * this flank's stress (0: never, 1: an idler).
 *
 * The standard says 0.7 for idlers and for full reversal and nothing in between.  Its reason is the
 * stress range: allowable numbers hold for a stress that rises from 0.  With a straight
 * mean-stress line of sensitivity M the ratio is 1/(1 + q (1 - M)/(1 + M)); M = 0.4 gives 0.7 at
 * q = 1, and that M is used for every q. */
double ts_agma_reversal_factor(double q, int gear, ts_workings *workings);

/* Z_W, on the wheel's allowable contact stress: a harder pinion works the wheel's flank. */
typedef struct ts_agma_hardness {
    double H_B1, H_B2;  /* HB of pinion and wheel                                              */
    double m_G;         /* ratio of teeth, used up to 20                                       */
    bool   pinion_hard; /* surface hardened, 48 HRC and more                                   */
    bool   wheel_hard;  /* surface hardened: Z_W = 1                                           */
    double R_a;         /* m    of the pinion's flank, read when it alone is hard              */
} ts_agma_hardness;
double ts_agma_hardness_factor(const ts_agma_hardness *in, ts_workings *workings);

/* A of Z_W = 1 + A (m_G - 1) for the ratio of hardness of two through-hardened gears. */
double ts_agma_hardness_slope(double H_B1, double H_B2, ts_workings *workings);
double ts_agma_hardness_ratio(double A_W, double m_G, ts_workings *workings);

#endif
