/* search/arrange_disturb.h: which problem is it when loads or bands are not as demanded? */
#ifndef TS_SEARCH_ARRANGE_DISTURB_H
#define TS_SEARCH_ARRANGE_DISTURB_H

#include "base/arena.h"
#include "search/arrange_problem.h"

/* The problem with every power times `factor`, and with every band narrower by `narrower` (rad/s)
 * at each end that it has; false without memory. */
bool ts_arrange_disturb(const ts_arrange_problem *problem, double factor, double narrower,
                        ts_arena *arena, ts_arrange_problem *out);

#endif
