/* element/bevel_depth.h: tooth heights and blank of a bevel gear pair.
 *
 * Heights stand at the outer end (back cone), m; angles in rad.
 */
#ifndef TS_ELEMENT_BEVEL_DEPTH_H
#define TS_ELEMENT_BEVEL_DEPTH_H

#include "base/workings.h"
#include "element/bevel_pair.h"

typedef enum ts_bevel_depth_rule {
    TS_BEVEL_EQUAL_ADDENDA, /* h_a = m, h_f = 1.25 m, tips cut to the apex of the pitch cone     */
    TS_BEVEL_LONG_ADDENDUM, /* straight teeth, proportions 2.000/2.188: long addendum on
                               the pinion, tips parallel to the mating roots                     */
    TS_BEVEL_LONG_SPIRAL,   /* spiral teeth, proportions 1.700/1.888, likewise           */
    TS_BEVEL_HEIGHTS_GIVEN  /* as given; tips cut to the apex of the pitch cone                  */
} ts_bevel_depth_rule;

typedef struct ts_bevel_heights {
    double h_a1, h_a2, h_f1, h_f2; /* m, read by TS_BEVEL_HEIGHTS_GIVEN */
} ts_bevel_heights;

typedef struct ts_bevel_depth {
    double h_a1, h_a2, h_f1, h_f2; /* m    outer addenda and dedenda                */
    double theta_a1, theta_a2, theta_f1, theta_f2; /* rad  addendum and dedendum angles */
    double delta_a1, delta_a2, delta_f1, delta_f2; /* rad  face and root angles */
    double d_ae1, d_ae2; /* m    outer tip diameters                      */
    double X_1, X_2;   /* m    from the apex of the pitch cone to the outer tip, along the axis   */
    double X_b1, X_b2; /* m    extent of the face along the axis                                  */
    double d_ai1, d_ai2; /* m    inner tip diameters */
} ts_bevel_depth;

/* `pair` is solved.  `given` may be NULL unless the rule is TS_BEVEL_HEIGHTS_GIVEN.  Proportions:
 * JGMA form of the long-addendum system, for the outer transverse module (from memory). */
void ts_bevel_depth_solve(const ts_bevel_pair *pair, ts_bevel_depth_rule rule,
                          const ts_bevel_heights *given, ts_bevel_depth *depth,
                          ts_workings *workings);

#endif
