/* element/stern_brocot.h: the simplest ratios of whole numbers near a wanted one. */
#ifndef TS_ELEMENT_STERN_BROCOT_H
#define TS_ELEMENT_STERN_BROCOT_H

#include "base/rational.h"

#include <stdbool.h>
#include <stddef.h>

/* A walk down the Stern-Brocot tree, from 0/1 and 1/0, by mediants towards a target.  Every best
 * approximation lies on the way. */
typedef struct ts_mediant_walk {
    ts_rational low, high; /* bracket the target; high may be 1/0 */
    ts_rational here;      /* the mediant reached                 */
    bool        ended;     /* the target itself was reached, or the next mediant would overflow */
} ts_mediant_walk;

/* Stands on 1/1.  Target > 0. */
ts_mediant_walk ts_mediant_begin(void);
/* One step; false when the target was reached or nothing simpler is left within 64 bits. */
bool ts_mediant_step(ts_mediant_walk *walk, ts_rational target);

/* The same by a floating-point target. */
bool ts_mediant_step_to(ts_mediant_walk *walk, double target);

/* The fraction nearest to target > 0 with 1 <= over <= over_most and 1 <= under <= under_most; the
 * smaller one when two are equally near.  under == 0 when there is none.  Takes at most over_most +
 * under_most steps. */
ts_rational ts_nearest_ratio(double target, int over_most, int under_most);

#endif
