/* draw/places.c: what stands where on the sheet? */
#include "draw/places.h"

#include <math.h>
#include <string.h>

static bool places_grow(ts_places *places)
{
    if (places->count < places->room)
        return true;
    const size_t room  = places->room ? places->room * 2 : 256;
    ts_place    *items = TS_TAKE(places->arena, ts_place, room);
    if (!items)
        return false;
    if (places->count)
        memcpy(items, places->items, places->count * sizeof *items);
    places->items = items;
    places->room  = room;
    return true;
}

void ts_note_place(ts_places *places, const ts_place *place)
{
    if (places_grow(places))
        places->items[places->count++] = *place;
}

void ts_note_area(ts_places *places, ts_place_kind kind, uint32_t of, ts_area area)
{
    const ts_place place = {.kind = kind, .of = of, .area = area};
    ts_note_place(places, &place);
}

void ts_note_line(ts_places *places, ts_place_kind kind, uint32_t of, ts_point a, ts_point b)
{
    const ts_place place = {
        .kind = kind,
        .of   = of,
        .area = {fmin(a.x, b.x), fmin(a.y, b.y), fabs(a.x - b.x), fabs(a.y - b.y)},
        .a    = a,
        .b    = b,
    };
    ts_note_place(places, &place);
}

bool ts_place_free(const ts_places *places, ts_area area)
{
    for (size_t i = 0; i < places->count; i++) {
        const ts_place *place = &places->items[i];
        const bool      taken = place->kind == TS_PLACE_TEXT || place->kind == TS_PLACE_NUMBER ||
                           place->kind == TS_PLACE_SYMBOL;
        if (taken && ts_areas_meet(place->area, area))
            return false;
    }
    return true;
}

ts_area ts_area_inset(ts_area area, double by)
{
    return (ts_area){area.x + by, area.y + by, area.w - 2.0 * by, area.h - 2.0 * by};
}

bool ts_areas_meet(ts_area a, ts_area b)
{
    return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

bool ts_area_holds(ts_area outer, ts_area inner)
{
    return inner.x >= outer.x && inner.y >= outer.y && inner.x + inner.w <= outer.x + outer.w &&
           inner.y + inner.h <= outer.y + outer.h;
}

double ts_distance(ts_point a, ts_point b)
{
    return hypot(a.x - b.x, a.y - b.y);
}

double ts_area_distance(ts_area area, ts_point at)
{
    const double dx = fmax(0.0, fmax(area.x - at.x, at.x - area.x - area.w));
    const double dy = fmax(0.0, fmax(area.y - at.y, at.y - area.y - area.h));
    return hypot(dx, dy);
}

ts_point ts_polar(ts_point centre, double radius, double angle)
{
    return (ts_point){centre.x + radius * cos(angle), centre.y + radius * sin(angle)};
}

/* Twice the signed area of the triangle a, b, c. */
static double turn_of(ts_point a, ts_point b, ts_point c)
{
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool ts_lines_cross(ts_point a, ts_point b, ts_point c, ts_point d)
{
    const double c_side = turn_of(a, b, c), d_side = turn_of(a, b, d);
    const double a_side = turn_of(c, d, a), b_side = turn_of(c, d, b);
    return c_side * d_side < 0.0 && a_side * b_side < 0.0;
}

bool ts_line_meets_area(ts_point a, ts_point b, ts_area area)
{
    const ts_point p[4] = {{area.x, area.y},
                           {area.x + area.w, area.y},
                           {area.x + area.w, area.y + area.h},
                           {area.x, area.y + area.h}};
    if (ts_area_distance(area, a) <= 0.0 || ts_area_distance(area, b) <= 0.0)
        return true;
    return ts_lines_cross(a, b, p[0], p[2]) || ts_lines_cross(a, b, p[1], p[3]);
}
