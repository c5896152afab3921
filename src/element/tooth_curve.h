/* element/tooth_curve.h: flank and fillet of a tooth as curves, for the outline and its tests. */
#ifndef TS_ELEMENT_TOOTH_CURVE_H
#define TS_ELEMENT_TOOTH_CURVE_H

#include "element/cylindrical_gear.h"
#include "element/tooth_outline.h"

/* Lengths in m; the tooth stands as in ts_tooth_shape, and its right half is meant. */
typedef struct ts_tooth_curve {
    double r, r_b;    /* reference and base radius                                       */
    double psi_b;     /* rad, half tooth angle where the involute starts on the base circle */
    double xi_c, y_c; /* centre of the rack's tip round: along the rack in its normal
                         section, and across, measured from the gear's axis              */
    double rho;       /* radius of the rack's tip round                                  */
    double cos_beta;  /* stretches the rack's normal section into the transverse one     */
    double theta_end; /* rad, where the tip round passes into the rack's flank           */
} ts_tooth_curve;

ts_tooth_curve ts_tooth_curve_of(const ts_cylindrical_frame *frame,
                                 const ts_cylindrical_gear  *gear);

/* The involute where the tangent of its profile angle is t >= 0. */
ts_outline_point ts_involute_point(const ts_tooth_curve *curve, double t);

/* The root trochoid; theta runs from 0 on the root circle to theta_end. */
ts_outline_point ts_trochoid_point(const ts_tooth_curve *curve, double theta);

/* The value of theta at which the trochoid passes into (or, undercut, crosses) the involute. */
double ts_trochoid_end(const ts_tooth_curve *curve);

#endif
