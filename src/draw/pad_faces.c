/* draw/pad_faces.c: where on its box is every pad, and what bolts to it?
 *
 * The rear faces as seen from behind, the front faces as seen from the front, at one scale: each as
 * somebody sees it who faces its pads.  The table tells every place from the axis of the engine and
 * from that of the box input, to the right and upwards in that sight.  Boxes stand beside each
 * other wherever they are on the engine.
 */
#include "draw/pad_faces.h"

#include "draw/face.h"
#include "draw/lettering.h"
#include "draw/sheet.h"
#include "rating/drive_splines.h"

#include <math.h>

#define HEAD_PX   40.0  /* over a face                          */
#define TABLE_PX  22.0  /* over the table                       */
#define ROW_PX    17.0  /* a pad                                */
#define ROOM_PX   430.0 /* that the faces want                  */
#define ASIDE_PX  14.0  /* about a face                         */
#define BEYOND_PX 9.0   /* of a centre line, past its body      */

typedef struct bounds {
    double left, right, low, high; /* m, as seen */
} bounds;

/* One face of one box. */
typedef struct box_face {
    ts_face      face;
    ts_face_side side;
    bounds       all;
} box_face;

typedef struct pad_view {
    ts_scene *scene;
    box_face *boxes; /* the rear faces of all boxes, then the front ones */
    size_t    count; /* of boxes with a place                            */
} pad_view;

bool ts_pad_shown(const ts_scene *scene, uint32_t pad)
{
    const uint32_t s = scene->train->pads[pad].shaft;
    return scene->train->shafts[s].kind == TS_SHAFT_BOX && scene->motion->shafts[s].placed;
}

double ts_pad_spline_radius(const ts_scene *scene, uint32_t pad)
{
    const int32_t    a = scene->train->pads[pad].accessory;
    ts_spline_number number;
    ts_spline        shape;
    if (a < 0 || scene->drive->accessories[a].spline.text == NULL ||
        !ts_spline_number_read(scene->drive->accessories[a].spline.text, &number))
        return NAN;
    const bool sized = number.P_d > 0.0 ? ts_spline_b921(number.N, number.P_d, M_PI / 6.0,
                                                         TS_SPLINE_FILLET_ROOT, &shape, NULL)
                                        : ts_spline_iso4156(number.N, number.m, M_PI / 6.0,
                                                            TS_SPLINE_FILLET_ROOT, &shape, NULL);
    return sized ? 0.5 * shape.D_o : (double)NAN;
}

/* ---- layout ---------------------------------------------------------------------------------- */

/* Of its shafts with their walls and what stands on this face; false: none is placed. */
static bool find_bounds(box_face *box)
{
    const ts_face  *face  = &box->face;
    const ts_scene *scene = face->scene;
    bool            any   = false;
    box->all              = (bounds){INFINITY, -(double)INFINITY, INFINITY, -(double)INFINITY};
    for (uint32_t s = 0; s < scene->train->shaft_count; s++) {
        const ts_face_shaft *shaft = &face->shafts[s];
        if (!shaft->shown)
            continue;
        const double wall = shaft->r_gear + TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3;
        const double r    = fmax(wall, shaft->r_body[box->side]);
        const double x    = face->front ? -scene->motion->shafts[s].x : scene->motion->shafts[s].x;
        const double y    = scene->motion->shafts[s].y;
        any               = true;
        box->all          = (bounds){fmin(box->all.left, x - r), fmax(box->all.right, x + r),
                                     fmin(box->all.low, y - r), fmax(box->all.high, y + r)};
    }
    return any;
}

/* Measures one face of one box, which alone is shown. */
static ts_status measure(ts_scene *scene, uint32_t d, ts_face_side side, box_face *box)
{
    *box                   = (box_face){.side = side};
    box->face              = (ts_face){.scene = scene, .front = side == TS_FRONT};
    const ts_status status = ts_face_measure(&box->face);
    for (uint32_t s = 0; status == TS_OK && s < scene->train->shaft_count; s++)
        box->face.shafts[s].shown = box->face.shafts[s].shown && scene->train->shafts[s].drive == d;
    return status;
}

static ts_status gather(pad_view *view)
{
    ts_scene      *scene  = view->scene;
    const uint32_t drives = (uint32_t)scene->drive->drive_count;
    view->boxes           = TS_TAKE(scene->arena, box_face, 2 * drives + 1);
    size_t at             = 0;
    if (view->boxes == NULL)
        return TS_NO_MEMORY;
    for (int i = 0; i < 2; i++)
        for (uint32_t d = 0; d < drives; d++) {
            box_face       *box    = &view->boxes[at];
            const ts_status status = measure(scene, d, i == 0 ? TS_REAR : TS_FRONT, box);
            if (status != TS_OK)
                return status;
            at += find_bounds(box);
        }
    view->count = at / 2; /* a box has both faces or none */
    return TS_OK;
}

/* px a metre at which the boxes of one face stand in a row in this room. */
static double scale_in(const box_face *boxes, size_t count, double width, double height)
{
    double wide = 0.0, high = 0.0;
    for (size_t i = 0; i < count; i++) {
        wide += boxes[i].all.right - boxes[i].all.left;
        high = fmax(high, boxes[i].all.high - boxes[i].all.low);
    }
    return fmin((width - ASIDE_PX * (double)(2 * count)) / wide, height / high);
}

/* Boxes of one face in a row, each in the middle of its share of the room. */
static void place_row(box_face *boxes, size_t count, ts_area room, double px)
{
    double used = 0.0;
    for (size_t i = 0; i < count; i++)
        used += (boxes[i].all.right - boxes[i].all.left) * px;
    const double gap = (room.w - used) / (double)(count + 1);
    double       at  = room.x + gap;
    for (size_t i = 0; i < count; i++) {
        ts_face     *face = &boxes[i].face;
        const bounds all  = boxes[i].all;
        face->px          = px;
        face->engine.x    = at - all.left * px;
        face->engine.y    = room.y + 0.5 * room.h + 0.5 * (all.low + all.high) * px;
        ts_face_place(face);
        at += (all.right - all.left) * px + gap;
    }
}

/* Both rows beside each other, or one over the other, whichever is larger; tells their rooms. */
static void lay_out(pad_view *view, ts_area room, ts_area rooms[2])
{
    const double half = 0.5 * room.w, tall = room.h - HEAD_PX - ASIDE_PX;
    const double low    = 0.5 * room.h - HEAD_PX - ASIDE_PX;
    double       beside = INFINITY, below = INFINITY;
    for (int i = 0; i < 2; i++) {
        const box_face *row = view->boxes + (size_t)i * view->count;
        beside              = fmin(beside, scale_in(row, view->count, half, tall));
        below               = fmin(below, scale_in(row, view->count, room.w, low));
    }
    const bool   aside = beside >= below;
    const double px    = fmax(beside, below);
    for (int i = 0; i < 2; i++) {
        rooms[i] = aside ? (ts_area){room.x + i * half, room.y + HEAD_PX, half, tall}
                         : (ts_area){room.x, room.y + i * 0.5 * room.h + HEAD_PX, room.w, low};
        place_row(view->boxes + (size_t)i * view->count, view->count, rooms[i], px);
    }
}

/* ---- a face ---------------------------------------------------------------------------------- */

static void centre_lines(const ts_face *face, ts_point at, double arm)
{
    ts_canvas *canvas = &face->scene->canvas;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    ts_draw_line(canvas, (ts_point){at.x - arm, at.y}, (ts_point){at.x + arm, at.y});
    ts_draw_line(canvas, (ts_point){at.x, at.y - arm}, (ts_point){at.x, at.y + arm});
}

/* Envelope of what stands there, its spline by its major circle (ISO 6413, from memory). */
static void draw_pad(const ts_face *face, uint32_t p)
{
    const ts_scene      *scene  = face->scene;
    ts_canvas           *canvas = &face->scene->canvas;
    const ts_pad        *pad    = &scene->train->pads[p];
    const ts_face_shaft *shaft  = &face->shafts[pad->shaft];
    const double         body   = shaft->r_body[pad->face];
    const double         spline = ts_pad_spline_radius(scene, p) * face->px;
    const double         arm    = (body > 0.0 ? body : 2.0 * shaft->r_number) + BEYOND_PX;
    if (body > 0.0) {
        ts_path_circle(canvas, shaft->at, body);
        ts_fill_veiled(canvas, TS_COLOUR_PAPER, 0.55);
        ts_path_circle(canvas, shaft->at, body);
        ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
        ts_stroke(canvas);
    }
    centre_lines(face, shaft->at, arm);
    if (spline > shaft->r_number) {
        ts_path_circle(canvas, shaft->at, spline);
        ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
        ts_stroke(canvas);
    }
    ts_draw_sense_arrow(canvas, shaft->at,
                        fmax(fmax(shaft->r_number, spline > 0.0 ? spline : 0.0) + 6.0, 0.55 * body),
                        -0.5 * M_PI, ts_face_sense(face, pad->shaft));
}

static void name_pad(const ts_face *face, uint32_t p)
{
    const ts_pad        *pad   = &face->scene->train->pads[p];
    const ts_face_shaft *shaft = &face->shafts[pad->shaft];
    const double         body  = shaft->r_body[pad->face];
    const ts_lettering   how   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                  .halo   = true,
                                  .anchor = TS_ANCHOR_MIDDLE,
                                  .colour = TS_COLOUR_INK,
                                  .width  = fmax(1.7 * body, 60.0),
                                  .lines  = 2};
    ts_draw_number_circle(&face->scene->canvas, shaft->at, shaft->r_number,
                          face->scene->train->shafts[pad->shaft].number);
    ts_write(&face->scene->canvas,
             (ts_point){shaft->at.x, shaft->at.y + fmax(shaft->r_number + 14.0, 0.5 * body)},
             pad->name, &how);
}

/* The box input, from which the table counts. */
static void draw_datum(const ts_face *face)
{
    const ts_train *train  = face->scene->train;
    ts_canvas      *canvas = &face->scene->canvas;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const uint32_t m = train->shafts[s].mesh;
        if (!face->shafts[s].shown || m == TS_NOWHERE ||
            train->shafts[train->meshes[m].driver_shaft].kind != TS_SHAFT_TOWER)
            continue;
        centre_lines(face, face->shafts[s].at, 1.1 * face->shafts[s].r_gear);
        ts_path_circle(canvas, face->shafts[s].at, 3.5);
        ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_3, TS_COLOUR_INK);
    }
}

static bool stands_on(const box_face *box, uint32_t p)
{
    const ts_pad *pad = &box->face.scene->train->pads[p];
    return pad->face == box->side && box->face.shafts[pad->shaft].shown;
}

static void draw_box(const box_face *box)
{
    const uint32_t count = box->face.scene->train->pad_count;
    ts_face_draw_boxes(&box->face);
    draw_datum(&box->face);
    for (uint32_t p = 0; p < count; p++)
        if (stands_on(box, p))
            draw_pad(&box->face, p);
    for (uint32_t p = 0; p < count; p++)
        if (stands_on(box, p))
            name_pad(&box->face, p);
}

static void draw_row(const pad_view *view, int row, ts_area room)
{
    const ts_lettering lead = {.size   = TS_LOOK_TYPE_PX_LEAD,
                               .bold   = true,
                               .colour = TS_COLOUR_INK,
                               .width  = room.w - 24.0};
    ts_write(&view->scene->canvas, (ts_point){room.x + 12.0, room.y - HEAD_PX + 22.0},
             row == 0 ? "Rear pads, seen from behind, looking forward"
                      : "Front pads, seen from the front, looking rearward",
             &lead);
    for (size_t i = 0; i < view->count; i++)
        draw_box(&view->boxes[(size_t)row * view->count + i]);
}

/* ---- the table ------------------------------------------------------------------------------- */

typedef enum column {
    NUMBER,
    FACE,
    NAME,
    RIGHT,
    UP,
    FROM_INPUT,
    ABOVE_INPUT,
    TURNS,
    SPEED,
    SPLINE,
    BODY,
    LENGTH,
    MASS,
    OVERHANG,
    COLUMNS
} column;

/* Where a column begins, as a share of the width, and what stands over it; numbers end there. */
static const struct {
    double      at;
    const char *head;
    ts_kind     kind; /* whose unit stands in the heading; TS_KIND_NUMBER: none */
    bool        number;
} columns[COLUMNS] = {
    [NUMBER]      = {0.000, "no", TS_KIND_NUMBER, false},
    [FACE]        = {0.028, "face", TS_KIND_NUMBER, false},
    [NAME]        = {0.070, "what stands there", TS_KIND_NUMBER, false},
    [RIGHT]       = {0.290, "right", TS_KIND_LENGTH, true},
    [UP]          = {0.360, "up", TS_KIND_LENGTH, true},
    [FROM_INPUT]  = {0.440, "of input", TS_KIND_LENGTH, true},
    [ABOVE_INPUT] = {0.515, "above it", TS_KIND_LENGTH, true},
    [TURNS]       = {0.530, "turns", TS_KIND_NUMBER, false},
    [SPEED]       = {0.640, "at most", TS_KIND_ROTATIONAL_SPEED, true},
    [SPLINE]      = {0.655, "spline", TS_KIND_NUMBER, false},
    [BODY]        = {0.805, "body radius", TS_KIND_LENGTH, true},
    [LENGTH]      = {0.870, "length", TS_KIND_LENGTH, true},
    [MASS]        = {0.930, "mass", TS_KIND_MASS, true},
    [OVERHANG]    = {1.000, "overhang", TS_KIND_LENGTH, true},
};

/* The input shaft of the box that a shaft belongs to. */
static uint32_t input_of(const ts_train *train, uint32_t shaft)
{
    uint32_t s = shaft;
    while (train->shafts[s].mesh != TS_NOWHERE) {
        const uint32_t from = train->meshes[train->shafts[s].mesh].driver_shaft;
        if (train->shafts[from].kind != TS_SHAFT_BOX)
            break;
        s = from;
    }
    return s;
}

static double fastest(const ts_scene *scene, uint32_t shaft)
{
    double most = 0.0;
    for (uint32_t c = 0; c < scene->drive->condition_count; c++)
        most = fmax(most, fabs(ts_scene_speed_in(scene, shaft, c)));
    return most;
}

static double measured(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

static double value_of(const ts_scene *scene, uint32_t p, column which)
{
    const ts_pad          *pad   = &scene->train->pads[p];
    const ts_shaft_motion *at    = &scene->motion->shafts[pad->shaft];
    const ts_shaft_motion *input = &scene->motion->shafts[input_of(scene->train, pad->shaft)];
    const double           hand  = pad->face == TS_FRONT ? -1.0 : 1.0;
    const ts_accessory    *on =
        pad->accessory >= 0 ? &scene->drive->accessories[pad->accessory] : NULL;
    switch (which) {
    case RIGHT:
        return hand * at->x;
    case UP:
        return at->y;
    case FROM_INPUT:
        return hand * (at->x - input->x);
    case ABOVE_INPUT:
        return at->y - input->y;
    case SPEED:
        return fastest(scene, pad->shaft);
    case BODY:
        return on != NULL ? measured(on->body.radius) : (double)NAN;
    case LENGTH:
        return on != NULL ? measured(on->body.length) : (double)NAN;
    case MASS:
        return on != NULL ? measured(on->mass) : (double)NAN;
    case OVERHANG:
        return on != NULL ? measured(on->overhang) : (double)NAN;
    default:
        return NAN;
    }
}

/* As seen by who faces the pad. */
static int sense_of(const pad_view *view, const ts_pad *pad)
{
    const box_face *first = &view->boxes[pad->face == TS_REAR ? 0 : view->count];
    return ts_face_sense(&first->face, pad->shaft);
}

static const char *words_of(const pad_view *view, uint32_t p, column which)
{
    ts_scene     *scene = view->scene;
    const ts_pad *pad   = &scene->train->pads[p];
    const int32_t a     = pad->accessory;
    ts_buffer    *line  = ts_canvas_line(&scene->canvas);
    if (columns[which].number) {
        const double value = value_of(scene, p, which);
        if (!isfinite(value))
            return "\xC2\xB7";
        if (columns[which].kind == TS_KIND_LENGTH)
            ts_add_number(line, ts_scene_in_unit(scene, value, TS_KIND_LENGTH),
                          scene->units == TS_UNITS_US ? 4 : 3);
        else
            ts_add_value(line, scene, value, columns[which].kind);
        return ts_scene_kept(scene);
    }
    switch (which) {
    case NUMBER:
        ts_buffer_integer(line, scene->train->shafts[pad->shaft].number);
        return ts_scene_kept(scene);
    case FACE:
        return pad->face == TS_FRONT ? "front" : "rear";
    case NAME:
        return pad->name;
    case TURNS:
        return ts_sense_word(sense_of(view, pad));
    default:
        return a >= 0 && scene->drive->accessories[a].spline.text != NULL
                   ? scene->drive->accessories[a].spline.text
                   : "not told";
    }
}

static void write_cell(ts_scene *scene, ts_area row, column which, const char *text, bool bold)
{
    const double next =
        which + 1 < COLUMNS && !columns[which].number
            ? columns[which + 1].number ? columns[which + 1].at - 0.055 : columns[which + 1].at
            : 1.0;
    const ts_lettering how = {
        .size   = TS_LOOK_TYPE_PX_SMALL,
        .bold   = bold,
        .anchor = columns[which].number ? TS_ANCHOR_RIGHT : TS_ANCHOR_LEFT,
        .colour = bold ? TS_COLOUR_INK : TS_COLOUR_INK2,
        .width  = columns[which].number ? 0.0 : (next - columns[which].at) * row.w - 6.0};
    ts_write(&scene->canvas, (ts_point){row.x + columns[which].at * row.w, row.y + row.h - 5.0},
             text, &how);
}

static void draw_table(const pad_view *view, ts_area area)
{
    ts_scene       *scene = view->scene;
    const ts_train *train = scene->train;
    ts_area         row   = {area.x, area.y, area.w, TABLE_PX};
    for (int i = 0; i < COLUMNS; i++) {
        ts_buffer *line = ts_canvas_line(&scene->canvas);
        ts_buffer_add(line, columns[i].head);
        if (columns[i].kind != TS_KIND_NUMBER)
            ts_buffer_print(line, ", %s", ts_scene_unit(scene, columns[i].kind));
        write_cell(scene, row, (column)i, ts_scene_kept(scene), true);
    }
    ts_use_pen(&scene->canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(&scene->canvas, (ts_point){row.x, row.y + row.h},
                 (ts_point){row.x + row.w, row.y + row.h});
    row = (ts_area){area.x, area.y + TABLE_PX, area.w, ROW_PX};
    for (uint32_t p = 0; p < train->pad_count; p++) {
        if (!ts_pad_shown(scene, p))
            continue;
        for (int i = 0; i < COLUMNS; i++)
            write_cell(scene, row, (column)i, words_of(view, p, (column)i), false);
        ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_draw_line(&scene->canvas, (ts_point){row.x, row.y + row.h},
                     (ts_point){row.x + row.w, row.y + row.h});
        ts_note_area(&scene->canvas.places, TS_PLACE_ROW, p, row);
        row.y += ROW_PX;
    }
}

/* ---- the sheet ------------------------------------------------------------------------------- */

static double table_height(const ts_scene *scene)
{
    size_t count = 0;
    for (uint32_t p = 0; p < scene->train->pad_count; p++)
        count += ts_pad_shown(scene, p);
    return TABLE_PX + ROW_PX * (double)count + 44.0;
}

static void explain(ts_scene *scene, ts_area field)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .colour = TS_COLOUR_INK2,
                              .width  = field.w - 24.0,
                              .lines  = 2};
    ts_write(
        &scene->canvas, (ts_point){field.x + 12.0, field.y + field.h - 22.0},
        "Right and up: from the axis of the engine, and of input, above it: from the axis of the "
        "box input (small circle), as somebody sees them who faces the pad. Circles: envelopes "
        "of bodies; the inner one is the major circle of the spline, ISO 6413 (from memory).",
        &how);
}

ts_status ts_draw_pads(ts_scene *scene)
{
    pad_view     view   = {.scene = scene};
    const double table  = table_height(scene);
    ts_status    status = gather(&view);
    if (status != TS_OK)
        return status;
    const double height = ts_sheet_height(scene, HEAD_PX + ROOM_PX + table);
    ts_sheet_divide(scene, height);
    const ts_area field = scene->field;
    ts_area       rooms[2];
    if (view.count > 0) {
        lay_out(&view, (ts_area){field.x, field.y, field.w, field.h - table}, rooms);
        ts_face_say_scale(&view.boxes[0].face);
    }
    status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    for (int row = 0; row < 2 && view.count > 0; row++)
        draw_row(&view, row, rooms[row]);
    draw_table(&view, (ts_area){field.x + 12.0, field.y + field.h - table, field.w - 24.0, table});
    explain(scene, field);
    ts_sheet_draw(scene, "Pad faces", "each as who faces it sees it");
    return TS_OK;
}
