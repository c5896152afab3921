/* draw/ribbon_words.c: how much power is it?  Words at the bands, and the balance beside them. */
#include "draw/ribbon.h"

#include "draw/lettering.h"

#include <math.h>
#include <string.h>

static const char *kept(const ts_face *face)
{
    const ts_buffer *line = &face->scene->canvas.line;
    const char      *copy =
        line->bytes ? ts_arena_copy(face->scene->arena, line->bytes, line->length) : NULL;
    return copy ? copy : "";
}

/* Where nothing near is free, a thin line says what the words belong to. */
static void draw_leader(const ts_face *face, ts_point at, ts_area words)
{
    const ts_point end = {fmin(fmax(at.x, words.x), words.x + words.w),
                          fmin(fmax(at.y, words.y), words.y + words.h)};
    if (ts_distance(at, end) < 16.0)
        return;
    ts_use_pen(&face->scene->canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_draw_line(&face->scene->canvas, at, end);
}

/* One or two lines as near to `at` as there is room; returns what they take. */
static ts_area label_at(const ts_face *face, ts_obstacles *obstacles, ts_point at, double near,
                        const char *words, const char *below)
{
    ts_canvas         *canvas = &face->scene->canvas;
    const double       apart  = 4.0; /* px of paper round the words */
    const ts_lettering how    = {
           .bold = true, .halo = true, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK};
    const ts_lettering small = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .halo   = true,
                                .anchor = TS_ANCHOR_MIDDLE,
                                .colour = TS_COLOUR_INK2};
    const ts_area      one   = ts_text_area(canvas, (ts_point){0, 0}, words, &how);
    const ts_area      two   = ts_text_area(canvas, (ts_point){0, 0}, below ? below : "", &small);
    const ts_point size = {fmax(one.w, two.w) + 2.0 * apart, one.h + (below ? two.h : 0.0) + apart};
    const ts_area  room =
        ts_place_near(obstacles, at, size, (const double[]){near, near + 70.0}, NULL);
    const ts_area area = {room.x + apart, room.y + 0.5 * apart, size.x - 2.0 * apart,
                          size.y - apart};
    const double  x    = area.x + 0.5 * area.w;
    ts_write(canvas, (ts_point){x, area.y - one.y}, words, &how);
    if (below)
        ts_write(canvas, (ts_point){x, area.y + one.h - two.y}, below, &small);
    ts_avoid_area(obstacles, room, 1000.0);
    return area;
}

static const char *power_words(const ts_face *face, double power)
{
    ts_buffer *line = ts_canvas_line(&face->scene->canvas);
    ts_add_shown(line, face->scene, fabs(power), TS_KIND_POWER);
    return kept(face);
}

static void label_mesh(const ts_face *face, ts_obstacles *obstacles, const ts_ribbon *one)
{
    const ts_train *train = face->scene->train;
    const uint32_t  spool = train->meshes[one->of].driver_shaft;
    if (train->shafts[spool].kind != TS_SHAFT_SPOOL)
        return;
    const char    *words = power_words(face, one->power);
    const ts_point mid   = {0.45 * one->a.x + 0.55 * one->b.x, 0.45 * one->a.y + 0.55 * one->b.y};
    ts_buffer     *line  = ts_canvas_line(&face->scene->canvas);
    ts_buffer_print(line, "%s the %s", one->power < 0.0 ? "into" : "from",
                    train->shafts[spool].name);
    (void)label_at(face, obstacles, mid, 50.0, words, kept(face));
}

void ts_ribbons_label(const ts_face *face, const ts_ribbons *ribbons, ts_obstacles *obstacles)
{
    for (size_t i = 0; i < ribbons->count; i++)
        if (!ribbons->items[i].headed)
            label_mesh(face, obstacles, &ribbons->items[i]);
    for (size_t i = 0; i < ribbons->count; i++) {
        const ts_ribbon *one = &ribbons->items[i];
        if (!one->headed)
            continue;
        const double   away = atan2(one->b.y - one->a.y, one->b.x - one->a.x);
        const ts_point tip  = ts_polar(one->b, 14.0, away);
        draw_leader(face, tip,
                    label_at(face, obstacles, tip, 14.0, power_words(face, one->power), NULL));
    }
}

/* ---- the balance ------------------------------------------------------------------------- */

static void write_row(const ts_face *face, double y, const char *words, const char *value,
                      bool bold)
{
    const ts_area      column = face->column;
    const ts_lettering left   = {
          .bold = bold, .colour = bold ? TS_COLOUR_INK : TS_COLOUR_INK2, .width = column.w - 130.0};
    const ts_lettering right = {.bold = bold, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK};
    ts_write(&face->scene->canvas, (ts_point){column.x + 30.0, y}, words, &left);
    ts_write(&face->scene->canvas, (ts_point){column.x + column.w - 10.0, y}, value, &right);
}

static double write_sum(const ts_face *face, double y, const char *words, double watts, bool bold)
{
    ts_buffer *line = ts_canvas_line(&face->scene->canvas);
    ts_add_shown(line, face->scene, watts, TS_KIND_POWER);
    write_row(face, y, words, kept(face), bold);
    return y + TS_LOOK_SPACE_ROW;
}

static double write_pad(const ts_face *face, double y, uint32_t p)
{
    ts_canvas         *canvas = &face->scene->canvas;
    const ts_pad      *pad    = &face->scene->train->pads[p];
    const ts_pad_load *load   = ts_scene_pad_load(face->scene, p);
    const ts_lettering right  = {
         .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK2};
    ts_draw_number_circle(canvas, (ts_point){face->column.x + 18.0, y - 4.0}, 8.0,
                          face->scene->train->shafts[pad->shaft].number);
    ts_buffer *line = ts_canvas_line(canvas);
    if (load->standing == TS_ABSENT || load->standing == TS_UNKNOWN)
        ts_buffer_add(line, "not known");
    else
        ts_add_shown(line, face->scene, load->P, TS_KIND_POWER);
    write_row(face, y, pad->name, kept(face), false);
    line = ts_canvas_line(canvas);
    ts_add_shown(line, face->scene, load->T, TS_KIND_TORQUE);
    ts_write(canvas, (ts_point){face->column.x + face->column.w - 76.0, y}, kept(face), &right);
    return y + TS_LOOK_SPACE_ROW;
}

static double write_spool(const ts_face *face, double y, uint32_t shaft)
{
    const ts_train      *train = face->scene->train;
    const uint32_t       spool = train->shafts[shaft].spool;
    const ts_spool_load *load  = ts_scene_spool_load(face->scene, spool);
    const bool           back  = load->P < 0.0;
    ts_buffer           *line  = ts_canvas_line(&face->scene->canvas);
    ts_buffer_print(line, "%s the %s", back ? "into" : "from", train->shafts[shaft].name);
    y = write_sum(face, y, kept(face), fabs(load->P), true);
    if (load->P_driving > 0.0)
        y = write_sum(face, y, "put in by accessories", load->P_driving, false);
    y = write_sum(face, y, "absorbed at pads", load->P_pads + load->P_driving, false);
    y = write_sum(face, y, "lost in meshes", load->P_lost, false);
    y += 6.0;
    for (uint32_t p = 0; p < train->pad_count; p++) {
        if (y > face->column.y + face->column.h - 20.0)
            break; /* the rail holds every pad */
        if (train->pads[p].use == TS_PAD_ACCESSORY &&
            train->shafts[train->pads[p].shaft].spool == spool)
            y = write_pad(face, y, p);
    }
    return y + 16.0;
}

double ts_face_head_column(const ts_face *face, const char *what)
{
    ts_canvas         *canvas = &face->scene->canvas;
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                 .bold   = true,
                                 .colour = TS_COLOUR_INK,
                                 .width  = face->column.w - 20.0};
    ts_buffer         *line   = ts_canvas_line(canvas);

    ts_buffer_print(line, "%s at %s", what,
                    face->scene->drive->conditions[face->scene->condition].name);
    ts_write(canvas, (ts_point){face->column.x + 10.0, face->column.y + 22.0}, kept(face), &how);
    return face->column.y + 48.0;
}

void ts_face_draw_balance(const ts_face *face)
{
    ts_canvas *canvas = &face->scene->canvas;
    double     y      = ts_face_head_column(face, "Power");
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
        if (ts_bevel_mesh_from(face->scene->train, s) != TS_NOWHERE &&
            face->scene->train->shafts[s].kind == TS_SHAFT_SPOOL)
            y = write_spool(face, y, s);
    const double bottom = face->column.y + face->column.h;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(canvas, (ts_point){face->column.x, face->column.y},
                 (ts_point){face->column.x, bottom});
    ts_draw_line(canvas, (ts_point){face->column.x, bottom},
                 (ts_point){face->column.x + face->column.w, bottom});
}
