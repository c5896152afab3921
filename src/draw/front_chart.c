/* draw/front_chart.c: what does less wrap cost?
 *
 * Mass over wrap.  Each point is the lightest within its wrap; between two of them the least mass
 * lies between theirs, which is the box that joins them.
 */
#include "draw/candidate_sheet.h"
#include "draw/lettering.h"

#include <math.h>

/* px */
static const double high = 260.0, left = 90.0, right = 40.0, above = 44.0, below = 46.0;

typedef struct chart {
    ts_scene            *scene;
    const ts_candidates *all;
    ts_area              area; /* of the plot                          */
    double               wrap_least, wrap_most, mass_least, mass_most;
} chart;

double ts_front_chart_height(const ts_candidates *all)
{
    return all->front_count > 0 ? high : 0.0;
}

static double x_of(const chart *c, double wrap)
{
    return c->area.x + c->area.w * (wrap - c->wrap_least) / (c->wrap_most - c->wrap_least);
}

static double y_of(const chart *c, double mass)
{
    return c->area.y + c->area.h * (c->mass_most - mass) / (c->mass_most - c->mass_least);
}

static void measure(chart *c)
{
    const ts_candidates *all = c->all;
    c->wrap_least = c->mass_least = (double)INFINITY;
    c->wrap_most = c->mass_most = -(double)INFINITY;
    for (size_t i = 0; i < all->front_count; i++) {
        c->wrap_least = fmin(c->wrap_least, all->front[i].wrap);
        c->wrap_most  = fmax(c->wrap_most, all->front[i].wrap);
        c->mass_least = fmin(c->mass_least, all->front[i].mass);
        c->mass_most  = fmax(c->mass_most, all->front[i].mass);
    }
    if (isfinite(all->nothing_below))
        c->wrap_least = fmin(c->wrap_least, all->nothing_below);
    const double wide = fmax(c->wrap_most - c->wrap_least, 0.02 * c->wrap_most);
    const double tall = fmax(c->mass_most - c->mass_least, 0.02 * c->mass_most);
    c->wrap_least -= 0.12 * wide;
    c->wrap_most += 0.08 * wide;
    c->mass_least -= 0.15 * tall;
    c->mass_most += 0.2 * tall;
}

/* 1, 2 or 5 times a power of ten, so that four to nine fit in. */
static double tick_of(double range)
{
    const double raw = range / 6.0, ten = pow(10.0, floor(log10(raw))), share = raw / ten;
    return ten * (share < 1.5 ? 1.0 : share < 3.5 ? 2.0 : share < 7.5 ? 5.0 : 10.0);
}

static int places_of(double step)
{
    return step >= 1.0 ? 0 : (int)ceil(-log10(step) - 1e-9);
}

static void draw_ticks(const chart *c, bool across)
{
    ts_scene          *scene  = c->scene;
    ts_canvas         *canvas = &scene->canvas;
    const double       unit   = ts_scene_in_unit(scene, 1.0, across ? TS_KIND_ANGLE : TS_KIND_MASS);
    const double       low    = unit * (across ? c->wrap_least : c->mass_least);
    const double       up     = unit * (across ? c->wrap_most : c->mass_most);
    const double       step = tick_of(up - low), first = ceil(low / step);
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_TICK,
                              .anchor = across ? TS_ANCHOR_MIDDLE : TS_ANCHOR_RIGHT,
                              .colour = TS_COLOUR_INK2};
    for (int i = 0; step * (first + i) <= up; i++) {
        const double value = step * (first + i);
        const double x     = across ? x_of(c, value / unit) : c->area.x;
        const double y     = across ? c->area.y + c->area.h : y_of(c, value / unit);
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){x, y},
                     across ? (ts_point){x, c->area.y} : (ts_point){x + c->area.w, y});
        ts_add_number(ts_canvas_line(canvas), value, places_of(step));
        ts_write(canvas, across ? (ts_point){x, y + 15.0} : (ts_point){x - 8.0, y + 4.0},
                 ts_scene_kept(scene), &how);
    }
}

static void draw_axes(const chart *c)
{
    ts_scene          *scene  = c->scene;
    ts_canvas         *canvas = &scene->canvas;
    const ts_lettering how    = {
           .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK};
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){c->area.x, c->area.y},
                 (ts_point){c->area.x, c->area.y + c->area.h});
    ts_draw_line(canvas, (ts_point){c->area.x, c->area.y + c->area.h},
                 (ts_point){c->area.x + c->area.w, c->area.y + c->area.h});
    ts_buffer_print(ts_canvas_line(canvas), "wrap, %s", ts_scene_unit(scene, TS_KIND_ANGLE));
    ts_write(canvas, (ts_point){c->area.x + c->area.w, c->area.y + c->area.h + 32.0},
             ts_scene_kept(scene), &how);
    const ts_lettering up = {.size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK};
    ts_buffer_print(ts_canvas_line(canvas), "least mass, %s", ts_scene_unit(scene, TS_KIND_MASS));
    ts_write(canvas, (ts_point){c->area.x - 60.0, c->area.y - 8.0}, ts_scene_kept(scene), &up);
}

/* Where nothing fits. */
static void draw_forbidden(const chart *c)
{
    ts_canvas *canvas = &c->scene->canvas;
    if (!isfinite(c->all->nothing_below))
        return;
    const double  x    = x_of(c, c->all->nothing_below);
    const ts_area area = {c->area.x, c->area.y, x - c->area.x, c->area.h};
    ts_path_area(canvas, area);
    ts_hatch(canvas, TS_COLOUR_RULE);
    const ts_point wall[2] = {{x, c->area.y + c->area.h}, {x, c->area.y}};
    ts_draw_wall(canvas, wall, 2, false);
    const ts_lettering how = {.size    = TS_LOOK_TYPE_PX_SMALL,
                              .upright = true,
                              .halo    = true,
                              .anchor  = TS_ANCHOR_MIDDLE,
                              .colour  = TS_COLOUR_INK};
    ts_write(canvas, (ts_point){0.5 * (c->area.x + x) + 4.0, c->area.y + 0.5 * c->area.h},
             "nothing fits", &how);
}

static void draw_between(const chart *c, const ts_front_mark *more, const ts_front_mark *less)
{
    ts_canvas    *canvas = &c->scene->canvas;
    const double  x = x_of(c, less->wrap), y = y_of(c, less->mass);
    const ts_area area = {x, y, x_of(c, more->wrap) - x, y_of(c, more->mass) - y};
    ts_path_area(canvas, area);
    ts_fill_and_stroke(canvas, TS_COLOUR_SELECT_BG, TS_PEN_1, TS_COLOUR_RULE);
}

/* Full: holds by all rules; open: it does not. */
static void draw_point(const chart *c, const ts_front_mark *mark, size_t index)
{
    ts_scene      *scene  = c->scene;
    ts_canvas     *canvas = &scene->canvas;
    const ts_point at     = {x_of(c, mark->wrap), y_of(c, mark->mass)};
    ts_path_circle(canvas, at, 4.5);
    ts_fill_and_stroke(canvas, mark->holds ? TS_COLOUR_INK : TS_COLOUR_PAPER, TS_PEN_3,
                       TS_COLOUR_INK);
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_SMALL, .halo = true, .colour = TS_COLOUR_INK};
    ts_buffer         *line = ts_canvas_line(canvas);
    ts_add_number(line, ts_scene_in_unit(scene, mark->mass, TS_KIND_MASS), 3);
    if (!mark->proven)
        ts_buffer_add(line, ", not proven");
    ts_write(canvas, (ts_point){at.x + 8.0, at.y - 8.0}, ts_scene_kept(scene), &how);
    ts_note_area(&canvas->places, TS_PLACE_CELL, (uint32_t)index,
                 (ts_area){at.x - 5.0, at.y - 5.0, 10.0, 10.0});
}

void ts_draw_front_chart(ts_scene *scene, ts_area area)
{
    const ts_candidates *all = scene->subject->candidates;
    chart                c   = {
                         .scene = scene,
                         .all   = all,
                         .area = {area.x + left, area.y + above, area.w - left - right, area.h - above - below}};
    const ts_lettering lead = {.size   = TS_LOOK_TYPE_PX_LEAD,
                               .bold   = true,
                               .colour = TS_COLOUR_INK,
                               .width  = area.w - 24.0};
    measure(&c);
    ts_write(
        &scene->canvas, (ts_point){area.x + 14.0, area.y + 16.0},
        "What does less wrap cost?  Each point is the lightest within its wrap (full: holds by "
        "all rules); between two of them the least mass lies in the box",
        &lead);
    draw_ticks(&c, true);
    draw_ticks(&c, false);
    draw_forbidden(&c);
    for (size_t i = 1; i < all->front_count; i++)
        draw_between(&c, &all->front[i - 1], &all->front[i]);
    draw_axes(&c);
    for (size_t i = 0; i < all->front_count; i++)
        draw_point(&c, &all->front[i], i);
}
