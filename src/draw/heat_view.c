/* draw/heat_view.c: how much heat arises where?  Discs as large as the heat: full ones at the
 * meshes, hatched ones where bearings, seals and splines are. */
#include "draw/heat_view.h"

#include "draw/face.h"
#include "draw/lettering.h"
#include "draw/rail.h"
#include "draw/sheet.h"

#include <math.h>

#define MOST_PX   40.0 /* radius of the largest disc of all conditions */
#define LEAST_PX  1.5
#define SHRUNK    0.7 /* times, to which discs shrink at most where they crowd */
#define NUMBER_PX 9.0 /* radius of a shaft's number */
#define LEGEND_PX 14.0
#define PLACES    14 /* that are listed */

typedef struct heat_spot {
    ts_point at;
    double   P; /* W */
    bool     mesh;
    bool     hub; /* about the number of a shaft: its heat is the area of the ring beyond that */
} heat_spot;

typedef struct heat_map {
    ts_face        face;
    const ts_heat *heat;
    heat_spot     *spots; /* meshes, then shafts, then four a drive */
    uint32_t       spot_count;
    double         px; /* radius a root of a watt */
} heat_map;

/* ---- where ----------------------------------------------------------------------------------- */

static ts_point along_tower(const heat_map *map, uint32_t tower, double share)
{
    return ts_face_along_tower(&map->face, tower, share);
}

static ts_point mesh_point(const heat_map *map, uint32_t m)
{
    const ts_face        *face   = &map->face;
    const ts_train       *train  = face->scene->train;
    const ts_mesh        *mesh   = &train->meshes[m];
    const ts_mesh_motion *motion = &face->scene->motion->meshes[m];

    if (train->shafts[mesh->driven_shaft].kind == TS_SHAFT_TOWER)
        return along_tower(map, mesh->driven_shaft, 0.0);
    if (train->shafts[mesh->driver_shaft].kind == TS_SHAFT_TOWER)
        return along_tower(map, mesh->driver_shaft, 0.86);
    const ts_point a = face->shafts[mesh->driver_shaft].at, b = face->shafts[mesh->driven_shaft].at;
    return ts_between(a, b, motion->r_1 / (motion->r_1 + motion->r_2));
}

/* Where a bearing or a pad belongs to. */
static ts_point site_point(const heat_map *map, const ts_heat_place *place)
{
    const ts_train *train = map->face.scene->train;

    if (place->site == TS_HEAT_AT_PAD || map->heat->lines->lines[place->line].kind == TS_LINE_BOX)
        return map->face.shafts[place->shaft].at;
    uint32_t tower = place->shaft;
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_TOWER && train->shafts[s].drive == place->drive)
            tower = s;
    switch (map->heat->lines->lines[place->line].kind) {
    case TS_LINE_STUB: { /* about the middle of the engine: beyond it, where no bevels hide it */
        const ts_point bevels = along_tower(map, tower, 0.0);
        return ts_between(bevels, map->face.engine, 2.0);
    }
    case TS_LINE_INNER:
        return along_tower(map, tower, 0.22);
    case TS_LINE_TUBE:
        return along_tower(map, tower, 0.44);
    default:
        return along_tower(map, tower, 0.66);
    }
}

static bool is_numbered(const heat_map *map, ts_point at)
{
    const ts_train *train = map->face.scene->train;

    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_BOX && ts_distance(map->face.shafts[s].at, at) < 0.5)
            return true;
    return false;
}

static double radius_of(const heat_map *map, const heat_spot *spot)
{
    const double r = map->px * sqrt(spot->P);

    return fmax(LEAST_PX, spot->hub ? hypot(NUMBER_PX, r) : r);
}

static void add(heat_map *map, ts_point at, double P, bool mesh)
{
    if (!isfinite(at.x) || !isfinite(at.y) || !(P > 0.0))
        return;
    for (uint32_t i = 0; i < map->spot_count; i++)
        if (map->spots[i].mesh == mesh && ts_distance(map->spots[i].at, at) < 0.5) {
            map->spots[i].P += P;
            return;
        }
    map->spots[map->spot_count++] = (heat_spot){at, P, mesh, !mesh && is_numbered(map, at)};
}

static void gather(heat_map *map, uint32_t condition)
{
    const ts_heat *heat = map->heat;

    map->spot_count = 0;
    for (uint32_t p = 0; p < heat->place_count; p++) {
        const ts_heat_place *place = &heat->places[p];
        const double         P     = ts_heat_at(heat, 0, condition, p)->sum;
        if (place->missing != NULL)
            continue;
        if (place->site == TS_HEAT_AT_MESH)
            add(map, mesh_point(map, place->mesh), P, true);
        else
            add(map, site_point(map, place), P, false);
    }
}

/* px a root of a watt at which no disc lies upon another, and none of a mesh upon a number. */
static double uncrowded(const heat_map *map)
{
    const ts_train *train = map->face.scene->train;
    double          px    = (double)INFINITY;

    for (uint32_t i = 0; i < map->spot_count; i++) {
        const heat_spot *one = &map->spots[i];
        for (uint32_t k = 0; k < i; k++)
            px = fmin(px, (ts_distance(one->at, map->spots[k].at) -
                           (one->hub || map->spots[k].hub ? NUMBER_PX : 0.0)) /
                              (sqrt(one->P) + sqrt(map->spots[k].P)));
        for (uint32_t s = 0; s < train->shaft_count && one->mesh; s++)
            if (train->shafts[s].kind == TS_SHAFT_BOX)
                px = fmin(px, (ts_distance(one->at, map->face.shafts[s].at) - NUMBER_PX) /
                                  sqrt(one->P));
    }
    return px;
}

/* The same in all conditions, so that two sheets can be compared. */
static ts_status lay_spots(heat_map *map)
{
    double most = 0.0, free = (double)INFINITY;

    map->spots = TS_TAKE(map->face.scene->arena, heat_spot, (size_t)map->heat->place_count + 1);
    if (map->spots == NULL)
        return TS_NO_MEMORY;
    for (uint32_t c = 0; c < map->heat->motion->condition_count; c++) {
        gather(map, c);
        for (uint32_t i = 0; i < map->spot_count; i++)
            most = fmax(most, map->spots[i].P);
        free = fmin(free, uncrowded(map));
    }
    map->px = most > 0.0 ? MOST_PX / sqrt(most) : 0.0;
    if (most > 0.0)
        map->px *= fmin(fmax(free / map->px, SHRUNK), 1.0);
    gather(map, map->face.scene->condition);
    return TS_OK;
}

/* ---- drawing --------------------------------------------------------------------------------- */

static void draw_disc(ts_canvas *canvas, ts_point at, double r, bool mesh)
{
    ts_path_circle(canvas, at, r);
    if (mesh) {
        ts_fill_and_stroke(canvas, TS_COLOUR_BACK, TS_PEN_1, TS_COLOUR_PAPER);
        return;
    }
    ts_fill_veiled(canvas, TS_COLOUR_PAPER, 0.8);
    ts_path_circle(canvas, at, r);
    ts_hatch(canvas, TS_COLOUR_BACK);
    ts_path_circle(canvas, at, r);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_BACK);
    ts_stroke(canvas);
}

static void draw_spots(const heat_map *map, bool mesh)
{
    for (uint32_t i = 0; i < map->spot_count; i++)
        if (map->spots[i].mesh == mesh)
            draw_disc(&map->face.scene->canvas, map->spots[i].at, radius_of(map, &map->spots[i]),
                      mesh);
}

static void draw_machine(const heat_map *map, const ts_rail *rail)
{
    const ts_face *face   = &map->face;
    ts_canvas     *canvas = &face->scene->canvas;

    ts_rail_draw_machine(face, rail);
    draw_spots(map, false);
    draw_spots(map, true);
    ts_face_draw_numbers(face);
    ts_clip_end(canvas);
}

/* ---- the column ------------------------------------------------------------------------------ */

static const char *kept(const heat_map *map)
{
    return ts_scene_kept(map->face.scene);
}

static double write_row(const heat_map *map, double y, const char *words, const char *value,
                        bool bold)
{
    const ts_area      column = map->face.column;
    const ts_lettering left   = {
          .bold = bold, .colour = bold ? TS_COLOUR_INK : TS_COLOUR_INK2, .width = column.w - 84.0};
    const ts_lettering right = {.bold = bold, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK};

    if (y > column.y + column.h - 12.0)
        return y;
    ts_write(&map->face.scene->canvas, (ts_point){column.x + 10.0, y}, words, &left);
    ts_write(&map->face.scene->canvas, (ts_point){column.x + column.w - 10.0, y}, value, &right);
    return y + TS_LOOK_SPACE_ROW;
}

static const char *power(const heat_map *map, double P)
{
    ts_buffer *line = ts_canvas_line(&map->face.scene->canvas);

    if (map->face.scene->units == TS_UNITS_METRIC && P < 1000.0) {
        ts_add_number(line, P, 0);
        ts_buffer_add(line, " W");
    } else {
        ts_add_shown(line, map->face.scene, P, TS_KIND_POWER);
    }
    return kept(map);
}

static const char *shown(const heat_map *map, double si, ts_kind kind)
{
    ts_add_shown(ts_canvas_line(&map->face.scene->canvas), map->face.scene, si, kind);
    return kept(map);
}

static double write_drive(const heat_map *map, double y, uint32_t d)
{
    const ts_scene      *scene = map->face.scene;
    const ts_heat_state *one   = ts_heat_state_at(map->heat, 0, scene->condition, d);
    const ts_heat_state *other = ts_heat_state_at(map->heat, 1, scene->condition, d);

    ts_buffer_print(ts_canvas_line(&map->face.scene->canvas), "heat of the %s drive",
                    scene->drive->spools[scene->drive->drive[d].spool].name);
    const char *words = kept(map);
    y                 = write_row(map, y, words, power(map, one->heat), true);
    y                 = write_row(map, y, "by the second method", power(map, other->heat), false);
    y                 = write_row(map, y, "oil", shown(map, one->Q, TS_KIND_VOLUME_FLOW), false);
    y = write_row(map, y, "fed with", shown(map, one->theta_in, TS_KIND_TEMPERATURE), false);
    if (one->dry)
        return write_row(map, y, "leaves with", "no oil comes", false) + 8.0;
    return write_row(map, y, "leaves with",
                     shown(map, one->theta_in + one->rise, TS_KIND_TEMPERATURE), false) +
           8.0;
}

/* The place with the most heat below that of `above`; places of the same heat follow each other. */
static uint32_t next_place(const heat_map *map, uint32_t above)
{
    const uint32_t c = map->face.scene->condition;
    const double   most =
        above == TS_NOWHERE ? (double)INFINITY : ts_heat_at(map->heat, 0, c, above)->sum;
    uint32_t found = TS_NOWHERE;

    for (uint32_t p = 0; p < map->heat->place_count; p++) {
        const double P    = ts_heat_at(map->heat, 0, c, p)->sum;
        const bool   here = P < most || (above != TS_NOWHERE && !(P > most) && p > above);
        if (here && P > 0.0 && (found == TS_NOWHERE || P > ts_heat_at(map->heat, 0, c, found)->sum))
            found = p;
    }
    return found;
}

/* A round power whose disc is no larger than a row or two. */
static double write_legend(const heat_map *map, double y)
{
    static const char *const of[2]  = {"of a mesh",
                                       "of bearings, seals, splines; rings by their area"};
    const ts_area            column = map->face.column;
    ts_canvas               *canvas = &map->face.scene->canvas;
    const double             most   = pow(LEGEND_PX / map->px, 2.0);
    const double             decade = pow(10.0, floor(log10(most)));
    const double             share  = most / decade;
    const double             round  = decade * (share >= 5.0 ? 5.0 : share >= 2.0 ? 2.0 : 1.0);
    const double             r      = map->px * sqrt(round);
    const ts_lettering       how    = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                       .colour = TS_COLOUR_INK,
                                       .width  = column.w - 36.0 - 2.0 * LEGEND_PX,
                                       .lines  = 2};

    if (!(map->px > 0.0)) /* nothing turns */
        return y;
    for (int i = 0; i < 2; i++) {
        draw_disc(canvas, (ts_point){column.x + 14.0 + LEGEND_PX, y + LEGEND_PX}, r, i == 0);
        const char *watts = power(map, round);
        ts_buffer_print(ts_canvas_line(canvas), "%s %s", watts, of[i]);
        ts_write(canvas, (ts_point){column.x + 26.0 + 2.0 * LEGEND_PX, y + LEGEND_PX + 4.0},
                 kept(map), &how);
        y += 2.0 * LEGEND_PX + 6.0;
    }
    return y + 18.0;
}

/* Those that find no row, together; `towershaft oil` has a row for each. */
static void write_rest(const heat_map *map, double y, uint32_t from)
{
    double sum   = 0.0;
    int    count = 0;

    for (uint32_t p = from; p != TS_NOWHERE; p = next_place(map, p), count++)
        sum += ts_heat_at(map->heat, 0, map->face.scene->condition, p)->sum;
    if (count == 0)
        return;
    ts_buffer_print(ts_canvas_line(&map->face.scene->canvas), "%d more, one by one in `oil`",
                    count);
    const char *words = kept(map);
    (void)write_row(map, y, words, power(map, sum), false);
}

static void write_column(const heat_map *map)
{
    const ts_face *face   = &map->face;
    ts_canvas     *canvas = &face->scene->canvas;
    double         y      = ts_face_head_column(face, "Heat");

    for (uint32_t d = 0; d < face->scene->drive->drive_count; d++)
        y = write_drive(map, y, d);
    y          = write_legend(map, y);
    uint32_t p = next_place(map, TS_NOWHERE);
    for (int i = 0; i < PLACES && p != TS_NOWHERE; i++, p = next_place(map, p))
        y = write_row(map, y, map->heat->places[p].name,
                      power(map, ts_heat_at(map->heat, 0, face->scene->condition, p)->sum), false);
    write_rest(map, y, p);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(canvas, (ts_point){face->column.x, face->column.y},
                 (ts_point){face->column.x, face->column.y + face->column.h});
}

static void write_missing(const heat_map *map, const char *what)
{
    const ts_face     *face = &map->face;
    const ts_lettering how  = {.colour = TS_COLOUR_INK, .width = face->column.w - 20.0, .lines = 4};
    ts_buffer         *line = ts_canvas_line(&face->scene->canvas);

    ts_buffer_print(line, "No losses: %s.", what);
    ts_write(&face->scene->canvas, (ts_point){face->column.x + 10.0, face->column.y + 22.0},
             kept(map), &how);
}

/* ---- the sheet ------------------------------------------------------------------------------- */

ts_status ts_draw_heat(ts_scene *scene)
{
    const ts_heat *heat = scene->subject->heat;
    const char    *lack = heat == NULL            ? "they were not computed"
                          : heat->missing != NULL ? heat->missing
                                                  : NULL;
    heat_map       map  = {.face = {.scene = scene}, .heat = heat};
    ts_rail        rail;
    const double   sides  = 2.0 * (TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER);
    ts_status      status = ts_rail_measure(scene, scene->canvas.width - sides, false, &rail);

    if (status != TS_OK)
        return status;
    const double high   = ts_rail_height(&rail);
    const double height = ts_sheet_height(scene, high + 560.0);
    ts_sheet_divide(scene, height);
    const ts_area field   = scene->field;
    const double  routing = rail.rows == 1 ? TS_LOOK_SHEET_ROUTING : 0.0;
    map.face.rail         = (ts_area){field.x, field.y + field.h - high, field.w, high};
    map.face.picture =
        (ts_area){field.x, field.y, field.w - TS_LOOK_SHEET_COLUMN, field.h - high - routing};
    map.face.column = map.face.picture;
    map.face.column.x += map.face.picture.w;
    map.face.column.w = TS_LOOK_SHEET_COLUMN;
    status            = ts_face_lay_out(&map.face);
    if (status == TS_OK && lack == NULL)
        status = lay_spots(&map);
    if (status == TS_OK)
        status = ts_canvas_sheet(&scene->canvas, height,
                                 scene->subject->title ? scene->subject->title
                                                       : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    ts_rail_lead(&map.face, &rail);
    draw_machine(&map, &rail);
    if (lack == NULL)
        write_column(&map);
    else
        write_missing(&map, lack);
    ts_rail_draw(&map.face, &rail);
    ts_sheet_draw(scene, "Heat, seen from behind", "looking forward");
    return TS_OK;
}
