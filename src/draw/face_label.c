/* draw/face_label.c: where do the words of the face view stand? */
#include "draw/face_label.h"

#include "draw/lettering.h"

#include <math.h>

/* ---- what is in the way ------------------------------------------------------------------ */

/* The bearing in the middle of a tower shaft. */
static void collect_bearing(const ts_face *face, ts_obstacles *obstacles, uint32_t shaft)
{
    const ts_shaft_motion *end = &face->scene->motion->shafts[shaft];
    const ts_measure       bearing =
        face->scene->drive->drive[face->scene->train->shafts[shaft].drive].tower_shaft.mid_bearing;
    const double share = bearing.value / hypot(end->x, end->y);
    if (ts_measure_known(bearing) && isfinite(share))
        ts_avoid_disc(obstacles, ts_face_point(face, share * end->x, share * end->y), 22.0, 50.0);
}

static void collect_towers(const ts_face *face, ts_obstacles *obstacles)
{
    const ts_train *train = face->scene->train;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft_motion *end = &face->scene->motion->shafts[s];
        if (train->shafts[s].kind != TS_SHAFT_TOWER || !end->placed)
            continue;
        const ts_point   outer = ts_face_point(face, end->x, end->y);
        const ts_measure outside =
            face->scene->drive->drive[train->shafts[s].drive].tower_shaft.outside;
        const double half = ts_measure_known(outside) ? 0.5 * outside.value * face->px : 4.0;
        collect_bearing(face, obstacles, s);
        const double dx = outer.x - face->engine.x, dy = outer.y - face->engine.y;
        const double length = hypot(dx, dy);
        if (!(length > 0.0))
            continue;
        for (int side = -1; side <= 1; side++) {
            const double nx = -dy / length * half * side, ny = dx / length * half * side;
            ts_avoid_line(obstacles, (ts_point){face->engine.x + nx, face->engine.y + ny},
                          (ts_point){outer.x + nx, outer.y + ny}, 40.0);
        }
    }
}

static double hub_radius(const ts_face *face)
{
    double r = 24.0;
    for (uint32_t g = 0; g < face->scene->train->gear_count; g++) {
        const ts_gear *gear = &face->scene->train->gears[g];
        if (gear->role == TS_GEAR_BEVEL && isfinite(face->gears[g].r) &&
            face->scene->train->shafts[gear->shaft].kind == TS_SHAFT_SPOOL)
            r = fmax(r, face->gears[g].r * face->px);
    }
    return r;
}

enum { COWL_PIECES = 36 };

/* The line, and the ends of the strokes outside of it that say which side is forbidden. */
static void collect_cowl(const ts_face *face, ts_obstacles *obstacles)
{
    const ts_engine *engine = &face->scene->drive->engine;
    for (size_t i = 1; i < engine->cowl_count; i++)
        for (int k = 0; k < COWL_PIECES; k++)
            for (int out = 0; out < 2; out++) {
                ts_point ends[2];
                for (int e = 0; e < 2; e++) {
                    const ts_point on  = ts_face_cowl_point(face, i, (double)(k + e) / COWL_PIECES);
                    const double   way = atan2(on.y - face->engine.y, on.x - face->engine.x);
                    ends[e]            = ts_polar(on, 7.0 * out, way);
                }
                ts_avoid_line(obstacles, ends[0], ends[1], 60.0);
            }
}

/* The box between a shaft and its driver. */
static void collect_bridge(const ts_face *face, ts_obstacles *obstacles, uint32_t shaft)
{
    const uint32_t m = face->scene->train->shafts[shaft].mesh;
    if (m == TS_NOWHERE || !face->shafts[face->scene->train->meshes[m].driver_shaft].shown)
        return;
    const ts_face_shaft *a    = &face->shafts[shaft];
    const ts_face_shaft *b    = &face->shafts[face->scene->train->meshes[m].driver_shaft];
    const double         wall = TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3 * face->px;
    for (int i = 0; i <= 4; i++) {
        const double   t  = 0.25 * i;
        const ts_point at = {a->at.x + t * (b->at.x - a->at.x), a->at.y + t * (b->at.y - a->at.y)};
        ts_avoid_disc(obstacles, at, a->r_gear + t * (b->r_gear - a->r_gear) + wall, 4.0);
    }
}

void ts_face_collect(const ts_face *face, ts_obstacles *obstacles)
{
    const ts_train  *train  = face->scene->train;
    const ts_engine *engine = &face->scene->drive->engine;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_face_shaft *shaft = &face->shafts[s];
        if (!shaft->shown)
            continue;
        ts_avoid_disc(obstacles, shaft->at, shaft->r_number + 3.0, 1000.0);
        ts_avoid_disc(obstacles, shaft->at, shaft->r_gear, 12.0);
        ts_avoid_disc(obstacles, shaft->at, 0.8 * shaft->r_main, 3.0);
        for (int side = 0; side < 2; side++)
            if (shaft->r_body[side] > 0.0)
                ts_avoid_disc(obstacles, shaft->at, shaft->r_body[side], 14.0);
        collect_bridge(face, obstacles, s);
    }
    collect_towers(face, obstacles);
    ts_avoid_disc(obstacles, face->engine, hub_radius(face), 60.0);
    if (ts_measure_known(engine->casing)) {
        ts_avoid_ring(obstacles, face->engine, engine->casing.value * face->px, 15.0);
        ts_avoid_ring(obstacles, face->engine, engine->casing.value * face->px - 14.0, 15.0);
    }
    for (size_t i = 0; i < engine->keep_out_count; i++)
        ts_avoid_disc(obstacles,
                      ts_face_clock_point(face, engine->keep_out[i].clock.value,
                                          engine->keep_out[i].radius.value),
                      engine->keep_out[i].size.value * face->px, 30.0);
    collect_cowl(face, obstacles);
}

/* ---- labels with a leader ---------------------------------------------------------------- */

typedef struct label {
    const char *words;
    const char *below; /* may be NULL */
    double      near;  /* px from the anchor, at least */
} label;

static const ts_lettering words_letters = {
    .bold = true, .halo = true, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK};
static const ts_lettering below_letters = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                           .halo   = true,
                                           .anchor = TS_ANCHOR_MIDDLE,
                                           .colour = TS_COLOUR_INK2};

static const ts_lettering *first_letters(const label *one)
{
    return one->below ? &words_letters : &below_letters;
}

/* The last point of the leader before the words. */
static ts_point leader_end(ts_point at, ts_point mid, ts_area area)
{
    const ts_area edge  = ts_area_inset(area, -2.0);
    double        share = 1.0;
    ts_point      end   = mid;
    while (share > 0.0 && ts_area_distance(edge, end) <= 0.0) {
        share -= 0.02;
        end = (ts_point){at.x + share * (mid.x - at.x), at.y + share * (mid.y - at.y)};
    }
    return end;
}

static void draw_label(const ts_face *face, ts_obstacles *obstacles, ts_point at, ts_area area,
                       const label *one)
{
    ts_canvas     *canvas = &face->scene->canvas;
    const ts_point mid    = {area.x + 0.5 * area.w, area.y + 0.5 * area.h};
    const ts_point end    = leader_end(at, mid, area);
    const ts_area  first  = ts_text_area(canvas, (ts_point){0, 0}, one->words, first_letters(one));
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_draw_line(canvas, at, end);
    ts_draw_dot(canvas, at, TS_LOOK_FIGURE_DOT, TS_COLOUR_INK);
    ts_write(canvas, (ts_point){mid.x, area.y - first.y}, one->words, first_letters(one));
    if (one->below)
        ts_write(canvas, (ts_point){mid.x, area.y + area.h - 3.0}, one->below, &below_letters);
    ts_avoid_area(obstacles, ts_area_inset(area, -3.0), 1000.0);
    ts_avoid_line(obstacles, at, end, 30.0);
}

/* The label goes to the one of `count` anchors where it covers least. */
static void place_label(const ts_face *face, ts_obstacles *obstacles, const ts_point *anchors,
                        size_t count, const label *one)
{
    ts_canvas *canvas = &face->scene->canvas;
    ts_area    text   = ts_text_area(canvas, (ts_point){0, 0}, one->words, first_letters(one));
    if (one->below) {
        const ts_area two = ts_text_area(canvas, (ts_point){0, 0}, one->below, &below_letters);
        text.w            = fmax(text.w, two.w);
        text.h += two.h;
    }
    const ts_point size  = {text.w + 4.0, text.h};
    double         least = INFINITY;
    ts_point       at    = {NAN, NAN};
    ts_area        area  = {0};
    for (size_t i = 0; i < count; i++) {
        double cost = INFINITY;
        if (!(ts_area_distance(obstacles->within, anchors[i]) <= 0.0))
            continue; /* out of the picture, or not known */
        const ts_area try = ts_place_near(obstacles, anchors[i], size,
                                          (const double[]){one->near, one->near + 200.0}, &cost);
        if (cost < least) {
            least = cost;
            area  = try;
            at    = anchors[i];
        }
    }
    if (!isnan(at.x))
        draw_label(face, obstacles, at, area, one);
}

/* Two texts must live side by side, so they are kept in the arena. */
static const char *kept(const ts_face *face)
{
    const ts_buffer *line = &face->scene->canvas.line;
    const char      *copy =
        line->bytes ? ts_arena_copy(face->scene->arena, line->bytes, line->length) : NULL;
    return copy ? copy : "";
}

static const char *speed_words(const ts_face *face, uint32_t shaft)
{
    ts_buffer *line = ts_canvas_line(&face->scene->canvas);
    ts_add_shown(line, face->scene, ts_scene_speed(face->scene, shaft), TS_KIND_ROTATIONAL_SPEED);
    if (face->scene->train->shafts[shaft].kind == TS_SHAFT_TOWER)
        ts_buffer_print(line, ", %s from outside",
                        ts_sense_word(face->scene->motion->shafts[shaft].sense));
    else
        ts_buffer_print(line, ", %s", ts_sense_word(ts_face_sense(face, shaft)));
    return kept(face);
}

static void label_spool(const ts_face *face, ts_obstacles *obstacles, uint32_t shaft)
{
    const uint32_t m      = ts_bevel_mesh_from(face->scene->train, shaft);
    const bool     tapped = m != TS_NOWHERE && face->scene->motion->meshes[m].solved;
    ts_point       anchors[4];
    const label    one = {face->scene->train->shafts[shaft].name, speed_words(face, shaft), 50.0};
    double         r   = 0.0;
    if (tapped) { /* a point of its own ring */
        const ts_bevel_pair *pair = &face->scene->motion->meshes[m].bevel;
        r                         = 0.5 * pair->d_e1 * (1.0 - 0.5 * pair->b_over_R_e) * face->px;
    }
    for (int i = 0; i < 4; i++)
        anchors[i] = ts_polar(face->engine, r, -0.5 * M_PI + 0.6 * (i - 1.5));
    place_label(face, obstacles, anchors, tapped ? 4 : 1, &one);
}

static void label_tower(const ts_face *face, ts_obstacles *obstacles, uint32_t shaft)
{
    const ts_shaft_motion *end = &face->scene->motion->shafts[shaft];
    const label one = {face->scene->train->shafts[shaft].name, speed_words(face, shaft), 40.0};
    ts_point    anchors[5];
    for (int i = 0; i < 5; i++)
        anchors[i] = ts_face_point(face, (0.3 + 0.1 * i) * end->x, (0.3 + 0.1 * i) * end->y);
    place_label(face, obstacles, anchors, 5, &one);
}

static void label_cowl(const ts_face *face, ts_obstacles *obstacles)
{
    enum { EACH = 6 };
    const size_t pieces  = face->scene->drive->engine.cowl_count - 1;
    ts_point    *anchors = TS_TAKE(face->scene->arena, ts_point, pieces * EACH);
    const label  one     = {"cowl line", NULL, 22.0};
    if (!anchors)
        return;
    for (size_t i = 0; i < pieces * EACH; i++)
        anchors[i] = ts_face_cowl_point(face, 1 + i / EACH, ((double)(i % EACH) + 0.5) / EACH);
    place_label(face, obstacles, anchors, pieces * EACH, &one);
}

static void label_engine(const ts_face *face, ts_obstacles *obstacles)
{
    const ts_engine *engine = &face->scene->drive->engine;
    for (size_t i = 0; i < engine->keep_out_count; i++) {
        const ts_keep_out *keep = &engine->keep_out[i];
        const ts_point     at   = ts_face_clock_point(face, keep->clock.value, keep->radius.value);
        const label        one  = {keep->name.text ? keep->name.text : "keep out", NULL,
                           keep->size.value * face->px + 12.0};
        place_label(face, obstacles, &at, 1, &one);
    }
    if (engine->cowl_count >= 2)
        label_cowl(face, obstacles);
}

void ts_face_draw_labels(const ts_face *face, ts_obstacles *obstacles)
{
    const ts_train *train = face->scene->train;
    for (uint32_t s = 0; !face->ribbons && s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_SPOOL)
            label_spool(face, obstacles, s);
    for (uint32_t s = 0; !face->ribbons && s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_TOWER)
            label_tower(face, obstacles, s);
    label_engine(face, obstacles);
}
