/* rating/iso6336/dynamic_simple.h: the dynamic factor of method C, as IACS UR M56 writes it, for a
 * second opinion far below resonance; ISO 6336-1, clause 6.6.
 */
#ifndef TS_RATING_DYNAMIC_SIMPLE_H
#define TS_RATING_DYNAMIC_SIMPLE_H

#include "base/workings.h"

typedef struct ts_dynamic_simple_input {
    double v;        /* m/s  at the reference circle                               */
    double z_1, u;   /*      teeth of the pinion, ratio >= 1                       */
    double w_t;      /* N/m  specific load F_t K_A/b                               */
    double K_1, K_2; /* N/m, 1: constants of the accuracy grade, see below         */
} ts_dynamic_simple_input;

typedef struct ts_dynamic_simple {
    double p;   /* m/s  v z_1/100 sqrt(u^2/(1 + u^2)); the method holds below 10 (spur)  */
    double K_3; /* s/m  how it enters                                                   */
    double K_v; /* 1                                                                    */
} ts_dynamic_simple;

/* K_1 in N/mm for accuracy grades 3 to 8: spur 2.1, 3.9, 7.5, 14.9, 26.8, 39.1; helical 1.9, 3.5,
 * 6.7, 13.3, 23.9, 34.8.  K_2: spur 0.0193, helical 0.0087.  (From memory.) */
ts_dynamic_simple ts_dynamic_factor_simple(const ts_dynamic_simple_input *in,
                                           ts_workings                   *workings);

#endif
