/* search/arrange_search.c: in which order are the pairs searched, and when is nothing left? */
#include "search/arrange_search.h"

#include "search/arrange_join.h"
#include "search/arrange_verify.h"
#include "search/crew.h"
#include "search/locked_memory.h"

#include <math.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

enum { PLANES_AT_ONCE = 12 };
enum { BEAM = 16, BEAM_PAIRS = 3, BEAM_ANY = 2, TEETH_ANY = 10 };

static const double infinite = (double)INFINITY;

/* One box with some set, as good as was found. */
typedef struct found {
    double           mass;
    uint64_t         shape;
    ts_arranged_box *box; /* NULL: none */
} found;

typedef struct search {
    const ts_arrange_problem *problem;
    const ts_arrange_wish    *wish;
    ts_arrange_result        *result;
    ts_allocator              allocator;
    ts_locked_memory          memory;
    ts_arrange_tables         tables;
    ts_branch_room           *room;
    size_t                    sets, answers, workers;
    found    *found[TS_ARRANGE_BOXES];  /* [set * answers + i], lightest first                 */
    double   *least[TS_ARRANGE_BOXES];  /* [set] no lighter box carries exactly that set       */
    double   *others[TS_ARRANGE_BOXES]; /* [set] the other boxes together carry that set       */
    ts_joint *joints;                   /* [set * answers + i] of the pair at hand             */
    double    limit;                    /* what the last of the answers weighs                 */
    double    lightest;                 /* and the first                                       */
    bool      least_at_once;            /* so few planes that the model is asked about all     */
} search;

static bool is_stopped(const search *s)
{
    return s->wish->stop != NULL && s->wish->stop(s->wish->context);
}

/* Arrangements from this mass up count as no lighter than the answers. */
static double cutoff_of(const search *s)
{
    if (s->wish->any && isfinite(s->limit))
        return 0.0;
    return s->limit * (1.0 - TS_MASS_SLACK);
}

/* ---- bounds of pairs --------------------------------------------------------------------------
 */

/* both[set]: the least of one[part] + other[the rest of the set]. */
static void share_between(size_t sets, const double *one, const double *other, double *both)
{
    for (uint32_t set = 0; set < sets; set++) {
        double best = infinite;
        for (uint32_t part = set;; part = (part - 1) & set) {
            best = fmin(best, one[part] + other[set & ~part]);
            if (part == 0)
                break;
        }
        both[set] = best;
    }
}

/* What all boxes but one carry, at least. */
static bool make_others(search *s, size_t box)
{
    ts_arena  *arena = ts_arena_open(&s->allocator);
    double    *sum   = arena != NULL ? TS_TAKE(arena, double, s->sets) : NULL;
    double    *next  = arena != NULL ? TS_TAKE(arena, double, s->sets) : NULL;
    const bool had   = sum != NULL && next != NULL;

    for (size_t set = 1; had && set < s->sets; set++)
        sum[set] = infinite;
    for (size_t b = 0; had && b < s->problem->box_count; b++) {
        if (b == box)
            continue;
        share_between(s->sets, sum, s->least[b], next);
        memcpy(sum, next, s->sets * sizeof *sum);
    }
    if (had)
        memcpy(s->others[box], sum, s->sets * sizeof *sum);
    ts_arena_close(arena);
    return had;
}

typedef struct rooting {
    search         *s;
    ts_pair_record *records;
    double         *lowered; /* [pair * sets + set], or NULL: roots are wanted */
    bool           *failed;  /* [pair] */
    atomic_bool     stopped; /* told by the first worker, who alone asks */
} rooting;

static const double *others_of(const search *s, uint32_t box)
{
    return s->problem->box_count > 1 ? s->others[box] : NULL;
}

static void root_pair(void *context, size_t item, size_t worker)
{
    rooting        *r   = context;
    search         *s   = r->s;
    ts_pair_record *rec = &r->records[item];
    ts_pair_tables  pair;
    ts_rest         rest;

    if (worker == 0 && is_stopped(s))
        atomic_store(&r->stopped, true);
    r->failed[item] = true;
    if (atomic_load(&r->stopped))
        return;
    ts_arena     *arena  = ts_arena_open(&s->allocator);
    const double *others = r->lowered != NULL ? NULL : others_of(s, rec->box);
    bool          done =
        arena != NULL &&
        ts_pair_tables_make(&pair, &s->tables, rec->box, rec->choice, s->least_at_once, arena) &&
        ts_rest_make(&rest, &pair, others, arena);
    if (done && r->lowered != NULL)
        done = ts_rest_lower_sets(&rest, &r->lowered[item * s->sets], arena);
    else if (done)
        rec->bound = ts_rest_root(&rest);
    r->failed[item] = !done;
    ts_arena_close(arena);
}

static bool run_roots(search *s, ts_pair_record *records, size_t count, double *lowered)
{
    ts_arena *arena  = ts_arena_open(&s->allocator);
    bool     *failed = arena != NULL ? TS_TAKE(arena, bool, count) : NULL;
    rooting   r      = {.s = s, .records = records, .lowered = lowered, .failed = failed};
    bool      well   = failed != NULL;

    if (well)
        ts_crew_run(s->workers, count, root_pair, &r);
    for (size_t i = 0; well && i < count; i++)
        well = !failed[i];
    if (atomic_load(&r.stopped))
        s->result->end = TS_ARRANGE_STOPPED;
    ts_arena_close(arena);
    return well;
}

/* What a box must weigh at least for each set; needed when there are several boxes. */
static bool lower_box(search *s, ts_pair_record *records, size_t count, uint32_t box)
{
    ts_arena *arena = ts_arena_open(&s->allocator);
    double   *low   = arena != NULL ? TS_TAKE(arena, double, count * s->sets) : NULL;
    bool      well  = low != NULL;

    for (size_t i = 0; well && i < count * s->sets; i++)
        low[i] = infinite;
    well = well && run_roots(s, records, count, low);
    for (size_t i = 0; well && i < count; i++)
        for (size_t set = 1; set < s->sets; set++)
            s->least[box][set] = fmin(s->least[box][set], low[i * s->sets + set]);
    ts_arena_close(arena);
    return well;
}

static int by_bound(const void *a, const void *b)
{
    const ts_pair_record *x = a, *y = b;
    if (x->bound != y->bound)
        return x->bound < y->bound ? -1 : 1;
    return x->choice < y->choice ? -1 : 1;
}

/* ---- what was found ---------------------------------------------------------------------------
 */

/* One way to give every box a set. */
typedef struct deal {
    double   mass;
    uint64_t shape;
    uint32_t set[TS_ARRANGE_BOXES], rank[TS_ARRANGE_BOXES];
} deal;

static void take_deal(deal *best, size_t room, const deal *fresh)
{
    size_t end = room - 1, at = 0;

    for (size_t i = 0; i < room; i++)
        if (isfinite(best[i].mass) && best[i].shape == fresh->shape) {
            if (fresh->mass >= best[i].mass)
                return;
            end = i;
        }
    if (fresh->mass >= best[end].mass)
        return;
    while (best[at].mass <= fresh->mass)
        at++;
    memmove(&best[at + 1], &best[at], (end - at) * sizeof *best);
    best[at] = *fresh;
}

/* Every way to deal the accessories to the boxes from `box` on; the sum so far is in `so`. */
static void deal_boxes(const search *s, uint32_t box, uint32_t left, deal *so, deal *best)
{
    const bool last = box + 1 == s->problem->box_count;
    for (uint32_t part = left;; part = (part - 1) & left) {
        const size_t ranks = part == 0 ? 1 : s->answers;
        for (uint32_t k = 0; k < ranks && (!last || part == left); k++) {
            const found *f    = &s->found[box][part * s->answers + k];
            const deal   kept = *so;
            if (part != 0 && f->box == NULL)
                break;
            so->set[box]  = part;
            so->rank[box] = k;
            so->mass += part != 0 ? f->mass : 0.0;
            so->shape = so->shape * 31 + (part != 0 ? f->shape : 0);
            if (last)
                take_deal(best, s->answers, so);
            else if (so->mass < best[s->answers - 1].mass)
                deal_boxes(s, box + 1, left & ~part, so, best);
            *so = kept;
        }
        if (part == 0 || last)
            return;
    }
}

static void deal_all(const search *s, deal best[TS_ARRANGE_ANSWERS])
{
    deal so = {0};
    for (size_t i = 0; i < TS_ARRANGE_ANSWERS; i++)
        best[i] = (deal){.mass = infinite};
    deal_boxes(s, 0, s->tables.all, &so, best);
}

static void update_limit(search *s)
{
    deal best[TS_ARRANGE_ANSWERS];
    deal_all(s, best);
    s->limit    = best[s->answers - 1].mass;
    s->lightest = best[0].mass;
}

/* ---- one pair ---------------------------------------------------------------------------------
 */

typedef struct joining {
    const search      *s;
    const ts_branches *branches;
    bool              *fresh; /* [set] */
    ts_join_tally     *tally; /* [set] */
} joining;

static void join_set(void *context, size_t item, size_t worker)
{
    const joining *j   = context;
    const uint32_t set = (uint32_t)item + 1;
    (void)worker;
    if (!(j->s->joints[set * j->s->answers].mass > 0.0))
        return; /* no box with this set can be a part of something lighter */
    j->fresh[set] = ts_join_set(j->branches, set, &j->s->joints[set * j->s->answers], j->s->answers,
                                &j->tally[set]);
}

/* What this box may weigh with a set, so that the whole may still come below the cutoff. */
static double limit_of(const search *s, uint32_t box, uint32_t set, double cutoff)
{
    if (s->problem->box_count == 1)
        return set == s->tables.all ? cutoff : 0.0;
    return cutoff - s->others[box][s->tables.all & ~set];
}

static bool store_set(search *s, const ts_branches *branches, uint32_t box, uint32_t set, bool *any)
{
    found          *own    = &s->found[box][set * s->answers];
    const ts_joint *joints = &s->joints[set * s->answers];

    for (size_t i = 0; i < s->answers && joints[i].branches[0] != NULL; i++) {
        const ts_joint *j   = &joints[i];
        size_t          end = s->answers - 1, at = 0;
        for (size_t k = 0; k < s->answers; k++)
            if (own[k].box != NULL && own[k].shape == j->shape)
                end = k;
        if (own[end].box != NULL && j->mass >= own[end].mass * (1.0 - TS_MASS_SLACK))
            continue;
        while (at < end && own[at].box != NULL && own[at].mass <= j->mass)
            at++;
        ts_arranged_box *place = own[end].box;
        if (place == NULL)
            place = TS_TAKE(s->result->arena, ts_arranged_box, 1);
        if (place == NULL)
            return false;
        memmove(&own[at + 1], &own[at], (end - at) * sizeof *own);
        own[at] = (found){j->mass, j->shape, place};
        ts_join_write(branches, j, place);
        *any = true;
    }
    return true;
}

/* Joins what has been grown and keeps what is lighter than what was there. */
static bool join_pair(search *s, const ts_branches *branches, uint32_t box, double cutoff,
                      ts_join_tally *sum, bool *any)
{
    ts_arena      *arena = ts_arena_open(&s->allocator);
    bool          *fresh = arena != NULL ? TS_TAKE(arena, bool, s->sets) : NULL;
    ts_join_tally *tally = arena != NULL ? TS_TAKE(arena, ts_join_tally, s->sets) : NULL;
    joining        j     = {.s = s, .branches = branches, .fresh = fresh, .tally = tally};
    bool           well  = fresh != NULL && tally != NULL;

    for (uint32_t set = 1; well && set < s->sets; set++)
        for (size_t i = 0; i < s->answers; i++) {
            const found *own  = &s->found[box][set * s->answers + s->answers - 1];
            const double most = own->box != NULL ? own->mass : infinite;
            s->joints[set * s->answers + i] =
                (ts_joint){.mass = fmin(most, limit_of(s, box, set, cutoff))};
        }
    if (well)
        ts_crew_run(s->workers, s->sets - 1, join_set, &j);
    for (uint32_t set = 1; well && set < s->sets; set++) {
        sum->light += tally[set].light;
        sum->fitting += tally[set].fitting;
        if (fresh[set])
            well = store_set(s, branches, box, set, any);
    }
    ts_arena_close(arena);
    return well;
}

/* Searches one pair, narrowly (beam > 0) or whole. */
static bool search_pair(search *s, ts_pair_record *rec, uint32_t beam)
{
    ts_arena      *arena = ts_arena_open(&s->allocator);
    ts_pair_tables pair;
    ts_rest        rest;
    ts_branches    branches = {0};
    const double   cutoff   = cutoff_of(s);
    ts_join_tally  joins    = {0};
    bool           any      = false;
    ts_branch_wish wish     = {.rest        = &rest,
                               .cutoff      = cutoff,
                               .beam        = beam,
                               .teeth       = s->wish->any ? TEETH_ANY : 0,
                               .shapes      = (uint32_t)s->answers,
                               .weightless  = s->wish->any,
                               .workers     = s->workers,
                               .labels_most = beam > 0 ? 0 : s->wish->labels_most,
                               .stop        = s->wish->stop,
                               .context     = s->wish->context};

    bool done = arena != NULL &&
                ts_pair_tables_make(&pair, &s->tables, rec->box, rec->choice, true, arena) &&
                ts_rest_make(&rest, &pair, others_of(s, rec->box), arena) &&
                ts_branches_grow(&branches, &pair, &wish, s->room);
    done = done && join_pair(s, &branches, rec->box, cutoff, &joins, &any);
    ts_arena_close(arena);
    if (!done)
        s->result->end = branches.stopped ? TS_ARRANGE_STOPPED : TS_ARRANGE_NO_MEMORY;
    ts_label_count *sum = beam > 0 ? &s->result->first_labels : &s->result->labels;
    sum->made += branches.count.made;
    sum->kept += branches.count.kept;
    sum->cut_by_bound += branches.count.cut_by_bound;
    sum->cut_by_dominance += branches.count.cut_by_dominance;
    if (beam == 0) {
        rec->labels = branches.count;
        s->result->joins.light += joins.light;
        s->result->joins.fitting += joins.fitting;
        if (done)
            rec->end = TS_PAIR_SEARCHED;
    }
    if (any)
        update_limit(s);
    return done;
}

/* ---- all pairs --------------------------------------------------------------------------------
 */

/* Narrow searches of the most promising pairs, until something is found to begin with. */
static bool begin(search *s, ts_pair_record *of_box[], const size_t counts[])
{
    for (size_t rank = 0;; rank++) {
        bool any = false;
        for (size_t b = 0; b < s->problem->box_count; b++) {
            if (rank >= counts[b] || !(of_box[b][rank].bound < cutoff_of(s)))
                continue;
            any = true;
            if (is_stopped(s)) {
                s->result->end = TS_ARRANGE_STOPPED;
                return false;
            }
            if (!search_pair(s, &of_box[b][rank], s->wish->any ? BEAM_ANY : BEAM))
                return false;
        }
        if (!any || (rank + 1 >= BEAM_PAIRS && isfinite(s->limit)))
            return true;
    }
}

/* Bounds of what is still open in this box, in the boxes after it, and without it. */
static void set_bound(search *s, uint32_t box, const ts_pair_record *records, size_t count)
{
    double bound = s->limit;
    for (size_t i = 0; i < count; i++)
        if (records[i].end == TS_PAIR_OPEN)
            bound = fmin(bound, records[i].bound);
    if (s->problem->box_count > 1)
        bound = fmin(bound, s->others[box][s->tables.all]);
    s->result->bound = bound;
}

static void tell_progress(search *s, uint32_t box, const ts_pair_record *records, size_t count,
                          size_t done)
{
    if (s->wish->progress == NULL)
        return;
    set_bound(s, box, records, count);
    s->wish->progress(s->wish->context, s->lightest, fmin(s->result->bound, s->lightest), done,
                      count);
}

static bool search_box(search *s, uint32_t box, ts_pair_record *records, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (isinf(records[i].bound)) {
            records[i].end = TS_PAIR_NO_WAY;
            continue;
        }
        if (records[i].bound >= cutoff_of(s)) {
            records[i].end = TS_PAIR_BY_BOUND;
            continue;
        }
        tell_progress(s, box, records, count, i);
        const bool stopped = is_stopped(s);
        if (stopped)
            s->result->end = TS_ARRANGE_STOPPED;
        if (stopped || !search_pair(s, &records[i], 0)) {
            set_bound(s, box, records, count);
            return false;
        }
    }
    return true;
}

/* After a box has been searched, what it can carry is known; no lighter whole uses anything else.
 */
static void settle_box(search *s, uint32_t box)
{
    for (size_t set = 1; set < s->sets; set++) {
        const found *f     = &s->found[box][set * s->answers];
        s->least[box][set] = f->box != NULL ? f->mass : infinite;
    }
}

static bool search_all(search *s, ts_pair_record *of_box[], const size_t counts[])
{
    const uint32_t boxes = (uint32_t)s->problem->box_count;

    for (uint32_t b = 0; b < boxes && boxes > 1; b++)
        if (!lower_box(s, of_box[b], counts[b], b))
            return false;
    for (uint32_t b = 0; b < boxes; b++) {
        if (!make_others(s, b) || !run_roots(s, of_box[b], counts[b], NULL))
            return false;
        qsort(of_box[b], counts[b], sizeof *of_box[b], by_bound);
    }
    s->result->bound = infinite;
    for (uint32_t b = 0; b < boxes; b++) {
        if (counts[b] > 0)
            s->result->bound = fmin(s->result->bound, of_box[b][0].bound);
    }
    const bool begun = begin(s, of_box, counts);
    s->result->first = s->lightest;
    if (!begun)
        return false;
    for (uint32_t b = 0; b < boxes; b++) {
        if (b > 0) {
            if (!make_others(s, b) || !run_roots(s, of_box[b], counts[b], NULL))
                return false;
            qsort(of_box[b], counts[b], sizeof *of_box[b], by_bound);
        }
        if (!search_box(s, b, of_box[b], counts[b]))
            return false;
        if (boxes > 1)
            settle_box(s, b);
    }
    return true;
}

/* ---- the whole --------------------------------------------------------------------------------
 */

static bool make_memory(search *s, ts_pair_record *of_box[], size_t counts[])
{
    const ts_arrange_problem *p = s->problem;
    ts_arena                 *a = s->result->arena;
    size_t                    n = 0;

    for (size_t b = 0; b < p->box_count; b++)
        n += counts[b] = p->boxes[b].choice_count;
    s->result->pairs      = TS_TAKE(a, ts_pair_record, n);
    s->result->pair_count = n;
    s->joints             = TS_TAKE(a, ts_joint, s->sets * s->answers);
    for (size_t b = 0, at = 0; b < p->box_count; at += counts[b], b++) {
        s->found[b]  = TS_TAKE(a, found, s->sets * s->answers);
        s->least[b]  = TS_TAKE(a, double, s->sets);
        s->others[b] = TS_TAKE(a, double, s->sets);
        if (ts_arena_failed(a))
            return false;
        of_box[b] = &s->result->pairs[at];
        for (uint32_t c = 0; c < counts[b]; c++)
            of_box[b][c] = (ts_pair_record){.box = (uint32_t)b, .choice = c, .found = infinite};
        for (size_t set = 1; set < s->sets; set++)
            s->least[b][set] = infinite;
    }
    return !ts_arena_failed(a);
}

static bool write_answers(search *s)
{
    deal               best[TS_ARRANGE_ANSWERS];
    ts_arrange_result *r = s->result;

    deal_all(s, best);
    r->answers = TS_TAKE(r->arena, ts_arrangement, s->answers);
    if (r->answers == NULL)
        return false;
    while (r->count < s->answers && isfinite(best[r->count].mass)) {
        const deal     *d = &best[r->count];
        ts_arrangement *a = &r->answers[r->count++];
        a->mass           = d->mass;
        a->shape          = d->shape;
        for (size_t b = 0; b < s->problem->box_count; b++)
            if (d->set[b] != 0)
                a->boxes[b] = *s->found[b][d->set[b] * s->answers + d->rank[b]].box;
        if (s->wish->any)
            a->mass = ts_arrange_account_of(s->problem, a).sum;
    }
    ts_arrange_result_tell_ways(r);
    return true;
}

/* What gears need at least is asked of all pairs before the first is searched when they are few;
 * else of each as it is searched. */
static size_t planes_of(const ts_arrange_problem *p)
{
    size_t count = 0;
    for (size_t b = 0; b < p->box_count; b++)
        count += p->boxes[b].choice_count * (1 + p->boxes[b].step_count);
    return count;
}

static ts_status run(search *s)
{
    ts_pair_record *of_box[TS_ARRANGE_BOXES] = {0};
    size_t          counts[TS_ARRANGE_BOXES] = {0};

    /* The result outlives the lock; nobody else asks for memory while something is put there. */
    s->result->arena = ts_arena_open(s->wish->allocator);
    s->room          = ts_branch_room_open(&s->allocator, s->workers);
    if (s->result->arena == NULL || s->room == NULL)
        return TS_NO_MEMORY;
    if (!ts_arrange_tables_make(&s->tables, s->problem, s->result->arena))
        return ts_arena_failed(s->result->arena) ? TS_NO_MEMORY : TS_NOT_UNDERSTOOD;
    s->sets  = (size_t)s->tables.all + 1;
    s->limit = s->lightest = s->result->first = infinite;
    s->least_at_once                          = planes_of(s->problem) <= PLANES_AT_ONCE;
    if (!make_memory(s, of_box, counts))
        return TS_NO_MEMORY;
    s->result->end = TS_ARRANGE_PROVEN;
    if (search_all(s, of_box, counts))
        s->result->bound = s->wish->any && isfinite(s->limit) ? 0.0 : s->limit;
    else if (s->result->end == TS_ARRANGE_PROVEN)
        s->result->end = TS_ARRANGE_NO_MEMORY;
    return write_answers(s) ? TS_OK : TS_NO_MEMORY;
}

ts_status ts_arrange_search(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                            ts_arrange_result *result)
{
    search s = {.problem = problem, .wish = wish, .result = result};

    *result   = (ts_arrange_result){0};
    s.answers = wish->answers == 0 ? 1 : wish->answers;
    s.workers = wish->workers == 0 ? 1 : wish->workers;
    if (s.answers > TS_ARRANGE_ANSWERS)
        return TS_NOT_UNDERSTOOD;
    if (!ts_locked_memory_open(&s.memory, wish->allocator, wish->memory_most))
        return TS_NO_MEMORY;
    s.allocator            = ts_locked_memory_allocator(&s.memory);
    const ts_status status = run(&s);
    result->most_bytes     = s.memory.most_live;
    ts_branch_room_close(s.room);
    if (status != TS_OK)
        ts_arrange_result_close(result);
    ts_locked_memory_close(&s.memory);
    return status;
}
