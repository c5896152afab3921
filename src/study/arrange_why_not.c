/* What would it take to have an accessory somewhere else? */
#include "study/arranging.h"
#include "study/place_text.h"

static ts_arrange_wish wish_of(const ts_arranging *a)
{
    ts_arrange_wish wish = ts_arranging_wish(a);
    wish.answers         = 1;
    return wish;
}

/* The first answer that has it there is the lightest that has, as long as whether it is there
 * follows from order, faces and boxes, in which the answers differ; sides may be mirrored. */
static bool is_answered(const ts_arranging *a, ts_why_not *w)
{
    if (w->place.side != TS_CHOOSE_EITHER_SIDE || w->bars != 0 ||
        a->result.end != TS_ARRANGE_PROVEN)
        return false;
    const size_t proven = a->result.others_open ? 1 : a->result.count;
    for (size_t i = 0; i < proven; i++) {
        if (!ts_drive_place_is(&a->problem, &w->place, &a->result.answers[i]))
            continue;
        w->end     = TS_ARRANGE_PROVEN;
        w->fits    = true;
        w->found   = a->result.answers[i];
        w->verdict = a->verdicts[i];
        return true;
    }
    return false;
}

static ts_status explain(ts_arranging *a, const ts_arrange_problem *forced, ts_why_not *w)
{
    ts_arrange_problem    light = *forced;
    const ts_arrange_wish wish  = wish_of(a);
    light.model.width           = ts_drive_least_width;
    light.model.proportional    = true;
    const ts_status status      = ts_arrange_explain(&light, &wish, &w->conflict, a->arena);
    w->explained = status == TS_OK && (wish.stop == NULL || !wish.stop(wish.context));
    return status == TS_NO_MEMORY && !ts_arena_failed(a->arena) ? TS_OK : status;
}

static ts_status answer(ts_arranging *a, ts_why_not *w)
{
    ts_arrange_problem forced;
    ts_arrange_result  result;
    ts_text            text;

    w->bars = ts_drive_place_bars(&a->study->drive, &a->problem, &w->place);
    if (is_answered(a, w))
        return TS_OK;
    if (!ts_drive_place_force(&a->problem, &w->place, a->arena, &forced))
        return TS_NO_MEMORY;
    const ts_arrange_wish wish   = wish_of(a);
    ts_status             status = ts_arrange_search(&forced, &wish, &result);
    if (status != TS_OK)
        return status;
    w->end  = result.end;
    w->fits = result.count > 0;
    if (w->fits)
        w->found = result.answers[0];
    ts_arrange_result_close(&result);
    if (w->fits)
        status = ts_arranging_judge(a, &w->found, &text, &w->verdict);
    else if (w->end == TS_ARRANGE_PROVEN)
        status = explain(a, &forced, w);
    return status;
}

ts_status ts_arranging_read_places(ts_arranging *a)
{
    const size_t count = a->options->why_not_count;
    a->why_not         = TS_TAKE(a->arena, ts_why_not, count + 1);
    if (a->why_not == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < count; i++) {
        a->why_not[i].asked = a->options->why_not[i];
        if (!ts_place_read(a->study, &a->problem, a->options->why_not[i], &a->why_not[i].place))
            return TS_NOT_UNDERSTOOD;
    }
    return TS_OK;
}

ts_status ts_arranging_answer_places(ts_arranging *a)
{
    ts_status status = TS_OK;
    if (a->result.count == 0)
        return TS_OK; /* nothing fits anywhere, which has its own explanation */
    for (size_t i = 0; i < a->options->why_not_count && status == TS_OK; i++) {
        status           = answer(a, &a->why_not[i]);
        a->why_not_count = i + 1;
    }
    return status;
}
