/* draw/leaders.c: which way does a leader go down to its column without crossing another? */
#include "draw/rail.h"

#include <math.h>
#include <stdlib.h>

static double band_top(const ts_face *face)
{
    return face->rail.y - TS_LOOK_SHEET_ROUTING;
}

/* Where an upright at x leaves the outline of the shaft, at its lower side. */
static ts_point start_at(const ts_face_shaft *shaft, double offset)
{
    const double r = shaft->r_all;
    return (ts_point){shaft->at.x + offset, shaft->at.y + sqrt(fmax(0.0, r * r - offset * offset))};
}

/* What an upright from `start` to the band runs over: other shafts, and numbers above all. */
static double cost_of(const ts_face *face, uint32_t own, ts_point start)
{
    double cost = 0.0;
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++) {
        const ts_face_shaft *other = &face->shafts[s];
        const double         dx    = fabs(other->at.x - start.x);
        if (s == own || !other->shown || dx >= other->r_all || other->at.y < start.y - other->r_all)
            continue;
        cost += 4.0 * sqrt(other->r_all * other->r_all - dx * dx) / other->r_all;
        if (dx < other->r_number + 3.0 && other->at.y > start.y)
            cost += 50.0;
    }
    return cost;
}

static double crowding(const ts_rail *rail, size_t done, double x)
{
    double cost = 0.0;
    for (size_t i = 0; i < done; i++)
        if (fabs(rail->start[i].x - x) < 12.0)
            cost += 20.0 * (12.0 - fabs(rail->start[i].x - x)) / 12.0;
    return cost;
}

static ts_point best_start(const ts_face *face, const ts_rail *rail, size_t done)
{
    const uint32_t       s     = rail->order[done];
    const ts_face_shaft *shaft = &face->shafts[s];
    ts_point             best  = start_at(shaft, 0.0);
    double               least = INFINITY;
    for (int i = -12; i <= 12; i++) {
        const double   offset = 0.075 * i * shaft->r_all;
        const ts_point start  = start_at(shaft, offset);
        const double   cost   = cost_of(face, s, start) + crowding(rail, done, start.x) +
                            2.0 * fabs(offset) / fmax(1.0, shaft->r_all);
        if (cost < least) {
            least = cost;
            best  = start;
        }
    }
    return best;
}

static void swap(ts_rail *rail, size_t i, size_t j)
{
    const uint32_t shaft = rail->order[i];
    const ts_point start = rail->start[i];
    rail->order[i]       = rail->order[j];
    rail->start[i]       = rail->start[j];
    rail->order[j]       = shaft;
    rail->start[j]       = start;
}

/* Columns follow the leaders from left to right; shafts without a place come last. */
static void sort_columns(ts_rail *rail)
{
    for (size_t i = 1; i < rail->count; i++)
        for (size_t j = i; j > 0; j--) {
            const double left = rail->start[j - 1].x, right = rail->start[j].x;
            if (!(isnan(left) && !isnan(right)) && !(right < left))
                break;
            swap(rail, j - 1, j);
        }
}

/* Two leaders on one x would run on each other: pull them apart, in order. */
static void part_equals(ts_rail *rail)
{
    for (size_t i = 1; i < rail->count; i++)
        if (rail->start[i].x < rail->start[i - 1].x + 1.0)
            rail->start[i].x = rail->start[i - 1].x + 1.0;
}

void ts_rail_lead(const ts_face *face, ts_rail *rail)
{
    if (rail->rows != 1)
        return; /* too many columns: the numbers alone lead from picture to table */
    for (size_t i = 0; i < rail->count; i++)
        rail->start[i] =
            face->shafts[rail->order[i]].shown ? best_start(face, rail, i) : (ts_point){NAN, NAN};
    sort_columns(rail);
    part_equals(rail);
}

void ts_rail_draw_leaders(const ts_face *face, const ts_rail *rail)
{
    ts_canvas   *canvas = &face->scene->canvas;
    const double cell   = (face->rail.w - rail->label) / (double)rail->columns;
    for (size_t i = 0; rail->rows == 1 && i < rail->count; i++) {
        if (isnan(rail->start[i].x))
            continue;
        const ts_point column  = {face->rail.x + rail->label + ((double)i + 0.5) * cell,
                                  face->rail.y};
        const ts_point path[4] = {rail->start[i],
                                  {rail->start[i].x, fmax(band_top(face), rail->start[i].y)},
                                  {column.x, column.y - 6.0},
                                  column};
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
        for (int k = 0; k < 4; k++)
            ts_line_to(canvas, path[k]);
        ts_stroke(canvas);
        ts_draw_dot(canvas, path[0], TS_LOOK_FIGURE_DOT, TS_COLOUR_INK);
        for (int k = 0; k < 3; k++)
            ts_note_line(&canvas->places, TS_PLACE_LEADER, rail->order[i], path[k], path[k + 1]);
    }
}
