/* rating/agma2101/agma_dynamic.h: how much does running add to the load?  ANSI/AGMA 2101-D04,
 * clause 8 (A_v), and the edition before it, C95 (Q_v): K_v >= 1, in the numerator.
 *
 * Q_v runs against A_v: A_v = 17 - Q_v gives the same curve.  (Editions up to B88 had K_v <= 1 in
 * the denominator: the reciprocal.)
 */
#ifndef TS_RATING_AGMA_DYNAMIC_H
#define TS_RATING_AGMA_DYNAMIC_H

#include "base/workings.h"

#include <stdbool.h>

/* The curve of one accuracy. */
typedef struct ts_agma_dynamic {
    double B, C;    /* exponent, constant ("A" in C95); NaN on no curve            */
    double v_max;   /* m/s  the curve ends there; INFINITY on no curve              */
    double K_v;     /* of very accurate gears, which have no curve; else NaN        */
    bool   Q_v;     /* by C95; its letters are used in the workings                 */
    bool   outside; /* coarser than the standard's curves                           */
} ts_agma_dynamic;

/* Curves go from A_v = 6 to 12 (Q_v = 11 down to 5).  More accurate gears take 1.11, the upper end
 * of what the standard grants them.  NaN leaves everything NaN. */
ts_agma_dynamic ts_agma_dynamic_D04(double A_v, ts_workings *workings);
ts_agma_dynamic ts_agma_dynamic_C95(double Q_v, ts_workings *workings);
/* K_v as it is known, whatever the speed. */
ts_agma_dynamic ts_agma_dynamic_known(double K_v);

/* K_v at the pitch-line speed v >= 0, m/s. */
double ts_agma_dynamic_factor(const ts_agma_dynamic *curve, double v, ts_workings *workings);

/* A_v from the single pitch deviation f_pt (m, > 0), rounded up to a whole number as the standard
 * asks.  d_T: tolerance diameter d - 2 m_n (m, up to 1); m_n in m. */
double ts_agma_accuracy_of(double f_pt, double m_n, double d_T, ts_workings *workings);

/* The factor before 1960, still in textbooks: Barth's, of cut or milled teeth. */
double ts_agma_dynamic_barth(double v, ts_workings *workings);

#endif
