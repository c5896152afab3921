/* draw/candidate_sheet.c: which arrangements are there, side by side, and what tells them apart?
 *
 * A cell for each: its mass, wrap and verdict, the face seen from behind at one scale for all, and
 * its shafts in the order of the arc.
 */
#include "draw/candidate_sheet.h"

#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/symbol.h"

#include <math.h>
#include <string.h>

/* px */
static const double title = 34.0, head = 62.0, picture_most = 230.0, row_high = 15.0, gutter = 14.0,
                    foot = 40.0;

typedef struct cell {
    const ts_candidate *one;
    ts_stood           *stood;
    size_t              count;
    ts_area             area; /* of the whole cell */
} cell;

/* What the shafts of one box need over all candidates, m; a box that is nowhere needs nothing. */
typedef struct room {
    bool   used;
    double left, right, bottom, top;
    double at; /* px from the left end of the picture to `left` */
} room;

typedef struct sheet {
    ts_scene            *scene;
    const ts_candidates *all;
    cell                *cells;
    size_t               columns;
    room                 rooms[TS_ARRANGE_BOXES];
    double               scale; /* px/m                     */
    double               high;  /* px, of the pictures      */
} sheet;

/* ---- what tells them apart ------------------------------------------------------------------- */

static const ts_stood *find(const cell *in, int8_t accessory, bool *rear)
{
    for (size_t i = 0; i < in->count; i++) {
        *rear = in->stood[i].shaft->rear == accessory;
        if (*rear || in->stood[i].shaft->front == accessory)
            return &in->stood[i];
    }
    return NULL;
}

/* Another box, branch, place among the pads of its branch, or face. */
static bool is_elsewhere(const cell *in, const ts_stood *s, int8_t accessory, bool rear)
{
    bool            was_rear = false;
    const ts_stood *was      = accessory >= 0 ? find(in, accessory, &was_rear) : NULL;
    return accessory >= 0 && (was == NULL || was->box != s->box || was->side != s->side ||
                              was->order != s->order || was_rear != rear);
}

static void mark_differences(sheet *s)
{
    const cell *reference = &s->cells[s->all->reference];
    for (size_t c = 0; c < s->all->count; c++)
        for (size_t i = 0; i < s->cells[c].count; i++) {
            ts_stood *one = &s->cells[c].stood[i];
            one->differs  = is_elsewhere(reference, one, one->shaft->front, false) ||
                           is_elsewhere(reference, one, one->shaft->rear, true);
        }
}

/* ---- the scale ------------------------------------------------------------------------------- */

static double body_of(const cell *c, int8_t accessory)
{
    return accessory >= 0 ? c->one->problem->accessories[accessory].body_radius : 0.0;
}

static double reach_of(const cell *c, const ts_stood *s)
{
    return fmax(fmax(s->pitch, s->step_pitch),
                fmax(body_of(c, s->shaft->front), body_of(c, s->shaft->rear)));
}

static void measure(sheet *s)
{
    for (size_t c = 0; c < s->all->count; c++)
        for (size_t i = 0; i < s->cells[c].count; i++) {
            const ts_stood *one = &s->cells[c].stood[i];
            room           *in  = &s->rooms[one->box];
            const double    r   = reach_of(&s->cells[c], one);
            if (!in->used)
                *in = (room){
                    .used = true, .left = one->x, .right = one->x, .bottom = one->y, .top = one->y};
            in->left   = fmin(in->left, one->x - r);
            in->right  = fmax(in->right, one->x + r);
            in->bottom = fmin(in->bottom, one->y - r);
            in->top    = fmax(in->top, one->y + r);
        }
}

/* "1 : 5.4", as it is on paper. */
static void tell_scale(sheet *s)
{
    ts_buffer *line = ts_canvas_line(&s->scene->canvas);
    ts_buffer_print(line, "1 : ");
    ts_add_number(line, 1000.0 * s->scene->canvas.mm / s->scale, 1);
    s->scene->scale = ts_scene_kept(s->scene);
}

/* Boxes stand side by side, each as it stands on the engine, the lowest points level. */
static void choose_scale(sheet *s, double wide)
{
    double across = 0.0, up = 0.0, used = 0.0;
    for (size_t b = 0; b < TS_ARRANGE_BOXES; b++) {
        const room *in = &s->rooms[b];
        across += in->right - in->left;
        up = fmax(up, in->top - in->bottom);
        used += in->used ? 1.0 : 0.0;
    }
    const double gaps = gutter * (used - 1.0);
    s->scale          = fmin((wide - gaps) / across, picture_most / up);
    s->high           = s->scale * up;
    double at         = 0.5 * (wide - gaps - s->scale * across);
    for (size_t b = 0; b < TS_ARRANGE_BOXES; b++) {
        s->rooms[b].at = at;
        at += s->scale * (s->rooms[b].right - s->rooms[b].left) + (s->rooms[b].used ? gutter : 0.0);
    }
    tell_scale(s);
}

/* ---- the picture ----------------------------------------------------------------------------- */

static ts_point point_of(const sheet *s, const cell *c, const ts_stood *one)
{
    const room *in = &s->rooms[one->box];
    return (ts_point){c->area.x + in->at + s->scale * (one->x - in->left),
                      c->area.y + head + s->high - s->scale * (one->y - in->bottom)};
}

/* Bodies at the rear are nearest to the eye; those at the front stand behind the box. */
static void draw_bodies(const sheet *s, const cell *c, bool rear)
{
    ts_canvas *canvas = &s->scene->canvas;
    for (size_t i = 0; i < c->count; i++) {
        const ts_stood *one = &c->stood[i];
        const double    r   = body_of(c, rear ? one->shaft->rear : one->shaft->front);
        if (!(r > 0.0))
            continue;
        ts_use_pen(canvas, rear ? TS_PEN_2 : TS_PEN_1, TS_COLOUR_INK2);
        if (!rear)
            ts_use_dash(canvas, TS_DASH_HIDDEN);
        ts_path_circle(canvas, point_of(s, c, one), s->scale * r);
        ts_stroke(canvas);
    }
}

static void draw_gear(const sheet *s, const cell *c, const ts_stood *one)
{
    ts_canvas     *canvas = &s->scene->canvas;
    const ts_point at     = point_of(s, c, one);
    ts_path_circle(canvas, at, s->scale * one->pitch);
    ts_fill_and_stroke(canvas, one->sense > 0 ? TS_COLOUR_GEAR_CCW : TS_COLOUR_GEAR_CW,
                       one->differs ? TS_PEN_5 : TS_PEN_2, TS_COLOUR_INK);
    if (one->step_pitch > 0.0) {
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
        ts_path_circle(canvas, at, s->scale * one->step_pitch);
        ts_stroke(canvas);
    }
    if (one->side == 2) {
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
        ts_draw_line(canvas, (ts_point){at.x - s->scale * one->pitch, at.y},
                     (ts_point){at.x + s->scale * one->pitch, at.y});
        ts_draw_line(canvas, (ts_point){at.x, at.y - s->scale * one->pitch},
                     (ts_point){at.x, at.y + s->scale * one->pitch});
    }
}

static void draw_number(const sheet *s, const cell *c, size_t index)
{
    ts_canvas         *canvas = &s->scene->canvas;
    const ts_stood    *one    = &c->stood[index];
    const ts_point     at     = point_of(s, c, one);
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_TICK,
                                 .bold   = one->differs,
                                 .halo   = true,
                                 .anchor = TS_ANCHOR_MIDDLE,
                                 .colour = TS_COLOUR_INK};
    ts_buffer_print(ts_canvas_line(canvas), "%zu", index + 1);
    ts_write(canvas, (ts_point){at.x, at.y + 0.36 * how.size}, ts_scene_kept(s->scene), &how);
}

static void draw_picture(const sheet *s, const cell *c)
{
    draw_bodies(s, c, false);
    for (size_t i = 0; i < c->count; i++)
        draw_gear(s, c, &c->stood[i]);
    draw_bodies(s, c, true);
    for (size_t i = 0; i < c->count; i++)
        draw_number(s, c, i);
}

/* ---- words ----------------------------------------------------------------------------------- */

static void write_head(const sheet *s, const cell *c)
{
    ts_scene           *scene = s->scene;
    const ts_candidate *one   = c->one;
    const double        best  = s->all->items[s->all->reference].mass;
    const ts_lettering  lead  = {
          .size = TS_LOOK_TYPE_PX_LEAD, .bold = true, .colour = TS_COLOUR_INK, .width = c->area.w};
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "%s:  ", one->name);
    if (isfinite(one->mass)) {
        ts_add_number(line, ts_scene_in_unit(scene, one->mass, TS_KIND_MASS), 3);
        ts_buffer_print(line, " %s", ts_scene_unit(scene, TS_KIND_MASS));
    } else {
        ts_buffer_add(line, "mass not known");
    }
    if (isfinite(one->mass) && c != &s->cells[s->all->reference]) {
        ts_buffer_add(line, one->mass < best ? " (\xE2\x88\x92" : " (+");
        ts_add_number(line, ts_scene_in_unit(scene, fabs(one->mass - best), TS_KIND_MASS), 3);
        ts_buffer_add(line, ")");
    }
    ts_write(&scene->canvas, (ts_point){c->area.x, c->area.y + 14.0}, ts_scene_kept(scene), &lead);
}

/* "hp box 74.9 of 95.0 deg" */
static void write_wraps(const sheet *s, const cell *c)
{
    ts_scene          *scene = s->scene;
    const ts_lettering how   = {
          .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK2, .width = c->area.w};
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    for (uint32_t b = 0; b < c->one->problem->box_count; b++) {
        const ts_arrange_box *frame = &c->one->problem->boxes[b];
        ts_buffer_print(line, "%s%s box ", line->length > 0 ? "; " : "", frame->name);
        if (!c->one->found->boxes[b].present) {
            ts_buffer_add(line, "carries nothing");
            continue;
        }
        ts_buffer_add(line, "wraps ");
        ts_add_number(line,
                      ts_scene_in_unit(scene, ts_arrange_wrap(c->one->problem, c->one->found, b),
                                       TS_KIND_ANGLE),
                      1);
        ts_buffer_add(line, " of ");
        ts_add_number(line, ts_scene_in_unit(scene, frame->wrap_most, TS_KIND_ANGLE), 1);
        ts_buffer_print(line, " %s", ts_scene_unit(scene, TS_KIND_ANGLE));
    }
    ts_write(&scene->canvas, (ts_point){c->area.x, c->area.y + 29.0}, ts_scene_kept(scene), &how);
}

static void write_verdict(const sheet *s, const cell *c)
{
    ts_scene           *scene = s->scene;
    const ts_candidate *one   = c->one;
    const ts_symbol     sign  = !one->judged || !one->read ? TS_SYMBOL_NOTCOMP
                                : !one->holds              ? TS_SYMBOL_REFUSE
                                : one->warnings > 0        ? TS_SYMBOL_WARN
                                                           : TS_SYMBOL_PASS;
    const ts_lettering  how   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .colour = TS_COLOUR_INK,
                                 .width  = c->area.w - 18.0,
                                 .lines  = 2};
    ts_buffer          *line  = ts_canvas_line(&scene->canvas);
    if (!one->judged)
        ts_buffer_add(line, "not judged here: see check");
    else if (!one->read)
        ts_buffer_add(line, "could not be judged");
    else if (!one->holds)
        ts_buffer_print(line, "does not hold: %s",
                        one->finding != NULL ? one->finding : "a rule cannot be computed");
    else
        ts_buffer_print(line, "holds by all rules, %zu warning%s", one->warnings,
                        one->warnings == 1 ? "" : "s");
    ts_draw_symbol(&scene->canvas, sign, (ts_point){c->area.x, c->area.y + 34.0}, 12.0);
    ts_write(&scene->canvas, (ts_point){c->area.x + 18.0, c->area.y + 44.0}, ts_scene_kept(scene),
             &how);
}

enum { COLUMNS = 5 };
/* Shares of the cell at which the columns begin. */
static const double columns[COLUMNS + 1] = {0.05, 0.22, 0.35, 0.45, 0.725, 1.0};

static void write_column(const sheet *s, const cell *c, int column, double y, const char *text,
                         bool bold)
{
    const double       from = c->area.x + columns[column] * c->area.w;
    const ts_lettering how  = {.size   = TS_LOOK_TYPE_PX_TICK,
                               .bold   = bold,
                               .colour = TS_COLOUR_INK,
                               .width  = (columns[column + 1] - columns[column]) * c->area.w - 6.0};
    if (*text != 0)
        ts_write(&s->scene->canvas, (ts_point){from, y}, text, &how);
}

static const char *place_of(const sheet *s, const ts_stood *one)
{
    static const char *const sides[] = {"cw", "anticw"};
    if (one->side == 2)
        return "input";
    ts_buffer_print(ts_canvas_line(&s->scene->canvas), "%s %u", sides[one->side],
                    (unsigned)one->place);
    return ts_scene_kept(s->scene);
}

static const char *teeth_of(const sheet *s, const ts_stood *one)
{
    ts_buffer *line = ts_canvas_line(&s->scene->canvas);
    ts_buffer_print(line, "%u", (unsigned)one->shaft->z);
    if (one->shaft->z_step > 0)
        ts_buffer_print(line, " / %u", (unsigned)one->shaft->z_step);
    return ts_scene_kept(s->scene);
}

static const char *face_of(const sheet *s, const ts_stood *one)
{
    ts_buffer *line = ts_canvas_line(&s->scene->canvas);
    ts_add_value(line, s->scene, one->shaft->width, TS_KIND_LENGTH);
    return ts_scene_kept(s->scene);
}

static const char *name_of(const cell *c, int8_t accessory)
{
    return accessory >= 0 ? c->one->problem->accessories[accessory].name : "";
}

static void write_row(const sheet *s, const cell *c, size_t index, double y)
{
    const ts_stood    *one    = &c->stood[index];
    ts_canvas         *canvas = &s->scene->canvas;
    const bool         bold   = one->differs;
    const ts_lettering number = {.size   = TS_LOOK_TYPE_PX_TICK,
                                 .bold   = bold,
                                 .anchor = TS_ANCHOR_RIGHT,
                                 .colour = TS_COLOUR_INK,
                                 .width  = 20.0};
    ts_buffer_print(ts_canvas_line(canvas), "%zu", index + 1);
    ts_write(canvas, (ts_point){c->area.x + 14.0, y}, ts_scene_kept(s->scene), &number);
    write_column(s, c, 0, y, place_of(s, one), bold);
    write_column(s, c, 1, y, teeth_of(s, one), bold);
    write_column(s, c, 2, y, face_of(s, one), bold);
    const bool idler = one->shaft->front < 0 && one->shaft->rear < 0;
    write_column(s, c, 3, y,
                 idler ? (one->side == 2 ? "(no pad)" : "(idler)") : name_of(c, one->shaft->front),
                 bold);
    write_column(s, c, 4, y, name_of(c, one->shaft->rear), bold);
    ts_note_area(&canvas->places, TS_PLACE_ROW, (uint32_t)index,
                 (ts_area){c->area.x, y - 11.0, c->area.w, row_high});
}

static void write_rows(const sheet *s, const cell *c)
{
    ts_scene                *scene          = s->scene;
    double                   y              = c->area.y + head + s->high + 22.0;
    static const char *const heads[COLUMNS] = {"place", "teeth", "face", "front", "rear"};
    for (int i = 0; i < COLUMNS; i++)
        write_column(s, c, i, y, heads[i], true);
    ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(&scene->canvas, (ts_point){c->area.x, y + 4.0},
                 (ts_point){c->area.x + c->area.w, y + 4.0});
    for (size_t i = 0; i < c->count; i++)
        write_row(s, c, i, y += row_high);
}

/* ---- the sheet ------------------------------------------------------------------------------- */

static bool gather(sheet *s)
{
    const size_t count = s->all->count;
    s->cells           = TS_TAKE(s->scene->arena, cell, count + 1);
    for (size_t i = 0; s->cells != NULL && i < count; i++) {
        cell *c  = &s->cells[i];
        c->one   = &s->all->items[i];
        c->stood = TS_TAKE(s->scene->arena, ts_stood, TS_STOOD_MOST);
        if (c->stood == NULL)
            return false;
        c->count = ts_stand_candidate(s->scene, c->one, c->stood);
    }
    return s->cells != NULL;
}

static size_t most_rows(const sheet *s, size_t from)
{
    size_t most = 0;
    for (size_t i = from; i < from + s->columns && i < s->all->count; i++)
        most = s->cells[i].count > most ? s->cells[i].count : most;
    return most;
}

/* Places the cells below each other; the height that they take. */
static double lay_out(sheet *s, ts_area field)
{
    double y = field.y + title;
    for (size_t i = 0; i < s->all->count; i++) {
        const size_t column = i % s->columns;
        const double wide   = (field.w - gutter) / (double)s->columns;
        s->cells[i].area =
            (ts_area){field.x + gutter + wide * (double)column, y, wide - gutter, 0.0};
        if (column + 1 == s->columns || i + 1 == s->all->count)
            y += head + s->high + 34.0 + row_high * (double)most_rows(s, i - column) + gutter;
    }
    return y - field.y;
}

static void write_title(const sheet *s)
{
    ts_scene          *scene = s->scene;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = scene->field.w - 24.0};
    ts_buffer_print(ts_canvas_line(&scene->canvas),
                    "Which arrangement?  All at one scale, seen from behind; thick rings and bold "
                    "rows: pads that are not where %s has them",
                    s->all->items[s->all->reference].name);
    ts_write(&scene->canvas, (ts_point){scene->field.x + gutter, scene->field.y + 22.0},
             ts_scene_kept(scene), &lead);
}

static void write_foot(const sheet *s, double y)
{
    ts_scene          *scene = s->scene;
    const ts_lettering how   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = scene->field.w - 24.0,
                                .lines  = 2};
    ts_write(
        &scene->canvas, (ts_point){scene->field.x + gutter, y + 14.0},
        "Gears by their pitch circles, numbered along the arc, boxes side by side; the cross is "
        "the input, a thin "
        "circle in a gear its step.  Full circles are bodies at the rear, dashed ones bodies "
        "at the front.  Faces in the unit of the title block; masses are those of gears, shafts, "
        "pads, casing and box.",
        &how);
}

static ts_status draw_nothing(ts_scene *scene)
{
    const double    height = ts_sheet_height(scene, title + foot);
    const ts_status status = ts_canvas_sheet(&scene->canvas, height, scene->drive->title.text);
    ts_sheet_divide(scene, height);
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_LEAD, .bold = true, .colour = TS_COLOUR_INK};
    if (status != TS_OK)
        return status;
    ts_write(&scene->canvas, (ts_point){scene->field.x + gutter, scene->field.y + 22.0},
             "No arrangement was found; the verdict below says whether there is none.", &how);
    ts_sheet_draw(scene, "Arrangements", "none");
    return TS_OK;
}

ts_status ts_draw_candidates(ts_scene *scene)
{
    sheet s = {.scene = scene, .all = scene->subject->candidates};
    if (s.all->count == 0)
        return draw_nothing(scene);
    s.columns = s.all->count < 3 ? 2 : 3;
    if (!gather(&s))
        return TS_NO_MEMORY;
    mark_differences(&s);
    measure(&s);
    ts_sheet_divide(scene, 1000.0); /* for its width */
    choose_scale(&s, (scene->field.w - gutter) / (double)s.columns - gutter);
    const double chart  = ts_front_chart_height(s.all);
    const double cells  = lay_out(&s, scene->field);
    const double height = ts_sheet_height(scene, cells + foot + chart);
    ts_sheet_divide(scene, height);
    ts_status status = ts_canvas_sheet(&scene->canvas, height, scene->drive->title.text);
    if (status != TS_OK)
        return status;
    write_title(&s);
    for (size_t i = 0; i < s.all->count; i++) {
        write_head(&s, &s.cells[i]);
        write_wraps(&s, &s.cells[i]);
        write_verdict(&s, &s.cells[i]);
        draw_picture(&s, &s.cells[i]);
        write_rows(&s, &s.cells[i]);
    }
    write_foot(&s, scene->field.y + cells);
    if (chart > 0.0)
        ts_draw_front_chart(
            scene, (ts_area){scene->field.x, scene->field.y + cells + foot, scene->field.w, chart});
    ts_sheet_draw(scene, "Arrangements", "seen from behind, looking forward");
    return TS_OK;
}
