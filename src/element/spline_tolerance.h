/* element/spline_tolerance.h: how wide may the spaces of a hub and the teeth of a shaft be?
 *
 * Terms     Effective: what the perfect mate feels, with all form errors; actual: a space or tooth
 *           measured by itself.  They differ by lambda.  Fit H/h: the least effective space and the
 *           greatest effective tooth are half a pitch.
 * Units     m, 1.
 * Ranges    Classes 4 to 7; D and s_v of a sound spline; g > 0.
 * Source    ISO 4156-1:2005, clause 9 (from memory).
 */
#ifndef TS_ELEMENT_SPLINE_TOLERANCE_H
#define TS_ELEMENT_SPLINE_TOLERANCE_H

#include "element/involute_spline.h"

typedef struct ts_spline_limits {
    double F_p, F_alpha, F_beta;         /* m   pitch, profile, helix              */
    double lambda;                       /* m   effective variation                */
    double T_lambda;                     /* m   total tolerance, T + lambda        */
    double E_vmin, E_min, E_vmax, E_max; /* m   spaces of the hub          */
    double S_vmax, S_max, S_vmin, S_min; /* m   teeth of the shaft         */
    double c_vmin, c_vmax;               /* m   effective clearance of both */
} ts_spline_limits;

/* g: engaged length, m.  False, and *out untouched, outside of the ranges. */
bool ts_spline_limits_of(const ts_spline *spline, double g, int grade, ts_spline_limits *out,
                         ts_workings *workings);

#endif
