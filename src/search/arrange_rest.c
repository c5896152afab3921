/* search/arrange_rest.c: no arrangement that goes on from here can weigh less than what? */
#include "search/arrange_rest.h"

#include "search/arrange_relax.h"

#include <math.h>
#include <string.h>

typedef struct maker {
    ts_rest          *rest;
    ts_rest_table    *t;
    const double     *others;
    ts_relaxed_plane *planes; /* [0] of the input, then those of step shafts */
    uint32_t         *inputs; /* sets that may sit on the input shaft */
    size_t            input_count;
    double           *input; /* [set] what may sit on the input shaft, infinite where it may not */
    double           *one_branch;  /* [set] a branch with its mesh to the input; 0 for none */
    double           *rest_of_all; /* [set] a branch and other boxes together carry the set */
} maker;

static const double infinite = (double)INFINITY;

/* ---- the whole --------------------------------------------------------------------------------
 */

/* A step shaft inwards of what each plane may have beyond it; `own`: with what it carries, or NULL.
 */
static void add_step(const maker *k, uint32_t set, const ts_relaxed_carry *c, double last[2])
{
    const ts_relaxed_plane *first = &k->planes[0];
    const uint32_t          outer = c != NULL ? set & ~c->set : set;

    for (size_t i = 0; i < first->pair->step_count; i++) {
        const ts_plane_step    *step   = &first->pair->steps[i];
        const ts_relaxed_plane *second = &k->planes[step->plane];
        if (isinf(second->next[outer][0]) && isinf(second->next[outer][1]))
            continue;
        const double cost = ts_relaxed_step(first, second, k->t, step, c, outer, set);
        for (int sense = 0; sense < 2; sense++)
            if (c == NULL || (c->senses >> sense & 1u) != 0)
                last[sense] = fmin(last[sense], cost + second->next[outer][sense]);
    }
}

/* next[set]: the least cost of a branch that carries the set, up to its next shaft. */
static void make_next(const maker *k, size_t plane)
{
    ts_relaxed_plane *p = &k->planes[plane];

    p->next[0][0] = p->next[0][1] = infinite;
    for (uint32_t set = 1; set <= p->pair->tables->all; set++) {
        double last[2] = {infinite, infinite};
        for (size_t i = 0; i < p->carry_count; i++) {
            ts_relaxed_carry *c = &p->carries[i];
            if ((c->set & ~set) != 0)
                continue;
            const uint32_t outer = set & ~c->set;
            const double   own   = ts_relaxed_shaft(p, k->t, c, outer, set);
            for (int sense = 0; sense < 2; sense++)
                if ((c->senses >> sense & 1u) != 0)
                    last[sense] =
                        fmin(last[sense], own + (outer == 0 ? 0.0 : p->next[outer][sense]));
            if (plane == 0 && outer != 0)
                add_step(k, set, c, last);
        }
        if (plane == 0)
            add_step(k, set, NULL, last);
        ts_relaxed_idlers(p, k->t, set, last, p->next[set]);
    }
}

/* branch[set]: the least cost of a branch that carries the set and meets the input next. */
static void make_branches(const maker *k)
{
    const ts_pair_tables *pair = k->rest->pair;

    for (size_t plane = pair->plane_count + 1; plane-- > 0;)
        make_next(k, plane);
    for (uint32_t set = 1; set <= pair->tables->all; set++)
        k->t->branch[set] = k->planes[0].next[set][pair->input_sense];
    k->t->branch[0] = infinite;
}

/* Where the input shaft may carry a set of accessories, what they weigh and take. */
static void make_input(maker *k)
{
    const ts_pair_tables *pair = k->rest->pair;
    const ts_box_tables  *box  = pair->box;

    for (uint32_t set = 0; set <= pair->tables->all; set++)
        k->input[set] = infinite;
    k->input[0]    = 0.0;
    k->input_count = 0;
    for (size_t i = 0; i < box->carry_count; i++) {
        const ts_carry *c = &box->carries[i];
        if ((c->set & ~pair->input_fits) != 0 || (c->senses >> pair->input_sense & 1u) == 0)
            continue;
        double halves = 0.0;
        bool   open   = true;
        for (uint32_t face = 0; face < 2; face++) {
            if (c->on[face] < 0)
                continue;
            const double h = box->half[box->key[c->on[face]]];
            open           = open && (pair->frame->input_faces >> face & 1u) != 0;
            halves += isfinite(h) ? h : 0.0;
        }
        if (!open)
            continue;
        if (isinf(k->input[c->set]))
            k->inputs[k->input_count++] = c->set;
        k->input[c->set] = k->t->metal * c->pad_mass + k->t->arc * k->t->lambda * halves;
    }
}

static double input_gear_cost(const maker *k, uint32_t outer)
{
    const ts_pair_tables *pair = k->rest->pair;
    const ts_arrange_box *box  = pair->frame;
    const double          gear = ts_relaxed_gear(k->t, pair, pair->z_in, outer, false, 0);
    return gear + k->t->metal * (box->mass + box->choices[pair->choice].mass);
}

static void make_others(maker *k)
{
    const ts_pair_tables *pair  = k->rest->pair;
    const uint32_t        all   = pair->tables->all;
    const double          share = k->t->arc * (1.0 - k->t->lambda) * pair->share[pair->z_in];

    k->one_branch[0] = 0.0;
    for (uint32_t set = 1; set <= all; set++)
        k->one_branch[set] = k->t->branch[set] + share;
    memcpy(k->rest_of_all, k->one_branch, ((size_t)all + 1) * sizeof(double));
    if (k->others == NULL)
        return;
    for (uint32_t set = 1; set <= all; set++)
        for (uint32_t away = set; away != 0; away = (away - 1) & set) {
            if (isinf(k->others[away]))
                continue;
            const double cost = k->one_branch[set & ~away] + k->t->metal * k->others[away];
            if (cost < k->rest_of_all[set])
                k->rest_of_all[set] = cost;
        }
}

/* What is beyond a branch (or none) with `set`: input, other branch, other boxes. */
static double beyond(const maker *k, uint32_t set)
{
    const ts_pair_tables *pair    = k->rest->pair;
    const uint32_t        missing = pair->tables->all & ~set;
    double                best    = set != 0 ? k->rest_of_all[missing] : infinite;

    for (size_t i = 0; i < k->input_count; i++) {
        const uint32_t on = k->inputs[i];
        if ((on & ~missing) == 0)
            best = fmin(best, k->input[on] + k->rest_of_all[missing & ~on]);
    }
    return best + input_gear_cost(k, set);
}

/* What is beyond a branch of another plane: more of it, or the step shaft that drives it. */
static void leave_plane(const maker *k, size_t plane, uint32_t set, double next[2])
{
    const ts_relaxed_plane *first = &k->planes[0], *second = &k->planes[plane];
    const double           *inward = k->t->inward[0];

    for (size_t i = 0; i < first->pair->step_count; i++) {
        const ts_plane_step *step = &first->pair->steps[i];
        if (step->plane != plane)
            continue;
        const double bare = ts_relaxed_step(first, second, k->t, step, NULL, set, set);
        for (int sense = 0; sense < 2; sense++)
            next[sense] = fmin(next[sense], bare + inward[2 * (size_t)set + (size_t)sense]);
        for (size_t n = 0; n < first->carry_count; n++) {
            const ts_relaxed_carry *c = &first->carries[n];
            if ((c->set & set) != 0)
                continue;
            const uint32_t both = set | c->set;
            const double   own  = ts_relaxed_step(first, second, k->t, step, c, set, both);
            for (int sense = 0; sense < 2; sense++)
                if ((c->senses >> sense & 1u) != 0)
                    next[sense] = fmin(next[sense], own + inward[2 * (size_t)both + (size_t)sense]);
        }
    }
}

static void make_inward(const maker *k, size_t plane)
{
    const ts_pair_tables *pair   = k->rest->pair;
    ts_relaxed_plane     *p      = &k->planes[plane];
    double               *inward = k->t->inward[plane];
    const double          share  = k->t->arc * (1.0 - k->t->lambda) * pair->share[pair->z_in];

    for (uint32_t set = pair->tables->all; set > 0; set--) {
        double next[2] = {infinite, infinite};
        if (plane == 0) {
            k->t->ended[set]        = beyond(k, set);
            next[pair->input_sense] = k->t->ended[set] + share;
        } else {
            leave_plane(k, plane, set, next);
        }
        for (size_t i = 0; i < p->carry_count; i++) {
            ts_relaxed_carry *c = &p->carries[i];
            if ((c->set & set) != 0)
                continue;
            const double own = ts_relaxed_shaft(p, k->t, c, set, set | c->set);
            for (int sense = 0; sense < 2; sense++)
                if ((c->senses >> sense & 1u) != 0)
                    next[sense] =
                        fmin(next[sense], own + inward[2 * (size_t)(set | c->set) + (size_t)sense]);
        }
        ts_relaxed_idlers(p, k->t, set, next, &inward[2 * (size_t)set]);
    }
}

static void make_root(const maker *k)
{
    const ts_pair_tables *pair  = k->rest->pair;
    const double          share = k->t->arc * (1.0 - k->t->lambda) * pair->share[pair->z_in];
    double                best  = k->t->ended[0];

    for (uint32_t set = 1; set <= pair->tables->all; set++)
        best = fmin(best, k->t->branch[set] + share + k->t->ended[set]);
    k->t->root = best;
}

static void make_largest(ts_rest *rest)
{
    const ts_pair_tables *pair = rest->pair;
    const ts_box_tables  *box  = pair->box;

    for (uint32_t set = 0; set <= pair->tables->all; set++) {
        const uint32_t missing = box->allowed & ~set;
        double         first = 0.0, second = 0.0;
        for (uint32_t a = 0; a < TS_ARRANGE_ACCESSORIES; a++) {
            if ((missing >> a & 1u) == 0)
                continue;
            const double h = box->half[box->key[a]];
            if (!isfinite(h))
                continue;
            if (h > first) {
                second = first;
                first  = h;
            } else if (h > second) {
                second = h;
            }
        }
        rest->first[set]  = first;
        rest->second[set] = second;
    }
}

static bool make_memory(maker *k, ts_rest *rest, ts_arena *arena)
{
    const ts_pair_tables *pair   = rest->pair;
    const size_t          sets   = (size_t)pair->tables->all + 1;
    const size_t          planes = pair->plane_count + 1;

    rest->first    = TS_TAKE(arena, double, sets);
    rest->second   = TS_TAKE(arena, double, sets);
    k->input       = TS_TAKE(arena, double, sets);
    k->inputs      = TS_TAKE(arena, uint32_t, pair->box->carry_count);
    k->one_branch  = TS_TAKE(arena, double, sets);
    k->rest_of_all = TS_TAKE(arena, double, sets);
    k->planes      = TS_TAKE(arena, ts_relaxed_plane, planes);
    for (size_t i = 0; i < TS_REST_TABLES; i++) {
        rest->tables[i].ended  = TS_TAKE(arena, double, sets);
        rest->tables[i].branch = TS_TAKE(arena, double, sets);
        rest->tables[i].inward = TS_TAKE(arena, double *, planes);
        for (size_t n = 0; rest->tables[i].inward != NULL && n < planes; n++)
            rest->tables[i].inward[n] = TS_TAKE(arena, double, 2 * sets);
    }
    for (uint32_t n = 0; !ts_arena_failed(arena) && n < planes; n++)
        (void)ts_relaxed_plane_make(&k->planes[n], ts_plane_of(pair, n), arena);
    return !ts_arena_failed(arena);
}

/* One table; false: it says that nothing fits. */
static bool fill_table(maker *k, bool whole)
{
    const size_t planes = k->rest->pair->plane_count + 1;

    for (size_t n = 0; n < planes; n++)
        ts_relaxed_plane_begin(&k->planes[n], k->t);
    make_input(k);
    make_branches(k);
    if (!whole)
        return true;
    make_others(k);
    for (size_t n = 0; n < planes; n++)
        make_inward(k, n);
    k->t->ended[0] = beyond(k, 0);
    make_root(k);
    return !isinf(k->t->root);
}

bool ts_rest_make(ts_rest *rest, const ts_pair_tables *pair, const double *others, ts_arena *arena)
{
    static const double lambdas[3] = {0.0, 0.5, 1.0};
    maker               k          = {.rest = rest, .others = others};

    /* Without a word on the other boxes, only branches can be bounded. */
    const bool whole = others != NULL || pair->tables->problem->box_count == 1;

    *rest = (ts_rest){.pair = pair};
    if (!make_memory(&k, rest, arena))
        return false;
    make_largest(rest);
    for (size_t i = 0; i < TS_REST_TABLES && !rest->no_way; i++) {
        k.t          = &rest->tables[i];
        k.t->metal   = i < 3 ? 1.0 : 0.0;
        k.t->arc     = i < 3 ? pair->box->casing : 1.0;
        k.t->lambda  = lambdas[i % 3];
        rest->no_way = !fill_table(&k, whole);
    }
    return true;
}

/* ---- bounds -----------------------------------------------------------------------------------
 */

/* Arc that bodies at the ends of a face leave free, and the slack of every separation. */
static double root_discount(const ts_rest *rest, const ts_rest_table *t)
{
    const double slack = 2.0 * TS_ANGLE_SLACK * TS_ARRANGE_ACCESSORIES;
    return t->arc * t->lambda * (rest->first[0] + rest->second[0] + slack);
}

double ts_rest_root(const ts_rest *rest)
{
    double most = 0.0;
    if (rest->no_way)
        return infinite;
    for (size_t i = 0; i < TS_REST_TABLES; i++) {
        const ts_rest_table *t     = &rest->tables[i];
        const double         bound = t->root - root_discount(rest, t);
        if (t->metal > 0.0)
            most = fmax(most, bound);
        else if (bound > rest->pair->frame->wrap_most + TS_ANGLE_SLACK)
            return infinite;
    }
    return most;
}

/* Arc that bodies take beyond the last shaft, above what `inward` charges for them: what is owed to
 * bodies outboard less what the ends of the faces leave free, half from each face. */
static double body_arc(const ts_rest *rest, uint32_t set, const ts_label *l)
{
    const double first = rest->first[set], second = rest->second[set];
    double       sum = -first - second - 4.0 * TS_ANGLE_SLACK * TS_ARRANGE_ACCESSORIES;

    for (int face = 0; face < 2; face++)
        sum += isinf(l->tail[face]) ? -first : fmin(l->tail[face], second);
    return 0.5 * sum;
}

static double bound_with(const ts_rest *rest, const double *table_of[TS_REST_TABLES], size_t at,
                         uint32_t set, const ts_label *l, double last, double share)
{
    const double bodies = body_arc(rest, set, l);
    double       most   = 0.0;

    for (size_t i = 0; i < TS_REST_TABLES; i++) {
        const ts_rest_table *t     = &rest->tables[i];
        const double         arc   = (1.0 - t->lambda) * share + t->lambda * bodies;
        const double         so    = t->metal > 0.0 ? l->mass + last : l->angle;
        const double         bound = so + t->arc * arc + table_of[i][at];
        if (t->metal > 0.0)
            most = fmax(most, bound);
        else if (bound > rest->pair->frame->wrap_most + TS_ANGLE_SLACK)
            return infinite;
    }
    return most;
}

double ts_rest_bound(const ts_rest *rest, uint32_t plane, uint32_t set, const ts_label *l,
                     double last)
{
    const double *tables[TS_REST_TABLES];
    for (size_t i = 0; i < TS_REST_TABLES; i++)
        tables[i] = rest->tables[i].inward[plane];
    return bound_with(rest, tables, 2 * (size_t)set + l->sense, set, l, last,
                      ts_plane_of(rest->pair, plane)->share[l->z]);
}

double ts_rest_ended_bound(const ts_rest *rest, uint32_t set, const ts_label *l)
{
    const double *tables[TS_REST_TABLES];
    for (size_t i = 0; i < TS_REST_TABLES; i++)
        tables[i] = rest->tables[i].ended;
    return bound_with(rest, tables, set, set, l, 0.0, 0.0);
}

/* The tables in which arc is charged as shares of gears alone. */
enum { SHARES_WITH_MASS = 0, SHARES_ALONE = TS_REST_TABLES / 2 };

double ts_rest_glance(const ts_rest *rest, uint32_t plane, uint32_t set, const ts_label *l,
                      double last)
{
    const ts_rest_table *mass = &rest->tables[SHARES_WITH_MASS], *arc = &rest->tables[SHARES_ALONE];
    const size_t         at    = 2 * (size_t)set + l->sense;
    const double         share = ts_plane_of(rest->pair, plane)->share[l->z];

    if (l->angle + share + arc->inward[plane][at] > rest->pair->frame->wrap_most + TS_ANGLE_SLACK)
        return infinite;
    return l->mass + last + mass->arc * share + mass->inward[plane][at];
}

double ts_rest_ended_glance(const ts_rest *rest, uint32_t set, const ts_label *l)
{
    const ts_rest_table *mass = &rest->tables[SHARES_WITH_MASS], *arc = &rest->tables[SHARES_ALONE];

    if (l->angle + arc->ended[set] > rest->pair->frame->wrap_most + TS_ANGLE_SLACK)
        return infinite;
    return l->mass + mass->ended[set];
}

/* ---- sets of one box --------------------------------------------------------------------------
 */

static bool add_sets(const ts_rest *rest, const ts_rest_table *t, const double *input, double *sets,
                     ts_arena *arena)
{
    const ts_pair_tables *pair  = rest->pair;
    const uint32_t        all   = pair->tables->all;
    const double          share = t->arc * (1.0 - t->lambda) * pair->share[pair->z_in];
    double               *both  = TS_TAKE(arena, double, (size_t)all + 1);

    if (both == NULL)
        return false;
    for (uint32_t set = 1; set <= all; set++) {
        double best = t->branch[set] + share;
        for (uint32_t left = (set - 1) & set; left > (set & ~left); left = (left - 1) & set)
            best = fmin(best, t->branch[left] + t->branch[set & ~left] + 2.0 * share);
        both[set] = best;
    }
    for (uint32_t set = 1; set <= all; set++) {
        double best = fmin(both[set], input[set]);
        for (size_t i = 0; i < pair->box->carry_count; i++) {
            const uint32_t on = pair->box->carries[i].set;
            if ((on & ~set) == 0 && on != set)
                best = fmin(best, input[on] + both[set & ~on]);
        }
        sets[set] = best;
    }
    return true;
}

bool ts_rest_lower_sets(const ts_rest *rest, double *exact, ts_arena *arena)
{
    const ts_pair_tables *pair = rest->pair;
    const size_t          sets = (size_t)pair->tables->all + 1;
    maker                 k    = {.rest = (ts_rest *)rest};
    double               *most = TS_TAKE(arena, double, sets);
    double               *own  = TS_TAKE(arena, double, sets);

    k.input  = TS_TAKE(arena, double, sets);
    k.inputs = TS_TAKE(arena, uint32_t, pair->box->carry_count);
    if (ts_arena_failed(arena))
        return false;
    for (size_t i = 0; i < TS_REST_TABLES; i++) {
        const ts_rest_table *t = &rest->tables[i];
        k.t                    = (ts_rest_table *)t;
        make_input(&k);
        if (!add_sets(rest, t, k.input, own, arena))
            return false;
        const double fixed = t->metal > 0.0 ? input_gear_cost(&k, 0) : 0.0;
        for (size_t set = 1; set < sets; set++) {
            const double bound = own[set] + fixed - root_discount(rest, t);
            if (t->metal > 0.0)
                most[set] = fmax(most[set], bound);
            else if (bound > pair->frame->wrap_most + TS_ANGLE_SLACK)
                most[set] = infinite;
        }
    }
    for (size_t set = 1; set < sets; set++)
        exact[set] = fmin(exact[set], most[set]);
    return true;
}
