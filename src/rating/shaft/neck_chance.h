/* rating/shaft/neck_chance.h: how likely does a neck break too early, or too late?
 *
 * Too early: it breaks under a legitimate torque, at once or by fatigue over its life.  Too late:
 * it holds a torque at which something behind it breaks.  A larger diameter lowers the first and
 * raises the second; between them lies the diameter that balances them.
 *
 * Units     SI; a solid or hollow neck of constant proportion d_i/d.
 * Laws      Break torque normal about T_mid with the coefficient of variation cov; fatigue strength
 *           lognormal with the standard deviation s_ln of its logarithm; both independent.
 * Source    docs/method/necks.md; Palmgren and Miner without an endurance limit (on the safe side).
 */
#ifndef TS_RATING_NECK_CHANCE_H
#define TS_RATING_NECK_CHANCE_H

#include "base/workings.h"

/* So many cycles of the torque T_m +- T_a. */
typedef struct ts_neck_cycles {
    double T_a, T_m; /* N.m, >= 0 */
    double cycles;
} ts_neck_cycles;

typedef struct ts_neck_duty {
    double                T_legit;    /* N.m  the highest legitimate torque                */
    double                T_capacity; /* N.m  the least that breaks something else         */
    const ts_neck_cycles *cycles;
    int                   cycle_count; /* at most 64 */
} ts_neck_duty;

/* One neck of diameter d_0, from which those of other diameters follow by the cube. */
typedef struct ts_neck_make {
    double d_0;    /* m                                                                   */
    double T_mid;  /* N.m  middle break torque at d_0                                     */
    double cov;    /*      coefficient of variation of the break torque                   */
    double T_W;    /* N.m  amplitude that half of the necks of d_0 bear for N_W cycles, without a
                           steady torque                                                  */
    double N_W, k; /*      cycles and slope of the fatigue line                           */
    double s_ln;   /*      scatter of the fatigue strength                                */
} ts_neck_make;

typedef struct ts_neck_chance {
    double T_equivalent; /* N.m  amplitude of N_W cycles that does the same harm */
    double static_early, fatigue_early, early, late; /* 0 to 1 */
} ts_neck_chance;

/* NaN when a number is out of range, or a steady torque reaches the middle break torque. */
ts_neck_chance ts_neck_chance_of(const ts_neck_make *make, const ts_neck_duty *duty, double d,
                                 ts_workings *workings);

/* The diameter at which both chances are equal, between d_low and d_high; NaN when they are not
 * equal anywhere between. */
double ts_neck_balance(const ts_neck_make *make, const ts_neck_duty *duty, double d_low,
                       double d_high);

#endif
