/* check/guard.h: what the rules about necks and what stands behind them have in common. */
#ifndef TS_CHECK_GUARD_H
#define TS_CHECK_GUARD_H

#include "check/rule.h"

/* The accessory, or the tower shaft with a neck. */
const char *ts_guard_name(const ts_check *check, const ts_guard *guard);
/* The record of its neck; of the pad where it has none. */
ts_node ts_guard_node(const ts_check *check, const ts_guard *guard);
/* What the workings of its wall are about. */
ts_node ts_guard_wall_node(const ts_check *check, const ts_guard *guard);
/* "a tooth of idler 3 breaks from 150 N.m on, beside the 12 N.m that others take there at climb";
 * with as many digits as it takes to differ from `other`. */
const char *ts_wall_says(ts_check *check, const ts_wall *wall, double other);
/* The first part on its way of which no torque is known, or NULL. */
const ts_part_capacity *ts_guard_blind(const ts_check *check, const ts_guard *guard);
/* Is the wall known, with all teeth on the way?  What a mesh lacks is asked for by E1-tooth-bending
 * and the like, once, and not again for each pad behind it. */
bool ts_wall_known(ts_check *check, const ts_guard *guard, ts_node about);

#endif
