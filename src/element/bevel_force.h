/* element/bevel_force.h: axial and radial force of a bevel gear, and which flank carries it. */
#ifndef TS_ELEMENT_BEVEL_FORCE_H
#define TS_ELEMENT_BEVEL_FORCE_H

#include "base/workings.h"

#include <stdbool.h>

typedef struct ts_bevel_force {
    double F_a; /* N, positive: away from the gear's apex (towards its back)          */
    double F_r; /* N, positive: towards the gear's own axis, at the point of contact  */
} ts_bevel_force;

/* Forces on one gear at the mean cone distance; friction left out.
 *
 * F_mt      N    tangential force at the mean pitch diameter, >= 0
 * alpha_n   rad  normal pressure angle;  beta_m: mean spiral angle without its hand, >= 0
 * delta     rad  pitch angle of this gear
 * concave_flank_loaded   see ts_bevel_concave_loaded; without meaning when beta_m is 0.  Where one
 *           gear is loaded on its concave flank its mate is loaded on its convex flank.
 *
 * derived: the tooth is pushed along the inward flank normal, whose parts along the cone are
 * F_mt*tan(beta_m), outwards when the loaded flank is concave, and F_mt*tan(alpha_n)/cos(beta_m)
 * into the cone.  ISO 23509:2016 gives the same forms. */
ts_bevel_force ts_bevel_forces(double F_mt, double alpha_n, double beta_m, double delta,
                               bool concave_flank_loaded, ts_workings *workings);

/* Is the concave flank of this gear loaded?
 *
 * hand      +1 right, -1 left (ISO 23509: the outer half of a right-hand tooth leans clockwise for
 *           one who looks at the teeth from the apex side); 0 straight: false
 * turns     +1 anticlockwise, -1 clockwise, seen from the gear's back, looking to its apex
 * drives    does this gear drive its mate?
 *
 * derived: the spiral angle grows outwards, so a tooth bends to the side to which its outer half
 * leans, and its concave flank faces that side: anticlockwise from the back for a right hand.  A
 * driver pushes with the flank that faces its rotation, a driven gear is pushed on the other. */
bool ts_bevel_concave_loaded(int hand, int turns, bool drives);

#endif
