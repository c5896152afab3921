/* rating/whirl_course.c: whirl speeds over speed, unbalance, and the map of tubes. */
#include "rating/whirl_course.h"

#include <math.h>

enum { DIAMETERS = 25 };

#define THINNEST 0.5 /* of the tube as it is: where the map begins ... */
#define THICKEST 2.0 /* ... and where it ends                          */

const double ts_map_places[TS_MAP_PLACES] = {(double)NAN, 0.35, 0.5, 0.65};

typedef struct walk {
    const ts_whirls *whirls;
    uint32_t         number;
    ts_whirl_course *out;
    double           shape[TS_ROTOR_DOF_MOST];
    double           re[TS_ROTOR_NODES_MOST], im[TS_ROTOR_NODES_MOST];
} walk;

static bool take(ts_whirl_course *out, int speeds, int nodes, ts_arena *arena)
{
    const size_t n = (size_t)speeds, m = TS_CAMPBELL_MODES;

    out->speeds   = speeds;
    out->nodes    = nodes;
    out->Omega    = TS_TAKE(arena, double, n);
    out->forward  = TS_TAKE(arena, double, n *m);
    out->backward = TS_TAKE(arena, double, n *m);
    out->x        = TS_TAKE(arena, double, (size_t)nodes);
    out->shapes   = TS_TAKE(arena, double, (size_t)nodes *m);
    out->swing    = TS_TAKE(arena, double, n);
    out->load     = TS_TAKE(arena, double, n);
    out->outside  = TS_TAKE(arena, double, DIAMETERS);
    out->longest  = TS_TAKE(arena, double, DIAMETERS *TS_MAP_PLACES);
    return !ts_arena_failed(arena);
}

/* ---- over the speed ---------------------------------------------------------------------------
 */

static void follow(walk *w, ts_whirl_sense sense, int mode, double *line)
{
    double near = 0.0, before = 0.0;

    for (int i = 0; i < w->out->speeds; i++) {
        const double guess = i > 1 ? 2.0 * near - before : near;
        before             = near;
        near    = ts_rotor_whirl(w->whirls->frame, w->out->Omega[i], sense, mode, guess, w->shape);
        line[i] = near;
    }
}

static void find_criticals(walk *w, int mode)
{
    const ts_rotor_frame *frame = w->whirls->frame;
    double               *to    = &w->out->shapes[mode * w->out->nodes];

    w->out->criticals[0][mode] = ts_rotor_critical(frame, TS_WHIRL_BACKWARD, mode, NULL);
    w->out->criticals[1][mode] = ts_rotor_critical(frame, TS_WHIRL_FORWARD, mode, w->shape);
    for (int i = 0; i < w->out->nodes; i++)
        to[i] = isfinite(w->out->criticals[1][mode]) ? w->shape[frame->v[i]] : 0.0;
}

/* ---- unbalance --------------------------------------------------------------------------------
 */

/* The node nearest to x. */
static int nearest(const ts_rotor_frame *frame, double x)
{
    int best = 0;

    for (int i = 1; i < frame->nodes; i++)
        best = fabs(frame->x[i] - x) < fabs(frame->x[best] - x) ? i : best;
    return best;
}

static double between(const ts_whirl_part *part, double x)
{
    return x >= part->from - 1e-9 && x <= part->to + 1e-9 ? 1.0 : 0.0;
}

static double mass_of(const ts_whirl_item *item, const ts_whirl_part *part)
{
    double mass = 0.0;

    for (int i = 0; i < item->rotor.section_count; i++) {
        const ts_rotor_section *s = &item->sections[i];
        mass += between(part, (s->x_1 + s->x_2) / 2.0) * item->rotor.rho * 0.78539816339744831 *
                (s->d_m * s->d_m - s->d_i * s->d_i) * (s->x_2 - s->x_1);
    }
    for (int i = 0; i < item->rotor.disc_count; i++)
        mass += between(part, item->discs[i].x) * item->discs[i].m;
    return mass;
}

/* A quarter of each body in from its ends. */
static int unbalance_of(walk *w, ts_rotor_unbalance list[2 * TS_WHIRL_PARTS_MOST])
{
    const ts_whirl_item *item  = w->out->item;
    const double         grade = w->whirls->drive->whirl.grade.value * 1e-3;
    int                  count = 0;

    w->out->U = 0.0;
    for (int p = 0; p < item->part_count; p++) {
        const ts_whirl_part *part = &item->parts[p];
        const double         U    = ts_permissible_unbalance(grade, mass_of(item, part), item->top);
        w->out->U += U;
        for (int end = 0; end < 2; end++)
            list[count++] = (ts_rotor_unbalance){
                nearest(w->whirls->frame,
                        part->from + (part->to - part->from) * (end == 0 ? 0.25 : 0.75)),
                U / 2.0};
    }
    return count;
}

typedef struct answer {
    double swing, x, load;
    int    bearing;
} answer;

static answer respond(walk *w, double Omega, const ts_rotor_unbalance *list, int count)
{
    const ts_whirl_item  *item  = w->out->item;
    const ts_rotor_frame *frame = w->whirls->frame;
    answer                out   = {0.0, 0.0, 0.0, 0};

    if (!ts_rotor_respond(&item->rotor, frame, Omega, list, count, w->re, w->im))
        return (answer){(double)NAN, (double)NAN, (double)NAN, 0};
    for (int i = 0; i < frame->nodes; i++) {
        const double here = hypot(w->re[i], w->im[i]);
        if (here > out.swing) {
            out.swing = here;
            out.x     = frame->x[i];
        }
    }
    for (int i = 0; i < item->rotor.bearing_count; i++) {
        const int    at   = ts_rotor_node(frame, item->bearings[i].x);
        const double load = item->bearings[i].k_r * hypot(1.0, item->bearings[i].loss) *
                            hypot(w->re[at], w->im[at]);
        if (load > out.load) {
            out.load    = load;
            out.bearing = i;
        }
    }
    return out;
}

static void unbalance(walk *w)
{
    ts_rotor_unbalance list[2 * TS_WHIRL_PARTS_MOST];
    const int          count = unbalance_of(w, list);
    const answer       top   = respond(w, w->out->item->top, list, count);

    for (int i = 0; i < w->out->speeds; i++) {
        const answer here = respond(w, w->out->Omega[i], list, count);
        w->out->swing[i]  = here.swing;
        w->out->load[i]   = here.load;
    }
    w->out->top_swing = top.swing;
    w->out->top_load  = top.load;
    w->out->top_x     = top.x;
    w->out->loaded    = top.bearing;
}

/* ---- the map ----------------------------------------------------------------------------------
 */

static void map(walk *w)
{
    const ts_whirl_item *item  = w->out->item;
    const ts_line       *tube  = &w->whirls->lines->lines[item->parts[1].line];
    const double         least = w->whirls->drive->limits.whirl_margin.value * item->top;
    const double         d_o = tube->sections[0].d_o, share = tube->sections[0].d_i / d_o;

    w->out->diameters = DIAMETERS;
    for (int i = 0; i < DIAMETERS; i++) {
        const double d     = d_o * (THINNEST + (THICKEST - THINNEST) * i / (DIAMETERS - 1.0));
        w->out->outside[i] = d;
        for (int p = 0; p < TS_MAP_PLACES; p++) {
            const ts_whirl_trial trial = {d, d * share, 0.0, ts_map_places[p]};
            w->out->longest[p * DIAMETERS + i] =
                ts_whirl_longest(w->whirls, w->number, &trial, least);
        }
    }
}

uint32_t ts_whirls_nearest(const ts_whirls *whirls)
{
    uint32_t best  = UINT32_MAX;
    double   least = (double)INFINITY;

    for (uint32_t i = 0; i < whirls->count; i++) {
        const ts_whirl_item *item = &whirls->items[i];
        if (!item->radial || item->fault != NULL || item->missing != NULL || !(item->top > 0.0) ||
            !isfinite(item->forward) || item->forward / item->top >= least)
            continue;
        least = item->forward / item->top;
        best  = i;
    }
    return best;
}

ts_status ts_whirl_course_of(const ts_whirls *whirls, uint32_t item, int speeds, unsigned wanted,
                             ts_arena *arena, ts_whirl_course *out)
{
    walk w = {.whirls = whirls, .number = item, .out = out};

    *out = (ts_whirl_course){.item = &whirls->items[item]};
    if (out->item->fault != NULL || out->item->missing != NULL || !(out->item->top > 0.0) ||
        ts_rotor_prepare(&out->item->rotor, whirls->frame) != TS_ROTOR_FINE)
        return TS_OK;
    if (!take(out, speeds, whirls->frame->nodes, arena))
        return TS_NO_MEMORY;
    for (int i = 0; i < speeds; i++)
        out->Omega[i] = TS_WHIRL_REACH * out->item->top * i / (speeds - 1.0);
    for (int i = 0; i < out->nodes; i++)
        out->x[i] = whirls->frame->x[i];
    for (int mode = 0; (wanted & TS_COURSE_SPEEDS) != 0 && mode < TS_CAMPBELL_MODES; mode++) {
        follow(&w, TS_WHIRL_FORWARD, mode, &out->forward[mode * speeds]);
        follow(&w, TS_WHIRL_BACKWARD, mode, &out->backward[mode * speeds]);
        find_criticals(&w, mode);
    }
    if ((wanted & TS_COURSE_SPEEDS) != 0)
        unbalance(&w);
    if ((wanted & TS_COURSE_MAP) != 0 && out->item->radial &&
        isfinite(whirls->drive->limits.whirl_margin.value))
        map(&w);
    return TS_OK;
}
