/* search/arrange_rest.c: no arrangement that goes on from here can weigh less than what? */
#include "search/arrange_rest.h"

#include <math.h>
#include <string.h>

enum { LEVELS = 64 }; /* loads are rounded down to one of these */

/* What a shaft may carry, both ways round taken together. */
typedef struct relaxed_carry {
    uint32_t  set;
    uint8_t   senses;
    ts_window window;
    double    pads, halves;
    /* Least cost of shaft and gear, [arcs of the gear - 1][reversed][level]; NaN: not yet asked. */
    double (*cost)[2][LEVELS];
} relaxed_carry;

typedef struct maker {
    ts_rest       *rest;
    ts_rest_table *t;
    const double  *others;
    relaxed_carry *carries;
    size_t         carry_count;
    double         level_size; /* N */
    double *least_on[2];     /* [arcs - 1][z]: least cost of a gear of z teeth or more, unloaded */
    double (*idler)[LEVELS]; /* [reversed][level], NaN: not yet asked */
    uint32_t *inputs;        /* sets that may sit on the input shaft */
    size_t    input_count;
    double   *input;       /* [set] what may sit on the input shaft, infinite where it may not */
    double   *one_branch;  /* [set] a branch with its mesh to the input; 0 for none */
    double   *rest_of_all; /* [set] a branch and other boxes together carry the set */
} maker;

static const double infinite = (double)INFINITY;

/* ---- one gear ---------------------------------------------------------------------------------
 */

static double gear_cost(const maker *k, uint32_t z, double load, bool reversed, int arcs)
{
    const ts_pair_tables   *pair   = k->rest->pair;
    const ts_module_tables *module = pair->module;
    uint32_t                steps  = pair->tables->steps_least;

    if (module->unit_least[reversed] != NULL) {
        const uint32_t own = ts_steps_of(load * module->unit_least[reversed][z]);
        if (own > steps)
            steps = own;
    }
    if (steps > module->steps_most[z])
        return infinite;
    return k->t->metal * module->gear_mass[z * (module->steps_top + 1) + steps] +
           k->t->arc * (1.0 - k->t->lambda) * (double)arcs * pair->share[z];
}

static void make_least_on(maker *k)
{
    const size_t stride = k->rest->pair->tables->stride;
    for (int arcs = 1; arcs <= 2; arcs++) {
        double least = infinite;
        for (size_t z = stride - 1; z > 0; z--) {
            least                    = fmin(least, gear_cost(k, (uint32_t)z, 0.0, false, arcs));
            k->least_on[arcs - 1][z] = least;
        }
    }
}

static uint32_t level_of(const maker *k, double load)
{
    const double level = k->level_size > 0.0 ? load / k->level_size : 0.0;
    /* Rounding must not lift a load into the next level. */
    const double sure = level * (1.0 - 1e-12);
    return sure >= (double)(LEVELS - 1) ? LEVELS - 1 : (uint32_t)sure;
}

/* The best gear for a shaft with this load. */
static double carry_cost(maker *k, relaxed_carry *c, double load, bool reversed, int arcs)
{
    const uint32_t level = level_of(k, load);
    double        *known = &c->cost[arcs - 1][reversed][level];

    if (!isnan(*known))
        return *known;
    double best = infinite;
    for (uint32_t z = c->window.least; z <= c->window.most; z++) {
        if (k->least_on[arcs - 1][z] >= best)
            break;
        best = fmin(best, gear_cost(k, z, (double)level * k->level_size, reversed, arcs));
    }
    *known = best + k->t->metal * (c->pads + k->rest->pair->frame->shaft_mass) +
             k->t->arc * k->t->lambda * c->halves;
    return *known;
}

static double idler_cost(maker *k, uint32_t set)
{
    const ts_pair_tables     *pair     = k->rest->pair;
    const ts_arrange_problem *p        = pair->tables->problem;
    const bool                reversed = ts_is_reversed(pair->tables, set, set);
    const uint32_t            level    = level_of(k, pair->force[set]);
    double                   *known    = &k->idler[reversed][level];

    if (!isnan(*known))
        return *known;
    double best = infinite;
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        best =
            fmin(best, gear_cost(k, p->idler_teeth[i], (double)level * k->level_size, reversed, 2));
    *known = best + k->t->metal * pair->frame->idler_mass;
    return *known;
}

/* ---- shafts -----------------------------------------------------------------------------------
 */

static relaxed_carry *find_carry(maker *k, uint32_t set)
{
    for (size_t i = 0; i < k->carry_count; i++)
        if (k->carries[i].set == set)
            return &k->carries[i];
    return NULL;
}

static bool make_carries(maker *k, ts_arena *arena)
{
    const ts_pair_tables *pair = k->rest->pair;
    const ts_box_tables  *box  = pair->box;

    k->carries = TS_TAKE(arena, relaxed_carry, box->carry_count);
    for (size_t i = 0; k->carries != NULL && i < box->carry_count; i++) {
        const ts_carry *from = &box->carries[i];
        relaxed_carry  *c    = find_carry(k, from->set);
        if (c != NULL) {
            c->senses |= from->senses;
            continue;
        }
        relaxed_carry fresh = {.set    = from->set,
                               .senses = from->senses,
                               .window = {1, TS_ARRANGE_TEETH},
                               .pads   = from->pad_mass};
        for (int face = 0; face < 2; face++) {
            if (from->on[face] < 0)
                continue;
            const ts_window w  = pair->window[from->on[face]];
            const double    h  = box->half[box->key[from->on[face]]];
            fresh.window.least = w.least > fresh.window.least ? w.least : fresh.window.least;
            fresh.window.most  = w.most < fresh.window.most ? w.most : fresh.window.most;
            fresh.halves += isfinite(h) ? h : 0.0;
        }
        if (fresh.window.least <= fresh.window.most)
            k->carries[k->carry_count++] = fresh;
    }
    for (size_t i = 0; k->carries != NULL && i < k->carry_count; i++)
        k->carries[i].cost = ts_arena_take(arena, 2, sizeof *k->carries[i].cost);
    return !ts_arena_failed(arena);
}

static void forget_costs(maker *k)
{
    for (size_t i = 0; i < k->carry_count; i++)
        for (int arcs = 0; arcs < 2; arcs++)
            for (int r = 0; r < 2; r++)
                for (int l = 0; l < LEVELS; l++)
                    k->carries[i].cost[arcs][r][l] = (double)NAN;
    for (int r = 0; r < 2; r++)
        for (int l = 0; l < LEVELS; l++)
            k->idler[r][l] = (double)NAN;
}

/* A shaft that joins `outer` and its own to `inner`. */
static double shaft_cost(maker *k, relaxed_carry *c, uint32_t outer, uint32_t inner)
{
    const ts_pair_tables *pair     = k->rest->pair;
    const bool            reversed = ts_is_reversed(pair->tables, outer, inner);
    const double          load     = fmax(pair->force[outer], pair->force[inner]);
    return carry_cost(k, c, load, reversed, outer == 0 ? 1 : 2);
}

/* with_last[sense of the last shaft] of a set turned into [sense of the next shaft inwards], with
 * as many idlers between as are best; or the other way round, which is the same. */
static void allow_idlers(maker *k, uint32_t set, const double with_last[2], double with_next[2])
{
    const uint32_t most = k->rest->pair->tables->problem->idlers_in_row;

    with_next[0] = with_last[1];
    with_next[1] = with_last[0];
    if (most == 0 || (isinf(with_last[0]) && isinf(with_last[1])))
        return;
    const double one = idler_cost(k, set);
    for (int sense = 0; sense < 2; sense++) {
        with_next[sense] = fmin(with_next[sense], with_last[sense] + one);
        if (most > 1)
            with_next[sense] = fmin(with_next[sense], with_last[1 - sense] + 2.0 * one);
    }
}

/* ---- the whole --------------------------------------------------------------------------------
 */

/* branch[set]: the least cost of a branch that carries the set and meets the input next. */
static bool make_branches(maker *k, ts_arena *arena)
{
    const ts_pair_tables *pair = k->rest->pair;
    const uint32_t        all  = pair->tables->all;
    double(*next)[2]           = ts_arena_take(arena, (size_t)all + 1, sizeof *next);

    if (next == NULL)
        return false;
    for (uint32_t set = 1; set <= all; set++) {
        double last[2] = {infinite, infinite};
        for (size_t i = 0; i < k->carry_count; i++) {
            relaxed_carry *c = &k->carries[i];
            if ((c->set & ~set) != 0)
                continue;
            const uint32_t outer = set & ~c->set;
            const double   own   = shaft_cost(k, c, outer, set);
            for (int sense = 0; sense < 2; sense++)
                if ((c->senses >> sense & 1u) != 0)
                    last[sense] = fmin(last[sense], own + (outer == 0 ? 0.0 : next[outer][sense]));
        }
        allow_idlers(k, set, last, next[set]);
        k->t->branch[set] = next[set][pair->input_sense];
    }
    k->t->branch[0] = infinite;
    return true;
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
    const double          gear = gear_cost(k, pair->z_in, pair->force[outer], false, 0);
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

static void make_inward(maker *k)
{
    const ts_pair_tables *pair  = k->rest->pair;
    const uint32_t        all   = pair->tables->all;
    const double          share = k->t->arc * (1.0 - k->t->lambda) * pair->share[pair->z_in];

    for (uint32_t set = all; set > 0; set--) {
        double next[2]          = {infinite, infinite};
        k->t->ended[set]        = beyond(k, set);
        next[pair->input_sense] = k->t->ended[set] + share;
        for (size_t i = 0; i < k->carry_count; i++) {
            relaxed_carry *c = &k->carries[i];
            if ((c->set & set) != 0)
                continue;
            const double own = shaft_cost(k, c, set, set | c->set);
            for (int sense = 0; sense < 2; sense++)
                if ((c->senses >> sense & 1u) != 0)
                    next[sense] =
                        fmin(next[sense], own + k->t->inward[2 * (set | c->set) + (size_t)sense]);
        }
        allow_idlers(k, set, next, &k->t->inward[2 * set]);
    }
    k->t->ended[0] = beyond(k, 0);
}

static void make_root(maker *k)
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
    const size_t sets   = (size_t)rest->pair->tables->all + 1;
    const size_t stride = rest->pair->tables->stride;

    rest->first    = TS_TAKE(arena, double, sets);
    rest->second   = TS_TAKE(arena, double, sets);
    k->input       = TS_TAKE(arena, double, sets);
    k->inputs      = TS_TAKE(arena, uint32_t, rest->pair->box->carry_count);
    k->one_branch  = TS_TAKE(arena, double, sets);
    k->rest_of_all = TS_TAKE(arena, double, sets);
    k->least_on[0] = TS_TAKE(arena, double, stride);
    k->least_on[1] = TS_TAKE(arena, double, stride);
    k->idler       = ts_arena_take(arena, 2, sizeof *k->idler);
    k->level_size  = 0.0;
    for (size_t set = 0; set < sets; set++)
        k->level_size = fmax(k->level_size, rest->pair->force[set] / (double)LEVELS);
    for (size_t i = 0; i < TS_REST_TABLES; i++) {
        rest->tables[i].inward = TS_TAKE(arena, double, 2 * sets);
        rest->tables[i].ended  = TS_TAKE(arena, double, sets);
        rest->tables[i].branch = TS_TAKE(arena, double, sets);
    }
    return !ts_arena_failed(arena) && make_carries(k, arena);
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
    for (size_t i = 0; i < TS_REST_TABLES; i++) {
        k.t         = &rest->tables[i];
        k.t->metal  = i < 3 ? 1.0 : 0.0;
        k.t->arc    = i < 3 ? pair->box->casing : 1.0;
        k.t->lambda = lambdas[i % 3];
        forget_costs(&k);
        make_least_on(&k);
        make_input(&k);
        if (!make_branches(&k, arena))
            return false;
        if (!whole)
            continue;
        make_others(&k);
        make_inward(&k);
        make_root(&k);
        if (isinf(rest->tables[i].root)) {
            rest->no_way = true;
            break;
        }
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

double ts_rest_bound(const ts_rest *rest, uint32_t set, const ts_label *l, double last)
{
    const double *tables[TS_REST_TABLES];
    for (size_t i = 0; i < TS_REST_TABLES; i++)
        tables[i] = rest->tables[i].inward;
    return bound_with(rest, tables, 2 * (size_t)set + l->sense, set, l, last,
                      rest->pair->share[l->z]);
}

double ts_rest_ended_bound(const ts_rest *rest, uint32_t set, const ts_label *l)
{
    const double *tables[TS_REST_TABLES];
    for (size_t i = 0; i < TS_REST_TABLES; i++)
        tables[i] = rest->tables[i].ended;
    return bound_with(rest, tables, set, set, l, 0.0, 0.0);
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
