/* search/arrange_tables.c: what does a problem say, before any order is chosen? */
#include "search/arrange_tables.h"

#include <math.h>
#include <string.h>

static uint32_t greatest_divisor(uint32_t a, uint32_t b)
{
    while (b != 0) {
        const uint32_t rest = a % b;
        a                   = b;
        b                   = rest;
    }
    return a;
}

static size_t larger(size_t a, size_t b)
{
    return a > b ? a : b;
}

static size_t largest_teeth(const ts_arrange_problem *p)
{
    size_t most = p->z_most;
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        if (p->idler_teeth[i] > most)
            most = p->idler_teeth[i];
    for (size_t b = 0; b < p->box_count; b++)
        for (uint32_t c = 0; c < p->boxes[b].choice_count; c++)
            if (p->boxes[b].choices[c].z_in > most)
                most = p->boxes[b].choices[c].z_in;
    for (size_t b = 0; b < p->box_count; b++)
        for (size_t i = 0; i < p->boxes[b].step_count; i++)
            most = larger(most, larger(p->boxes[b].steps[i].z, p->boxes[b].steps[i].z_step));
    return most;
}

static bool make_coprime(ts_arrange_tables *t, ts_arena *arena)
{
    t->coprime = TS_TAKE(arena, uint8_t, t->stride * t->stride);
    if (t->coprime == NULL)
        return false;
    for (uint32_t i = 0; i < t->stride; i++)
        for (uint32_t k = 0; k < t->stride; k++)
            t->coprime[i * t->stride + k] =
                !t->problem->hunting || greatest_divisor(i, k) == 1 ? 1 : 0;
    return true;
}

static bool make_loads(ts_arrange_tables *t, ts_arena *arena)
{
    const ts_arrange_problem *p = t->problem;

    t->loads = TS_TAKE(arena, uint8_t, (size_t)t->all + 1);
    if (t->loads == NULL)
        return false;
    for (uint32_t set = 0; set <= t->all; set++)
        for (size_t c = 0; c < p->condition_count; c++) {
            double sum = 0.0;
            for (size_t a = 0; a < p->accessory_count; a++)
                if ((set >> a & 1u) != 0)
                    sum += p->accessories[a].power[c];
            if (sum > TS_POWER_NONE)
                t->loads[set] |= TS_LOAD_AHEAD;
            else if (sum < -TS_POWER_NONE)
                t->loads[set] |= TS_LOAD_BACK;
        }
    return true;
}

/* ---- boxes ------------------------------------------------------------------------------------
 */

static void add_radius(ts_box_tables *b, double radius)
{
    size_t at = 0;
    while (at < b->key_count && b->radius[at] < radius)
        at++;
    if (at < b->key_count && b->radius[at] == radius)
        return;
    memmove(&b->radius[at + 1], &b->radius[at], (b->key_count - at) * sizeof b->radius[0]);
    b->radius[at] = radius;
    b->key_count++;
}

static uint8_t key_of(const ts_box_tables *b, double radius)
{
    uint8_t key = 0;
    while (b->radius[key] < radius)
        key++;
    return key;
}

/* NaN of an argument above 1 means that no angle is wide enough. */
static double arc_of(double sine)
{
    return sine <= 1.0 ? asin(sine) : (double)INFINITY;
}

static void make_separations(const ts_arrange_problem *p, double radius, ts_box_tables *b)
{
    const bool chord = p->clearance == TS_CLEARANCE_CHORD;

    for (size_t i = 0; i < b->key_count; i++) {
        const double out = b->radius[i] + 0.5 * p->gap;
        b->half[i]       = arc_of(out / radius);
        for (size_t k = 0; k < b->key_count; k++) {
            const double other = b->radius[k] + 0.5 * p->gap;
            b->apart[i][k]     = chord ? 2.0 * arc_of((out + other) / (2.0 * radius))
                                       : arc_of(out / radius) + arc_of(other / radius);
        }
    }
    /* The arc sine is convex and 0 at 0: 2 asin((x + y)/2) >= 2 asin(x/2) + 2 asin(y/2). */
    for (size_t i = 0; chord && i < b->key_count; i++)
        b->half[i] = 2.0 * arc_of((b->radius[i] + 0.5 * p->gap) / (2.0 * radius));
}

/* How many bodies of one face can matter at once to what is still to come?  Seen from the last
 * shaft, one that is further away than another matters only when it is larger, bodies on a face
 * keep their distance from each other, and the largest body that may come must still be able to
 * meet the furthest one.  most[i]: the longest such row that ends, furthest, with class i, and the
 * least distance of its end. */
static size_t longest_row(const ts_box_tables *b, ts_arrange_clearance clearance)
{
    double least[TS_KEYS_MOST]; /* distance of the end of the shortest row of the present length */
    size_t length = 1;

    if (clearance == TS_CLEARANCE_SECTOR)
        return 1; /* separations are sums: one number says it for every body to come */
    const size_t largest = b->key_count - 1;
    for (size_t i = 0; i < b->key_count; i++)
        least[i] = 0.0;
    for (; length < b->key_count; length++) {
        double next[TS_KEYS_MOST];
        bool   any = false;
        for (size_t i = 0; i < b->key_count; i++) {
            next[i] = (double)INFINITY;
            for (size_t k = 0; k < i; k++)
                if (least[k] + b->apart[k][i] < next[i])
                    next[i] = least[k] + b->apart[k][i];
            /* Twice the slack: each separation may miss by it. */
            next[i] -= 2.0 * TS_ANGLE_SLACK;
            if (next[i] >= b->apart[largest][i])
                next[i] = (double)INFINITY;
            any = any || isfinite(next[i]);
        }
        if (!any)
            break;
        memcpy(least, next, sizeof next);
    }
    return length;
}

static void make_lifts(ts_box_tables *b, const ts_arrange_problem *p)
{
    b->serviced = p->servicing_weight > 0.0;
    for (uint32_t a = 0; a < p->accessory_count; a++)
        for (uint32_t face = 0; face < 2; face++)
            if ((b->allowed >> a & 1u) != 0 && (p->accessories[a].faces >> face & 1u) != 0)
                b->lift[face][a] = p->servicing_weight * p->accessories[a].lift;
}

static bool make_open_keys(const ts_arrange_tables *t, ts_box_tables *b, ts_arena *arena)
{
    const ts_arrange_problem *p = t->problem;

    for (int face = 0; face < 2; face++) {
        b->open_keys[face] = TS_TAKE(arena, uint32_t, (size_t)t->all + 1);
        if (b->open_keys[face] == NULL)
            return false;
        for (uint32_t set = 0; set <= t->all; set++) {
            uint32_t keys = b->input_key[face] >= 0 ? 1u << b->input_key[face] : 0;
            for (size_t a = 0; a < p->accessory_count; a++)
                if (((b->allowed & ~set) >> a & 1u) != 0 &&
                    (p->accessories[a].faces >> face & 1u) != 0)
                    keys |= 1u << b->key[a];
            b->open_keys[face][set] = keys;
        }
    }
    return true;
}

/* The senses in which a shaft may turn with accessory `a` on that face, as bits. */
static uint8_t senses_of(const ts_arrange_accessory *a, int face)
{
    if (a->sense == 0)
        return 1u << TS_SENSE_PLUS | 1u << TS_SENSE_MINUS;
    const bool plus = face == 0 ? a->sense > 0 : a->sense < 0;
    return (uint8_t)(1u << (plus ? TS_SENSE_PLUS : TS_SENSE_MINUS));
}

static void add_carry(ts_box_tables *b, const ts_arrange_problem *p, int front, int rear)
{
    ts_carry c    = {.on = {(int8_t)front, (int8_t)rear}, .senses = 3};
    uint32_t with = 0;
    for (int face = 0; face < 2; face++) {
        if (c.on[face] < 0)
            continue;
        const ts_arrange_accessory *a = &p->accessories[c.on[face]];
        if ((b->allowed >> c.on[face] & 1u) == 0 || (a->faces >> face & 1u) == 0)
            return;
        c.set |= 1u << c.on[face];
        c.senses &= senses_of(a, face);
        c.pad_mass += a->pad_mass;
        with |= a->with;
    }
    if ((with & ~c.set) != 0)
        return; /* somebody who must share the shaft is not there */
    const bool both_sides = (c.set & b->left_only) != 0 && (c.set & b->right_only) != 0;
    if (c.senses != 0 && !both_sides)
        b->carries[b->carry_count++] = c;
}

static bool make_carries(ts_box_tables *b, const ts_arrange_problem *p, ts_arena *arena)
{
    const int n = (int)p->accessory_count;

    b->carries = TS_TAKE(arena, ts_carry, (size_t)(n * (n + 1)));
    if (b->carries == NULL)
        return false;
    for (int a = 0; a < n; a++) {
        add_carry(b, p, a, -1);
        add_carry(b, p, -1, a);
    }
    for (int front = 0; front < n; front++)
        for (int rear = 0; rear < n; rear++)
            if (front != rear)
                add_carry(b, p, front, rear);
    return true;
}

static bool make_box(ts_arrange_tables *t, size_t index, ts_arena *arena)
{
    const ts_arrange_problem *p     = t->problem;
    const ts_arrange_box     *frame = &p->boxes[index];
    ts_box_tables            *b     = &t->boxes[index];

    *b = (ts_box_tables){.input_key = {-1, -1},
                         .casing    = frame->casing * frame->radius + p->wrap_weight};
    for (size_t a = 0; a < p->accessory_count; a++) {
        const uint32_t bit = 1u << a;
        add_radius(b, p->accessories[a].body_radius);
        if ((p->accessories[a].boxes >> index & 1u) != 0)
            b->allowed |= bit;
        if (p->accessories[a].side == TS_SIDE_LEFT)
            b->left_only |= bit;
        if (p->accessories[a].side == TS_SIDE_RIGHT)
            b->right_only |= bit;
    }
    for (int face = 0; face < 2; face++)
        if (frame->input_body[face] > 0.0)
            add_radius(b, frame->input_body[face]);
    for (size_t a = 0; a < p->accessory_count; a++)
        b->key[a] = key_of(b, p->accessories[a].body_radius);
    for (int face = 0; face < 2; face++)
        if (frame->input_body[face] > 0.0)
            b->input_key[face] = (int8_t)key_of(b, frame->input_body[face]);
    make_separations(p, frame->radius, b);
    b->reach_most = longest_row(b, p->clearance);
    make_lifts(b, p);
    return make_open_keys(t, b, arena) && make_carries(b, p, arena);
}

/* ---- modules ----------------------------------------------------------------------------------
 */

static bool make_gear_masses(const ts_arrange_tables *t, uint32_t index, ts_arena *arena)
{
    const ts_arrange_problem *p = t->problem;
    ts_module_tables         *m = &t->modules[index];

    m->steps_most = TS_TAKE(arena, uint16_t, t->stride);
    if (m->steps_most == NULL)
        return false;
    for (size_t z = 0; z < t->stride; z++) {
        const double steps = p->width_over_diameter * m->m * (double)z / p->width_step;
        const double most  = floor(steps * (1.0 + TS_SPEED_SLACK));
        m->steps_most[z]   = (uint16_t)fmin(most, (double)(TS_STEPS_NONE - 1));
        if (m->steps_most[z] > m->steps_top)
            m->steps_top = m->steps_most[z];
    }
    m->gear_mass = TS_TAKE(arena, double, t->stride *((size_t)m->steps_top + 1));
    if (m->gear_mass == NULL)
        return false;
    for (uint32_t z = 1; z < t->stride; z++)
        for (uint32_t w = 0; w <= m->steps_most[z]; w++)
            m->gear_mass[z * (m->steps_top + 1) + w] =
                p->model.gear_mass(p->model.context, index, z, (double)w * p->width_step);
    return true;
}

static bool make_unit_steps(const ts_arrange_tables *t, uint32_t index, ts_arena *arena)
{
    const ts_arrange_problem *p      = t->problem;
    ts_module_tables         *m      = &t->modules[index];
    double                   *forces = TS_TAKE(arena, double, p->condition_count);

    if (forces == NULL)
        return false;
    for (size_t c = 0; c < p->condition_count; c++)
        forces[c] = 1.0;
    ts_arrange_mesh mesh = {
        .module = index, .force = forces, .condition_count = p->condition_count};
    for (uint32_t k = 0; k < 4; k++) {
        m->unit_steps[k] = TS_TAKE(arena, double, t->stride * t->stride);
        if (m->unit_steps[k] == NULL)
            return false;
        mesh.reversed_inner = (k & 1u) != 0;
        mesh.reversed_outer = (k & 2u) != 0;
        for (mesh.z_inner = 1; mesh.z_inner < t->stride; mesh.z_inner++)
            for (mesh.z_outer = 1; mesh.z_outer < t->stride; mesh.z_outer++)
                m->unit_steps[k][mesh.z_inner * t->stride + mesh.z_outer] =
                    p->model.width(p->model.context, &mesh) / p->width_step;
    }
    return true;
}

/* The least that a gear needs per newton, whichever partner it meets and on either end of a mesh.
 */
static bool make_unit_least(const ts_arrange_tables *t, uint32_t index, ts_arena *arena)
{
    ts_module_tables *m = &t->modules[index];

    for (uint32_t reversed = 0; reversed < 2; reversed++) {
        m->unit_least[reversed] = TS_TAKE(arena, double, t->stride);
        if (m->unit_least[reversed] == NULL)
            return false;
        for (size_t z = 1; z < t->stride; z++) {
            double least = (double)INFINITY;
            for (size_t other = 1; other < t->stride; other++) {
                least = fmin(least, m->unit_steps[reversed][z * t->stride + other]);
                least = fmin(least, m->unit_steps[2 * reversed][other * t->stride + z]);
            }
            m->unit_least[reversed][z] = least;
        }
    }
    return true;
}

bool ts_arrange_tables_make(ts_arrange_tables *tables, const ts_arrange_problem *problem,
                            ts_arena *arena)
{
    ts_arrange_tables *t = tables;

    *t = (ts_arrange_tables){.problem = problem};
    if (problem->accessory_count > TS_ARRANGE_ACCESSORIES ||
        problem->box_count > TS_ARRANGE_BOXES || problem->idlers_in_row > TS_ARRANGE_IDLERS ||
        largest_teeth(problem) > TS_ARRANGE_TEETH)
        return false;
    t->all         = (1u << problem->accessory_count) - 1u;
    t->stride      = largest_teeth(problem) + 1;
    t->steps_least = ts_steps_of(problem->width_least / problem->width_step);
    t->modules     = TS_TAKE(arena, ts_module_tables, problem->module_count);
    if (t->modules == NULL || !make_coprime(t, arena) || !make_loads(t, arena))
        return false;
    for (size_t b = 0; b < problem->box_count; b++)
        if (!make_box(t, b, arena))
            return false;
    for (uint32_t i = 0; i < problem->module_count; i++) {
        t->modules[i].m = problem->modules[i];
        if (!make_gear_masses(t, i, arena))
            return false;
        if (problem->model.proportional &&
            (!make_unit_steps(t, i, arena) || !make_unit_least(t, i, arena)))
            return false;
    }
    return true;
}
