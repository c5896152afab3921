/* draw/face_bodies.c: what hangs on the box, which way does it turn, and what is its number? */
#include "draw/face.h"
#include "draw/lettering.h"

#include <math.h>

static void draw_body(const ts_face *face, const ts_face_shaft *shaft, int side)
{
    ts_canvas *canvas = &face->scene->canvas;
    const bool near   = side == (int)ts_face_near(face);
    if (!(shaft->r_body[side] > 0.0))
        return;
    ts_path_circle(canvas, shaft->at, shaft->r_body[side]);
    if (near) {
        ts_use_colour(canvas, TS_COLOUR_PAPER, TS_LOOK_FIGURE_BODY_VEIL);
        cairo_fill_preserve(canvas->cr);
    }
    ts_use_pen(canvas, near ? TS_PEN_3 : TS_PEN_2, TS_COLOUR_INK);
    if (!near)
        ts_use_dash(canvas, TS_DASH_HIDDEN);
    ts_stroke(canvas);
}

/* Far bodies first, dashed; then near ones under a veil of paper. */
void ts_face_draw_bodies(const ts_face *face)
{
    const int near = (int)ts_face_near(face);
    for (int pass = 0; pass < 2; pass++)
        for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
            if (face->shafts[s].shown)
                draw_body(face, &face->shafts[s], pass ? near : 1 - near);
}

void ts_draw_sense_arrow(ts_canvas *canvas, ts_point at, double radius, double middle, int sense)
{
    /* y downwards: a positive angle is clockwise on the sheet. */
    const double way = sense < 0 ? 1.0 : -1.0, span = fmin(1.9, 34.0 / radius + 0.35);
    const double from = middle - way * 0.5 * span, to = middle + way * 0.5 * span;
    const double head = TS_LOOK_FIGURE_ARROW_HEAD;
    if (sense == 0)
        return;
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    cairo_new_sub_path(canvas->cr);
    const double stop = to - way * 0.8 * head / radius;
    if (way > 0.0)
        cairo_arc(canvas->cr, at.x, at.y, radius, from, stop);
    else
        cairo_arc_negative(canvas->cr, at.x, at.y, radius, from, stop);
    ts_stroke(canvas);
    /* The head follows the chord of its own arc. */
    const double aim = to + way * (0.5 * M_PI - 0.5 * head / radius);
    ts_draw_head(canvas, ts_polar(at, radius, to), aim, head, TS_COLOUR_INK);
}

void ts_face_draw_senses(const ts_face *face)
{
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++) {
        const ts_face_shaft *shaft = &face->shafts[s];
        if (!shaft->shown)
            continue;
        const double radius = fmax(shaft->r_number + 5.0, 0.66 * shaft->r_main);
        const double inward = atan2(face->engine.y - shaft->at.y, face->engine.x - shaft->at.x);
        ts_draw_sense_arrow(&face->scene->canvas, shaft->at, radius, inward,
                            ts_face_sense(face, s));
    }
}

void ts_draw_number_circle(ts_canvas *canvas, ts_point at, double radius, uint32_t number)
{
    ts_path_circle(canvas, at, radius);
    ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_3, TS_COLOUR_INK);
    const double       size = fmin(TS_LOOK_TYPE_PX_SMALL, radius * (number < 100 ? 1.1 : 0.85));
    const ts_lettering how  = {
         .size = size, .bold = true, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK};
    ts_buffer *line = ts_canvas_line(canvas);
    ts_buffer_integer(line, number);
    ts_write(canvas, (ts_point){at.x, at.y + 0.36 * size}, line->bytes ? line->bytes : "", &how);
}

void ts_face_draw_numbers(const ts_face *face)
{
    ts_canvas *canvas = &face->scene->canvas;
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++) {
        const ts_face_shaft *shaft = &face->shafts[s];
        if (!shaft->shown)
            continue;
        const double r = shaft->r_number;
        ts_draw_number_circle(canvas, shaft->at, r, face->scene->train->shafts[s].number);
        ts_note_area(&canvas->places, TS_PLACE_NUMBER, s,
                     (ts_area){shaft->at.x - r, shaft->at.y - r, 2.0 * r, 2.0 * r});
    }
}
