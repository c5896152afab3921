/* draw/stop_view.c: what still turns when a part fails?  Spools to the left, what they drive to the
 * right of them; what stops is grey, what is in doubt hatched, and a cross stands where the way is
 * interrupted. */
#include "draw/stop_view.h"

#include "draw/lettering.h"
#include "draw/sheet.h"

#include <math.h>

/* px */
#define HEAD      52.0 /* above the tree            */
#define SIDE      16.0 /* beside it                 */
#define BOX_HIGH  70.0 /* of a shaft                */
#define PAD_HIGH  32.0 /* two lines for each accessory */
#define ROW_GAP   16.0
#define APART     1.4  /* times, that rows may stand apart where there is room */
#define BOX_SHARE 0.80 /* of the width of a column  */
#define CROSS     5.0

typedef struct stop_node {
    int      depth;
    double   row; /* px, from the top of the tree */
    uint32_t pads;
    ts_area  box;
} stop_node;

typedef struct stop_map {
    ts_scene         *scene;
    const ts_effects *effects;
    const ts_outcome *outcome;
    stop_node        *nodes; /* [shaft] */
    double            high;  /* px, of the whole tree */
    int               depth; /* of the deepest        */
    ts_area           picture, column;
} stop_map;

static const ts_train *train_of(const stop_map *map)
{
    return map->scene->train;
}

/* ---- where ----------------------------------------------------------------------------------- */

static void count_pads(stop_map *map)
{
    const ts_train *train = train_of(map);

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0)
            map->nodes[train->pads[p].shaft].pads++;
}

static bool drives_any(const ts_train *train, uint32_t s)
{
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].driver_shaft == s)
            return true;
    return false;
}

/* A shaft stands before what it drives, so forwards every depth is known when it is asked for. */
static void lay_depths(stop_map *map)
{
    const ts_train *train = train_of(map);

    map->depth = 0;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const uint32_t m    = train->shafts[s].mesh;
        map->nodes[s].depth = m == TS_NOWHERE ? 0 : map->nodes[train->meshes[m].driver_shaft].depth;
        map->nodes[s].depth += m != TS_NOWHERE;
        map->depth = map->nodes[s].depth > map->depth ? map->nodes[s].depth : map->depth;
    }
}

/* Rows of all that hangs on shaft s, from `top` on; returns where the next begins.  The first that
 * it drives stands on its own row.  Depth is bounded by that of the file. */
static double lay_rows(stop_map *map, uint32_t s, double top)
{
    const ts_train *train = train_of(map);
    double          next  = top;

    map->nodes[s].row = top;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].driver_shaft == s)
            next = lay_rows(map, train->meshes[m].driven_shaft, next);
    const double own = top + BOX_HIGH + PAD_HIGH * map->nodes[s].pads + ROW_GAP;
    return drives_any(train, s) ? fmax(next, own) : own;
}

static ts_status lay(stop_map *map)
{
    const ts_train *train = train_of(map);

    map->nodes = TS_TAKE(map->scene->arena, stop_node, (size_t)train->shaft_count + 1);
    if (map->nodes == NULL)
        return TS_NO_MEMORY;
    count_pads(map);
    lay_depths(map);
    map->high = 0.0;
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].mesh == TS_NOWHERE && drives_any(train, s))
            map->high = lay_rows(map, s, map->high);
    return TS_OK;
}

static void place(stop_map *map)
{
    const ts_train *train  = train_of(map);
    const double    column = (map->picture.w - 2.0 * SIDE) / (map->depth + 1);
    const double    room   = map->picture.h - HEAD - 20.0;
    const double    apart  = map->high > 0.0 ? fmin(fmax(room / map->high, 1.0), APART) : 1.0;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        stop_node *node = &map->nodes[s];
        node->box =
            (ts_area){map->picture.x + SIDE + column * node->depth,
                      map->picture.y + HEAD + apart * node->row, BOX_SHARE * column, BOX_HIGH};
    }
}

/* ---- shafts and what joins them -------------------------------------------------------------- */

static ts_colour ink_of(ts_goes goes)
{
    return goes == TS_STOPS ? TS_COLOUR_INK3 : TS_COLOUR_INK;
}

static void draw_cross(ts_canvas *canvas, ts_point at)
{
    ts_use_pen(canvas, TS_PEN_4, TS_COLOUR_ST_REFUSE);
    ts_draw_line(canvas, (ts_point){at.x - CROSS, at.y - CROSS},
                 (ts_point){at.x + CROSS, at.y + CROSS});
    ts_draw_line(canvas, (ts_point){at.x - CROSS, at.y + CROSS},
                 (ts_point){at.x + CROSS, at.y - CROSS});
}

static void draw_way(const stop_map *map, uint32_t s)
{
    const ts_train *train  = train_of(map);
    ts_canvas      *canvas = &map->scene->canvas;
    const uint32_t  m      = train->shafts[s].mesh;

    if (m == TS_NOWHERE)
        return;
    const uint32_t driver = train->meshes[m].driver_shaft;
    const ts_goes  goes   = map->outcome->shafts[s].goes;
    const ts_area  from = map->nodes[driver].box, to = map->nodes[s].box;
    const ts_point a       = {from.x + from.w, from.y + from.h / 2.0};
    const ts_point b       = {to.x, to.y + to.h / 2.0};
    const ts_point bend[2] = {{b.x - 14.0, a.y}, {b.x - 14.0, b.y}};

    ts_use_pen(canvas, goes == TS_GOES_ON ? TS_PEN_4 : TS_PEN_2, ink_of(goes));
    if (goes != TS_GOES_ON)
        ts_use_dash(canvas, goes == TS_STOPS ? TS_DASH_HIDDEN : TS_DASH_CHAIN);
    ts_move_to(canvas, a);
    ts_line_to(canvas, bend[0]);
    ts_line_to(canvas, bend[1]);
    ts_line_to(canvas, b);
    ts_stroke(canvas);
    if (goes == TS_STOPS && map->outcome->shafts[driver].goes != TS_STOPS)
        draw_cross(canvas, (ts_point){b.x - 7.0, b.y});
}

static void write_speed(const stop_map *map, uint32_t s, int sense)
{
    ts_scene  *scene = map->scene;
    ts_buffer *line  = ts_canvas_line(&scene->canvas);

    ts_add_shown(line, scene, ts_scene_speed(scene, s), TS_KIND_ROTATIONAL_SPEED);
    if (sense != 0)
        ts_buffer_print(line, " %s", ts_sense_word(sense));
}

static void draw_shaft(const stop_map *map, uint32_t s)
{
    ts_scene          *scene  = map->scene;
    ts_canvas         *canvas = &scene->canvas;
    const ts_area      box    = map->nodes[s].box;
    const ts_goes      goes   = map->outcome->shafts[s].goes;
    const ts_lettering name   = {.size   = TS_LOOK_TYPE_PX_BODY,
                                 .bold   = goes == TS_GOES_ON,
                                 .halo   = goes == TS_IN_DOUBT,
                                 .colour = ink_of(goes),
                                 .width  = box.w - 12.0,
                                 .lines  = 3};
    const ts_lettering state  = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .halo   = goes == TS_IN_DOUBT,
                                 .colour = ink_of(goes),
                                 .width  = box.w - 12.0};

    ts_path_area(canvas, box);
    ts_fill_and_stroke(canvas, goes == TS_STOPS ? TS_COLOUR_BENCH : TS_COLOUR_PAPER,
                       goes == TS_GOES_ON ? TS_PEN_3 : TS_PEN_1, ink_of(goes));
    if (goes == TS_IN_DOUBT) {
        ts_path_area(canvas, box);
        ts_hatch(canvas, TS_COLOUR_HAIR);
    }
    ts_write(canvas, (ts_point){box.x + 6.0, box.y + 16.0}, train_of(map)->shafts[s].name, &name);
    if (goes == TS_GOES_ON)
        write_speed(map, s, 0);
    else
        ts_buffer_add(ts_canvas_line(canvas), goes == TS_STOPS ? "stops" : "in doubt");
    ts_write(canvas, (ts_point){box.x + 6.0, box.y + box.h - 7.0}, ts_scene_kept(scene), &state);
}

/* ---- accessories ----------------------------------------------------------------------------- */

static const char *const signs[] = {
    [TS_GOES_ON] = "\xE2\x97\x8F ", [TS_IN_DOUBT] = "? ", [TS_STOPS] = "\xC3\x97 "};

/* Its sign and name, and below how it goes on. */
static void draw_pad(const stop_map *map, uint32_t p, uint32_t below)
{
    ts_scene          *scene  = map->scene;
    const ts_pad      *pad    = &train_of(map)->pads[p];
    const ts_area      box    = map->nodes[pad->shaft].box;
    const ts_goes      goes   = map->outcome->pads[p].goes;
    const bool         at_pad = goes != map->outcome->shafts[pad->shaft].goes;
    const double       y      = box.y + BOX_HIGH + PAD_HIGH * below;
    const ts_lettering name   = {.size   = TS_LOOK_TYPE_PX_BODY,
                                 .bold   = goes == TS_GOES_ON,
                                 .colour = ink_of(goes),
                                 .width  = box.w + 16.0};
    const ts_lettering state  = {
         .size = TS_LOOK_TYPE_PX_SMALL, .colour = ink_of(goes), .width = box.w};

    ts_buffer_print(ts_canvas_line(&scene->canvas), "%s%s", signs[goes], pad->name);
    ts_write(&scene->canvas, (ts_point){box.x + 4.0, y + 15.0}, ts_scene_kept(scene), &name);
    if (goes == TS_GOES_ON)
        write_speed(map, pad->shaft, ts_pad_sense(scene->motion, pad));
    else
        ts_buffer_add(ts_canvas_line(&scene->canvas), goes == TS_IN_DOUBT ? "in doubt"
                                                      : at_pad            ? "cut off at its pad"
                                                                          : "stops");
    ts_write(&scene->canvas, (ts_point){box.x + 17.0, y + 28.0}, ts_scene_kept(scene), &state);
    ts_note_area(&scene->canvas.places, TS_PLACE_ROW, p,
                 (ts_area){box.x, y + 2.0, box.w, PAD_HIGH - 2.0});
    if (at_pad && goes == TS_STOPS)
        draw_cross(&scene->canvas, (ts_point){box.x - 3.0, y + 11.0});
}

static void draw_pads(const stop_map *map)
{
    const ts_train *train = train_of(map);

    for (uint32_t p = 0; p < train->pad_count; p++) {
        uint32_t below = 0;
        for (uint32_t q = 0; q < p; q++)
            below += train->pads[q].accessory >= 0 && train->pads[q].shaft == train->pads[p].shaft;
        if (train->pads[p].accessory >= 0)
            draw_pad(map, p, below);
    }
}

/* ---- the column ------------------------------------------------------------------------------ */

static double write_line(const stop_map *map, double y, const char *words, bool bold)
{
    const ts_area      column = map->column;
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_BODY,
                                 .bold   = bold,
                                 .colour = bold ? TS_COLOUR_INK : TS_COLOUR_INK2,
                                 .width  = column.w - 20.0,
                                 .lines  = 4};

    if (y > column.y + column.h - 16.0)
        return y;
    const ts_area took = ts_write(&map->scene->canvas, (ts_point){column.x + 10.0, y}, words, &how);
    return took.y + took.h + TS_LOOK_SPACE_ROW * 0.75;
}

/* All accessories that go on alike, in a sentence. */
static double write_pads(const stop_map *map, double y, ts_goes goes, const char *title)
{
    const ts_train *train = train_of(map);
    ts_buffer      *line  = ts_canvas_line(&map->scene->canvas);
    int             count = 0;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0 && map->outcome->pads[p].goes == goes)
            ts_buffer_print(line, "%s%s", count++ > 0 ? ", " : "", train->pads[p].name);
    if (count == 0)
        ts_buffer_add(line, "none");
    const char *words = ts_scene_kept(map->scene);
    return write_line(map, write_line(map, y, title, true), words, false) + 6.0;
}

/* "a tooth of idler 8 breaks" */
static void add_part(const stop_map *map, uint32_t part, ts_buffer *line)
{
    const ts_part_capacity *one = &map->effects->select->parts.items[part];

    ts_buffer_print(line, ts_part_gives_way(one->kind), one->what);
}

static double write_breakage(const stop_map *map, double y, const ts_breakage *broken)
{
    ts_scene       *scene = map->scene;
    const ts_train *train = train_of(map);
    ts_buffer      *line  = ts_canvas_line(&scene->canvas);

    if (broken->pad != TS_NOWHERE)
        ts_buffer_print(line, "the neck of %s breaks", train->pads[broken->pad].name);
    else if (broken->part != TS_NOWHERE)
        add_part(map, broken->part, line);
    else if (broken->meant)
        ts_buffer_print(line, "the neck of %s breaks", train->shafts[broken->shaft].name);
    else
        ts_buffer_add(
            line, "something on the way to the spool breaks; what each part bears is not known");
    if (isfinite(broken->T)) {
        ts_buffer_add(line, " at no more than ");
        ts_add_shown(line, scene, broken->T, TS_KIND_TORQUE);
    }
    return write_line(map, y, ts_scene_kept(scene), false);
}

static void write_column(const stop_map *map)
{
    static const char *const engines[] = {[TS_GOES_ON]  = "The engine runs on.",
                                          [TS_IN_DOUBT] = "The engine may stop.",
                                          [TS_STOPS]    = "The engine stops."};
    const ts_outcome        *outcome   = map->outcome;
    const ts_effect          engine    = {TS_EFFECT_ENGINE, NULL};
    double                   y         = map->column.y + 24.0;

    if (outcome->breakage_count > 0)
        y = write_line(map, y, "What breaks for it", true);
    for (uint32_t i = 0; i < outcome->breakage_count; i++)
        y = write_breakage(map, y, &outcome->breakages[i]);
    y = write_pads(map, y + 6.0, TS_STOPS, "\xC3\x97 Stops");
    y = write_pads(map, y, TS_IN_DOUBT,
                   "? In doubt: still hangs on, but pieces or lack of oil may "
                   "stop it");
    y = write_pads(map, y, TS_GOES_ON, "\xE2\x97\x8F Goes on as before");
    y = write_line(map, y, engines[ts_effect_of(map->effects, &engine, outcome)], true);
    y = write_line(map, y,
                   outcome->start_possible ? "It can be started with what is left."
                                           : "It cannot be started with what is left.",
                   false);
    if (outcome->oil_lost)
        y = write_line(map, y, "Oil leaves.", false);
    if (outcome->stuck_in)
        y = write_line(map, y, "The engine carries the starter round.", false);
    if (outcome->chips)
        (void)write_line(map, y, "Metal gets into the oil.", false);
}

/* ---- the sheet ------------------------------------------------------------------------------- */

static void write_title(const stop_map *map, const char *what)
{
    ts_scene          *scene = map->scene;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = map->picture.w - 24.0};

    ts_buffer_print(ts_canvas_line(&scene->canvas), "What still turns: %s", what);
    ts_write(&scene->canvas, (ts_point){map->picture.x + 12.0, map->picture.y + 24.0},
             ts_scene_kept(scene), &lead);
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK2, .width = map->picture.w - 24.0};
    ts_buffer_print(ts_canvas_line(&scene->canvas),
                    "speeds at %s; ratios and senses of what goes on do not change%s",
                    scene->drive->conditions[scene->condition].name,
                    scene->subject->chosen ? "; nobody named a part: of all that seize this one "
                                             "stops most (--at names another, and how it fails)"
                                           : "");
    ts_write(&scene->canvas, (ts_point){map->picture.x + 12.0, map->picture.y + 41.0},
             ts_scene_kept(scene), &small);
}

static void draw_tree(const stop_map *map)
{
    const ts_train *train = train_of(map);

    for (uint32_t s = 0; s < train->shaft_count; s++)
        draw_way(map, s);
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].mesh != TS_NOWHERE || drives_any(train, s))
            draw_shaft(map, s);
    draw_pads(map);
}

ts_status ts_draw_stops(ts_scene *scene)
{
    const ts_drawing_subject *subject = scene->subject;
    const bool                known   = subject->effects != NULL && subject->failed != NULL;
    stop_map                  map     = {.scene = scene, .effects = subject->effects};
    ts_status                 status  = TS_OK;

    if (known) {
        map.outcome = &subject->effects->outcomes[subject->failure];
        status      = lay(&map);
    }
    if (status != TS_OK)
        return status;
    const double height = ts_sheet_height(scene, fmax(map.high + HEAD + 20.0, 560.0));
    ts_sheet_divide(scene, height);
    map.picture = map.column = scene->field;
    map.picture.w -= TS_LOOK_SHEET_COLUMN;
    map.column.x += map.picture.w;
    map.column.w = TS_LOOK_SHEET_COLUMN;
    status       = ts_canvas_sheet(&scene->canvas, height,
                             subject->title ? subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    write_title(&map, known ? subject->failed : "nothing of this drive can fail");
    if (known) {
        place(&map);
        draw_tree(&map);
        write_column(&map);
    }
    ts_sheet_draw(scene, "After a failure", "spool to accessory");
    return TS_OK;
}
