/* rate/gear_measure.h: one cylindrical gear on the inspector's table. */
#ifndef TS_RATE_GEAR_MEASURE_H
#define TS_RATE_GEAR_MEASURE_H

#include "element/measurement.h"
#include "rate/rate_desk.h"

/* What is measured, and by which keys the file says how. */
typedef struct ts_rated_gear {
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;
    const char          *k_W, *D_M, *E_sns, *E_sni; /* keys: "k_W1" ...                          */
    double               b;                         /* m; NaN: not known                         */
    double               h_a;                       /* m, addendum; noted in the open section    */
    int                  nominal, upper, lower;     /* conditions of its sections                */
    int                  number;                    /* 1 or 2 of a pair; 0: a gear by itself     */
    void (*borrow)(ts_rate_desk *desk, const struct ts_rated_gear *of); /* z, x, d ...; or NULL  */
} ts_rated_gear;

/* Span, pins and chord at the nominal thickness, and again at both allowances when they are given.
 * Sections are opened and closed here. */
void ts_rate_gear_measures(ts_rate_desk *desk, const ts_rated_gear *of);

#endif
