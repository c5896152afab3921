/* draw/face_layout.c: at what scale, and where, does everything of the face view stand? */
#include "draw/face.h"

#include "check/cowl.h"
#include "solid/gear_place.h"

#include <math.h>
#include <string.h>

ts_point ts_face_point(const ts_face *face, double x, double y)
{
    return (ts_point){face->engine.x + (face->front ? -x : x) * face->px,
                      face->engine.y - y * face->px};
}

ts_point ts_face_clock_point(const ts_face *face, double clock, double radius)
{
    return ts_face_point(face, radius * sin(clock), radius * cos(clock));
}

int ts_face_sense(const ts_face *face, uint32_t shaft)
{
    const int sense = face->scene->motion->shafts[shaft].sense;
    return face->front ? -sense : sense;
}

ts_face_side ts_face_near(const ts_face *face)
{
    return face->front ? TS_FRONT : TS_REAR;
}

uint32_t ts_bevel_mesh_from(const ts_train *train, uint32_t shaft)
{
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].kind == TS_MESH_BEVEL && train->meshes[m].driver_shaft == shaft)
            return m;
    return TS_NOWHERE;
}

/* ---- gears in metres --------------------------------------------------------------------- */

static void measure_gears(ts_face *face)
{
    const ts_train *train = face->scene->train;
    for (uint32_t g = 0; g < train->gear_count; g++) {
        const ts_gear *gear = &train->gears[g];
        const double   m_t =
            gear->role == TS_GEAR_BEVEL ? gear->m_n.value : gear->m_n.value / cos(gear->beta.value);
        face->gears[g].r     = 0.5 * m_t * (double)gear->teeth.value;
        face->gears[g].r_tip = face->gears[g].r;
    }
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh        *mesh   = &train->meshes[m];
        const ts_mesh_motion *motion = &face->scene->motion->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !motion->solved)
            continue;
        face->gears[mesh->driver].r      = 0.5 * motion->pair.d_1;
        face->gears[mesh->driver].r_tip  = 0.5 * motion->pair.d_a1;
        face->gears[mesh->driver].solved = true;
        face->gears[mesh->driven].r      = 0.5 * motion->pair.d_2;
        face->gears[mesh->driven].r_tip  = 0.5 * motion->pair.d_a2;
        face->gears[mesh->driven].solved = true;
    }
}

static ts_status place_gears(ts_face *face)
{
    const uint32_t count  = face->scene->train->gear_count;
    ts_gear_place *places = TS_TAKE(face->scene->arena, ts_gear_place, count);
    if (places == NULL)
        return TS_NO_MEMORY;
    ts_gear_places(face->scene->motion, places);
    for (uint32_t g = 0; g < count; g++) {
        face->gears[g].phase = places[g].phase;
        face->gears[g].plane = places[g].plane;
    }
    return TS_OK;
}

/* ---- what there is to fit ---------------------------------------------------------------- */

typedef struct bounds {
    double left, right, low, high; /* m, as seen */
} bounds;

static void hold_disc(bounds *all, double x, double y, double r)
{
    if (!isfinite(x) || !isfinite(y) || !isfinite(r))
        return;
    all->left  = fmin(all->left, x - r);
    all->right = fmax(all->right, x + r);
    all->low   = fmin(all->low, y - r);
    all->high  = fmax(all->high, y + r);
}

static double known_or(ts_measure measure, double other)
{
    return ts_measure_known(measure) && isfinite(measure.value) ? measure.value : other;
}

static double body_radius(const ts_face *face, uint32_t shaft, int side)
{
    const uint32_t p = face->scene->train->shafts[shaft].pad[side];
    if (p == TS_NOWHERE || face->scene->train->pads[p].accessory < 0)
        return 0.0;
    const int32_t a = face->scene->train->pads[p].accessory;
    return fmax(0.0, known_or(face->scene->drive->accessories[a].body.radius, 0.0));
}

/* Radii of one shaft, still in metres. */
static void measure_shaft(ts_face *face, uint32_t s)
{
    const ts_train *train = face->scene->train;
    ts_face_shaft  *shaft = &face->shafts[s];
    shaft->shown = train->shafts[s].kind == TS_SHAFT_BOX && face->scene->motion->shafts[s].placed;
    for (uint32_t g = 0; g < train->gear_count; g++) {
        if (train->gears[g].shaft != s || train->gears[g].role == TS_GEAR_BEVEL)
            continue;
        if (isfinite(face->gears[g].r_tip))
            shaft->r_gear = fmax(shaft->r_gear, face->gears[g].r_tip);
        if (train->gears[g].role == TS_GEAR_MAIN)
            shaft->r_main = face->gears[g].r;
    }
    const double wall = TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3;
    shaft->r_all      = shaft->r_gear + wall;
    for (int side = 0; side < 2; side++) {
        shaft->r_body[side] = body_radius(face, s, side);
        shaft->r_all        = fmax(shaft->r_all, shaft->r_body[side]);
    }
}

static void hold_keep_outs(const ts_face *face, bounds *all)
{
    const ts_engine *engine = &face->scene->drive->engine;
    for (size_t i = 0; i < engine->keep_out_count; i++) {
        const ts_keep_out *one = &engine->keep_out[i];
        hold_disc(all, one->radius.value * sin(one->clock.value),
                  one->radius.value * cos(one->clock.value), one->size.value);
    }
}

/* The cowl where it comes close to a shaft, since the gap matters there. */
static void hold_cowl(const ts_face *face, bounds *all, uint32_t s)
{
    const ts_shaft_motion *axis = &face->scene->motion->shafts[s];
    const double           r    = hypot(axis->x, axis->y);
    const ts_cowl_place    cowl =
        ts_cowl_nearest(&face->scene->drive->engine, r, atan2(axis->x, axis->y));
    if (cowl.reached && cowl.radius - r < 3.0 * face->shafts[s].r_all)
        hold_disc(all, cowl.radius * sin(cowl.clock), cowl.radius * cos(cowl.clock), 0.0);
}

/* Boxes, bodies and keep-outs, and the hub with `about_hub` m of room for its words.  The casing
 * and the cowl are far larger than the drive: they are shown as far as they come into view. */
static bounds bounds_of(const ts_face *face, double about_hub)
{
    const ts_train *train = face->scene->train;
    bounds          all   = {0.0, 0.0, 0.0, 0.0};
    hold_disc(&all, 0.0, 0.0, about_hub);
    for (uint32_t g = 0; g < train->gear_count; g++)
        if (train->gears[g].role == TS_GEAR_BEVEL &&
            train->shafts[train->gears[g].shaft].kind == TS_SHAFT_SPOOL)
            hold_disc(&all, 0.0, 0.0, face->gears[g].r + about_hub);
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (face->shafts[s].shown) {
            hold_disc(&all, face->scene->motion->shafts[s].x, face->scene->motion->shafts[s].y,
                      face->shafts[s].r_all);
            hold_cowl(face, &all, s);
        }
    hold_keep_outs(face, &all);
    if (!(all.right - all.left > 1e-3) || !(all.high - all.low > 1e-3))
        hold_disc(&all, 0.0, 0.0, known_or(face->scene->drive->engine.casing, 0.1));
    return all;
}

static void fit(ts_face *face, double about_hub)
{
    bounds all = bounds_of(face, about_hub);
    if (face->front) {
        const double left = all.left;
        all.left          = -all.right;
        all.right         = -left;
    }
    const ts_area room = ts_area_inset(face->picture, 24.0);
    face->px           = fmin(room.w / (all.right - all.left), room.h / (all.high - all.low));
    face->engine.x     = room.x + 0.5 * room.w - 0.5 * (all.left + all.right) * face->px;
    face->engine.y     = room.y + 0.5 * room.h + 0.5 * (all.low + all.high) * face->px;
}

static void choose_scale(ts_face *face)
{
    fit(face, 0.0);
    fit(face, 52.0 / face->px); /* the room for words is px, and was not known before */
}

/* ---- to the sheet ------------------------------------------------------------------------ */

static void place_shaft(ts_face *face, uint32_t s)
{
    const ts_shaft_motion *motion = &face->scene->motion->shafts[s];
    ts_face_shaft         *shaft  = &face->shafts[s];
    shaft->at                     = ts_face_point(face, motion->x, motion->y);
    shaft->r_gear *= face->px;
    shaft->r_main *= face->px;
    shaft->r_body[0] *= face->px;
    shaft->r_body[1] *= face->px;
    shaft->r_all *= face->px;
    shaft->r_number = fmin(TS_LOOK_FIGURE_NUMBER_RADIUS,
                           fmax(TS_LOOK_FIGURE_NUMBER_RADIUS_LEAST, 0.7 * shaft->r_gear));
}

void ts_face_place(ts_face *face)
{
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
        place_shaft(face, s);
}

/* An outline with its points, which else end with the picture. */
enum { POINTS_KEPT = 96 };

typedef struct kept_outline {
    ts_outline_fault fault;
    ts_tooth_shape   shape; /* POINTS_KEPT or fewer */
    ts_outline_point points[POINTS_KEPT];
} kept_outline;

/* All that an outline is traced from, member by member. */
static void ask(ts_memo *memo, const ts_cylindrical_frame *frame, const ts_cylindrical_gear *gear,
                double chord_error)
{
    const ts_cylindrical_gear_input *in = &gear->in;
    const double numbers[] = {in->x,      in->k,       gear->d,        gear->d_b,   gear->d_a,
                              gear->d_f,  gear->s_t,   gear->alpha_at, gear->rho_a, gear->s_at,
                              gear->s_an, gear->x_min, gear->rho_Ff,   gear->d_Ff,  chord_error};

    ts_memo_ask(memo, frame, sizeof *frame); /* doubles alone */
    ts_memo_ask(memo, &in->rack, sizeof in->rack);
    ts_memo_ask(memo, &in->z, sizeof in->z);
    ts_memo_ask(memo, numbers, sizeof numbers);
}

static ts_outline_fault trace(const ts_face *face, const ts_cylindrical_frame *frame,
                              const ts_cylindrical_gear *gear, size_t place, ts_tooth_shape *shape)
{
    const double chord_error = TS_LOOK_FIGURE_OUTLINE_ERROR / face->px;
    ts_arena    *arena       = face->scene->arena;
    ts_memo     *memo        = face->scene->subject->memo;
    bool         known;

    ask(memo, frame, gear, chord_error);
    kept_outline *kept = ts_memo_answer(memo, TS_MEMO_OUTLINE, place, sizeof *kept, &known);
    if (known && kept->shape.count <= POINTS_KEPT) {
        *shape        = kept->shape;
        shape->points = TS_TAKE(arena, ts_outline_point, shape->count);
        if (shape->points == NULL)
            return TS_OUTLINE_NO_MEMORY;
        memcpy(shape->points, kept->points, shape->count * sizeof *shape->points);
        return kept->fault;
    }
    const ts_outline_fault fault = ts_tooth_outline(frame, gear, chord_error, arena, shape);
    if (kept == NULL)
        return fault;
    kept->fault        = fault;
    kept->shape        = *shape;
    kept->shape.count  = fault == TS_OUTLINE_FINE ? shape->count : 0;
    kept->shape.points = NULL; /* they end with the picture */
    if (fault == TS_OUTLINE_NO_MEMORY)
        kept->shape.count = POINTS_KEPT + 1; /* it is asked again */
    else if (kept->shape.count <= POINTS_KEPT && kept->shape.count > 0)
        memcpy(kept->points, shape->points, shape->count * sizeof *shape->points);
    return fault;
}

/* The true outline of one gear, unless its teeth would be too small to be seen. */
static void trace_gear(ts_face *face, const ts_mesh_motion *motion, ts_gear_index index,
                       ts_face_gear *gear)
{
    const double height = (index == TS_GEAR_1 ? motion->pair.d_a1 - motion->pair.d_f1
                                              : motion->pair.d_a2 - motion->pair.d_f2) *
                          0.5 * face->px;
    if (gear->shape.count > 0 || !(height >= TS_LOOK_FIGURE_LEAST_TOOTH))
        return;
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  one;
    ts_cylindrical_pair_gear(&motion->pair, index, &frame, &one);
    if (trace(face, &frame, &one, (size_t)(gear - face->gears), &gear->shape) != TS_OUTLINE_FINE)
        gear->shape.count = 0;
}

void ts_face_trace_gears(ts_face *face)
{
    const ts_train *train = face->scene->train;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh        *mesh   = &train->meshes[m];
        const ts_mesh_motion *motion = &face->scene->motion->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !motion->solved)
            continue;
        trace_gear(face, motion, TS_GEAR_1, &face->gears[mesh->driver]);
        trace_gear(face, motion, TS_GEAR_2, &face->gears[mesh->driven]);
    }
}

/* The scale of the sheet on its A3 paper, as "1 : 2.6". */
void ts_face_say_scale(ts_face *face)
{
    ts_scene    *scene = face->scene;
    const double ratio = 1e3 * scene->canvas.mm / face->px;
    ts_buffer   *line  = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "1 : ");
    ts_buffer_fixed(line, ratio, ratio < 9.95 ? 2 : 1);
    ts_buffer_add(line, " on A3");
    scene->scale = line->bytes ? ts_arena_copy(scene->arena, line->bytes, line->length) : NULL;
}

ts_status ts_face_measure(ts_face *face)
{
    const ts_train *train = face->scene->train;
    face->gears           = TS_TAKE(face->scene->arena, ts_face_gear, train->gear_count);
    face->shafts          = TS_TAKE(face->scene->arena, ts_face_shaft, train->shaft_count);
    if (!face->gears || !face->shafts)
        return TS_NO_MEMORY;
    measure_gears(face);
    if (place_gears(face) != TS_OK)
        return TS_NO_MEMORY;
    for (uint32_t s = 0; s < train->shaft_count; s++)
        measure_shaft(face, s);
    return TS_OK;
}

ts_status ts_face_lay_out(ts_face *face)
{
    const ts_status status = ts_face_measure(face);
    if (status != TS_OK)
        return status;
    choose_scale(face);
    ts_face_place(face);
    ts_face_trace_gears(face);
    ts_face_say_scale(face);
    return TS_OK;
}
