/* rating/neck_life.h: how likely does a designed neck break too early in its whole life, or
 * too late when it should, and which diameter balances the two?
 *
 * Cycles    Every start takes the torque from nothing to the highest and back; overloads likewise,
 *           `overloads` of them a start; and a ripple about the torque of every condition, once a
 *           turn, as long as it lasts.
 * Strength  Mean fatigue strength in torsion: 0.577 of half the tensile strength at 1e6 cycles over
 *           the notch factor that is felt, 0.9 of the static one at 1e3; a straight line on two
 *           logarithmic scales through both, without an endurance limit.
 * Laws      rating/shaft/neck_chance.h; the break torque is normal about the middle of its band of
 *           causes, first order.
 * Sources   docs/method/necks.md
 */
#ifndef TS_RATING_NECK_LIFE_H
#define TS_RATING_NECK_LIFE_H

#include "rating/selectivity.h"
#include "rating/shaft/neck_chance.h"

#define TS_NECK_LIFE_CYCLES 64

typedef struct ts_neck_life {
    const char    *missing; /* NULL, or why nothing is known: "a diameter", a noun */
    ts_neck_make   make;
    ts_neck_duty   duty;
    ts_neck_cycles cycles[TS_NECK_LIFE_CYCLES];
    ts_neck_chance chance; /* at the diameter of the file */
} ts_neck_life;

/* Fills in *life, whose duty points into it: do not copy it.  Noted about the record of the neck.
 */
void ts_neck_life_of(const ts_select *select, const ts_guard *guard, ts_neck_life *life,
                     ts_workings *workings);

/* The diameter at which both chances are equal; NaN when there is none between a quarter of the
 * present one and four times that.  Takes about 0.1 ms. */
double ts_neck_life_balance(const ts_neck_life *life);

#endif
