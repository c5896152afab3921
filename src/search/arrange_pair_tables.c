/* search/arrange_pair_tables.c: what follows from one module and one input gear? */
#include "search/arrange_tables.h"

#include <math.h>

static bool in_band(double speed, double least, double most)
{
    return speed >= least - TS_SPEED_SLACK * fabs(least) &&
           speed <= most + TS_SPEED_SLACK * fabs(most);
}

static bool fits(const ts_arrange_problem *p, const ts_arrange_choice *choice, double turns,
                 const ts_arrange_accessory *a, uint32_t z)
{
    for (size_t c = 0; c < p->condition_count; c++) {
        const double speed = choice->speed[c] * turns / (double)z;
        if (!in_band(speed, a->speed_least[c], a->speed_most[c]))
            return false;
    }
    return true;
}

/* Speed falls with z and size grows, so the teeth that fit have no gaps. */
static ts_window window_of(const ts_pair_tables *pair, const ts_arrange_choice *choice,
                           const ts_arrange_accessory *a)
{
    const ts_arrange_problem *p   = pair->tables->problem;
    const ts_arrange_box     *box = pair->frame;
    const double              m = pair->module->m, most = box->tip_most;
    ts_window                 w = {1, 0};
    for (uint32_t z = p->z_least; z <= p->z_most; z++) {
        if (!fits(p, choice, pair->turns, a, z) ||
            (most > 0.0 && m * ((double)z + 2.0 * box->addendum) > most))
            continue;
        if (w.least > w.most)
            w.least = (uint16_t)z;
        w.most = (uint16_t)z;
    }
    return w;
}

static void make_windows(ts_pair_tables *pair, const ts_arrange_choice *choice)
{
    const ts_arrange_problem *p        = pair->tables->problem;
    uint32_t                  smallest = pair->z_second > 0 ? pair->z_nearest : choice->z_in;

    for (uint32_t a = 0; a < p->accessory_count; a++) {
        const ts_arrange_accessory *each = &p->accessories[a];
        if (pair->z_second == 0 && each->side == TS_SIDE_ANY &&
            fits(p, choice, pair->turns, each, choice->z_in))
            pair->input_fits |= 1u << a;
        pair->window[a] = each->input ? (ts_window){1, 0} : window_of(pair, choice, each);
        if (pair->window[a].least <= pair->window[a].most && pair->window[a].least < smallest)
            smallest = pair->window[a].least;
    }
    for (size_t i = 0; i < p->idler_teeth_count && p->idlers_in_row > 0; i++)
        if (p->idler_teeth[i] < smallest)
            smallest = p->idler_teeth[i];
    pair->z_smallest = smallest;
}

/* Of pair->told. */
#define TOLD_BITS_LEAST 10
#define TOLD_BITS_MOST  19
static uint32_t told_bits(const ts_arrange_problem *p)
{
    const uint32_t bits = 6 + 2 * (uint32_t)p->accessory_count;
    return bits < TOLD_BITS_LEAST ? TOLD_BITS_LEAST : bits < TOLD_BITS_MOST ? bits : TOLD_BITS_MOST;
}

static double arc_between(double m, double z_sum, double radius)
{
    const double sine = m * z_sum / (4.0 * radius);
    return sine <= 1.0 ? 2.0 * asin(sine) : (double)INFINITY;
}

/* The arc sine is convex and 0 at 0, so the arc of a mesh is never less than what its two gears
 * would have alone; the shares add up to a bound from below. */
static void make_angles(ts_pair_tables *pair)
{
    const size_t stride = pair->tables->stride;
    for (size_t sum = 0; sum < 2 * stride; sum++)
        pair->angle[sum] = arc_between(pair->module->m, (double)sum, pair->frame->radius);
    for (size_t z = 0; z < stride; z++)
        pair->share[z] = arc_between(pair->module->m, (double)z, pair->frame->radius);
}

/* Tangential force = torque / radius of the input gear, for the pitch-line velocity is one. */
static void make_forces(ts_pair_tables *pair, const ts_arrange_choice *choice)
{
    const ts_arrange_problem *p      = pair->tables->problem;
    const double              radius = 0.5 * pair->module->m * pair->turns;

    for (uint32_t set = 0; set <= pair->tables->all; set++) {
        double most = 0.0;
        for (size_t c = 0; c < p->condition_count; c++) {
            double sum = 0.0;
            for (size_t a = 0; a < p->accessory_count; a++)
                if ((set >> a & 1u) != 0)
                    sum += p->accessories[a].power[c];
            const double force = sum / (choice->speed[c] * radius);
            most               = fmax(most, fabs(force));
            if (pair->forces != NULL)
                pair->forces[set * p->condition_count + c] = force;
        }
        pair->force[set] = most;
    }
}

/* One plane; everything but what it drives. */
static bool make_plane(ts_pair_tables *pair, const ts_arrange_choice *own, bool least,
                       ts_arena *arena)
{
    const ts_arrange_tables  *t    = pair->tables;
    const ts_arrange_problem *p    = t->problem;
    const size_t              sets = (size_t)t->all + 1;

    pair->module     = &t->modules[pair->module_index];
    pair->told_shift = 64 - told_bits(p);
    pair->angle      = TS_TAKE(arena, double, 2 * t->stride);
    pair->share      = TS_TAKE(arena, double, t->stride);
    pair->force      = TS_TAKE(arena, double, sets);
    if (!p->model.proportional)
        pair->told = TS_TAKE(arena, ts_told_width, (size_t)1 << told_bits(p));
    if (!p->model.proportional)
        pair->forces = TS_TAKE(arena, double, sets * p->condition_count);
    if (ts_arena_failed(arena))
        return false;
    make_windows(pair, own);
    make_angles(pair);
    make_forces(pair, own);
    if (least && !p->model.proportional && p->model.least != NULL)
        return ts_plane_ask_least(pair, arena);
    return true;
}

/* The same module and the same ratio, by whichever teeth, are one plane. */
static bool is_driven_by(const ts_pair_tables *plane, const ts_arrange_step *s, uint32_t module)
{
    return plane->module_index == module &&
           (uint64_t)plane->z_second * s->z == (uint64_t)s->z_step * plane->z_first;
}

static uint32_t plane_for(ts_pair_tables *pair, const ts_arrange_step *s)
{
    const uint32_t module = s->module == TS_MODULE_SAME ? pair->module_index : s->module;
    for (uint32_t i = 0; i < pair->plane_count; i++)
        if (is_driven_by(&pair->planes[i], s, module))
            return i + 1;
    ts_pair_tables *fresh = &pair->planes[pair->plane_count++];
    *fresh                = *pair;
    fresh->planes         = NULL;
    fresh->plane_count    = 0;
    fresh->module_index   = module;
    fresh->z_first        = s->z;
    fresh->z_second       = s->z_step;
    fresh->turns          = (double)pair->z_in * (double)s->z_step / (double)s->z;
    fresh->input_fits     = 0;
    fresh->z_nearest      = s->z_step;
    return (uint32_t)pair->plane_count;
}

static bool make_planes(ts_pair_tables *pair, const ts_arrange_choice *own, bool least,
                        ts_arena *arena)
{
    const ts_arrange_box *frame = pair->frame;

    pair->planes = TS_TAKE(arena, ts_pair_tables, frame->step_count);
    pair->steps  = TS_TAKE(arena, ts_plane_step, frame->step_count);
    if (ts_arena_failed(arena))
        return false;
    for (size_t i = 0; i < frame->step_count; i++) {
        const ts_arrange_step *s     = &frame->steps[i];
        const uint32_t         plane = plane_for(pair, s);
        pair->steps[pair->step_count++] =
            (ts_plane_step){plane, (uint16_t)s->z, (uint16_t)s->z_step};
        if (s->z_step < pair->planes[plane - 1].z_nearest)
            pair->planes[plane - 1].z_nearest = s->z_step;
    }
    for (size_t i = 0; i < pair->plane_count; i++)
        if (!make_plane(&pair->planes[i], own, least, arena))
            return false;
    return true;
}

bool ts_pair_tables_make(ts_pair_tables *pair, const ts_arrange_tables *tables, uint32_t box,
                         uint32_t choice, bool least, ts_arena *arena)
{
    const ts_arrange_problem *p   = tables->problem;
    const ts_arrange_choice  *own = &p->boxes[box].choices[choice];

    *pair = (ts_pair_tables){
        .tables       = tables,
        .box          = &tables->boxes[box],
        .frame        = &p->boxes[box],
        .box_index    = box,
        .choice       = choice,
        .z_in         = own->z_in,
        .take_off     = own->take_off,
        .module_index = own->module,
        .turns        = (double)own->z_in,
        .input_sense  = p->boxes[box].input_sense > 0 ? TS_SENSE_PLUS : TS_SENSE_MINUS,
    };
    return make_plane(pair, own, least, arena) && make_planes(pair, own, least, arena);
}

/* Never 0, for teeth are not. */
static uint64_t told_key(uint32_t set, uint32_t z_inner, uint32_t z_outer, bool reversed_inner,
                         bool reversed_outer)
{
    return (uint64_t)set << 20 | (uint64_t)z_inner << 11 | (uint64_t)z_outer << 2 |
           (reversed_inner ? 2u : 0u) | (reversed_outer ? 1u : 0u);
}

static uint32_t ask_model(const ts_pair_tables *pair, uint32_t set, uint32_t z_inner,
                          uint32_t z_outer, bool reversed_inner, bool reversed_outer)
{
    const ts_arrange_problem *p    = pair->tables->problem;
    const ts_arrange_mesh     mesh = {
            .box             = pair->box_index,
            .module          = pair->module_index,
            .z_in            = pair->z_in,
            .take_off        = pair->take_off,
            .z_first         = pair->z_first,
            .z_second        = pair->z_second,
            .z_inner         = z_inner,
            .z_outer         = z_outer,
            .reversed_inner  = reversed_inner,
            .reversed_outer  = reversed_outer,
            .force           = &pair->forces[set * p->condition_count],
            .condition_count = p->condition_count,
    };
    return ts_steps_of(p->model.width(p->model.context, &mesh) / p->width_step);
}

uint32_t ts_pair_steps(const ts_pair_tables *pair, uint32_t set, uint32_t z_inner, uint32_t z_outer,
                       bool reversed_inner, bool reversed_outer)
{
    const ts_arrange_tables  *t = pair->tables;
    const ts_arrange_problem *p = t->problem;

    if (p->model.proportional) {
        const size_t which = (reversed_inner ? 1u : 0u) + (reversed_outer ? 2u : 0u);
        return ts_steps_of(pair->force[set] *
                           pair->module->unit_steps[which][z_inner * t->stride + z_outer]);
    }
    /* The same answer from whichever thread, so that it does not matter who wrote it. */
    const uint64_t key  = told_key(set, z_inner, z_outer, reversed_inner, reversed_outer);
    ts_told_width *told = &pair->told[(key * 0x9E3779B97F4A7C15u) >> pair->told_shift];
    const uint64_t seen = atomic_load_explicit(told, memory_order_relaxed);
    if (seen >> 16 == key)
        return (uint32_t)(seen & 0xFFFFu);
    const uint32_t steps = ask_model(pair, set, z_inner, z_outer, reversed_inner, reversed_outer);
    atomic_store_explicit(told, key << 16 | steps, memory_order_relaxed);
    return steps;
}
