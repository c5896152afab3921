/* search/arrange_conflict.c: which few demands are enough to rule everything out? */
#include "search/arrange_conflict.h"

#include "search/arrange_verify.h"

#include <math.h>
#include <string.h>

enum { HALVINGS = 20, KNOWN_MOST = 12 };

typedef struct explainer {
    const ts_arrange_problem *problem;
    ts_arrange_wish           wish;
    ts_arena                 *arena;
    ts_demand                *demands;
    size_t                    count;
    bool                     *kept;  /* [demand] */
    ts_demand                *list;  /* room for those that are dropped */
    ts_arrangement           *known; /* what was found to fit some of them, the last few */
    size_t                    known_count, known_next;
    ts_conflict              *out;
    ts_status                 status;
    bool                      stopped;
} explainer;

/* One number that a demand may give a little of. */
typedef struct give {
    double from, end; /* as demanded, and where it is let go */
} give;

/* What fitted a question before often fits the next. */
static bool one_is_known(const explainer *e, const ts_arrange_problem *p)
{
    for (size_t i = 0; i < e->known_count; i++)
        if (ts_arrange_verify(p, &e->known[i]) == TS_RULE_NONE)
            return true;
    return false;
}

static void remember(explainer *e, const ts_arrangement *a)
{
    e->known[e->known_next] = *a;
    e->known_next           = (e->known_next + 1) % KNOWN_MOST;
    e->known_count += e->known_count < KNOWN_MOST ? 1 : 0;
}

/* Does anything fit? */
static bool fits(explainer *e, const ts_arrange_problem *p)
{
    ts_arrange_result result;

    if (e->status != TS_OK || e->stopped)
        return true; /* ends every loop below soon */
    if (one_is_known(e, p))
        return true;
    e->out->searches++;
    e->status = ts_arrange_search(p, &e->wish, &result);
    if (e->status != TS_OK)
        return true;
    const bool found = result.count > 0;
    if (!found && result.end == TS_ARRANGE_NO_MEMORY)
        e->status = TS_NO_MEMORY;
    e->stopped = !found && result.end == TS_ARRANGE_STOPPED;
    if (found)
        remember(e, &result.answers[0]);
    ts_arrange_result_close(&result);
    return found;
}

/* The problem with what is kept, less the demands from..to; in memory that the caller closes. */
static bool make_kept(explainer *e, size_t from, size_t to, ts_arrange_problem *p, ts_arena *arena)
{
    size_t dropped = 0;
    for (size_t i = 0; i < e->count; i++)
        if (!e->kept[i] || (i >= from && i < to))
            e->list[dropped++] = e->demands[i];
    const bool made = arena != NULL && ts_demands_drop(e->problem, e->list, dropped, p, arena);
    if (!made)
        e->status = TS_NO_MEMORY;
    return made;
}

static bool fits_without(explainer *e, size_t from, size_t to)
{
    ts_arena          *arena = ts_arena_open(e->wish.allocator);
    ts_arrange_problem p;
    const bool         fit = !make_kept(e, from, to, &p, arena) || fits(e, &p);
    ts_arena_close(arena);
    return fit;
}

/* Drops what can be dropped with nothing fitting still, the whole range if possible.  What is kept
 * was needed with more demands around it, and so is needed with fewer. */
static void reduce(explainer *e, size_t from, size_t to)
{
    if (from == to || e->status != TS_OK || e->stopped)
        return;
    if (!fits_without(e, from, to)) {
        for (size_t i = from; i < to; i++)
            e->kept[i] = false;
        return;
    }
    if (to - from == 1)
        return;
    reduce(e, from, from + (to - from) / 2);
    reduce(e, from + (to - from) / 2, to);
}

/* ---- how much must give -----------------------------------------------------------------------
 */

/* The numbers of a demand: at most two ends, each with where it is let go. */
static size_t gives_of(const ts_arrange_problem *p, const ts_demand *d, give gives[2])
{
    const ts_arrange_accessory *a = d->kind <= TS_DEMAND_BODY ? &p->accessories[d->index] : NULL;
    const ts_arrange_box       *b =
        a == NULL && d->kind <= TS_DEMAND_INPUT_BODY ? &p->boxes[d->index] : NULL;

    switch (d->kind) {
    case TS_DEMAND_BAND:
        gives[0] = (give){a->speed_least[d->condition], 0.0};
        gives[1] = (give){a->speed_most[d->condition], 10.0 * a->speed_most[d->condition]};
        return 2;
    case TS_DEMAND_BODY:
        gives[0] = (give){a->body_radius, 0.0};
        return 1;
    case TS_DEMAND_WRAP:
        gives[0] = (give){b->wrap_most, 6.283185307179586};
        return 1;
    case TS_DEMAND_BRANCH:
        gives[0] = (give){b->side_most, 6.283185307179586};
        return 1;
    case TS_DEMAND_GAP:
        gives[0] = (give){p->gap, 0.0};
        return 1;
    case TS_DEMAND_WIDTH:
        gives[0] = (give){p->width_over_diameter, 4.0};
        return 1;
    default:
        return 0;
    }
}

/* Puts a number where the demand has its own; `p` was made by ts_demands_drop and owns its lists.
 */
static void put_number(ts_arrange_problem *p, const ts_demand *d, size_t end, double number)
{
    ts_arrange_accessory *a = (ts_arrange_accessory *)&p->accessories[d->index];
    ts_arrange_box       *b = (ts_arrange_box *)&p->boxes[d->index];

    switch (d->kind) {
    case TS_DEMAND_BAND:
        ((double *)(end == 0 ? a->speed_least : a->speed_most))[d->condition] = number;
        break;
    case TS_DEMAND_BODY:
        a->body_radius = number;
        break;
    case TS_DEMAND_WRAP:
        b->wrap_most = number;
        break;
    case TS_DEMAND_BRANCH:
        b->side_most = number;
        break;
    case TS_DEMAND_GAP:
        p->gap = number;
        break;
    default:
        p->width_over_diameter = number;
        break;
    }
}

static bool fits_with(explainer *e, const ts_demand *d, size_t end, double number)
{
    ts_arena          *arena = ts_arena_open(e->wish.allocator);
    ts_arrange_problem p;
    bool               fit = false;

    if (make_kept(e, 0, 0, &p, arena)) {
        put_number(&p, d, end, number);
        fit = fits(e, &p);
    }
    ts_arena_close(arena);
    return fit && e->status == TS_OK && !e->stopped;
}

/* Halves the range between what does not fit and what does. */
static void relax(explainer *e, ts_conflict_member *m)
{
    give         gives[2];
    const size_t ends = gives_of(e->problem, &m->demand, gives);
    double       best = (double)INFINITY;

    m->from = m->to = (double)NAN;
    for (size_t end = 0; end < ends; end++) {
        double no = gives[end].from, yes = gives[end].end;
        if (no == yes || !fits_with(e, &m->demand, end, yes))
            continue;
        for (int i = 0; i < HALVINGS; i++) {
            const double middle = 0.5 * (no + yes);
            if (fits_with(e, &m->demand, end, middle))
                yes = middle;
            else
                no = middle;
        }
        if (fabs(yes - gives[end].from) < best && e->status == TS_OK && !e->stopped) {
            best    = fabs(yes - gives[end].from);
            m->from = gives[end].from;
            m->to   = yes;
        }
    }
}

static bool prepare(explainer *e)
{
    e->demands = ts_demands_of(e->problem, &e->count, e->arena);
    e->kept    = TS_TAKE(e->arena, bool, e->count);
    e->list    = TS_TAKE(e->arena, ts_demand, e->count);
    e->known   = TS_TAKE(e->arena, ts_arrangement, KNOWN_MOST);
    if (e->known == NULL || e->demands == NULL || e->kept == NULL || e->list == NULL)
        return false;
    memset(e->kept, true, e->count);
    return true;
}

static bool write_members(explainer *e)
{
    ts_conflict *out = e->out;

    out->members = TS_TAKE(e->arena, ts_conflict_member, e->count);
    if (out->members == NULL)
        return false;
    for (size_t i = 0; i < e->count; i++)
        if (e->kept[i])
            out->members[out->count++].demand = e->demands[i];
    for (size_t i = 0; i < out->count; i++)
        relax(e, &out->members[i]);
    return true;
}

ts_status ts_arrange_explain(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                             ts_conflict *conflict, ts_arena *arena)
{
    explainer e = {
        .problem = problem, .wish = *wish, .arena = arena, .out = conflict, .status = TS_OK};

    *conflict      = (ts_conflict){0};
    e.wish.any     = true;
    e.wish.answers = 1;
    if (!prepare(&e))
        return TS_NO_MEMORY;
    if (fits(&e, problem))
        return e.status;
    if (!fits_without(&e, 0, e.count)) {
        conflict->hopeless = e.status == TS_OK && !e.stopped;
        return e.status;
    }
    reduce(&e, 0, e.count);
    if (e.status != TS_OK || e.stopped)
        return e.status;
    conflict->found = true;
    return write_members(&e) ? e.status : TS_NO_MEMORY;
}
