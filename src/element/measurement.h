/* element/measurement.h: how the tooth thickness of a cylindrical gear is measured.
 *
 * ISO 21771:2007 with its signs (internal gears: z < 0); lengths in m, angles in rad.  All measures
 * are those of teeth without backlash allowance.
 */
#ifndef TS_ELEMENT_MEASUREMENT_H
#define TS_ELEMENT_MEASUREMENT_H

#include "element/cylindrical_gear.h"

/* Base tangent length over k teeth, k >= 1 (external gears). */
double ts_span_width(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear, int k,
                     ts_workings *workings);

/* The number of teeth, not whole, at which the span touches the flanks near d + 2*x*m_n; the whole
 * number nearest to it is the one to use. */
double ts_span_teeth(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear,
                     ts_workings *workings);

/* Distance over two pins (external gear) or between them (internal gear, returned positive).
 * D_M: pin diameter, m.  NaN when the pin does not touch the flanks of one space.  For an odd
 * number of helical teeth it is the distance of balls in one transverse plane: opposite spaces face
 * each other in two planes, and long pins read more (doubted: d_K + D_M). */
double ts_over_pins(const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear, double D_M,
                    ts_workings *workings);

typedef struct ts_tooth_chord {
    double s_n;     /* m    normal tooth thickness at the reference circle        */
    double z_v;     /* 1    teeth of the virtual gear in the normal section       */
    double theta_v; /* rad  half the angle which the tooth fills there            */
    double s_c;     /* m    chordal thickness                                     */
    double h_c;     /* m    height from the chord to the tip                      */
} ts_tooth_chord;

/* Normal chordal thickness at the reference circle and its height below the tip; the virtual gear
 * has z/cos(beta)^3 teeth.  h_a: addendum of the gear, m. */
ts_tooth_chord ts_chordal_thickness(const ts_cylindrical_frame *frame,
                                    const ts_cylindrical_gear *gear, double h_a,
                                    ts_workings *workings);

#endif
