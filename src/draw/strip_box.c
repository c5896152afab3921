/* draw/strip_box.c: what lies between the pad faces?  Box, gears with their face widths, axes. */
#include "draw/lettering.h"
#include "draw/unrolled.h"

#include "draw/face.h"

#include <math.h>

ts_point ts_strip_point(const ts_strip *strip, double s, double z)
{
    return (ts_point){strip->origin.x + s * strip->px, strip->origin.y + z * strip->px};
}

/* Arrows and words left of everything: which pad face looks which way. */
static void draw_faces(const ts_strip *strip, double front, double rear)
{
    ts_canvas         *canvas = &strip->scene->canvas;
    const double       x      = ts_strip_point(strip, strip->left, 0.0).x;
    const ts_lettering how    = {.size    = TS_LOOK_TYPE_PX_TICK,
                                 .upright = true,
                                 .anchor  = TS_ANCHOR_MIDDLE,
                                 .colour  = TS_COLOUR_INK2};
    ts_write(canvas, (ts_point){x - 18.0, front - 24.0}, "front", &how);
    ts_write(canvas, (ts_point){x - 18.0, rear + 24.0}, "rear", &how);
    for (int end = 0; end < 2; end++) {
        const double y = end ? rear : front, way = end ? 1.0 : -1.0;
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
        ts_draw_line(canvas, (ts_point){x - 30.0, y}, (ts_point){x - 4.0, y});
        ts_draw_line(canvas, (ts_point){x - 10.0, y}, (ts_point){x - 10.0, y + way * 28.0});
        ts_draw_head(canvas, (ts_point){x - 10.0, y + way * 34.0}, way * 0.5 * M_PI,
                     TS_LOOK_FIGURE_ARROW_HEAD, TS_COLOUR_INK2);
    }
}

static void draw_case(const ts_strip *strip)
{
    ts_canvas   *canvas = &strip->scene->canvas;
    const double wall   = TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3;
    double       left = INFINITY, right = -INFINITY;
    for (size_t i = 0; i < strip->shaft_count; i++) {
        left  = fmin(left, strip->shafts[i].s - strip->shafts[i].r_gear - wall);
        right = fmax(right, strip->shafts[i].s + strip->shafts[i].r_gear + wall);
    }
    const ts_point a = ts_strip_point(strip, left, 0.0),
                   b = ts_strip_point(strip, right, strip->depth);
    ts_path_area(canvas, (ts_area){a.x, a.y, b.x - a.x, b.y - a.y});
    ts_fill_and_stroke(canvas, TS_COLOUR_CASING, TS_PEN_3, TS_COLOUR_INK);
    draw_faces(strip, a.y, b.y);
}

static ts_area gear_area(const ts_strip *strip, const ts_strip_gear *gear)
{
    const double   s    = strip->shafts[gear->shaft].s;
    const double   face = isfinite(gear->face) ? gear->face : 6e-3;
    const ts_point a =
        ts_strip_point(strip, s - gear->r_tip, strip->plane_z[gear->plane] - 0.5 * face);
    return (ts_area){a.x, a.y, 2.0 * gear->r_tip * strip->px, face * strip->px};
}

static void draw_gear(const ts_strip *strip, const ts_strip_gear *gear)
{
    ts_canvas     *canvas = &strip->scene->canvas;
    const int      sense  = strip->scene->motion->shafts[strip->shafts[gear->shaft].shaft].sense;
    const ts_area  area   = gear_area(strip, gear);
    const ts_point mid    = {area.x + 0.5 * area.w, area.y};
    ts_path_area(canvas, area);
    ts_use_colour(canvas,
                  sense < 0   ? TS_COLOUR_GEAR_CW
                  : sense > 0 ? TS_COLOUR_GEAR_CCW
                              : TS_COLOUR_PAPER,
                  1.0);
    cairo_fill_preserve(canvas->cr);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    if (!isfinite(gear->face))
        ts_use_dash(canvas, TS_DASH_HIDDEN);
    ts_stroke(canvas);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK3);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    for (int side = -1; side <= 1; side += 2) {
        const double x = mid.x + side * gear->r * strip->px;
        ts_draw_line(canvas, (ts_point){x, area.y - 4.0}, (ts_point){x, area.y + area.h + 4.0});
    }
}

/* "z 61" or "61", whichever fits between the number and the edge; else the table alone says it. */
static void write_beside(ts_scene *scene, ts_point at, double room, const char *prefix)
{
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK};
    const ts_buffer *line = &scene->canvas.line;
    char *value = line->bytes ? ts_arena_copy(scene->arena, line->bytes, line->length) : NULL;
    if (!value)
        return;
    ts_buffer *whole = ts_canvas_line(&scene->canvas);
    ts_buffer_print(whole, "%s %s", prefix, value);
    const char *text = whole->bytes ? whole->bytes : "";
    if (ts_text_area(&scene->canvas, at, text, &how).w > room)
        text = value;
    const ts_area area = ts_text_area(&scene->canvas, at, text, &how);
    if (area.w <= room && ts_place_free(&scene->canvas.places, area))
        ts_write(&scene->canvas, at, text, &how);
}

/* Teeth left of the axis, face width right of it, where there is room beside the number. */
static void write_gear(const ts_strip *strip, const ts_strip_gear *gear)
{
    ts_scene     *scene = strip->scene;
    const ts_area area  = gear_area(strip, gear);
    const double  half = 0.5 * area.w - 14.0, y = area.y + 0.5 * area.h + 4.0;
    if (area.h < 11.0)
        return;
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_integer(line, scene->train->gears[gear->gear].teeth.value);
    write_beside(scene, (ts_point){area.x + 0.5 * half + 2.0, y}, half - 6.0, "z");
    if (!isfinite(gear->face))
        return;
    line = ts_canvas_line(&scene->canvas);
    ts_add_value(line, scene, gear->face, TS_KIND_LENGTH);
    write_beside(scene, (ts_point){area.x + area.w - 0.5 * half - 2.0, y}, half - 6.0, "b");
}

static void draw_axis(const ts_strip *strip, const ts_strip_shaft *one)
{
    ts_canvas     *canvas = &strip->scene->canvas;
    const ts_point a      = ts_strip_point(strip, one->s, -one->length[TS_FRONT]);
    const ts_point b      = ts_strip_point(strip, one->s, strip->depth + one->length[TS_REAR]);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    ts_draw_line(canvas, (ts_point){a.x, a.y - 8.0}, (ts_point){b.x, b.y + 8.0});
}

static double number_z(const ts_strip *strip, size_t shaft)
{
    for (size_t i = 0; i < strip->gear_count; i++)
        if (strip->gears[i].shaft == shaft &&
            strip->scene->train->gears[strip->gears[i].gear].role == TS_GEAR_MAIN)
            return strip->plane_z[strip->gears[i].plane];
    return 0.5 * strip->depth;
}

/* On its gear, or as near below as two axes at nearly one clock angle leave room. */
static void draw_number(const ts_strip *strip, size_t index)
{
    ts_canvas   *canvas = &strip->scene->canvas;
    const double r      = TS_LOOK_FIGURE_NUMBER_RADIUS;
    ts_point     at     = ts_strip_point(strip, strip->shafts[index].s, number_z(strip, index));
    ts_area      area   = {at.x - r, at.y - r, 2.0 * r, 2.0 * r};
    while (!ts_place_free(&canvas->places, area)) {
        at.y += r;
        area.y += r;
    }
    ts_draw_number_circle(canvas, at, r,
                          strip->scene->train->shafts[strip->shafts[index].shaft].number);
    ts_note_area(&canvas->places, TS_PLACE_NUMBER, strip->shafts[index].shaft, area);
}

void ts_strip_draw_box(const ts_strip *strip)
{
    draw_case(strip);
    for (size_t i = 0; i < strip->gear_count; i++)
        draw_gear(strip, &strip->gears[i]);
    for (size_t i = 0; i < strip->shaft_count; i++)
        draw_axis(strip, &strip->shafts[i]);
    for (size_t i = 0; i < strip->shaft_count; i++)
        draw_number(strip, i);
    for (size_t i = 0; i < strip->gear_count; i++)
        write_gear(strip, &strip->gears[i]);
}
