/* check/crowding.h: which body on the same face stands nearest to another, in its box or outside?
 */
#ifndef TS_CHECK_CROWDING_H
#define TS_CHECK_CROWDING_H

#include "check/rule.h"

#include <stdbool.h>

/* Puts, for every pad with a body, the question of the gap to the tightest body before it on the
 * same face, in the same box or in another one. */
void ts_judge_bodies(ts_check *check, bool same_box);

#endif
