/* rating/iso10300/bevel_life.h: how much more may a short life bear?  ISO 10300-2:2014, 8.4 (Z_NT),
 * ISO 10300-3:2014, clause 8 (Y_NT): straight lines between nodes on two logarithmic scales.
 */
#ifndef TS_RATING_BEVEL_LIFE_H
#define TS_RATING_BEVEL_LIFE_H

#include "base/workings.h"
#include "catalog/gear_material.h"

#include <stdbool.h>

typedef enum ts_bevel_stress { TS_BEVEL_CONTACT, TS_BEVEL_BENDING } ts_bevel_stress;

/* Life factor `at[k]` at N[k] cycles, k < count; the last node is that of 1e10 cycles.  Fewer
 * cycles than N[0] bear no more; beyond the last the last line is carried on. */
typedef struct ts_bevel_life {
    double N[4], at[4];
    double fall[3]; /* exponents of the lines, <= 0 */
    int    count;   /* 3 or 4 */
} ts_bevel_life;

/* pitting: is some pitting permitted (contact of Eh, IF, V, St alone)?  at_long: the factor at 1e10
 * cycles, 0.85 in general and up to 1 for the best material and care. */
ts_bevel_life ts_bevel_life_of(ts_gear_class class, ts_bevel_stress stress, bool pitting,
                               double at_long);

/* Z_NT or Y_NT for N_L > 0 cycles. */
double ts_bevel_life_factor(const ts_bevel_life *life, double N_L, ts_bevel_stress stress, int gear,
                            ts_workings *workings);

/* The other way round: the cycles for which the factor is `wanted`.  0: never, the stress is above
 * what a single cycle bears; INFINITY: for ever, where the last line is level. */
double ts_bevel_life_cycles(const ts_bevel_life *life, double wanted);

#endif
