/* element/involute_spline.h: which diameters has an involute spline, and how is it measured?
 * ANSI B92.1 (inches, diametral pitch) and ISO 4156 (module), side fit.
 *
 * Units     m, rad; P_d in 1/m.
 * Shapes    Diameters are basic ones, without tolerances.
 * Ranges    N from 6 to 200; alpha_D 30 degrees, with a fillet also 37.5 and 45.
 * Sources   B92.1 formulae read in a public table (bank, spl-b921-36t-16-32); ISO 4156:2005 from
 *           memory.
 */
#ifndef TS_ELEMENT_INVOLUTE_SPLINE_H
#define TS_ELEMENT_INVOLUTE_SPLINE_H

#include "base/workings.h"

#include <stdbool.h>

typedef enum ts_spline_root { TS_SPLINE_FLAT_ROOT, TS_SPLINE_FILLET_ROOT } ts_spline_root;

typedef struct ts_spline {
    double N;       /* teeth                        */
    double D;       /* m   pitch diameter           */
    double D_b;     /* m   base diameter            */
    double alpha_D; /* rad                          */
    double p;       /* m   circular pitch           */
    double s_v;     /* m   basic space width = tooth thickness */
    double D_ri;    /* m   major diameter, internal */
    double D_o;     /* m   major diameter, external */
    double D_i;     /* m   minor diameter, internal */
    double D_re;    /* m   minor diameter, external */
    double D_Fi;    /* m   form diameter, internal  */
    double D_Fe;    /* m   form diameter, external  */
} ts_spline;

/* False, and *spline untouched, outside of the ranges; P_d from 2 to 130 to the inch. */
bool ts_spline_b921(double N, double P_d, double alpha_D, ts_spline_root root, ts_spline *spline,
                    ts_workings *workings);
/* m from 0.25 to 10 mm. */
bool ts_spline_iso4156(double z, double m, double alpha_D, ts_spline_root root, ts_spline *spline,
                       ts_workings *workings);

/* Between pins of d_i in spaces of width s; over pins of d_e beside teeth of thickness t.  NaN
 * where the pin does not touch the flanks. */
double ts_spline_between_pins(const ts_spline *spline, double s, double d_i, ts_workings *workings);
double ts_spline_over_pins(const ts_spline *spline, double t, double d_e, ts_workings *workings);

#endif
