/* solid/cut_region.c: into which triangles does a plane region fall?
 *
 * derived: holes are joined to the outline by a bridge that crosses no edge; then ears are cut off
 * (an ear is a convex corner whose triangle holds no other point) until none is left.
 */
#include "solid/triangles.h"

#include <math.h>

typedef struct region {
    const ts_outline_point *points;
    uint32_t               *ring; /* the outline so far, counter-clockwise */
    size_t                  count;
} region;

static double twice_area(const ts_outline_point *p, const uint32_t *ring, size_t count)
{
    double sum = 0.0;
    for (size_t i = 0; i < count; i++) {
        const ts_outline_point a = p[ring[i]], b = p[ring[(i + 1) % count]];
        sum += a.x * b.y - b.x * a.y;
    }
    return sum;
}

static double turn_of(ts_outline_point a, ts_outline_point b, ts_outline_point c)
{
    return (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
}

static bool same(ts_outline_point a, ts_outline_point b)
{
    return !(fabs(a.x - b.x) > 0.0) && !(fabs(a.y - b.y) > 0.0);
}

/* Do a-b and c-d cross between their ends? */
static bool cross(ts_outline_point a, ts_outline_point b, ts_outline_point c, ts_outline_point d)
{
    if (same(a, c) || same(a, d) || same(b, c) || same(b, d))
        return false;
    return turn_of(a, b, c) * turn_of(a, b, d) < 0.0 && turn_of(c, d, a) * turn_of(c, d, b) < 0.0;
}

/* Does a bridge from p to q cross the ring, or the hole? */
static bool is_free(const region *all, const uint32_t *hole, size_t size, ts_outline_point p,
                    ts_outline_point q)
{
    for (size_t i = 0; i < all->count; i++)
        if (cross(p, q, all->points[all->ring[i]], all->points[all->ring[(i + 1) % all->count]]))
            return false;
    for (size_t i = 0; i < size; i++)
        if (cross(p, q, all->points[hole[i]], all->points[hole[(i + 1) % size]]))
            return false;
    return true;
}

/* Puts a hole, which runs clockwise, into the ring at the shortest free bridge. */
static void join_hole(region *all, const uint32_t *hole, size_t size)
{
    size_t at = all->count, from = 0;
    double best = INFINITY;
    for (size_t i = 0; i < all->count; i++)
        for (size_t k = 0; k < size; k++) {
            const ts_outline_point p = all->points[all->ring[i]], q = all->points[hole[k]];
            const double           length = hypot(p.x - q.x, p.y - q.y);
            if (length < best && is_free(all, hole, size, p, q)) {
                best = length;
                at   = i;
                from = k;
            }
        }
    if (at == all->count)
        return;
    for (size_t i = all->count; i > at + 1; i--)
        all->ring[i + size + 1] = all->ring[i - 1];
    for (size_t k = 0; k <= size; k++)
        all->ring[at + 1 + k] = hole[(from + k) % size];
    all->ring[at + size + 2] = all->ring[at];
    all->count += size + 2;
}

static bool is_ear(const region *all, size_t i)
{
    const size_t           n = all->count;
    const ts_outline_point a = all->points[all->ring[(i + n - 1) % n]];
    const ts_outline_point b = all->points[all->ring[i]], c = all->points[all->ring[(i + 1) % n]];
    if (!(turn_of(a, b, c) > 0.0))
        return false;
    for (size_t k = 0; k < n; k++) {
        const ts_outline_point p = all->points[all->ring[k]];
        if (!same(p, a) && !same(p, b) && !same(p, c) && turn_of(a, b, p) >= 0.0 &&
            turn_of(b, c, p) >= 0.0 && turn_of(c, a, p) >= 0.0)
            return false;
    }
    return true;
}

/* Every round takes one corner: an ear, or where rounding leaves none a corner that is flat. */
static size_t cut_ears(region *all, uint32_t *out)
{
    size_t made = 0;
    while (all->count > 2) {
        size_t i = 0;
        while (i < all->count && !is_ear(all, i))
            i++;
        const bool found = i < all->count;
        i                = found ? i : 0;
        if (found) {
            const size_t n    = all->count;
            out[3 * made]     = all->ring[(i + n - 1) % n];
            out[3 * made + 1] = all->ring[i];
            out[3 * made + 2] = all->ring[(i + 1) % n];
            made++;
        }
        for (size_t k = i; k + 1 < all->count; k++)
            all->ring[k] = all->ring[k + 1];
        all->count--;
    }
    return made;
}

static void fill(uint32_t *ring, size_t first, size_t size, bool backwards)
{
    for (size_t i = 0; i < size; i++)
        ring[i] = (uint32_t)(first + (backwards ? size - 1 - i : i));
}

size_t ts_cut_region(const ts_outline_point *points, const size_t *sizes, size_t loops,
                     ts_arena *arena, uint32_t **out)
{
    size_t total = 0, outer = 0, first = 0, start = 0;
    for (size_t l = 0; l < loops; l++)
        total += sizes[l];
    uint32_t *hole = TS_TAKE(arena, uint32_t, total);
    region    all  = {points, TS_TAKE(arena, uint32_t, total + 2 * loops), 0};
    *out           = TS_TAKE(arena, uint32_t, 3 * (total + 2 * loops));
    if (hole == NULL || all.ring == NULL || *out == NULL)
        return SIZE_MAX;
    double most = 0.0;
    for (size_t l = 0; l < loops; start += sizes[l++]) {
        fill(hole, start, sizes[l], false);
        const double area = fabs(twice_area(points, hole, sizes[l]));
        outer             = area > most ? l : outer;
        first             = area > most ? start : first;
        most              = fmax(most, area);
    }
    fill(hole, first, sizes[outer], false);
    fill(all.ring, first, sizes[outer], twice_area(points, hole, sizes[outer]) < 0.0);
    all.count = sizes[outer];
    start     = 0;
    for (size_t l = 0; l < loops; start += sizes[l++]) {
        if (l == outer)
            continue;
        fill(hole, start, sizes[l], false);
        fill(hole, start, sizes[l], twice_area(points, hole, sizes[l]) > 0.0);
        join_hole(&all, hole, sizes[l]);
    }
    return cut_ears(&all, *out);
}
