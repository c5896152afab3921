/* Which arrangements are the lightest for their wrap? */
#include "study/arranging.h"

#include <math.h>
#include <string.h>

#define HALVINGS 12   /* of the wrap of the lightest: a fortieth of a degree in a hundred */
#define SLACK    1e-9 /* rad */

/* The problem with every box within that wrap. */
static bool narrow(const ts_arranging *a, double wrap, ts_arena *arena, ts_arrange_problem *out)
{
    const size_t    count = a->problem.problem.box_count;
    ts_arrange_box *boxes = TS_TAKE(arena, ts_arrange_box, count);
    if (boxes == NULL)
        return false;
    memcpy(boxes, a->problem.problem.boxes, count * sizeof *boxes);
    for (size_t b = 0; b < count; b++)
        boxes[b].wrap_most = fmin(boxes[b].wrap_most, wrap);
    *out       = a->problem.problem;
    out->boxes = boxes;
    return true;
}

/* Searches within a wrap; `any` asks only whether something fits. */
static ts_status find(ts_arranging *a, double wrap, bool any, bool *fits, ts_front_point *point)
{
    ts_arrange_wish    wish = ts_arranging_wish(a);
    ts_arrange_problem within;
    ts_arrange_result  result;
    ts_arena          *arena = ts_arena_open(a->study->allocator);
    wish.answers             = 1;
    wish.any                 = any;
    ts_status status = arena != NULL && narrow(a, wrap, arena, &within) ? TS_OK : TS_NO_MEMORY;
    if (status == TS_OK)
        status = ts_arrange_search(&within, &wish, &result);
    if (status == TS_OK) {
        *fits        = result.count > 0;
        point->limit = wrap;
        point->end   = result.end;
        if (*fits) {
            point->found = result.answers[0];
            point->rule  = ts_arrange_verify(&within, &point->found);
        }
        ts_arrange_result_close(&result);
    }
    ts_arena_close(arena);
    return status;
}

static double wrap_of(const ts_arranging *a, const ts_arrangement *found)
{
    double wrap = 0.0;
    for (size_t b = 0; b < a->problem.problem.box_count; b++)
        if (found->boxes[b].present)
            wrap = fmax(wrap, found->boxes[b].wrap);
    return wrap;
}

/* The least wrap within which anything fits, between what fits and what does not. */
static ts_status find_least(ts_arranging *a, double *fits_in)
{
    double no = 0.0, yes = wrap_of(a, &a->result.answers[0]);
    for (int i = 0; i < HALVINGS; i++) {
        ts_front_point  point  = {0};
        bool            fits   = false;
        const double    wrap   = 0.5 * (no + yes);
        const ts_status status = find(a, wrap, true, &fits, &point);
        if (status != TS_OK)
            return status;
        if (point.end != TS_ARRANGE_PROVEN && !fits)
            break;
        if (fits)
            yes = fmin(yes, wrap_of(a, &point.found) + SLACK);
        else
            a->front.nothing_below = no = wrap;
    }
    *fits_in = yes;
    return TS_OK;
}

static ts_status add_point(ts_arranging *a, const ts_front_point *point)
{
    ts_front_point *own = &a->front.points[a->front.count];
    ts_text         text;
    *own                   = *point;
    const ts_status status = ts_arranging_judge(a, &own->found, &text, &own->verdict);
    if (status == TS_OK)
        a->front.count++;
    return status;
}

ts_status ts_arranging_find_front(ts_arranging *a)
{
    const size_t steps = a->options->front;
    double       least;
    if (steps == 0 || a->result.count == 0 || a->result.end != TS_ARRANGE_PROVEN)
        return TS_OK;
    a->front.nothing_below = (double)NAN;
    a->front.points        = TS_TAKE(a->arena, ts_front_point, steps + 1);
    if (a->front.points == NULL)
        return TS_NO_MEMORY;
    ts_front_point best = {.end = a->result.end, .found = a->result.answers[0]};
    const double   most = best.limit = wrap_of(a, &best.found);
    best.rule                        = a->certificate.answer;
    ts_status status                 = add_point(a, &best);
    if (status == TS_OK)
        status = find_least(a, &least);
    for (size_t i = 1; i <= steps && status == TS_OK; i++) {
        const double   limit = least + (most - least) * (double)(steps - i) / (double)steps;
        ts_front_point point = {0};
        bool           fits  = false;
        if (wrap_of(a, &a->front.points[a->front.count - 1].found) <= limit + SLACK)
            continue; /* the one before keeps within it */
        status = find(a, limit, false, &fits, &point);
        if (status == TS_OK && fits)
            status = add_point(a, &point);
        if (point.end != TS_ARRANGE_PROVEN)
            break;
    }
    return status;
}
