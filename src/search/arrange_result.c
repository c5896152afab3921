/* search/arrange_result.c: what becomes of the answers of a search? */
#include "search/arrange_search.h"

#include <math.h>
#include <string.h>

void ts_arrange_result_tell_ways(ts_arrange_result *r)
{
    for (size_t i = 0; i < r->pair_count; i++) {
        ts_pair_record *way = &r->pairs[i];
        for (size_t k = 0; k < r->count; k++) {
            const ts_arranged_box *box = &r->answers[k].boxes[way->box];
            if (box->present && box->choice == way->choice)
                way->found = fmin(way->found, r->answers[k].mass);
        }
    }
}

bool ts_arrange_result_add(ts_arrange_result *proven, const ts_arrange_result *so_far,
                           size_t answers)
{
    ts_arrangement *all = TS_TAKE(proven->arena, ts_arrangement, answers);
    if (all == NULL)
        return false;
    memcpy(all, proven->answers, proven->count * sizeof *all);
    for (size_t i = 0; i < so_far->count && proven->count < answers; i++)
        if (so_far->answers[i].shape != all[0].shape && so_far->answers[i].mass >= all[0].mass)
            all[proven->count++] = so_far->answers[i];
    proven->answers     = all;
    proven->others_open = true;
    ts_arrange_result_tell_ways(proven);
    return true;
}

void ts_arrange_result_close(ts_arrange_result *result)
{
    ts_arena_close(result->arena);
    *result = (ts_arrange_result){0};
}
