/* rating/neck_life.h: how likely does a designed neck break too early in its whole life, or
 * too late when it should, and which diameter balances the two?
 *
 * Cycles    Every start takes the torque from nothing to the highest and back, or, where it is
 * driven inwards and carries outwards later, from the one to the other: one range (rainflow);
 *           overloads likewise, `overloads` of them a start beside it, of a tower shaft with all
 *           else that it carries; so does every event of a condition in which nothing
 *           drives.  As long as a condition lasts the torque swings about what it is then, by the
 *           torsional vibration that response/drive_forced.h computes for that place, or by a
 *           greater `ripple` that the file tells.  A linear swing beyond the torque itself would
 *           part the flanks, which breaks the resonance: the torque itself is taken instead (common
 *           practice, no source).  Where no swing is known, `ripple`, as often a turn as its
 *           accessory ripples, else once; so does a told one that is greater.
 * Strength  Mean fatigue strength in torsion: 0.577 of half the tensile strength, of at most
 *           700 MPa, at 1e6 cycles over notch, size and surface (K of DIN 743-1), 0.9 of the static
 *           one at 1e3; a straight line on two logarithmic scales through both, and twice as flat
 *           below (neck_chance.h).  Of steels alone: of another metal the chances are missing.
 * Laws      rating/shaft/neck_chance.h; the break torque is normal about the middle of its band of
 *           causes, first order.
 * Sources   docs/method/necks.md
 */
#ifndef TS_RATING_NECK_LIFE_H
#define TS_RATING_NECK_LIFE_H

#include "rating/selectivity.h"
#include "rating/shaft/neck_chance.h"

#define TS_NECK_LIFE_CYCLES TS_NECK_CYCLES_MOST

typedef struct ts_neck_life {
    const char    *missing; /* NULL, or why nothing is known: "a diameter", a noun */
    ts_neck_make   make;
    ts_neck_duty   duty;
    ts_neck_cycles cycles[TS_NECK_LIFE_CYCLES];
    int32_t        condition[TS_NECK_LIFE_CYCLES + 1]; /* whose swing each is; or
                                                          TS_EVERY_CONDITION: an event */
    ts_neck_chance chance;                             /* at the diameter of the file */
    double         early_most; /* P_early where the swings follow Rayleigh's law: an upper bound */
    int            worst;      /* cycles that do most of the harm; -1: none does any */
} ts_neck_life;

/* Fills in *life, whose duty points into it: do not copy it.  Noted about the record of the neck.
 */
void ts_neck_life_of(const ts_select *select, const ts_guard *guard, ts_neck_life *life,
                     ts_workings *workings);

/* The diameter at which both chances are equal; NaN when there is none between a quarter of the
 * present one and four times that.  Takes about 0.1 ms. */
double ts_neck_life_balance(const ts_neck_life *life);

#endif
