/* draw/plain_view.c: what does a drive look like to somebody who need not know a number yet? */
#include "draw/plain_view.h"

#include "draw/face.h"
#include "draw/lettering.h"
#include "draw/ribbon.h"

#include <math.h>

/* px; letters that are read across a room, and in large print */
static const double height = 760.0, aside = 230.0, above = 80.0, letters = 21.0, line = 25.0;

/* Names that were written. */
typedef struct names {
    ts_area *areas;
    size_t   count;
} names;

static bool is_free(const names *all, ts_area area)
{
    for (size_t i = 0; i < all->count; i++)
        if (ts_areas_meet(all->areas[i], area))
            return false;
    return true;
}

/* Away from the engine until it meets no other name. */
static void write_name(const ts_face *face, names *all, const char *name, ts_anchor anchor,
                       ts_point at, double way)
{
    const ts_lettering how    = {.size   = letters,
                                 .bold   = true,
                                 .halo   = true,
                                 .anchor = anchor,
                                 .width  = 1.8 * aside,
                                 .colour = TS_COLOUR_INK};
    ts_canvas         *canvas = &face->scene->canvas;
    ts_area            area   = ts_text_area(canvas, at, name, &how);

    while (!is_free(all, area) && area.y > 0.0 && area.y + area.h < height) {
        area.y += way * line;
        at.y += way * line;
    }
    all->areas[all->count++] = area;
    ts_write(canvas, at, name, &how);
}

/* What stands on the front and on the rear of a shaft, outside of its gears. */
static void write_names(const ts_face *face, uint32_t s, names *all)
{
    const ts_train      *train = face->scene->train;
    const ts_face_shaft *shaft = &face->shafts[s];
    const double         dx = shaft->at.x - face->engine.x, dy = shaft->at.y - face->engine.y;
    const double         far = hypot(dx, dy), away = far > 0.0 ? (shaft->r_all + 9.0) / far : 0.0;
    const ts_anchor      anchor = fabs(dx) < 0.25 * far ? TS_ANCHOR_MIDDLE
                                  : dx < 0.0            ? TS_ANCHOR_RIGHT
                                                        : TS_ANCHOR_LEFT;
    const ts_point       at     = {shaft->at.x + away * dx,
                                   shaft->at.y + away * dy + (dy < 0.0 ? 0.0 : 0.7 * line)};

    for (int side = TS_FRONT; side <= TS_REAR; side++) {
        const uint32_t p = train->shafts[s].pad[side];
        if (p != TS_NOWHERE && train->pads[p].accessory >= 0)
            write_name(face, all, train->pads[p].name, anchor, at, dy < 0.0 ? -1.0 : 1.0);
    }
}

static void draw(const ts_face *face, const ts_ribbons *ribbons, names *all)
{
    ts_face_draw_boxes(face);
    ts_face_draw_gears(face);
    ts_face_draw_hub(face);
    ts_face_draw_towers(face);
    ts_face_draw_senses(face);
    ts_ribbons_draw(face, ribbons);
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
        if (face->shafts[s].shown)
            write_names(face, s, all);
}

ts_status ts_draw_plain(ts_scene *scene)
{
    ts_face    face    = {.scene = scene, .ribbons = true};
    ts_ribbons ribbons = {0};
    names      all     = {TS_TAKE(scene->arena, ts_area, scene->train->pad_count), 0};

    if (all.areas == NULL)
        return TS_NO_MEMORY;
    face.picture = (ts_area){aside, above, scene->canvas.width - 2.0 * aside, height - 2.0 * above};
    ts_status status = ts_face_lay_out(&face);
    if (status == TS_OK)
        status = ts_ribbons_lay(&face, &ribbons);
    if (status == TS_OK)
        status = ts_canvas_sheet(&scene->canvas, height,
                                 scene->subject->title ? scene->subject->title
                                                       : scene->drive->title.text);
    if (status == TS_OK)
        draw(&face, &ribbons, &all);
    return status;
}
