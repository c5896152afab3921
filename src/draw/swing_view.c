/* draw/swing_view.c: how far does each part swing in one mode of torsion, and what strains?
 *
 * Arcs about the axes, as long as the angle of the part seen from the spool at one instant, with
 * the arrow where it swings; heavy lines where the strain energy is.
 */
#include "draw/swing_view.h"

#include "draw/chart_words.h"
#include "draw/face.h"
#include "draw/lettering.h"
#include "draw/rail.h"
#include "draw/sheet.h"

#include <math.h>

enum { ARC_POINTS = 25, ROWS = 8, SPRINGS = 4 };

#define FULL    (2.0 * M_PI / 3.0) /* the largest swing of a mode */
#define LEAST   0.02               /* smaller ones are drawn as a dot */
#define STRAINS 0.05               /* share of the strain energy from which a spring is heavy */

typedef struct swing_map {
    ts_face               face;
    const ts_drive_twist *twist;
    size_t                mode; /* of all modes; those that strain nothing come first */
    double                most; /* largest swing, seen from the spool */
} swing_map;

/* ---- what swings how far ----------------------------------------------------------------------
 */

static const ts_drive_twist *tree_of(const ts_scene *scene)
{
    for (size_t i = 0; i < scene->subject->twist_count; i++) {
        const ts_drive_twist *twist = &scene->subject->twists[i];
        if (twist->missing == NULL && twist->fault == TS_TWIST_FINE &&
            twist->modes.count > twist->modes.rigid + scene->subject->mode)
            return twist;
    }
    return NULL;
}

static double raw_swing(const swing_map *map, size_t body)
{
    return map->twist->modes.shape[map->mode * map->twist->model.body_count + body] /
           map->twist->parts[body].ratio;
}

/* -1 to 1, + as it turns where the part that swings most does. */
static double swing_of(const swing_map *map, size_t body)
{
    return raw_swing(map, body) / map->most;
}

static double strain_of(const swing_map *map, size_t joint)
{
    return map->twist->modes.strain[map->mode * map->twist->model.spring_count + joint];
}

static void measure(swing_map *map)
{
    for (size_t i = 0; i < map->twist->model.body_count; i++)
        if (fabs(raw_swing(map, i)) > fabs(map->most))
            map->most = raw_swing(map, i);
}

/* ---- where ------------------------------------------------------------------------------------
 */

/* Has a body before this one the same shaft, not counting rotors of accessories? */
static bool is_second(const swing_map *map, size_t body)
{
    for (size_t i = 0; i < body; i++)
        if (map->twist->parts[i].accessory < 0 &&
            map->twist->parts[i].shaft == map->twist->parts[body].shaft)
            return true;
    return false;
}

static ts_point place_of(const swing_map *map, size_t body)
{
    const uint32_t  shaft = map->twist->parts[body].shaft;
    const ts_train *train = map->face.scene->train;

    switch (train->shafts[shaft].kind) {
    case TS_SHAFT_SPOOL:
        return map->face.engine;
    case TS_SHAFT_TOWER:
        return ts_face_along_tower(&map->face, shaft, is_second(map, body) ? 0.8 : 0.1);
    default:
        return map->face.shafts[shaft].at;
    }
}

/* Rotors of accessories stand outside of what turns them, one beyond the other. */
static double radius_of(const swing_map *map, size_t body)
{
    const uint32_t       shaft = map->twist->parts[body].shaft;
    const ts_face_shaft *at    = &map->face.shafts[shaft];
    const double         least = 15.0, step = 7.0;
    int                  rotor = 0;

    if (map->face.scene->train->shafts[shaft].kind != TS_SHAFT_BOX)
        return least;
    if (map->twist->parts[body].accessory < 0)
        return fmax(least, at->r_number + 4.0);
    for (size_t i = 0; i <= body; i++)
        rotor += map->twist->parts[i].accessory >= 0 && map->twist->parts[i].shaft == shaft;
    return fmax(least, at->r_number + 4.0) + step * rotor;
}

/* ---- drawing ----------------------------------------------------------------------------------
 */

/* Of a pad both ends are one point of the face: the column tells it. */
static void draw_spring(const swing_map *map, size_t joint)
{
    const ts_twist_joint *one = &map->twist->joints[joint];
    const ts_point        a = place_of(map, one->from), b = place_of(map, one->to);

    if (!(strain_of(map, joint) > STRAINS) || !isfinite(a.x + a.y + b.x + b.y))
        return;
    ts_use_pen(&map->face.scene->canvas, TS_PEN_4, TS_COLOUR_BACK);
    ts_draw_line(&map->face.scene->canvas, a, b);
}

static void draw_head(ts_canvas *canvas, ts_point at, double toward)
{
    const ts_point head[3] = {ts_polar(at, 5.0, toward), ts_polar(at, 5.0, toward + 2.4),
                              ts_polar(at, 5.0, toward - 2.4)};

    ts_path_polygon(canvas, head, 3);
    ts_fill(canvas, TS_COLOUR_INK);
}

/* From 12 o'clock the way it turns as the view shows it, or back where it swings against that. */
static void draw_body(const swing_map *map, size_t body)
{
    ts_canvas     *canvas = &map->face.scene->canvas;
    const ts_point at     = place_of(map, body);
    const double   r = radius_of(map, body), swing = swing_of(map, body);
    const int      sense = ts_face_sense(&map->face, map->twist->parts[body].shaft);
    const double   angle = -swing * FULL * (sense != 0 ? sense : 1);
    const bool     rotor = map->twist->parts[body].accessory >= 0;

    if (!isfinite(at.x + at.y))
        return;
    if (fabs(swing) < LEAST) {
        ts_draw_dot(canvas, ts_polar(at, r, -M_PI / 2.0), 2.4, TS_COLOUR_INK2);
        return;
    }
    ts_use_pen(canvas, rotor ? TS_PEN_3 : TS_PEN_4, TS_COLOUR_INK);
    ts_move_to(canvas, ts_polar(at, r, -M_PI / 2.0));
    for (int i = 1; i < ARC_POINTS; i++)
        ts_line_to(canvas, ts_polar(at, r, -M_PI / 2.0 + angle * i / (ARC_POINTS - 1.0)));
    ts_stroke(canvas);
    draw_head(canvas, ts_polar(at, r, -M_PI / 2.0 + angle),
              -M_PI / 2.0 + angle + (angle > 0.0 ? M_PI / 2.0 : -M_PI / 2.0));
}

static void draw_machine(const swing_map *map, const ts_rail *rail)
{
    const ts_face *face   = &map->face;
    ts_canvas     *canvas = &face->scene->canvas;

    ts_rail_draw_machine(face, rail);
    for (size_t i = 0; map->twist != NULL && i < map->twist->model.spring_count; i++)
        draw_spring(map, i);
    ts_face_draw_numbers(face);
    for (size_t i = 0; map->twist != NULL && i < map->twist->model.body_count; i++)
        draw_body(map, i);
    ts_clip_end(canvas);
}

/* ---- the column -------------------------------------------------------------------------------
 */

static double write_row(const swing_map *map, double y, const char *words, double value,
                        const char *unit, bool bold)
{
    const ts_area      column = map->face.column;
    ts_canvas         *canvas = &map->face.scene->canvas;
    const ts_lettering left   = {
          .bold = bold, .colour = bold ? TS_COLOUR_INK : TS_COLOUR_INK2, .width = column.w - 84.0};
    const ts_lettering right = {.bold = bold, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK};

    ts_write(canvas, (ts_point){column.x + 10.0, y}, words, &left);
    ts_add_number(ts_canvas_line(canvas), value, fabs(value) < 100.0 && *unit == 'H' ? 1 : 0);
    ts_buffer_print(&canvas->line, " %s", unit);
    ts_write(canvas, (ts_point){column.x + column.w - 10.0, y}, ts_scene_kept(map->face.scene),
             &right);
    return y + TS_LOOK_SPACE_ROW;
}

/* Of bodies by their swing, of springs by their strain. */
static double size_of(const swing_map *map, size_t i, bool springs)
{
    return springs ? strain_of(map, i) : fabs(swing_of(map, i));
}

/* The next one in the order of sizes behind `above`; SIZE_MAX: none. */
static size_t next_of(const swing_map *map, size_t above, bool springs)
{
    const size_t count = springs ? map->twist->model.spring_count : map->twist->model.body_count;
    const double most  = above == SIZE_MAX ? (double)INFINITY : size_of(map, above, springs);
    size_t       found = SIZE_MAX;

    for (size_t i = 0; i < count; i++) {
        const double here  = size_of(map, i, springs);
        const bool   below = here < most || (above != SIZE_MAX && !(here > most) && i > above);
        if (below && here > 0.0 && (found == SIZE_MAX || here > size_of(map, found, springs)))
            found = i;
    }
    return found;
}

static const char *joint_name(const swing_map *map, size_t joint)
{
    const ts_twist_joint *one = &map->twist->joints[joint];

    ts_buffer_print(ts_canvas_line(&map->face.scene->canvas), "%s > %s",
                    map->twist->parts[one->from].name, map->twist->parts[one->to].name);
    return ts_scene_kept(map->face.scene);
}

static double write_head(const swing_map *map, double y, const char *words)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .colour = TS_COLOUR_INK2,
                              .width  = map->face.column.w - 20.0,
                              .lines  = 4};

    ts_write(&map->face.scene->canvas, (ts_point){map->face.column.x + 10.0, y}, words, &how);
    return y + 4.0 * 14.0;
}

/* A spring, whose two names may want two lines. */
static double write_spring(const swing_map *map, double y, size_t joint)
{
    const ts_area      column = map->face.column;
    ts_canvas         *canvas = &map->face.scene->canvas;
    const ts_lettering left   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .colour = TS_COLOUR_INK2,
                                 .width  = column.w - 84.0,
                                 .lines  = 3};
    const ts_lettering right  = {.anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK};

    ts_write(canvas, (ts_point){column.x + 10.0, y}, joint_name(map, joint), &left);
    ts_add_number(ts_canvas_line(canvas), 100.0 * strain_of(map, joint), 0);
    ts_buffer_add(&canvas->line, " %");
    ts_write(canvas, (ts_point){column.x + column.w - 10.0, y}, ts_scene_kept(map->face.scene),
             &right);
    return y + 3.0 * 14.0;
}

static void write_column(const swing_map *map)
{
    const ts_face  *face  = &map->face;
    const ts_scene *scene = face->scene;
    const double    f     = map->twist->modes.omega[map->mode] / (2.0 * M_PI);
    double          y     = face->column.y + 22.0;

    ts_buffer_print(ts_canvas_line(&face->scene->canvas), "mode %zu of %zu, %s",
                    scene->subject->mode + 1, map->twist->modes.count - map->twist->modes.rigid,
                    scene->drive->spools[scene->drive->drive[map->twist->drive].spool].name);
    y = write_row(map, y, ts_scene_kept(face->scene), f, "Hz", true);
    y = write_head(
            map, y,
            map->twist->cranked
                ? "Its starter engaged.  Arcs: how far a part swings at one instant, seen from "
                  "the spool; heavy: shafts, light: rotors of accessories."
                : "Running.  Arcs: how far a part swings at one instant, seen from the spool; "
                  "heavy: shafts, light: rotors of accessories.") +
        6.0;
    size_t i = next_of(map, SIZE_MAX, false);
    for (int row = 0; row < ROWS && i != SIZE_MAX; row++, i = next_of(map, i, false))
        y = write_row(map, y, map->twist->parts[i].name, 100.0 * swing_of(map, i), "%", false);
    y = write_head(map, y + 10.0, "Share of the strain energy; heavy lines from 5 % on:") - 30.0;
    i = next_of(map, SIZE_MAX, true);
    for (int row = 0; row < SPRINGS && i != SIZE_MAX && strain_of(map, i) > 0.005;
         row++, i = next_of(map, i, true))
        y = write_spring(map, y, i);
    ts_use_pen(&face->scene->canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(&face->scene->canvas, (ts_point){face->column.x, face->column.y},
                 (ts_point){face->column.x, face->column.y + face->column.h});
}

/* ---- the sheet --------------------------------------------------------------------------------
 */

static void lay_areas(ts_face *face, double high, bool one_row)
{
    const ts_area field   = face->scene->field;
    const double  routing = one_row ? TS_LOOK_SHEET_ROUTING : 0.0;

    face->rail = (ts_area){field.x, field.y + field.h - high, field.w, high};
    face->picture =
        (ts_area){field.x, field.y, field.w - TS_LOOK_SHEET_COLUMN, field.h - high - routing};
    face->column = face->picture;
    face->column.x += face->picture.w;
    face->column.w = TS_LOOK_SHEET_COLUMN;
}

ts_status ts_draw_swing(ts_scene *scene)
{
    swing_map    map   = {.face = {.scene = scene}, .twist = tree_of(scene)};
    const double sides = 2.0 * (TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER);
    ts_rail      rail;
    ts_status    status = ts_rail_measure(scene, scene->canvas.width - sides, false, &rail);

    if (status != TS_OK)
        return status;
    const double high = ts_rail_height(&rail);
    status            = ts_chart_begin(scene, high + 560.0);
    if (status != TS_OK)
        return status;
    lay_areas(&map.face, high, rail.rows == 1);
    status = ts_face_lay_out(&map.face);
    if (status != TS_OK)
        return status;
    if (map.twist != NULL) {
        map.mode = map.twist->modes.rigid + scene->subject->mode;
        measure(&map);
    }
    ts_rail_lead(&map.face, &rail);
    draw_machine(&map, &rail);
    if (map.twist != NULL)
        write_column(&map);
    else
        (void)write_head(&map, map.face.column.y + 22.0,
                         "There is no such mode: none could be computed, or the drive has fewer.");
    ts_rail_draw(&map.face, &rail);
    ts_sheet_draw(scene, "Torsion, seen from behind", "one mode, looking forward");
    return TS_OK;
}
