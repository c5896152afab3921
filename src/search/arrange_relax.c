/* search/arrange_relax.c: what must one shaft cost at least, wherever it stands? */
#include "search/arrange_relax.h"

#include <math.h>

static const double infinite = (double)INFINITY;

/* ---- one gear ---------------------------------------------------------------------------------
 */

static double cost_of(const ts_rest_table *t, const ts_pair_tables *pair, uint32_t z,
                      uint32_t least, int arcs)
{
    const ts_module_tables *module = pair->module;
    const uint32_t steps = least > pair->tables->steps_least ? least : pair->tables->steps_least;

    if (steps > module->steps_most[z])
        return infinite;
    return t->metal * module->gear_mass[z * (module->steps_top + 1) + steps] +
           t->arc * (1.0 - t->lambda) * (double)arcs * pair->share[z];
}

double ts_relaxed_gear(const ts_rest_table *t, const ts_pair_tables *pair, uint32_t z, uint32_t set,
                       bool reversed, int arcs)
{
    return cost_of(t, pair, z, ts_pair_least(pair, set, z, reversed), arcs);
}

/* A load of a proportional model. */
static double loaded_gear(const ts_rest_table *t, const ts_pair_tables *pair, uint32_t z,
                          double load, bool reversed, int arcs)
{
    const double *unit = pair->module->unit_least[reversed ? 1 : 0];
    return cost_of(t, pair, z, unit != NULL ? ts_steps_of(load * unit[z]) : 0, arcs);
}

static void make_least_on(ts_relaxed_plane *p, const ts_rest_table *t)
{
    const size_t stride = p->pair->tables->stride;
    for (int arcs = 1; arcs <= 2; arcs++) {
        double least = infinite;
        for (size_t z = stride - 1; z > 0; z--) {
            least                    = fmin(least, cost_of(t, p->pair, (uint32_t)z, 0, arcs));
            p->least_on[arcs - 1][z] = least;
        }
    }
}

static uint32_t level_of(const ts_relaxed_plane *p, double load)
{
    const double level = p->level_size > 0.0 ? load / p->level_size : 0.0;
    /* Rounding must not lift a load into the next level. */
    const double sure = level * (1.0 - 1e-12);
    return sure >= (double)(TS_LOAD_LEVELS - 1) ? TS_LOAD_LEVELS - 1 : (uint32_t)sure;
}

/* ---- shafts -----------------------------------------------------------------------------------
 */

/* The best gear for a shaft with this load. */
static double carry_cost(ts_relaxed_plane *p, const ts_rest_table *t, ts_relaxed_carry *c,
                         double load, bool reversed, int arcs)
{
    const uint32_t level = level_of(p, load);
    double        *known = &c->cost[arcs - 1][reversed][level];

    if (!isnan(*known))
        return *known;
    double best = infinite;
    for (uint32_t z = c->window.least; z <= c->window.most; z++) {
        if (p->least_on[arcs - 1][z] >= best)
            break;
        best =
            fmin(best, loaded_gear(t, p->pair, z, (double)level * p->level_size, reversed, arcs));
    }
    *known =
        best + t->metal * (c->pads + p->pair->frame->shaft_mass) + t->arc * t->lambda * c->halves;
    return *known;
}

/* The same where the model said what each gear needs for each set. */
static double told_cost(const ts_relaxed_plane *p, const ts_rest_table *t,
                        const ts_relaxed_carry *c, uint32_t outer, uint32_t inner, bool reversed)
{
    const int arcs = outer == 0 ? 1 : 2;
    double    best = infinite;
    for (uint32_t z = c->window.least; z <= c->window.most; z++) {
        if (p->least_on[arcs - 1][z] >= best)
            break;
        const uint32_t a = ts_pair_least(p->pair, outer, z, reversed);
        const uint32_t b = ts_pair_least(p->pair, inner, z, reversed);
        best             = fmin(best, cost_of(t, p->pair, z, a > b ? a : b, arcs));
    }
    return best + t->metal * (c->pads + p->pair->frame->shaft_mass) +
           t->arc * t->lambda * c->halves;
}

/* What a shaft counts as at least for being in the way of `outer`, whatever faces these are on.
 * Of two back to back one is in the way of each; of a single one, all that it can be on the face
 * with the fewest that may be nowhere else. */
static double least_in_way(const ts_pair_tables *pair, const ts_relaxed_carry *c, uint32_t outer)
{
    const ts_box_tables        *box   = pair->box;
    const ts_arrange_accessory *all   = pair->tables->problem->accessories;
    const int8_t                one   = c->on[0] >= 0 ? c->on[0] : c->on[1];
    uint32_t                    at[2] = {0, 0};
    double                      least = infinite;

    if (!box->serviced || outer == 0)
        return 0.0;
    if (c->on[0] >= 0 && c->on[1] >= 0)
        return fmin(fmax(box->lift[0][c->on[0]], box->lift[1][c->on[0]]),
                    fmax(box->lift[0][c->on[1]], box->lift[1][c->on[1]])) *
               (double)ts_set_size(outer);
    for (uint32_t a = 0; a < pair->tables->problem->accessory_count; a++)
        for (uint32_t face = 0; face < 2 && (outer >> a & 1u) != 0; face++)
            at[face] += all[a].faces == 1u << face ? 1 : 0;
    for (uint32_t face = 0; face < 2; face++)
        if ((all[one].faces >> face & 1u) != 0)
            least = fmin(least, box->lift[face][one] * (double)at[face]);
    return isfinite(least) ? least : 0.0;
}

double ts_relaxed_shaft(ts_relaxed_plane *p, const ts_rest_table *t, ts_relaxed_carry *c,
                        uint32_t outer, uint32_t inner)
{
    const bool   reversed = ts_is_reversed(p->pair->tables, outer, inner);
    const double load     = fmax(p->pair->force[outer], p->pair->force[inner]);
    const double in_way   = t->metal * least_in_way(p->pair, c, outer);
    if (p->pair->least_steps != NULL)
        return told_cost(p, t, c, outer, inner, reversed) + in_way;
    return carry_cost(p, t, c, load, reversed, outer == 0 ? 1 : 2) + in_way;
}

double ts_relaxed_step(const ts_relaxed_plane *first, const ts_relaxed_plane *second,
                       const ts_rest_table *t, const ts_plane_step *step, const ts_relaxed_carry *c,
                       uint32_t outer, uint32_t inner)
{
    const ts_arrange_tables *tables = first->pair->tables;
    const ts_arrange_box    *frame  = first->pair->frame;

    if (c != NULL && (step->z < c->window.least || step->z > c->window.most))
        return infinite;
    const double own =
        ts_relaxed_gear(t, first->pair, step->z, inner, ts_is_reversed(tables, 0, inner), 1);
    const double far =
        ts_relaxed_gear(t, second->pair, step->z_step, outer, ts_is_reversed(tables, outer, 0), 1);
    const double mass =
        frame->step_mass + (c != NULL ? c->pads + frame->shaft_mass : frame->idler_mass);
    const double in_way = c != NULL ? least_in_way(first->pair, c, outer) : 0.0;
    return own + far + t->metal * (mass + in_way) +
           (c != NULL ? t->arc * t->lambda * c->halves : 0.0);
}

static double told_idler(const ts_relaxed_plane *k, const ts_rest_table *t, uint32_t set)
{
    const ts_arrange_problem *p        = k->pair->tables->problem;
    const bool                reversed = ts_is_reversed(k->pair->tables, set, set);
    double                    best     = infinite;
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        best = fmin(best, ts_relaxed_gear(t, k->pair, p->idler_teeth[i], set, reversed, 2));
    return best + t->metal * k->pair->frame->idler_mass;
}

static double idler_cost(ts_relaxed_plane *k, const ts_rest_table *t, uint32_t set)
{
    const ts_arrange_problem *p        = k->pair->tables->problem;
    const bool                reversed = ts_is_reversed(k->pair->tables, set, set);
    const uint32_t            level    = level_of(k, k->pair->force[set]);
    double                   *known    = &k->idler[reversed][level];

    if (!isnan(*known))
        return *known;
    double best = infinite;
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        best = fmin(best, loaded_gear(t, k->pair, p->idler_teeth[i], (double)level * k->level_size,
                                      reversed, 2));
    *known = best + t->metal * k->pair->frame->idler_mass;
    return *known;
}

void ts_relaxed_idlers(ts_relaxed_plane *p, const ts_rest_table *t, uint32_t set,
                       const double with_last[2], double with_next[2])
{
    const uint32_t most = p->pair->tables->problem->idlers_in_row;

    with_next[0] = with_last[1];
    with_next[1] = with_last[0];
    if (most == 0 || (isinf(with_last[0]) && isinf(with_last[1])))
        return;
    const double one = p->pair->least_steps != NULL ? told_idler(p, t, set) : idler_cost(p, t, set);
    for (int sense = 0; sense < 2; sense++) {
        with_next[sense] = fmin(with_next[sense], with_last[sense] + one);
        if (most > 1)
            with_next[sense] = fmin(with_next[sense], with_last[1 - sense] + 2.0 * one);
    }
}

/* ---- one plane --------------------------------------------------------------------------------
 */

static ts_relaxed_carry *find_carry(ts_relaxed_plane *p, uint32_t set)
{
    for (size_t i = 0; i < p->carry_count; i++)
        if (p->carries[i].set == set)
            return &p->carries[i];
    return NULL;
}

static bool make_carries(ts_relaxed_plane *p, ts_arena *arena)
{
    const ts_pair_tables *pair = p->pair;
    const ts_box_tables  *box  = pair->box;

    p->carries = TS_TAKE(arena, ts_relaxed_carry, box->carry_count);
    for (size_t i = 0; p->carries != NULL && i < box->carry_count; i++) {
        const ts_carry   *from = &box->carries[i];
        ts_relaxed_carry *c    = find_carry(p, from->set);
        if (c != NULL) {
            c->senses |= from->senses;
            continue;
        }
        ts_relaxed_carry fresh = {.set    = from->set,
                                  .senses = from->senses,
                                  .window = {1, TS_ARRANGE_TEETH},
                                  .pads   = from->pad_mass,
                                  .on     = {from->on[0], from->on[1]}};
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
            p->carries[p->carry_count++] = fresh;
    }
    for (size_t i = 0; p->carries != NULL && i < p->carry_count; i++)
        p->carries[i].cost = ts_arena_take(arena, 2, sizeof *p->carries[i].cost);
    return !ts_arena_failed(arena);
}

bool ts_relaxed_plane_make(ts_relaxed_plane *p, const ts_pair_tables *pair, ts_arena *arena)
{
    const size_t sets = (size_t)pair->tables->all + 1, stride = pair->tables->stride;

    *p             = (ts_relaxed_plane){.pair = pair};
    p->least_on[0] = TS_TAKE(arena, double, stride);
    p->least_on[1] = TS_TAKE(arena, double, stride);
    p->idler       = ts_arena_take(arena, 2, sizeof *p->idler);
    p->next        = ts_arena_take(arena, sets, sizeof *p->next);
    for (size_t set = 0; set < sets; set++)
        p->level_size = fmax(p->level_size, pair->force[set] / (double)TS_LOAD_LEVELS);
    return !ts_arena_failed(arena) && make_carries(p, arena);
}

void ts_relaxed_plane_begin(ts_relaxed_plane *p, const ts_rest_table *t)
{
    for (size_t i = 0; i < p->carry_count; i++)
        for (int arcs = 0; arcs < 2; arcs++)
            for (int r = 0; r < 2; r++)
                for (int l = 0; l < TS_LOAD_LEVELS; l++)
                    p->carries[i].cost[arcs][r][l] = (double)NAN;
    for (int r = 0; r < 2; r++)
        for (int l = 0; l < TS_LOAD_LEVELS; l++)
            p->idler[r][l] = (double)NAN;
    make_least_on(p, t);
}
