/* draw/face_engine.c: what lies round the drive?  Engine casing with its clock, cowl, keep-outs. */
#include "draw/face.h"
#include "draw/lettering.h"

#include <math.h>

static const double degree = M_PI / 180.0;

/* All ticks of one length: every `step` degrees but for those that a longer one covers. */
static void draw_ticks(const ts_face *face, double r, int step, int longer)
{
    ts_canvas   *canvas = &face->scene->canvas;
    const double length = (step == 30 ? 15.0 : step == 10 ? 9.0 : 4.5) / face->px;
    for (int i = 0; i < 360; i += step) {
        if (longer > 0 && i % longer == 0)
            continue;
        ts_move_to(canvas, ts_face_clock_point(face, i * degree, r));
        ts_line_to(canvas, ts_face_clock_point(face, i * degree, r - length));
    }
    ts_use_pen(canvas, step == 30 ? TS_PEN_3 : TS_PEN_1, TS_COLOUR_INK);
    ts_stroke(canvas);
}

static void draw_hour(const ts_face *face, double r, int hour)
{
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_LEAD, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK};
    /* The hour stands where the file means it: a dial that the file sees from the other side runs
     * backwards here.  The turn that ts_scene_dial makes is its own inverse. */
    ts_point      at = ts_face_clock_point(face, ts_scene_dial(face->scene, hour * 30 * degree), r);
    const ts_area room = ts_area_inset(face->picture, 22.0);
    char          text[3];
    text[0] = (char)(hour >= 10 ? '1' : '0' + hour);
    text[1] = (char)(hour >= 10 ? '0' + hour - 10 : 0);
    text[2] = 0;
    at.y += 0.36 * how.size;
    if (ts_area_distance(room, at) <= 0.0)
        ts_note_area(&face->scene->canvas.places, TS_PLACE_HOUR, (uint32_t)hour,
                     ts_write(&face->scene->canvas, at, text, &how));
}

/* The casing as a dial: its outline, ticks every 2, 10 and 30 degrees, the hours. */
static void draw_dial(const ts_face *face)
{
    ts_canvas   *canvas = &face->scene->canvas;
    const double casing = face->scene->drive->engine.casing.value;
    if (!ts_measure_known(face->scene->drive->engine.casing) || !(casing * face->px > 60.0))
        return;
    const double inner = casing - 7.0 / face->px;
    ts_use_pen(canvas, TS_PEN_4, TS_COLOUR_INK);
    ts_path_circle(canvas, face->engine, casing * face->px);
    ts_stroke(canvas);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_path_circle(canvas, face->engine, inner * face->px);
    ts_stroke(canvas);
    draw_ticks(face, inner, 2, 10);
    draw_ticks(face, inner, 10, 30);
    draw_ticks(face, inner, 30, 0);
    for (int hour = 1; hour <= 12; hour++)
        draw_hour(face, inner - 28.0 / face->px, hour);
}

/* ---- cowl -------------------------------------------------------------------------------- */

static bool cowl_known(const ts_cowl_point *point)
{
    return ts_measure_known(point->clock) && ts_measure_known(point->radius);
}

ts_point ts_face_cowl_point(const ts_face *face, size_t index, double share)
{
    const ts_cowl_point *a = &face->scene->drive->engine.cowl[index - 1], *b = a + 1;
    const double         turn = remainder(b->clock.value - a->clock.value, 2.0 * M_PI);
    return ts_face_clock_point(face, a->clock.value + share * turn,
                               a->radius.value + share * (b->radius.value - a->radius.value));
}

enum { COWL_PIECES = 90 };

/* As far as it comes into view. */
static void note_cowl(const ts_face *face, uint32_t piece, const ts_point points[COWL_PIECES + 1])
{
    for (int k = 0; k < COWL_PIECES; k++)
        if (ts_line_meets_area(points[k], points[k + 1], face->picture))
            ts_note_line(&face->scene->canvas.places, TS_PLACE_WALL, piece, points[k],
                         points[k + 1]);
}

/* Outside of the cowl is forbidden: on the left of somebody who walks clockwise as seen. */
static void draw_cowl(const ts_face *face)
{
    const ts_engine *engine = &face->scene->drive->engine;
    for (size_t i = 1; i < engine->cowl_count; i++) {
        const ts_cowl_point *a = &engine->cowl[i - 1], *b = &engine->cowl[i];
        ts_point             points[COWL_PIECES + 1];
        if (!cowl_known(a) || !cowl_known(b))
            continue;
        const bool back = remainder(b->clock.value - a->clock.value, 2.0 * M_PI) < 0.0;
        for (int k = 0; k <= COWL_PIECES; k++)
            points[k] = ts_face_cowl_point(face, i, (double)k / COWL_PIECES);
        note_cowl(face, (uint32_t)i, points);
        ts_draw_wall(&face->scene->canvas, points, COWL_PIECES + 1, face->front != back);
    }
}

/* ---- keep-outs --------------------------------------------------------------------------- */

static void draw_keep_out(const ts_face *face, const ts_keep_out *one)
{
    ts_canvas *canvas = &face->scene->canvas;
    if (!ts_measure_known(one->clock) || !ts_measure_known(one->radius) ||
        !ts_measure_known(one->size))
        return;
    const ts_point at   = ts_face_clock_point(face, one->clock.value, one->radius.value);
    const bool     near = one->face.value == 2 || one->face.value == (face->front ? 0 : 1);
    ts_path_circle(canvas, at, one->size.value * face->px);
    ts_hatch(canvas, TS_COLOUR_INK2);
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    if (!near)
        ts_use_dash(canvas, TS_DASH_HIDDEN);
    ts_path_circle(canvas, at, one->size.value * face->px);
    ts_stroke(canvas);
}

void ts_face_draw_engine(const ts_face *face)
{
    const ts_engine *engine = &face->scene->drive->engine;
    draw_dial(face);
    draw_cowl(face);
    for (size_t i = 0; i < engine->keep_out_count; i++)
        draw_keep_out(face, &engine->keep_out[i]);
}

/* ---- the box ----------------------------------------------------------------------------- */

/* One piece of the outline: two discs and the two lines that touch both. */
static void path_bridge(const ts_face *face, uint32_t a, uint32_t b, double grow)
{
    const ts_face_shaft *p = &face->shafts[a], *q = &face->shafts[b];
    const double         wall = TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3 * face->px + grow;
    const double         r_1 = p->r_gear + wall, r_2 = q->r_gear + wall;
    const double         length = ts_distance(p->at, q->at);
    if (!(length > fabs(r_1 - r_2)))
        return; /* one disc covers the other */
    const double   line       = atan2(q->at.y - p->at.y, q->at.x - p->at.x);
    const double   lean       = acos((r_1 - r_2) / length);
    const ts_point corners[4] = {
        ts_polar(p->at, r_1, line + lean), ts_polar(q->at, r_2, line + lean),
        ts_polar(q->at, r_2, line - lean), ts_polar(p->at, r_1, line - lean)};
    ts_path_polygon(&face->scene->canvas, corners, 4);
}

/* The union of all pieces, grown by `grow` px, in one colour: painted twice it is an outline. */
static void paint_boxes(const ts_face *face, double grow, ts_colour colour)
{
    const ts_train *train  = face->scene->train;
    ts_canvas      *canvas = &face->scene->canvas;
    const double    wall   = TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3 * face->px + grow;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (!face->shafts[s].shown)
            continue;
        ts_path_circle(canvas, face->shafts[s].at, face->shafts[s].r_gear + wall);
        ts_fill(canvas, colour);
        const uint32_t m = train->shafts[s].mesh;
        if (m == TS_NOWHERE || !face->shafts[train->meshes[m].driver_shaft].shown)
            continue;
        path_bridge(face, train->meshes[m].driver_shaft, s, grow);
        ts_fill(canvas, colour);
    }
}

void ts_face_draw_boxes(const ts_face *face)
{
    const double pen = ts_pen_width(&face->scene->canvas, TS_PEN_3);
    paint_boxes(face, 0.5 * pen, TS_COLOUR_INK2);
    paint_boxes(face, -0.5 * pen, TS_COLOUR_CASING);
}
