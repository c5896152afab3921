/* draw/dxf_wall.c: which lines and arcs bound the wall of a box?
 *
 * derived: the wall is the union of discs and of the trapezia between their outer tangents.  A
 * piece of a circle or of a tangent belongs to its outline when it lies in no other part of the
 * union; where that changes it crosses the edge of another part, so each is cut there and the
 * middle of every length is asked.
 */
#include "draw/dxf_wall.h"

#include <math.h>

#define APART 1e-9 /* m; nearer points are one */

typedef struct bridge {
    bool     stands;
    ts_point corner[4]; /* 0-1 and 2-3 are the tangents */
} bridge;

typedef struct wall {
    const ts_wall_disc *discs;
    bridge             *bridges; /* [disc], to the one that it is joined to */
    size_t              count;
    double             *cuts; /* along the curve that is being cut */
    size_t              cut_count;
} wall;

static bridge bridge_of(const ts_wall_disc *p, const ts_wall_disc *q)
{
    const double length = hypot(q->at.x - p->at.x, q->at.y - p->at.y);
    if (p == q || !(length > fabs(p->r - q->r)))
        return (bridge){.stands = false};
    const double line = atan2(q->at.y - p->at.y, q->at.x - p->at.x);
    const double lean = acos((p->r - q->r) / length);
    bridge       one  = {.stands = true};
    for (int i = 0; i < 4; i++) {
        const ts_wall_disc *end   = i == 0 || i == 3 ? p : q;
        const double        angle = i < 2 ? line + lean : line - lean;
        one.corner[i] =
            (ts_point){end->at.x + end->r * cos(angle), end->at.y + end->r * sin(angle)};
    }
    return one;
}

/* ---- inside ------------------------------------------------------------------------------- */

static bool in_disc(const ts_wall_disc *disc, ts_point at)
{
    return hypot(at.x - disc->at.x, at.y - disc->at.y) < disc->r - APART;
}

static bool in_bridge(const bridge *one, ts_point at)
{
    for (int i = 0; i < 4; i++) {
        const ts_point a = one->corner[i], b = one->corner[(i + 1) % 4];
        const double   length = hypot(b.x - a.x, b.y - a.y);
        /* The corners run clockwise. */
        if (!((b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x) < -APART * length))
            return false;
    }
    return true;
}

static bool is_covered(const wall *all, ts_point at)
{
    for (size_t i = 0; i < all->count; i++)
        if (in_disc(&all->discs[i], at) ||
            (all->bridges[i].stands && in_bridge(&all->bridges[i], at)))
            return true;
    return false;
}

/* ---- cuts --------------------------------------------------------------------------------- */

/* Keeps the cuts in order. */
static void cut(wall *all, double at)
{
    size_t i = all->cut_count++;
    for (; i > 0 && all->cuts[i - 1] > at; i--)
        all->cuts[i] = all->cuts[i - 1];
    all->cuts[i] = at;
}

/* Where the segment a-b crosses a circle, as shares of it; returns how many of two. */
static int cross_circle(ts_point a, ts_point b, const ts_wall_disc *disc, double share[2])
{
    const double dx = b.x - a.x, dy = b.y - a.y, length2 = dx * dx + dy * dy;
    const double middle = ((disc->at.x - a.x) * dx + (disc->at.y - a.y) * dy) / length2;
    const double fx = a.x + middle * dx - disc->at.x, fy = a.y + middle * dy - disc->at.y;
    const double left  = disc->r * disc->r - fx * fx - fy * fy;
    const double slack = APART / sqrt(length2);
    int          found = 0;
    if (!(left >= 0.0))
        return 0;
    for (int side = -1; side <= 1; side += 2) {
        const double at = middle + side * sqrt(left / length2);
        if (at > -slack && at < 1.0 + slack)
            share[found++] = at;
    }
    return found;
}

static void cut_circle_at(wall *all, const ts_wall_disc *disc, double x, double y)
{
    const double angle = atan2(y - disc->at.y, x - disc->at.x);
    cut(all, angle < 0.0 ? angle + 2.0 * M_PI : angle);
}

static void cut_circle_by_disc(wall *all, const ts_wall_disc *one, const ts_wall_disc *other)
{
    const double dx = other->at.x - one->at.x, dy = other->at.y - one->at.y, d = hypot(dx, dy);
    if (!(d > APART) || !(d < one->r + other->r) || !(d > fabs(one->r - other->r)))
        return;
    const double along = (d * d + one->r * one->r - other->r * other->r) / (2.0 * d);
    const double off   = sqrt(fmax(0.0, one->r * one->r - along * along));
    for (int side = -1; side <= 1; side += 2)
        cut_circle_at(all, one, one->at.x + (along * dx - side * off * dy) / d,
                      one->at.y + (along * dy + side * off * dx) / d);
}

static void cut_circle_by_bridge(wall *all, const ts_wall_disc *disc, const bridge *one)
{
    for (int i = 0; i < 4 && one->stands; i++) {
        const ts_point a = one->corner[i], b = one->corner[(i + 1) % 4];
        double         share[2];
        const int      found = cross_circle(a, b, disc, share);
        for (int k = 0; k < found; k++)
            cut_circle_at(all, disc, a.x + share[k] * (b.x - a.x), a.y + share[k] * (b.y - a.y));
    }
}

static void cut_line_by_bridge(wall *all, ts_point a, ts_point b, const bridge *one)
{
    for (int i = 0; i < 4 && one->stands; i++) {
        const ts_point c = one->corner[i], d = one->corner[(i + 1) % 4];
        const double   across = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x);
        if (!(fabs(across) > APART * APART))
            continue;
        const double at   = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / across;
        const double from = ((c.x - a.x) * (b.y - a.y) - (c.y - a.y) * (b.x - a.x)) / across;
        if (at > 0.0 && at < 1.0 && from >= 0.0 && from <= 1.0)
            cut(all, at);
    }
}

/* ---- what is left ------------------------------------------------------------------------- */

static ts_point on_circle(const ts_wall_disc *disc, double angle)
{
    return (ts_point){disc->at.x + disc->r * cos(angle), disc->at.y + disc->r * sin(angle)};
}

static void draw_circle(wall *all, ts_dxf *dxf, ts_dxf_layer layer, const ts_wall_disc *disc)
{
    all->cut_count = 0;
    for (size_t i = 0; i < all->count; i++) {
        if (&all->discs[i] != disc)
            cut_circle_by_disc(all, disc, &all->discs[i]);
        cut_circle_by_bridge(all, disc, &all->bridges[i]);
    }
    if (all->cut_count == 0) {
        if (!is_covered(all, on_circle(disc, 0.0)))
            ts_dxf_circle(dxf, layer, disc->at, disc->r);
        return;
    }
    for (size_t i = 0; i < all->cut_count; i++) {
        const bool   last = i + 1 == all->cut_count;
        const double from = all->cuts[i], to = last ? all->cuts[0] + 2.0 * M_PI : all->cuts[i + 1];
        if ((to - from) * disc->r > 10.0 * APART &&
            !is_covered(all, on_circle(disc, 0.5 * (from + to))))
            ts_dxf_arc(dxf, layer, disc->at, disc->r, from, to > 2.0 * M_PI ? to - 2.0 * M_PI : to);
    }
}

static ts_point between(ts_point a, ts_point b, double share)
{
    return (ts_point){a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

static void draw_line(wall *all, ts_dxf *dxf, ts_dxf_layer layer, ts_point a, ts_point b)
{
    all->cut_count = 0;
    cut(all, 0.0);
    cut(all, 1.0);
    for (size_t i = 0; i < all->count; i++) {
        double    share[2];
        const int found = cross_circle(a, b, &all->discs[i], share);
        for (int k = 0; k < found; k++)
            cut(all, fmin(fmax(share[k], 0.0), 1.0));
        cut_line_by_bridge(all, a, b, &all->bridges[i]);
    }
    const double length = hypot(b.x - a.x, b.y - a.y);
    for (size_t i = 1; i < all->cut_count; i++) {
        const double from = all->cuts[i - 1], to = all->cuts[i];
        if ((to - from) * length > 10.0 * APART &&
            !is_covered(all, between(a, b, 0.5 * (from + to))))
            ts_dxf_line(dxf, layer, between(a, b, from), between(a, b, to));
    }
}

ts_status ts_dxf_wall(ts_dxf *dxf, ts_dxf_layer layer, const ts_wall_disc *discs, size_t count,
                      ts_arena *arena)
{
    /* A curve meets each disc twice and each of four edges twice. */
    wall all = {.discs   = discs,
                .bridges = TS_TAKE(arena, bridge, count),
                .count   = count,
                .cuts    = TS_TAKE(arena, double, 10 * count + 2)};
    if (all.bridges == NULL || all.cuts == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < count; i++)
        all.bridges[i] = bridge_of(&discs[i], &discs[discs[i].joined]);
    for (size_t i = 0; i < count; i++) {
        draw_circle(&all, dxf, layer, &discs[i]);
        if (!all.bridges[i].stands)
            continue;
        const ts_point *corner = all.bridges[i].corner;
        draw_line(&all, dxf, layer, corner[0], corner[1]);
        draw_line(&all, dxf, layer, corner[3], corner[2]);
    }
    return TS_OK;
}
