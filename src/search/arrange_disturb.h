/* search/arrange_disturb.h: which problem is it when loads or bands are not as demanded? */
#ifndef TS_SEARCH_ARRANGE_DISTURB_H
#define TS_SEARCH_ARRANGE_DISTURB_H

#include "base/arena.h"
#include "search/arrange_problem.h"

/* The problem with every power times `factor`, and with every band of `bands` (the same problem, or
 * the one in which nothing must keep its speed) narrower by `narrower`, rad/s, at each end that it
 * has; false without memory. */
bool ts_arrange_disturb(const ts_arrange_problem *problem, const ts_arrange_problem *bands,
                        double factor, double narrower, ts_arena *arena, ts_arrange_problem *out);

#endif
