/* search/arrange_turns.c: in how many goes are several answers found, and the first proven? */
#include "search/arrange_search.h"

#include <math.h>

static bool is_ended(const ts_arrange_wish *wish)
{
    return wish->stop != NULL && wish->stop(wish->context);
}

static void take(ts_arrange_result *result, const ts_arrange_result *other)
{
    ts_arrange_result_close(result);
    *result = *other;
}

/* The first is proven: all answers, or as many as are found before the end. */
static ts_status find_others(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                             ts_arrange_result *first, ts_arrange_result *result)
{
    ts_arrange_result all;
    const ts_status   status = ts_arrange_search(problem, wish, &all);
    if (status == TS_OK && all.end == TS_ARRANGE_PROVEN) {
        ts_arrange_result_close(first);
        take(result, &all);
        return TS_OK;
    }
    const bool had = ts_arrange_result_add(first, status == TS_OK ? &all : result, wish->answers);
    if (status == TS_OK)
        ts_arrange_result_close(&all);
    take(result, first);
    if (!had)
        ts_arrange_result_close(result);
    return had ? TS_OK : TS_NO_MEMORY;
}

/* The search for several was ended by its own limit, and left `result`. */
static ts_status prove_first(const ts_arrange_problem *problem, ts_arrange_wish *wish,
                             ts_arrange_result *result)
{
    ts_arrange_wish   one = *wish;
    ts_arrange_result first;
    one.answers     = 1;
    one.labels_most = wish->labels_most = 0;
    if (ts_arrange_search(problem, &one, &first) != TS_OK) {
        result->end = TS_ARRANGE_NO_MEMORY;
        return TS_OK; /* what was found stands */
    }
    if (first.end == TS_ARRANGE_PROVEN && first.count > 0)
        return find_others(problem, wish, &first, result);
    const bool lighter =
        first.count > 0 && (result->count == 0 || first.answers[0].mass < result->answers[0].mass);
    if (first.end == TS_ARRANGE_PROVEN || lighter) {
        take(result, &first);
        return TS_OK;
    }
    result->end   = first.end;
    result->bound = fmax(result->bound, first.bound);
    ts_arrange_result_close(&first);
    return TS_OK;
}

ts_status ts_arrange_search_in_turns(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                                     uint64_t labels_at_first, ts_arrange_result *result)
{
    ts_arrange_wish own    = *wish;
    own.labels_most        = own.answers > 1 ? labels_at_first : 0;
    const ts_status status = ts_arrange_search(problem, &own, result);
    if (status != TS_OK || result->end != TS_ARRANGE_STOPPED || own.labels_most == 0 ||
        is_ended(&own))
        return status;
    return prove_first(problem, &own, result);
}
