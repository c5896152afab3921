/* draw/pens.c: how does a line, an area, a wall or a hatching get onto the canvas? */
#include "draw/canvas.h"

#include "draw/tick.h"

#include <math.h>

double ts_pen_width(const ts_canvas *canvas, ts_pen pen)
{
    return ts_look_pen(canvas->ground, pen, canvas->mm);
}

void ts_use_colour(ts_canvas *canvas, ts_colour colour, double alpha)
{
    const ts_rgb rgb = ts_look_rgb(canvas->ground, colour);
    cairo_set_source_rgba(canvas->cr, rgb.red, rgb.green, rgb.blue, alpha);
}

void ts_use_pen(ts_canvas *canvas, ts_pen pen, ts_colour colour)
{
    ts_use_colour(canvas, colour, 1.0);
    cairo_set_line_width(canvas->cr, ts_pen_width(canvas, pen));
    cairo_set_dash(canvas->cr, NULL, 0, 0.0);
    cairo_set_line_cap(canvas->cr, CAIRO_LINE_CAP_BUTT);
}

void ts_use_dash(ts_canvas *canvas, ts_dash dash)
{
    int           count = 0;
    const double *mm    = ts_look_dash(dash, &count);
    double        px[8];
    for (int i = 0; i < count && i < 8; i++)
        px[i] = mm[i] * canvas->mm;
    cairo_set_dash(canvas->cr, px, count, 0.0);
}

void ts_move_to(ts_canvas *canvas, ts_point at)
{
    cairo_move_to(canvas->cr, at.x, at.y);
}

void ts_line_to(ts_canvas *canvas, ts_point at)
{
    cairo_line_to(canvas->cr, at.x, at.y);
}

void ts_path_circle(ts_canvas *canvas, ts_point at, double radius)
{
    cairo_new_sub_path(canvas->cr);
    cairo_arc(canvas->cr, at.x, at.y, radius, 0.0, 2.0 * M_PI);
    cairo_close_path(canvas->cr);
}

void ts_path_area(ts_canvas *canvas, ts_area area)
{
    cairo_rectangle(canvas->cr, area.x, area.y, area.w, area.h);
}

void ts_path_polygon(ts_canvas *canvas, const ts_point *points, size_t count)
{
    for (size_t i = 0; i < count; i++)
        ts_line_to(canvas, points[i]); /* the first one moves, for a new path has no point */
    cairo_close_path(canvas->cr);
}

void ts_stroke(ts_canvas *canvas)
{
    cairo_stroke(canvas->cr);
}

void ts_fill_veiled(ts_canvas *canvas, ts_colour colour, double alpha)
{
    ts_use_colour(canvas, colour, alpha);
    cairo_fill(canvas->cr);
}

void ts_fill(ts_canvas *canvas, ts_colour colour)
{
    ts_fill_veiled(canvas, colour, 1.0);
}

void ts_fill_and_stroke(ts_canvas *canvas, ts_colour fill, ts_pen pen, ts_colour ink)
{
    ts_use_colour(canvas, fill, 1.0);
    cairo_fill_preserve(canvas->cr);
    ts_use_pen(canvas, pen, ink);
    cairo_stroke(canvas->cr);
}

void ts_draw_line(ts_canvas *canvas, ts_point a, ts_point b)
{
    ts_move_to(canvas, a);
    ts_line_to(canvas, b);
    cairo_stroke(canvas->cr);
}

void ts_draw_dot(ts_canvas *canvas, ts_point at, double radius, ts_colour colour)
{
    ts_path_circle(canvas, at, radius);
    ts_fill(canvas, colour);
}

void ts_clip_path(ts_canvas *canvas)
{
    cairo_save(canvas->cr);
    cairo_clip(canvas->cr);
}

void ts_clip_area(ts_canvas *canvas, ts_area area)
{
    cairo_save(canvas->cr);
    cairo_new_path(canvas->cr);
    ts_path_area(canvas, area);
    cairo_clip(canvas->cr);
}

void ts_clip_end(ts_canvas *canvas)
{
    cairo_restore(canvas->cr);
    cairo_new_path(canvas->cr);
}

void ts_hatch(ts_canvas *canvas, ts_colour colour)
{
    double x0 = 0.0, y0 = 0.0, x1 = 0.0, y1 = 0.0;
    cairo_path_extents(canvas->cr, &x0, &y0, &x1, &y1);
    ts_clip_path(canvas);
    ts_use_pen(canvas, TS_PEN_1, colour);
    const double step = TS_LOOK_FIGURE_HATCH_PITCH * M_SQRT2;
    /* Lines y = c - x; c runs on a fixed grid, so that neighbouring areas continue each other. */
    /* The one before the first reaches in by half of its width. */
    const ts_ticks lines = ts_ticks_within(x0 + y0 - step, x1 + y1, step);
    for (int i = 0; i < lines.count; i++) {
        const double c = ts_tick_at(lines, i);
        cairo_move_to(canvas->cr, c - y1, y1);
        cairo_line_to(canvas->cr, c - y0, y0);
    }
    cairo_stroke(canvas->cr);
    ts_clip_end(canvas);
}

/* A tick at p of a wall that runs in the direction (ux, uy): half back along it, half away. */
static void path_tick(ts_canvas *canvas, ts_point p, double ux, double uy, double side)
{
    const double length = TS_LOOK_FIGURE_WALL_TICK * M_SQRT1_2;
    ts_move_to(canvas, p);
    ts_line_to(canvas,
               (ts_point){p.x + length * (-ux - side * uy), p.y + length * (-uy + side * ux)});
}

void ts_draw_wall(ts_canvas *canvas, const ts_point *points, size_t count, bool ticks_right)
{
    const double step = TS_LOOK_FIGURE_WALL_TICK, side = ticks_right ? 1.0 : -1.0;
    double       due = step; /* along the wall, to the next tick */
    for (size_t i = 0; i < count; i++)
        ts_line_to(canvas, points[i]);
    ts_use_pen(canvas, TS_PEN_4, TS_COLOUR_INK);
    ts_stroke(canvas);
    for (size_t i = 1; i < count; i++) {
        const double length = ts_distance(points[i - 1], points[i]);
        if (!(length > 0.0))
            continue;
        const double ux = (points[i].x - points[i - 1].x) / length;
        const double uy = (points[i].y - points[i - 1].y) / length;
        while (due <= length) {
            path_tick(canvas, (ts_point){points[i - 1].x + due * ux, points[i - 1].y + due * uy},
                      ux, uy, side);
            due += step;
        }
        due -= length;
    }
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_stroke(canvas);
}

void ts_draw_head(ts_canvas *canvas, ts_point tip, double direction, double length,
                  ts_colour colour)
{
    const ts_point head[3] = {tip, ts_polar(tip, -length, direction + 0.38),
                              ts_polar(tip, -length, direction - 0.38)};
    ts_path_polygon(canvas, head, 3);
    ts_fill(canvas, colour);
}
