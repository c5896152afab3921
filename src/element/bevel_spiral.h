/* element/bevel_spiral.h: how does the spiral angle change along the face, and does undercut
 * follow?  ISO 23509:2016, clause 7, teeth cut by a face mill (single indexing).
 *
 * Units     m, rad.
 * Range     Face hobbed teeth (continuous indexing, epicycloids) are left out.
 */
#ifndef TS_ELEMENT_BEVEL_SPIRAL_H
#define TS_ELEMENT_BEVEL_SPIRAL_H

#include "base/workings.h"
#include "element/bevel_pair.h"
#include "element/bevel_teeth.h"

typedef struct ts_bevel_spiral {
    double beta_e, beta_i;         /* rad  spiral angle at the outer and the inner end; NaN: spiral
                                           teeth whose cutter is not given, or does not reach     */
    double x_hmmin_m1, x_hmmin_m2; /* 1    least profile shift without undercut: mean section ... */
    double x_hmmin_i1, x_hmmin_i2; /* 1    ... and inner end; NaN where beta_i is                 */
    double clear_undercut_1;       /* 1    x_hm1 over the larger of its two limits; < 0: undercut */
    double clear_undercut_2;       /* 1    the same of gear 2.  Without beta_i the mean alone.    */
} ts_bevel_spiral;

/* `pair` and `teeth` are solved.  Teeth of spiral angle 0 without a cutter radius are straight. */
void ts_bevel_spiral_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                           ts_bevel_spiral *spiral, ts_workings *workings);

#endif
