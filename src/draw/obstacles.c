/* draw/obstacles.c: what does it cost to stand here? */
#include "draw/obstacles.h"

#include <math.h>
#include <string.h>

static void avoid(ts_obstacles *obstacles, const ts_obstacle *one)
{
    if (obstacles->count == obstacles->room) {
        const size_t room  = obstacles->room ? obstacles->room * 2 : 64;
        ts_obstacle *items = TS_TAKE(obstacles->arena, ts_obstacle, room);
        if (!items)
            return;
        if (obstacles->count)
            memcpy(items, obstacles->items, obstacles->count * sizeof *items);
        obstacles->items = items;
        obstacles->room  = room;
    }
    obstacles->items[obstacles->count++] = *one;
}

static void avoid_round(ts_obstacles *obstacles, ts_obstacle_kind kind, ts_point at, double r,
                        double weight)
{
    avoid(obstacles, &(ts_obstacle){.kind   = kind,
                                    .weight = weight,
                                    .a      = at,
                                    .r      = r,
                                    .area   = {at.x - r, at.y - r, 2.0 * r, 2.0 * r}});
}

void ts_avoid_disc(ts_obstacles *obstacles, ts_point at, double r, double weight)
{
    avoid_round(obstacles, TS_OBSTACLE_DISC, at, r, weight);
}

void ts_avoid_ring(ts_obstacles *obstacles, ts_point at, double r, double weight)
{
    avoid_round(obstacles, TS_OBSTACLE_RING, at, r, weight);
}

static ts_area area_of_line(ts_point a, ts_point b)
{
    return (ts_area){fmin(a.x, b.x), fmin(a.y, b.y), fabs(a.x - b.x), fabs(a.y - b.y)};
}

void ts_avoid_line(ts_obstacles *obstacles, ts_point a, ts_point b, double weight)
{
    avoid(obstacles, &(ts_obstacle){.kind   = TS_OBSTACLE_LINE,
                                    .weight = weight,
                                    .a      = a,
                                    .b      = b,
                                    .area   = area_of_line(a, b)});
}

void ts_avoid_area(ts_obstacles *obstacles, ts_area area, double weight)
{
    avoid(obstacles, &(ts_obstacle){.kind = TS_OBSTACLE_AREA, .weight = weight, .area = area});
}

void ts_avoid_places(ts_obstacles *obstacles, const ts_places *places)
{
    for (size_t i = 0; i < places->count; i++) {
        const ts_place *place = &places->items[i];
        if (place->kind == TS_PLACE_TEXT || place->kind == TS_PLACE_NUMBER ||
            place->kind == TS_PLACE_SYMBOL || place->kind == TS_PLACE_TAG)
            ts_avoid_area(obstacles, ts_area_inset(place->area, -2.0), 1000.0);
        if (place->kind == TS_PLACE_LEADER)
            ts_avoid_line(obstacles, place->a, place->b, 40.0);
    }
}

static double farthest(ts_area area, ts_point at)
{
    const double dx = fmax(fabs(area.x - at.x), fabs(area.x + area.w - at.x));
    const double dy = fmax(fabs(area.y - at.y), fabs(area.y + area.h - at.y));
    return hypot(dx, dy);
}

/* A level line lies in an area without height, so touching counts here. */
static bool may_meet(ts_area a, ts_area b)
{
    return a.x <= b.x + b.w && b.x <= a.x + a.w && a.y <= b.y + b.h && b.y <= a.y + a.h;
}

static bool meets(const ts_obstacle *one, ts_area area)
{
    if (!may_meet(one->area, area))
        return false;
    switch (one->kind) {
    case TS_OBSTACLE_DISC:
        return ts_area_distance(area, one->a) < one->r;
    case TS_OBSTACLE_RING:
        return ts_area_distance(area, one->a) < one->r && farthest(area, one->a) > one->r;
    case TS_OBSTACLE_LINE:
        return ts_line_meets_area(one->a, one->b, area);
    case TS_OBSTACLE_AREA:
        return ts_areas_meet(one->area, area);
    }
    return false;
}

double ts_obstacle_cost(const ts_obstacles *obstacles, ts_area area)
{
    double cost = ts_area_holds(obstacles->within, area) ? 0.0 : 5000.0;
    for (size_t i = 0; i < obstacles->count; i++)
        if (meets(&obstacles->items[i], area))
            cost += obstacles->items[i].weight;
    return cost;
}

static double distance_to_line(ts_point p, ts_point a, ts_point b)
{
    const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
    const double t =
        square > 0.0 ? fmin(1.0, fmax(0.0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square)) : 0.0;
    return hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

/* Only what must not be covered counts: a leader may run over gears and lines, but two leaders
 * should not cross. */
double ts_leader_cost(const ts_obstacles *obstacles, ts_point a, ts_point b)
{
    const ts_area reach = area_of_line(a, b);
    double        cost  = 0.0;
    for (size_t i = 0; i < obstacles->count; i++) {
        const ts_obstacle *one = &obstacles->items[i];
        if (!may_meet(one->area, reach))
            continue;
        if (one->kind == TS_OBSTACLE_LINE && ts_lines_cross(a, b, one->a, one->b))
            cost += one->weight;
        if (one->weight < 100.0)
            continue;
        if (one->kind == TS_OBSTACLE_AREA && ts_area_distance(one->area, a) > 0.0 &&
            ts_line_meets_area(a, b, one->area))
            cost += one->weight;
        if (one->kind == TS_OBSTACLE_DISC && ts_distance(one->a, a) > one->r + 1.0 &&
            distance_to_line(one->a, a, b) < one->r)
            cost += one->weight;
    }
    return cost;
}

ts_area ts_place_near(const ts_obstacles *obstacles, ts_point anchor, ts_point size,
                      const double away[2], double *cost)
{
    enum { AROUND = 24, OUT = 9 };
    ts_area best  = {anchor.x, anchor.y, size.x, size.y};
    double  least = INFINITY;
    for (int k = 0; k < AROUND * OUT; k++) {
        const int      out  = k / AROUND;
        const double   r    = away[0] + (away[1] - away[0]) * out / (OUT - 1);
        const ts_point mid  = ts_polar(anchor, r, 2.0 * M_PI * (k % AROUND) / AROUND - 1.0);
        const ts_area  area = {mid.x - 0.5 * size.x, mid.y - 0.5 * size.y, size.x, size.y};
        double         sum  = 0.02 * r + ts_obstacle_cost(obstacles, area);
        if (sum < least)
            sum += ts_leader_cost(obstacles, anchor, mid);
        if (sum < least) {
            best  = area;
            least = sum;
        }
    }
    if (cost)
        *cost = least;
    return best;
}

ts_area ts_place_anywhere(const ts_obstacles *obstacles, ts_point wish, ts_point size)
{
    enum { STEPS = 40 };
    const ts_area room      = obstacles->within;
    ts_area       best      = {wish.x, wish.y, size.x, size.y};
    double        best_cost = INFINITY;
    for (int k = 0; k < STEPS * STEPS; k++) {
        const double  x    = room.x + (room.w - size.x) * (k % STEPS) / (STEPS - 1);
        const int     row  = k / STEPS;
        const double  y    = room.y + (room.h - size.y) * row / (STEPS - 1);
        const ts_area area = {x, y, size.x, size.y};
        const double  cost = ts_obstacle_cost(obstacles, area) +
                            0.01 * hypot(x + 0.5 * size.x - wish.x, y + 0.5 * size.y - wish.y);
        if (cost < best_cost) {
            best      = area;
            best_cost = cost;
        }
    }
    return best;
}
