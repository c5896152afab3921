/* element/mating_limit.h: closed-form limits of tooth numbers and tip circles in mesh.
 *
 * Textbook forms for standard gears (no profile shift, equal addenda k in modules): the tip of the
 * mate must not reach past the point where the line of action touches the base circle.
 */
#ifndef TS_ELEMENT_MATING_LIMIT_H
#define TS_ELEMENT_MATING_LIMIT_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"

/* k: addendum over normal module; alpha_t, beta: rad.  For helical gears k is multiplied by
 * cos(beta) because the addendum is small against the transverse module.  Results are exact
 * numbers, not whole ones; the least whole tooth number is the next larger integer. */
double ts_teeth_least_with_rack(double k, double alpha_t, double beta, ts_workings *workings);
double ts_teeth_least_at_ratio(double k, double alpha_t, double beta, double u,
                               ts_workings *workings);

/* The largest wheel that a pinion of z_1 teeth drives without interference; INFINITY when it goes
 * with a rack. */
double ts_teeth_most_of_wheel(double k, double alpha_t, double beta, int z_1,
                              ts_workings *workings);

/* The largest tip radii, m, that do not reach past the base tangent points of a solved pair. */
double ts_tip_radius_most_1(const ts_cylindrical_pair *pair, ts_workings *workings);
double ts_tip_radius_most_2(const ts_cylindrical_pair *pair, ts_workings *workings);

/* Tip radius of gear 1 (2), m, that ends the path of contact at the distance g (m) past the pitch
 * point on its own side: recess for gear 1, approach for gear 2. */
double ts_tip_radius_for_path_1(const ts_cylindrical_pair *pair, double g, ts_workings *workings);
double ts_tip_radius_for_path_2(const ts_cylindrical_pair *pair, double g, ts_workings *workings);

/* Room, m along the tip circle of gear 2, that the tips of a solved internal pair leave each other
 * where they pass beside the mesh, flank on flank; below 0 they run into each other.  INFINITY for
 * an external pair, and where the tip circles do not cross. */
double ts_tips_passing_room(const ts_cylindrical_pair *pair, ts_workings *workings);

#endif
