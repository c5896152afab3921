/* draw/rail.c: how fast does each shaft turn, and what do its pads take?  The face view's table. */
#include "draw/rail.h"

#include "draw/lettering.h"

#include <math.h>

static const double least_cell = 68.0, line_height = 13.5;

static double cell_width(const ts_rail *rail, double width)
{
    return (width - rail->label) / (double)rail->columns;
}

static ts_lettering name_letters(double cell, bool bold)
{
    return (ts_lettering){.size   = TS_LOOK_TYPE_PX_SMALL,
                          .bold   = bold,
                          .anchor = TS_ANCHOR_MIDDLE,
                          .colour = TS_COLOUR_INK,
                          .width  = cell - 6.0,
                          .lines  = 2};
}

/* near 0, far 1: the pad of a shaft on that side, or NULL. */
static const ts_pad *pad_of(const ts_scene *scene, uint32_t shaft, bool front, int far)
{
    const ts_face_side side = (front ? 1 : 0) == far ? TS_REAR : TS_FRONT;
    const uint32_t     p    = scene->train->shafts[shaft].pad[side];
    return p == TS_NOWHERE ? NULL : &scene->train->pads[p];
}

/* Box shafts in the order of their numbers. */
static bool list_shafts(ts_scene *scene, ts_rail *rail)
{
    const ts_train *train = scene->train;
    rail->order           = TS_TAKE(scene->arena, uint32_t, train->shaft_count);
    rail->start           = TS_TAKE(scene->arena, ts_point, train->shaft_count);
    if (!rail->order || !rail->start)
        return false;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (train->shafts[s].kind != TS_SHAFT_BOX)
            continue;
        size_t i = rail->count++;
        for (; i > 0 && train->shafts[rail->order[i - 1]].number > train->shafts[s].number; i--)
            rail->order[i] = rail->order[i - 1];
        rail->order[i] = s;
    }
    return true;
}

static double tallest_name(ts_scene *scene, const ts_rail *rail, double cell, bool front, int far)
{
    double tallest = 0.0;
    for (size_t i = 0; i < rail->count; i++) {
        const ts_pad      *pad  = pad_of(scene, rail->order[i], front, far);
        const ts_lettering how  = name_letters(cell, true);
        const char        *name = pad ? pad->name : NULL;
        if (!pad && far == 0 && !pad_of(scene, rail->order[i], front, 1))
            name = scene->train->shafts[rail->order[i]].name;
        if (name)
            tallest = fmax(tallest, ts_text_area(&scene->canvas, (ts_point){0, 0}, name, &how).h);
    }
    return tallest;
}

ts_status ts_rail_measure(ts_scene *scene, double width, bool front, ts_rail *rail)
{
    *rail = (ts_rail){.label = 92.0};
    if (!list_shafts(scene, rail))
        return TS_NO_MEMORY;
    const double fits = floor((width - rail->label) / least_cell);
    const size_t most = fits > 1.0 ? (size_t)fits : 1;
    rail->rows        = most > 0 && rail->count > most ? (rail->count + most - 1) / most : 1;
    rail->columns     = (rail->count + rail->rows - 1) / rail->rows;
    if (rail->columns < 6)
        rail->columns = 6; /* a few shafts do not spread over the whole sheet */
    const double cell = cell_width(rail, width);
    rail->height      = 24.0;
    for (int far = 0; far < 2; far++) {
        rail->name[far] = tallest_name(scene, rail, cell, front, far);
        if (rail->name[far] > 0.0)
            rail->height += rail->name[far] + line_height + 8.0;
    }
    return TS_OK;
}

double ts_rail_height(const ts_rail *rail)
{
    return rail->height * (double)rail->rows;
}

/* ---- drawing ----------------------------------------------------------------------------- */

/* The number in its circle and the speed beside it, together in the middle of the cell. */
static void write_speed(ts_scene *scene, uint32_t shaft, ts_point at, double cell)
{
    const double       r   = 8.0;
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_LEAD, .bold = true, .colour = TS_COLOUR_INK, .width = cell - 26.0};
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_add_value(line, scene, ts_scene_speed(scene, shaft), TS_KIND_ROTATIONAL_SPEED);
    const ts_area one =
        ts_text_area(&scene->canvas, (ts_point){0, 0}, line->bytes ? line->bytes : "", &how);
    const ts_point left = {at.x - 0.5 * (one.w + 2.0 * r + 6.0), at.y};
    ts_write(&scene->canvas, (ts_point){left.x + 2.0 * r + 6.0, at.y + 18.0},
             line->bytes ? line->bytes : "", &how);
    ts_draw_number_circle(&scene->canvas, (ts_point){left.x + r, at.y + 13.0}, r,
                          scene->train->shafts[shaft].number);
}

/* "13.0 kW, cw": what an accessory takes, and how it turns for somebody who faces the pad. */
static void write_load(ts_scene *scene, const ts_pad *pad, ts_point at, double cell)
{
    const ts_pad_load *load = ts_scene_pad_load(scene, (uint32_t)(pad - scene->train->pads));
    ts_buffer         *line = ts_canvas_line(&scene->canvas);
    if (pad->use == TS_PAD_ACCESSORY) {
        if (load->standing == TS_ABSENT || load->standing == TS_UNKNOWN)
            ts_buffer_add(line, "? ");
        else
            ts_add_value(line, scene, load->P, TS_KIND_POWER);
        ts_buffer_add(line, "  ");
    }
    ts_buffer_add(line, ts_sense_word(ts_pad_sense(scene->motion, pad)));
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .anchor = TS_ANCHOR_MIDDLE,
                              .colour = TS_COLOUR_INK2,
                              .width  = cell - 4.0};
    ts_write(&scene->canvas, at, line->bytes ? line->bytes : "", &how);
}

static void write_pad(ts_scene *scene, const ts_rail *rail, uint32_t shaft, bool front, int far,
                      ts_point at, double cell)
{
    const ts_pad *pad  = pad_of(scene, shaft, front, far);
    const bool    busy = pad && pad->use == TS_PAD_ACCESSORY;
    const bool    bare = !pad && far == 0 && !pad_of(scene, shaft, front, 1);
    ts_lettering  how  = name_letters(cell, busy);
    if (!busy)
        how.colour = TS_COLOUR_INK2;
    if (pad || bare)
        ts_write(&scene->canvas, (ts_point){at.x, at.y + 11.0},
                 pad ? pad->name : scene->train->shafts[shaft].name, &how);
    if (pad)
        write_load(scene, pad, (ts_point){at.x, at.y + rail->name[far] + 11.0}, cell);
}

static void draw_cell(const ts_face *face, const ts_rail *rail, size_t index)
{
    ts_scene      *scene = face->scene;
    const double   cell  = cell_width(rail, face->rail.w);
    const size_t   row = index / rail->columns, column = index % rail->columns;
    const ts_point top   = {face->rail.x + rail->label + ((double)column + 0.5) * cell,
                            face->rail.y + (double)row * rail->height};
    const uint32_t shaft = rail->order[index];
    write_speed(scene, shaft, top, cell);
    double y = top.y + 26.0;
    for (int far = 0; far < 2; far++) {
        if (!(rail->name[far] > 0.0))
            continue;
        write_pad(scene, rail, shaft, face->front, far, (ts_point){top.x, y}, cell);
        y += rail->name[far] + line_height + 8.0;
    }
    ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_HAIR);
    ts_draw_line(&scene->canvas, (ts_point){top.x - 0.5 * cell, top.y},
                 (ts_point){top.x - 0.5 * cell, top.y + rail->height});
    ts_note_area(&scene->canvas.places, TS_PLACE_CELL, shaft,
                 (ts_area){top.x - 0.5 * cell, top.y, cell, rail->height});
}

static void write_caption(ts_scene *scene, const ts_rail *rail, ts_point at, const char *text,
                          bool first)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_TICK,
                              .bold   = first,
                              .colour = first ? TS_COLOUR_INK : TS_COLOUR_INK3,
                              .width  = rail->label - 8.0};
    ts_write(&scene->canvas, (ts_point){at.x + 8.0, at.y}, text, &how);
}

static void write_captions(const ts_face *face, const ts_rail *rail, double top)
{
    ts_scene *scene = face->scene;
    double    y     = top + 26.0;
    write_caption(scene, rail, (ts_point){face->rail.x, top + 18.0}, "shaft, rpm", true);
    for (int far = 0; far < 2; far++) {
        if (!(rail->name[far] > 0.0))
            continue;
        write_caption(scene, rail, (ts_point){face->rail.x, y + 11.0},
                      (far == 0) == face->front ? "front pads" : "rear pads", true);
        ts_buffer *line = ts_canvas_line(&scene->canvas);
        ts_buffer_print(line, "%s, facing pad", ts_scene_unit(scene, TS_KIND_POWER));
        write_caption(scene, rail, (ts_point){face->rail.x, y + rail->name[far] + 11.0},
                      line->bytes ? line->bytes : "", false);
        y += rail->name[far] + line_height + 8.0;
    }
}

void ts_rail_draw(const ts_face *face, const ts_rail *rail)
{
    ts_canvas *canvas = &face->scene->canvas;
    for (size_t i = 0; i < rail->count; i++)
        draw_cell(face, rail, i);
    for (size_t row = 0; row < rail->rows; row++) {
        const double top = face->rail.y + (double)row * rail->height;
        write_captions(face, rail, top);
        ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
        ts_draw_line(canvas, (ts_point){face->rail.x, top},
                     (ts_point){face->rail.x + face->rail.w, top});
    }
}

void ts_rail_draw_machine(const ts_face *face, const ts_rail *rail)
{
    ts_canvas *canvas = &face->scene->canvas;

    ts_clip_area(canvas, face->picture);
    ts_face_draw_engine(face);
    ts_face_draw_boxes(face);
    ts_clip_end(canvas);
    ts_rail_draw_leaders(face, rail);
    ts_clip_area(canvas, face->picture);
    ts_face_draw_gears(face);
    ts_face_draw_hub(face);
    ts_face_draw_towers(face);
}
