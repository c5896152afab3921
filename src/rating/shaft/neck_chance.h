/* rating/shaft/neck_chance.h: how likely does a neck break too early, or too late?
 *
 * Too early: it breaks under a legitimate torque, at once or by fatigue over its life.  Too late:
 * it holds a torque at which something behind it breaks.  A larger diameter lowers the first and
 * raises the second; between them lies the diameter that balances them.
 *
 * Units     SI; a solid or hollow neck of constant proportion d_i/d.
 * Laws      Break torque normal about T_mid with the coefficient of variation cov; fatigue strength
 *           lognormal with the standard deviation s_ln of its logarithm; both independent.
 * Harm      Palmgren and Miner; the fatigue line has the slope k down to T_W, and below it 2k - 1
 *           without an endurance limit (E. Haibach's modified rule, from memory).
 * Size      Torques grow with the cube of the diameter; the fatigue strength less, by K_2 of
 *           DIN 743-2 and its K of DIN 743-1, where the make tells a notch and a surface; the slope
 *           follows, so that the strength at 1e3 cycles grows with the cube alone.
 * Source    docs/method/necks.md
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
    int                   cycle_count; /* at most TS_NECK_CYCLES_MOST */
} ts_neck_duty;
#define TS_NECK_CYCLES_MOST 96

/* One neck of diameter d_0, from which those of other diameters follow by the cube. */
typedef struct ts_neck_make {
    double d_0;      /* m                                                                   */
    double T_mid;    /* N.m  middle break torque at d_0                                     */
    double cov;      /*      coefficient of variation of the break torque                   */
    double T_W;      /* N.m  amplitude that half of the necks of d_0 bear for N_W cycles, without a
                             steady torque                                                  */
    double N_W, k;   /*      cycles and slope of the fatigue line                           */
    double s_ln;     /*      scatter of the fatigue strength                                */
    double K_f, K_F; /*    notch that fatigue feels, DIN 743's K_F of the surface, both held by T_W;
                           0: the fatigue strength follows the cube of the diameter alone */
} ts_neck_make;

typedef struct ts_neck_chance {
    double T_equivalent; /* N.m  the T_W for which the harm is 1: weaker necks tire */
    double static_early, fatigue_early, early, late; /* 0 to 1 */
} ts_neck_chance;

/* NaN when a number is out of range, or a steady torque reaches the middle break torque. */
ts_neck_chance ts_neck_chance_of(const ts_neck_make *make, const ts_neck_duty *duty, double d,
                                 ts_workings *workings);

/* Share of the harm that cycle i does to a neck of d_0 that bears T_equivalent, 0 to 1. */
double ts_neck_harm_share(const ts_neck_make *make, const ts_neck_duty *duty,
                          const ts_neck_chance *chance, int i);

/* The diameter at which both chances are equal, between d_low and d_high; NaN when they are not
 * equal anywhere between. */
double ts_neck_balance(const ts_neck_make *make, const ts_neck_duty *duty, double d_low,
                       double d_high);

#endif
