/* rating/tooth_data.h: what a maker and an inspector need to know of every cylindrical gear.
 *
 * Measures  those of teeth that are thinner by the allowances of the file: the upper one leaves the
 *           thickest tooth (E_sns), the lower one the thinnest (E_sni).
 * Units     m; NaN: not known, or not to be measured so.
 * Sources   ISO 21771:2007 for the measures, ISO 1328-1:2013 for the tolerances; the diameter of
 *           pins, 1.728 m_n, is common practice, no source.
 */
#ifndef TS_RATING_TOOTH_DATA_H
#define TS_RATING_TOOTH_DATA_H

#include "element/cylindrical_gear.h"
#include "element/tooth_tolerance.h"
#include "motion/motion.h"

enum { TS_ALLOWED_UPPER, TS_ALLOWED_LOWER, TS_ALLOWED };

typedef struct ts_tooth_datum {
    uint32_t             gear;
    uint32_t             mesh; /* the first that it stands in */
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  nominal; /* teeth without allowance     */
    double               s_n;     /* their normal thickness at the reference circle */
    double               E_sn[TS_ALLOWED];
    int                  k;               /* teeth under the span; 0: none     */
    double               W_k[TS_ALLOWED]; /* span                              */
    bool                 span_fits;       /* the face is wide enough for it    */
    double               D_M;             /* pin                               */
    double               M_dR[TS_ALLOWED];
    double               s_c[TS_ALLOWED]; /* chord                             */
    double               h_c;             /* its height, of the nominal tooth  */
    int class;                            /* of ISO 1328-1; 0: not told        */
    ts_tooth_tolerance tolerance;
} ts_tooth_datum;

typedef struct ts_tooth_data {
    ts_tooth_datum
            *items; /* in the order of the gears; those without a solved mesh are not there */
    uint32_t count;
} ts_tooth_data;

/* TS_OK or TS_NO_MEMORY. */
ts_status ts_tooth_data_solve(const ts_motion *motion, ts_arena *arena, ts_tooth_data *out);

#endif
