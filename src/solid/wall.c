/* solid/wall.c: which lines and arcs bound the wall of a box?
 *
 * derived: the wall is the union of discs and of the trapezia between their outer tangents.  A
 * piece of a circle or of a tangent belongs to its outline when it lies in no other part of the
 * union; where that changes it crosses the edge of another part, so each is cut there and the
 * middle of every length is asked.
 */
#include "solid/wall.h"

#include <math.h>

#define APART  1e-9 /* m; nearer points are one */
#define JOINED 1e-7 /* m; ends of pieces that are cut from two sides */

typedef struct bridge {
    bool             stands;
    ts_outline_point corner[4]; /* 0-1 and 2-3 are the tangents */
} bridge;

typedef struct tracer {
    const ts_wall_disc *discs;
    bridge             *bridges; /* [disc], to the one that it is joined to */
    size_t              count;
    double             *cuts; /* along the curve that is being cut */
    size_t              cut_count;
    ts_wall_piece      *pieces;
    size_t              piece_count;
} tracer;

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
            (ts_outline_point){end->at.x + end->r * cos(angle), end->at.y + end->r * sin(angle)};
    }
    return one;
}

/* ---- inside ------------------------------------------------------------------------------- */

static bool in_disc(const ts_wall_disc *disc, ts_outline_point at)
{
    return hypot(at.x - disc->at.x, at.y - disc->at.y) < disc->r - APART;
}

static bool in_bridge(const bridge *one, ts_outline_point at)
{
    for (int i = 0; i < 4; i++) {
        const ts_outline_point a = one->corner[i], b = one->corner[(i + 1) % 4];
        const double           length = hypot(b.x - a.x, b.y - a.y);
        /* The corners run clockwise. */
        if (!((b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x) < -APART * length))
            return false;
    }
    return true;
}

static bool is_covered(const tracer *all, ts_outline_point at)
{
    for (size_t i = 0; i < all->count; i++)
        if (in_disc(&all->discs[i], at) ||
            (all->bridges[i].stands && in_bridge(&all->bridges[i], at)))
            return true;
    return false;
}

/* ---- cuts --------------------------------------------------------------------------------- */

/* Keeps the cuts in order. */
static void cut(tracer *all, double at)
{
    size_t i = all->cut_count++;
    for (; i > 0 && all->cuts[i - 1] > at; i--)
        all->cuts[i] = all->cuts[i - 1];
    all->cuts[i] = at;
}

/* Where the segment a-b crosses a circle, as shares of it; returns how many of two. */
static int cross_circle(ts_outline_point a, ts_outline_point b, const ts_wall_disc *disc,
                        double share[2])
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

static void cut_circle_at(tracer *all, const ts_wall_disc *disc, double x, double y)
{
    const double angle = atan2(y - disc->at.y, x - disc->at.x);
    cut(all, angle < 0.0 ? angle + 2.0 * M_PI : angle);
}

static void cut_circle_by_disc(tracer *all, const ts_wall_disc *one, const ts_wall_disc *other)
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

static void cut_circle_by_bridge(tracer *all, const ts_wall_disc *disc, const bridge *one)
{
    for (int i = 0; i < 4 && one->stands; i++) {
        const ts_outline_point a = one->corner[i], b = one->corner[(i + 1) % 4];
        double                 share[2];
        const int              found = cross_circle(a, b, disc, share);
        for (int k = 0; k < found; k++)
            cut_circle_at(all, disc, a.x + share[k] * (b.x - a.x), a.y + share[k] * (b.y - a.y));
    }
}

static void cut_line_by_bridge(tracer *all, ts_outline_point a, ts_outline_point b,
                               const bridge *one)
{
    for (int i = 0; i < 4 && one->stands; i++) {
        const ts_outline_point c = one->corner[i], d = one->corner[(i + 1) % 4];
        const double           across = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x);
        if (!(fabs(across) > APART * APART))
            continue;
        const double at   = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / across;
        const double from = ((c.x - a.x) * (b.y - a.y) - (c.y - a.y) * (b.x - a.x)) / across;
        if (at > 0.0 && at < 1.0 && from >= 0.0 && from <= 1.0)
            cut(all, at);
    }
}

/* ---- what is left ------------------------------------------------------------------------- */

static ts_outline_point on_circle(const ts_wall_disc *disc, double angle)
{
    return (ts_outline_point){disc->at.x + disc->r * cos(angle), disc->at.y + disc->r * sin(angle)};
}

/* Counted only, while there is no room yet. */
static void keep(tracer *all, ts_wall_piece piece)
{
    if (all->pieces != NULL)
        all->pieces[all->piece_count] = piece;
    all->piece_count++;
}

/* Counter-clockwise; `to` - `from` is at most a whole turn. */
static void keep_arc(tracer *all, const ts_wall_disc *disc, double from, double to)
{
    keep(all, (ts_wall_piece){.a    = on_circle(disc, from),
                              .b    = on_circle(disc, to),
                              .at   = disc->at,
                              .r    = disc->r,
                              .from = from,
                              .to   = to});
}

static void trace_circle(tracer *all, const ts_wall_disc *disc)
{
    all->cut_count = 0;
    for (size_t i = 0; i < all->count; i++) {
        if (&all->discs[i] != disc)
            cut_circle_by_disc(all, disc, &all->discs[i]);
        cut_circle_by_bridge(all, disc, &all->bridges[i]);
    }
    if (all->cut_count == 0) {
        if (!is_covered(all, on_circle(disc, 0.0)))
            keep_arc(all, disc, 0.0, 2.0 * M_PI);
        return;
    }
    for (size_t i = 0; i < all->cut_count; i++) {
        const bool   last = i + 1 == all->cut_count;
        const double from = all->cuts[i], to = last ? all->cuts[0] + 2.0 * M_PI : all->cuts[i + 1];
        if ((to - from) * disc->r > 10.0 * APART &&
            !is_covered(all, on_circle(disc, 0.5 * (from + to))))
            keep_arc(all, disc, from, to);
    }
}

static ts_outline_point between(ts_outline_point a, ts_outline_point b, double share)
{
    return (ts_outline_point){a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

static void trace_line(tracer *all, ts_outline_point a, ts_outline_point b)
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
            keep(all, (ts_wall_piece){.a = between(a, b, from), .b = between(a, b, to)});
    }
}

static void trace_all(tracer *all)
{
    all->piece_count = 0;
    for (size_t i = 0; i < all->count; i++) {
        const bridge *one = &all->bridges[i];
        trace_circle(all, &all->discs[i]);
        if (!one->stands)
            continue;
        trace_line(all, one->corner[0], one->corner[1]);
        trace_line(all, one->corner[3], one->corner[2]);
    }
}

ts_status ts_wall_trace(const ts_wall_disc *discs, size_t count, ts_arena *arena, ts_wall_line *out)
{
    /* A curve meets each disc twice and each of four edges twice. */
    tracer all = {.discs   = discs,
                  .bridges = TS_TAKE(arena, bridge, count),
                  .count   = count,
                  .cuts    = TS_TAKE(arena, double, 10 * count + 2)};
    if (all.bridges == NULL || all.cuts == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < count; i++)
        all.bridges[i] = bridge_of(&discs[i], &discs[discs[i].joined]);
    trace_all(&all);
    all.pieces = TS_TAKE(arena, ts_wall_piece, all.piece_count + 1);
    if (all.pieces == NULL)
        return TS_NO_MEMORY;
    trace_all(&all);
    *out = (ts_wall_line){all.pieces, all.piece_count};
    return TS_OK;
}

/* ---- loops -------------------------------------------------------------------------------- */

static double apart(ts_outline_point a, ts_outline_point b)
{
    return hypot(a.x - b.x, a.y - b.y);
}

static void turn_round(ts_wall_piece *piece)
{
    const ts_outline_point a    = piece->a;
    const double           from = piece->from;
    piece->a                    = piece->b;
    piece->b                    = a;
    piece->from                 = piece->to;
    piece->to                   = from;
}

/* Brings the piece that begins, or ends, where piece `i` ends behind it; false: none does. */
static bool bring_next(ts_wall_line *wall, size_t i)
{
    for (size_t k = i + 1; k < wall->count; k++) {
        const bool begins = apart(wall->pieces[k].a, wall->pieces[i].b) < JOINED;
        if (!begins && !(apart(wall->pieces[k].b, wall->pieces[i].b) < JOINED))
            continue;
        const ts_wall_piece next = wall->pieces[k];
        wall->pieces[k]          = wall->pieces[i + 1];
        wall->pieces[i + 1]      = next;
        if (!begins)
            turn_round(&wall->pieces[i + 1]);
        return true;
    }
    return false;
}

bool ts_wall_chain(ts_wall_line *wall)
{
    size_t first = 0;
    for (size_t i = 0; i < wall->count; i++) {
        wall->pieces[i].opens = i == first;
        if (apart(wall->pieces[i].b, wall->pieces[first].a) < JOINED)
            first = i + 1;
        else if (!bring_next(wall, i))
            return false;
    }
    return wall->count > 0 && first == wall->count;
}

double ts_wall_area(const ts_wall_line *wall)
{
    double twice = 0.0;
    for (size_t i = 0; i < wall->count; i++) {
        const ts_wall_piece *one  = &wall->pieces[i];
        const double         turn = one->to - one->from;
        twice += one->a.x * one->b.y - one->b.x * one->a.y + one->r * one->r * (turn - sin(turn));
    }
    return 0.5 * fabs(twice);
}
