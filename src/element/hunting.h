/* element/hunting.h: which teeth of a pair meet, how often, and which pairs hunt. */
#ifndef TS_ELEMENT_HUNTING_H
#define TS_ELEMENT_HUNTING_H

#include "base/rational.h"
#include "base/workings.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* All of it follows from g = gcd(z_1, z_2). */
typedef struct ts_hunting {
    int     gcd;
    bool    hunts;      /* gcd 1: every tooth meets every tooth                              */
    int     turns_1;    /* turns of gear 1 until the same two teeth meet again: z_2/gcd      */
    int     turns_2;    /* turns of gear 2: z_1/gcd                                          */
    int64_t meshes;     /* tooth engagements until then: lcm(z_1, z_2)                       */
    int     meets_1;    /* different teeth of gear 2 that one tooth of gear 1 meets: z_2/gcd */
    int     meets_2;    /* different teeth of gear 1 that one tooth of gear 2 meets          */
    int     assemblies; /* ways to put the pair together that pair teeth differently: gcd    */
    double  share;      /* 1, hunting-tooth frequency over mesh frequency: gcd/(z_1*z_2)     */
} ts_hunting;

/* z_1, z_2 > 0. */
ts_hunting ts_hunting_of(int z_1, int z_2);

/* Does tooth i_1 of gear 1 (0 .. z_1-1) ever meet tooth i_2 of gear 2, when tooth 0 meets tooth 0?
 */
bool ts_teeth_meet(int z_1, int z_2, int i_1, int i_2);

/* Frequency, Hz, at which the same two teeth meet, gear 1 turning at n_1 (Hz). */
double ts_hunting_frequency(double n_1, int z_1, int z_2, ts_workings *workings);

/* A pair of tooth numbers near a wanted one. */
typedef struct ts_tooth_pair {
    int         z_1, z_2;
    ts_rational error; /* (z_2/z_1)/(wanted ratio) - 1, exact; under == 0: overflowed (never below
                          46,000 teeth a gear)                                                    */
    int change;        /* |z_1 - wanted z_1| + |z_2 - wanted z_2|                                */
} ts_tooth_pair;

/* Hunting pairs with |z - wanted| <= reach on both gears and at least `least` teeth, sorted by the
 * size of their exact ratio error, then by the change of teeth, then by z_1, then z_2.
 * out, room   takes the best `room` of them
 * returns     how many there are in all; min(that, room) of them were written */
size_t ts_hunting_pairs(int z_1, int z_2, int reach, int least, ts_tooth_pair *out, size_t room);

#endif
