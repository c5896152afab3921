/* draw/face_gears.c: what do the gears look like, tooth in space? */
#include "draw/face.h"

#include <math.h>

static void path_outline(const ts_face *face, const ts_face_gear *gear, const ts_shaft_motion *axis)
{
    const ts_outline_point at   = {axis->x, axis->y};
    const size_t           size = ts_gear_outline_size(&gear->shape);
    for (size_t i = 0; i < size; i++) {
        const ts_outline_point p = ts_gear_outline_at(&gear->shape, i, gear->phase, at);
        ts_line_to(&face->scene->canvas, ts_face_point(face, p.x, p.y));
    }
    cairo_close_path(face->scene->canvas.cr);
}

static ts_colour tint_of(const ts_face *face, uint32_t shaft)
{
    const int sense = ts_face_sense(face, shaft);
    return sense < 0 ? TS_COLOUR_GEAR_CW : sense > 0 ? TS_COLOUR_GEAR_CCW : TS_COLOUR_PAPER;
}

static void draw_gear(const ts_face *face, uint32_t g)
{
    ts_canvas             *canvas = &face->scene->canvas;
    const ts_face_gear    *gear   = &face->gears[g];
    const uint32_t         shaft  = face->scene->train->gears[g].shaft;
    const ts_shaft_motion *axis   = &face->scene->motion->shafts[shaft];
    if (gear->shape.count > 0)
        path_outline(face, gear, axis);
    else if (isfinite(gear->r_tip))
        ts_path_circle(canvas, face->shafts[shaft].at, gear->r_tip * face->px);
    ts_fill_and_stroke(canvas, tint_of(face, shaft), gear->shape.count > 0 ? TS_PEN_1 : TS_PEN_2,
                       TS_COLOUR_INK);
    const double rim = gear->shape.r_root - 1.2 * (gear->shape.r_tip - gear->shape.r_root);
    if (gear->shape.count > 0 && rim > 0.0) {
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_path_circle(canvas, face->shafts[shaft].at, rim * face->px);
        ts_stroke(canvas);
    }
}

static void draw_plane(const ts_face *face, int plane)
{
    const ts_train *train = face->scene->train;
    for (uint32_t g = 0; g < train->gear_count; g++)
        if (train->gears[g].role != TS_GEAR_BEVEL && face->gears[g].plane == plane &&
            face->shafts[train->gears[g].shaft].shown)
            draw_gear(face, g);
}

/* Pitch circles as chain lines; also of gears that another one hides. */
static void draw_pitch_circles(const ts_face *face)
{
    const ts_train *train  = face->scene->train;
    ts_canvas      *canvas = &face->scene->canvas;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK3);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    for (uint32_t g = 0; g < train->gear_count; g++) {
        const ts_gear *gear = &train->gears[g];
        if (!face->shafts[gear->shaft].shown || !isfinite(face->gears[g].r))
            continue;
        if (gear->role == TS_GEAR_MAIN && face->gears[g].shape.count > 0)
            continue; /* its teeth say it */
        ts_path_circle(canvas, face->shafts[gear->shaft].at, face->gears[g].r * face->px);
        ts_stroke(canvas);
    }
}

void ts_face_draw_gears(const ts_face *face)
{
    const ts_train *train = face->scene->train;
    int             last  = 0;
    for (uint32_t g = 0; g < train->gear_count; g++)
        if (face->gears[g].plane > last)
            last = face->gears[g].plane;
    /* Plane 0 is the foremost: seen from behind it is drawn first. */
    for (int i = 0; i <= last; i++)
        draw_plane(face, face->front ? last - i : i);
    draw_pitch_circles(face);
}
