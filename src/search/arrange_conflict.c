/* search/arrange_conflict.c: which few demands are enough to rule everything out? */
#include "search/arrange_conflict.h"

#include "search/arrange_verify.h"

#include <math.h>
#include <string.h>

enum { HALVINGS = 20, HALVINGS_OPEN = 10, KNOWN_MOST = 12, UNSURE_MOST = 3, ALL_MOST = 10 };

/* Without a demand the ways to search may be too many: a question that takes more labels than this
 * for one choice of a box stays open, and the demand that it was about is kept. */
#define LABELS_MOST 400000 /* ALL_MOST times as many where every demand stands */

typedef enum ts_fit { TS_FIT_NO, TS_FIT_YES, TS_FIT_OPEN } ts_fit;

typedef struct explainer {
    const ts_arrange_problem *problem;
    ts_arrange_wish           wish;
    ts_arena                 *arena;
    ts_demand                *demands;
    size_t                    count;
    bool                     *kept;  /* [demand] */
    bool                     *open;  /* [demand] kept, and whether it is needed is not known */
    ts_demand                *list;  /* room for those that are dropped */
    ts_arrangement           *known; /* what was found to fit some of them, the last few */
    size_t                    known_count, known_next;
    const ts_arrangement     *fitted; /* that of the last question, when something did */
    ts_conflict              *out;
    ts_status                 status;
    bool                      stopped;
} explainer;

/* One number that a demand may give a little of. */
typedef struct give {
    double from, end; /* as demanded, and where it is let go */
} give;

/* What fitted a question before often fits the next. */
static bool one_is_known(explainer *e, const ts_arrange_problem *p)
{
    for (size_t i = 0; i < e->known_count; i++)
        if (ts_arrange_verify(p, &e->known[i]) == TS_RULE_NONE) {
            e->fitted = &e->known[i];
            return true;
        }
    return false;
}

static void remember(explainer *e, const ts_arrangement *a)
{
    e->known[e->known_next] = *a;
    e->fitted               = &e->known[e->known_next];
    e->known_next           = (e->known_next + 1) % KNOWN_MOST;
    e->known_count += e->known_count < KNOWN_MOST ? 1 : 0;
}

static bool is_interrupted(const explainer *e)
{
    return e->wish.stop != NULL && e->wish.stop(e->wish.context);
}

/* Does anything fit? */
static ts_fit fits(explainer *e, const ts_arrange_problem *p)
{
    ts_arrange_result result;

    if (e->status != TS_OK || e->stopped)
        return TS_FIT_YES; /* ends every loop below soon */
    if (one_is_known(e, p))
        return TS_FIT_YES;
    e->out->searches++;
    e->status = ts_arrange_search(p, &e->wish, &result);
    if (e->status != TS_OK)
        return TS_FIT_YES;
    const bool found = result.count > 0;
    const bool open  = !found && result.end == TS_ARRANGE_STOPPED;
    if (!found && result.end == TS_ARRANGE_NO_MEMORY)
        e->status = TS_NO_MEMORY;
    e->stopped = open && is_interrupted(e);
    if (found)
        remember(e, &result.answers[0]);
    ts_arrange_result_close(&result);
    return found || e->stopped ? TS_FIT_YES : open ? TS_FIT_OPEN : TS_FIT_NO;
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

static ts_fit fits_without(explainer *e, size_t from, size_t to)
{
    ts_arena          *arena = ts_arena_open(e->wish.allocator);
    ts_arrange_problem p;
    const ts_fit       fit = make_kept(e, from, to, &p, arena) ? fits(e, &p) : TS_FIT_YES;
    ts_arena_close(arena);
    return fit;
}

/* Drops what can be dropped with nothing fitting still, the whole range if possible.  What is kept
 * was needed with more demands around it, and so is needed with fewer. */
static void reduce(explainer *e, size_t from, size_t to)
{
    if (from == to || e->status != TS_OK || e->stopped)
        return;
    const ts_fit fit = fits_without(e, from, to);
    if (fit == TS_FIT_NO) {
        for (size_t i = from; i < to; i++)
            e->kept[i] = false;
        return;
    }
    if (to - from == 1) {
        e->open[from] = fit == TS_FIT_OPEN;
        return;
    }
    reduce(e, from, from + (to - from) / 2);
    reduce(e, from + (to - from) / 2, to);
}

/* What was open among more demands may be known among fewer. */
static void ask_again(explainer *e)
{
    for (size_t i = 0; i < e->count && e->status == TS_OK && !e->stopped; i++) {
        if (!e->open[i])
            continue;
        const ts_fit fit = fits_without(e, i, i + 1);
        e->kept[i]       = fit != TS_FIT_NO;
        e->open[i]       = fit == TS_FIT_OPEN;
    }
}

/* ---- how much must give -----------------------------------------------------------------------
 */

/* The numbers of a demand: at most two ends, each with where it is let go. */
static size_t gives_of(const ts_arrange_problem *p, const ts_demand *d, give gives[2])
{
    switch (d->kind) {
    case TS_DEMAND_BAND: {
        const ts_arrange_accessory *a    = &p->accessories[d->index];
        const double                most = a->speed_most[d->condition];
        gives[0]                         = (give){a->speed_least[d->condition], 0.0};
        gives[1]                         = (give){most, 10.0 * most};
        return 2;
    }
    case TS_DEMAND_BODY:
        gives[0] = (give){p->accessories[d->index].body_radius, 0.0};
        return 1;
    case TS_DEMAND_WRAP:
        gives[0] = (give){p->boxes[d->index].wrap_most, 6.283185307179586};
        return 1;
    case TS_DEMAND_BRANCH:
        gives[0] = (give){p->boxes[d->index].side_most, 6.283185307179586};
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

/* With that number, what is kept or, quicker, every demand of the problem. */
static ts_fit fits_with(explainer *e, const ts_demand *d, size_t end, double number, bool all)
{
    ts_arena          *arena = ts_arena_open(e->wish.allocator);
    ts_arrange_problem p;
    ts_fit             fit  = TS_FIT_NO;
    const bool         made = all ? arena != NULL && ts_demands_drop(e->problem, NULL, 0, &p, arena)
                                  : make_kept(e, 0, 0, &p, arena);

    if (made) {
        put_number(&p, d, end, number);
        e->wish.labels_most = all ? (uint64_t)ALL_MOST * LABELS_MOST : LABELS_MOST;
        fit                 = fits(e, &p);
    } else {
        e->status = TS_NO_MEMORY;
    }
    ts_arena_close(arena);
    return e->status == TS_OK && !e->stopped ? fit : TS_FIT_NO;
}

/* What fits all demands fits those that are kept.  After some open questions only that is asked,
 * for it has fewer ways to search. */
static bool will_do(explainer *e, const ts_demand *d, size_t end, double number, int *unsure)
{
    if (fits_with(e, d, end, number, true) == TS_FIT_YES)
        return true;
    if (*unsure >= UNSURE_MOST)
        return false;
    const ts_fit fit = fits_with(e, d, end, number, false);
    *unsure += fit == TS_FIT_OPEN ? 1 : 0;
    return fit == TS_FIT_YES;
}

/* What fitted the last question may need less than it was allowed. */
static double needed(const explainer *e, const ts_demand *d, double allowed)
{
    if (d->kind != TS_DEMAND_WRAP || e->fitted == NULL || !e->fitted->boxes[d->index].present)
        return allowed;
    const double own = ts_arrange_wrap(e->problem, e->fitted, d->index) + 1e-9;
    return own > 1e-6 ? fmin(allowed, own) : allowed;
}

/* Halves the range between what does not do and what does. */
static double least_of(explainer *e, const ts_demand *d, size_t end, give g, bool *open)
{
    double no = g.from, yes = g.end;
    int    unsure = 0;
    if (no == yes || !will_do(e, d, end, yes, &unsure))
        return (double)INFINITY;
    yes = needed(e, d, yes);
    for (int i = 0; i < (unsure > 0 ? HALVINGS_OPEN : HALVINGS) && no != yes; i++) {
        const double middle = 0.5 * (no + yes);
        if (will_do(e, d, end, middle, &unsure))
            yes = needed(e, d, middle);
        else
            no = middle;
    }
    *open = unsure > 0;
    return yes;
}

static void relax(explainer *e, ts_conflict_member *m)
{
    give         gives[2];
    const size_t ends = gives_of(e->problem, &m->demand, gives);
    double       best = (double)INFINITY;

    m->from = m->to = (double)NAN;
    for (size_t end = 0; end < ends; end++) {
        bool         open = false;
        const double to   = least_of(e, &m->demand, end, gives[end], &open);
        m->at_most        = m->at_most || open;
        if (fabs(to - gives[end].from) < best && e->status == TS_OK && !e->stopped) {
            best    = fabs(to - gives[end].from);
            m->from = gives[end].from;
            m->to   = to;
        }
    }
}

static bool prepare(explainer *e)
{
    e->demands = ts_demands_of(e->problem, &e->count, e->arena);
    e->kept    = TS_TAKE(e->arena, bool, e->count);
    e->open    = TS_TAKE(e->arena, bool, e->count);
    e->list    = TS_TAKE(e->arena, ts_demand, e->count);
    e->known   = TS_TAKE(e->arena, ts_arrangement, KNOWN_MOST);
    if (e->open == NULL || e->known == NULL || e->demands == NULL || e->kept == NULL ||
        e->list == NULL)
        return false;
    memset(e->kept, true, e->count);
    return true;
}

static bool write_members(explainer *e)
{
    ts_conflict *out = e->out;

    out->members = TS_TAKE(e->arena, ts_conflict_member, e->count);
    out->held    = TS_TAKE(e->arena, ts_demand, e->count);
    if (out->members == NULL || out->held == NULL)
        return false;
    for (size_t i = 0; i < e->count; i++) {
        if (e->kept[i] && e->open[i])
            out->held[out->held_count++] = e->demands[i];
        else if (e->kept[i])
            out->members[out->count++].demand = e->demands[i];
    }
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
    if (fits(&e, problem) != TS_FIT_NO)
        return e.status;
    e.wish.labels_most = LABELS_MOST;
    if (fits_without(&e, 0, e.count) == TS_FIT_NO) {
        conflict->hopeless = e.status == TS_OK && !e.stopped;
        return e.status;
    }
    reduce(&e, 0, e.count);
    ask_again(&e);
    if (e.status != TS_OK || e.stopped)
        return e.status;
    conflict->found = true;
    return write_members(&e) ? e.status : TS_NO_MEMORY;
}
