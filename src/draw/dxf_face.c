/* draw/dxf_face.c: the face of the boxes in true size: gears as in ISO 2203 (tip full, pitch
 * chain, root thin; from memory), bodies, walls, radial shafts, casing, cowl and keep-outs. */
#include "draw/dxf_box.h"
#include "draw/dxf_view.h"
#include "draw/face.h"

#include <math.h>

typedef struct view {
    const ts_face *face;
    ts_dxf        *dxf;
} view;

static ts_point seen(const view *v, double x, double y)
{
    return (ts_point){v->face->front ? -x : x, y};
}

static ts_point seen_at(const view *v, double clock, double radius)
{
    return seen(v, radius * sin(clock), radius * cos(clock));
}

static ts_point axis_of(const view *v, uint32_t shaft)
{
    const ts_shaft_motion *motion = &v->face->scene->motion->shafts[shaft];
    return seen(v, motion->x, motion->y);
}

/* ---- engine ------------------------------------------------------------------------------- */

static void cross(const view *v, ts_point at, double arm)
{
    ts_dxf_line(v->dxf, TS_DXF_AXIS, (ts_point){at.x - arm, at.y}, (ts_point){at.x + arm, at.y});
    ts_dxf_line(v->dxf, TS_DXF_AXIS, (ts_point){at.x, at.y - arm}, (ts_point){at.x, at.y + arm});
}

enum { COWL_PIECES = 90 };

static void cowl(const view *v)
{
    const ts_engine *engine = &v->face->scene->drive->engine;
    for (size_t i = 1; i < engine->cowl_count; i++) {
        const ts_cowl_point *a = &engine->cowl[i - 1], *b = &engine->cowl[i];
        ts_point             points[COWL_PIECES + 1];
        const double         turn = remainder(b->clock.value - a->clock.value, 2.0 * M_PI);
        for (int k = 0; k <= COWL_PIECES; k++) {
            const double share = (double)k / COWL_PIECES;
            points[k]          = seen_at(v, a->clock.value + share * turn,
                                         a->radius.value + share * (b->radius.value - a->radius.value));
        }
        ts_dxf_path(v->dxf, TS_DXF_COWL, points, COWL_PIECES + 1, false);
    }
}

static void engine(const view *v)
{
    const ts_drive *drive = v->face->scene->drive;
    if (ts_measure_known(drive->engine.casing))
        ts_dxf_circle(v->dxf, TS_DXF_CASING, (ts_point){0, 0}, drive->engine.casing.value);
    cross(v, (ts_point){0, 0}, 0.02);
    cowl(v);
    for (size_t i = 0; i < drive->engine.keep_out_count; i++) {
        const ts_keep_out *one = &drive->engine.keep_out[i];
        ts_dxf_circle(v->dxf, TS_DXF_KEEP_OUT, seen_at(v, one->clock.value, one->radius.value),
                      one->size.value);
    }
}

/* The arc of a box, as far as its axes stand on it. */
static void arc_of_axes(const view *v, uint32_t d)
{
    const ts_train *train = v->face->scene->train;
    const ts_arc   *arc   = &v->face->scene->drive->drive[d].box.arc;
    double          least = INFINITY, most = -(double)INFINITY;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (!v->face->shafts[s].shown || train->shafts[s].drive != d)
            continue;
        least = fmin(least, v->face->scene->motion->shafts[s].clock);
        most  = fmax(most, v->face->scene->motion->shafts[s].clock);
    }
    /* Clock angles run clockwise from the y axis as seen from behind, angles of a DXF the other
     * way from the x axis. */
    const double from = v->face->front ? M_PI_2 + least : M_PI_2 - most;
    const double to   = v->face->front ? M_PI_2 + most : M_PI_2 - least;
    if (ts_measure_known(arc->radius) && to - from > 1e-6)
        ts_dxf_arc(v->dxf, TS_DXF_ARC, (ts_point){0, 0}, arc->radius.value, from, to);
}

/* ---- box ---------------------------------------------------------------------------------- */

static ts_status wall_of(const view *v, uint32_t d)
{
    return ts_dxf_box(v->face, d, 0.0, v->dxf);
}

static void gears(const view *v)
{
    const ts_scene *scene = v->face->scene;
    for (uint32_t g = 0; g < scene->train->gear_count; g++) {
        const ts_gear      *gear = &scene->train->gears[g];
        const ts_face_gear *one  = &v->face->gears[g];
        if (gear->role == TS_GEAR_BEVEL || !v->face->shafts[gear->shaft].shown)
            continue;
        const ts_point at = axis_of(v, gear->shaft);
        ts_dxf_circle(v->dxf, TS_DXF_TIP, at, one->r_tip);
        ts_dxf_circle(v->dxf, TS_DXF_PITCH, at, one->r);
    }
    for (uint32_t m = 0; m < scene->train->mesh_count; m++) {
        const ts_mesh        *mesh   = &scene->train->meshes[m];
        const ts_mesh_motion *motion = &scene->motion->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !motion->solved)
            continue;
        if (v->face->shafts[mesh->driver_shaft].shown)
            ts_dxf_circle(v->dxf, TS_DXF_ROOT, axis_of(v, mesh->driver_shaft),
                          0.5 * motion->pair.d_f1);
        if (v->face->shafts[mesh->driven_shaft].shown)
            ts_dxf_circle(v->dxf, TS_DXF_ROOT, axis_of(v, mesh->driven_shaft),
                          0.5 * motion->pair.d_f2);
    }
}

static void bodies(const view *v, uint32_t s)
{
    const double *r = v->face->shafts[s].r_body;
    ts_dxf_circle(v->dxf, TS_DXF_BODY_FRONT, axis_of(v, s), r[TS_FRONT]);
    ts_dxf_circle(v->dxf, TS_DXF_BODY_REAR, axis_of(v, s), r[TS_REAR]);
}

/* ---- radial shafts and their bevels ------------------------------------------------------- */

/* A trapezium across the radial axis at `clock`: from radius a, half as wide as w_a, to b. */
static void across(const view *v, ts_dxf_layer layer, double clock, double a, double w_a, double b,
                   double w_b)
{
    const double   cosine = cos(clock), sine = sin(clock);
    const ts_point corners[4] = {seen(v, a * sine + w_a * cosine, a * cosine - w_a * sine),
                                 seen(v, b * sine + w_b * cosine, b * cosine - w_b * sine),
                                 seen(v, b * sine - w_b * cosine, b * cosine + w_b * sine),
                                 seen(v, a * sine - w_a * cosine, a * cosine + w_a * sine)};
    ts_dxf_path(v->dxf, layer, corners, 4, true);
}

static const ts_bevel_pair *bevels_of(const view *v, uint32_t mesh)
{
    if (mesh == TS_NOWHERE || !v->face->scene->motion->meshes[mesh].solved)
        return NULL;
    return &v->face->scene->motion->meshes[mesh].bevel;
}

/* derived: with the apex on the other axis, the heel of a bevel lies R_e cos(delta) from it. */
static void tower(const view *v, uint32_t s)
{
    const ts_scene        *scene  = v->face->scene;
    const ts_shaft_motion *motion = &scene->motion->shafts[s];
    const ts_tower_shaft  *record = &scene->drive->drive[scene->train->shafts[s].drive].tower_shaft;
    const ts_bevel_pair   *inner  = bevels_of(v, scene->train->shafts[s].mesh);
    const ts_bevel_pair   *outer  = bevels_of(v, ts_bevel_mesh_from(scene->train, s));
    if (!motion->placed)
        return;
    const double end = motion->radius, clock = motion->clock;
    const double from = inner != NULL ? inner->R_e * cos(inner->delta_2) : 0.0;
    const double to   = end - (outer != NULL ? outer->R_e * cos(outer->delta_1) : 0.0);
    if (ts_measure_known(record->outside))
        across(v, TS_DXF_TOWER, clock, from, 0.5 * record->outside.value, to,
               0.5 * record->outside.value);
    if (inner != NULL) {
        const double toe = 1.0 - inner->b_over_R_e;
        across(v, TS_DXF_BEVEL, clock, from, 0.5 * inner->d_e2, from * toe,
               0.5 * inner->d_e2 * toe);
        ts_dxf_circle(v->dxf, TS_DXF_BEVEL, (ts_point){0, 0}, 0.5 * inner->d_e1);
        ts_dxf_circle(v->dxf, TS_DXF_BEVEL, (ts_point){0, 0}, 0.5 * inner->d_e1 * toe);
    }
    if (outer != NULL) {
        const double toe = 1.0 - outer->b_over_R_e;
        across(v, TS_DXF_BEVEL, clock, to, 0.5 * outer->d_e1, end - (end - to) * toe,
               0.5 * outer->d_e1 * toe);
    }
    ts_dxf_line(v->dxf, TS_DXF_AXIS, (ts_point){0, 0}, seen_at(v, clock, end));
}

/* ---- words -------------------------------------------------------------------------------- */

static void put_length(const view *v, ts_buffer *out, double metres)
{
    const bool us = v->face->scene->units == TS_UNITS_US;
    ts_buffer_fixed(out, metres * (us ? 1.0 / 0.0254 : 1e3), us ? 4 : 3);
}

static const char *pad_name(const view *v, uint32_t shaft, int side)
{
    const uint32_t pad = v->face->scene->train->shafts[shaft].pad[side];
    return pad != TS_NOWHERE ? v->face->scene->train->pads[pad].name : "-";
}

/* Number and name at the axis; a row with its place in the list beside the drawing. */
static void words_of(const view *v, uint32_t s, double letters, ts_point row)
{
    const ts_shaft *shaft = &v->face->scene->train->shafts[s];
    const ts_point  at    = axis_of(v, s);
    ts_buffer      *line  = ts_canvas_line(&v->face->scene->canvas);
    ts_buffer_print(line, "%u", shaft->number);
    ts_dxf_text(v->dxf, TS_DXF_WORDS, (ts_point){at.x, at.y + 0.4 * letters}, letters,
                TS_DXF_MIDDLE, line->bytes);
    line = ts_canvas_line(&v->face->scene->canvas);
    ts_buffer_print(line, "%u  x ", shaft->number);
    put_length(v, line, at.x);
    ts_buffer_add(line, "  y ");
    put_length(v, line, at.y);
    ts_buffer_print(line, "  %s  front: %s  rear: %s", shaft->name, pad_name(v, s, TS_FRONT),
                    pad_name(v, s, TS_REAR));
    ts_dxf_text(v->dxf, TS_DXF_WORDS, row, letters, TS_DXF_LEFT, line->bytes);
}

/* Centre distances, beside the line that joins two axes. */
static void centres(const view *v, double letters)
{
    ts_scene *scene = v->face->scene;
    for (uint32_t m = 0; m < scene->train->mesh_count; m++) {
        const ts_mesh *mesh = &scene->train->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !scene->motion->meshes[m].solved ||
            !v->face->shafts[mesh->driver_shaft].shown ||
            !v->face->shafts[mesh->driven_shaft].shown)
            continue;
        const ts_point a = axis_of(v, mesh->driver_shaft), b = axis_of(v, mesh->driven_shaft);
        ts_buffer     *line = ts_canvas_line(&scene->canvas);
        ts_buffer_add(line, "a ");
        put_length(v, line, scene->motion->meshes[m].a_w);
        ts_dxf_line(v->dxf, TS_DXF_SIZES, a, b);
        ts_dxf_text(v->dxf, TS_DXF_SIZES,
                    (ts_point){0.5 * (a.x + b.x), 0.5 * (a.y + b.y) + 0.5 * letters}, 0.7 * letters,
                    TS_DXF_MIDDLE, line->bytes);
    }
}

ts_status ts_dxf_face(ts_scene *scene, bool front, ts_dxf *dxf)
{
    ts_face         face   = {.scene = scene, .front = front};
    const view      v      = {&face, dxf};
    const ts_status status = ts_face_measure(&face);
    if (status != TS_OK)
        return status;
    for (uint32_t d = 0; d < scene->drive->drive_count; d++) {
        if (wall_of(&v, d) != TS_OK)
            return TS_NO_MEMORY;
        arc_of_axes(&v, d);
    }
    gears(&v);
    for (uint32_t s = 0; s < scene->train->shaft_count; s++) {
        if (scene->train->shafts[s].kind == TS_SHAFT_TOWER)
            tower(&v, s);
        if (!face.shafts[s].shown)
            continue;
        bodies(&v, s);
        cross(&v, axis_of(&v, s), 1.15 * face.shafts[s].r_gear);
    }
    engine(&v);
    const double letters = ts_dxf_letters(dxf);
    const double beside = dxf->right + 4.0 * letters, high = dxf->high;
    centres(&v, letters);
    for (uint32_t s = 0; s < scene->train->shaft_count; s++) {
        const ts_point row = {beside,
                              high - 2.0 * letters * (scene->train->shafts[s].number - 1.0)};
        if (face.shafts[s].shown)
            words_of(&v, s, letters, row);
    }
    return TS_OK;
}
