/* element/tip_relief.h: how much of the deflection of the teeth does tip relief take up?
 * ISO/TS 6336-20, -21 (X_Ca) and -22.
 */
#ifndef TS_ELEMENT_TIP_RELIEF_H
#define TS_ELEMENT_TIP_RELIEF_H

#include "base/workings.h"

/* C_eff, m: the relief that just makes up for the deflection under w_A = F_t K_A K_gamma/b (N/m).
 * c_mesh, Pa: the single stiffness c' of spur, the mesh stiffness c_gamma_alpha of helical gears.
 */
double ts_effective_relief(double w_A, double c_mesh, ts_workings *workings);

/* r of gear 1 or 2: the part of C_eff that its relief C_a (m, >= 0) makes up for, at most 1.  1
 * without load. */
double ts_relief_part(double C_a, double C_eff, int gear, ts_workings *workings);

/* X_Ca: how far relief eases the entry of the teeth, from the part r of C_eff and the contact
 * ratios eps_1 (recess, at the tip of gear 1) and eps_2 (approach). */
double ts_tip_relief_factor(double r, double eps_1, double eps_2, ts_workings *workings);

/* Which gear's relief counts for X_Ca, 1 or 2: that of the driven gear, unless the path on the
 * other side of C is more than half again as long.  `driver` is 1 or 2. */
int ts_relief_that_counts(int driver, double eps_1, double eps_2);

#endif
