/* draw/face_tower.c: how does the power leave the spool?  Hub, bevels and tower shafts. */
#include "draw/face.h"

#include <math.h>

ts_point ts_between(ts_point a, ts_point b, double share)
{
    return (ts_point){a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

ts_point ts_face_along_tower(const ts_face *face, uint32_t tower, double share)
{
    const ts_motion *motion = face->scene->motion;
    const ts_point   end    = ts_face_point(face, motion->shafts[tower].x, motion->shafts[tower].y);
    const uint32_t   m      = face->scene->train->shafts[tower].mesh;
    const double     r      = motion->meshes[m].r_1 * face->px;
    const ts_point   begin =
        ts_polar(face->engine, r, atan2(end.y - face->engine.y, end.x - face->engine.x));
    return ts_between(begin, end, share);
}

/* ---- the bevel on the spool, seen along its axis ----------------------------------------- */

/* derived: on the developed pitch cone a spiral tooth follows theta = tan(beta_m) ln(R/R_m), and
 * round the axis that angle is larger by 1/sin(delta). */
static double spiral_angle(const ts_bevel_pair *pair, double share_of_R_e, int hand)
{
    const double R = share_of_R_e * pair->R_e;
    return hand * tan(pair->in.beta_m) * log(R / pair->R_m) / sin(pair->delta_1);
}

static void draw_tooth_traces(const ts_face *face, const ts_bevel_pair *pair, int hand)
{
    ts_canvas   *canvas = &face->scene->canvas;
    const double r_e = 0.5 * pair->d_e1 * face->px, toe = 1.0 - pair->b_over_R_e;
    if (2.0 * M_PI * r_e / pair->in.z_1 < 3.0)
        return;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    for (int k = 0; k < pair->in.z_1; k++) {
        cairo_new_sub_path(canvas->cr);
        for (int i = 0; i <= 4; i++) {
            const double share = toe + (1.0 - toe) * i / 4.0;
            const double clock = 2.0 * M_PI * k / pair->in.z_1 + spiral_angle(pair, share, hand);
            ts_line_to(canvas, ts_face_clock_point(face, clock, share * 0.5 * pair->d_e1));
        }
    }
    ts_stroke(canvas);
}

static void draw_hub_bevel(const ts_face *face, uint32_t m)
{
    ts_canvas            *canvas = &face->scene->canvas;
    const ts_mesh        *mesh   = &face->scene->train->meshes[m];
    const ts_mesh_motion *motion = &face->scene->motion->meshes[m];
    if (!motion->solved || !isfinite(motion->bevel.d_e1))
        return;
    const ts_bevel_pair *pair  = &motion->bevel;
    const double         r     = 0.5 * pair->d_e1 * face->px;
    const int            sense = ts_face_sense(face, mesh->driver_shaft);
    ts_path_circle(canvas, face->engine, r);
    ts_fill_and_stroke(canvas, sense < 0 ? TS_COLOUR_GEAR_CW : TS_COLOUR_GEAR_CCW, TS_PEN_3,
                       TS_COLOUR_INK);
    draw_tooth_traces(face, pair, face->scene->train->gears[mesh->driver].hand);
    ts_path_circle(canvas, face->engine, r * (1.0 - pair->b_over_R_e));
    ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_2, TS_COLOUR_INK);
}

/* The larger bevels first, so that none is hidden. */
void ts_face_draw_hub(const ts_face *face)
{
    const ts_train *train  = face->scene->train;
    ts_canvas      *canvas = &face->scene->canvas;
    double          below  = INFINITY;
    for (uint32_t round = 0; round < train->shaft_count; round++) {
        uint32_t next = TS_NOWHERE;
        double   most = -1.0;
        for (uint32_t m = 0; m < train->mesh_count; m++) {
            const ts_mesh_motion *motion = &face->scene->motion->meshes[m];
            const bool            from_spool =
                train->shafts[train->meshes[m].driver_shaft].kind == TS_SHAFT_SPOOL;
            if (from_spool && motion->solved && motion->bevel.d_e1 < below &&
                motion->bevel.d_e1 > most) {
                next = m;
                most = motion->bevel.d_e1;
            }
        }
        if (next == TS_NOWHERE)
            break;
        draw_hub_bevel(face, next);
        below = most;
    }
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    const double arm = 22.0;
    ts_draw_line(canvas, (ts_point){face->engine.x - arm, face->engine.y},
                 (ts_point){face->engine.x + arm, face->engine.y});
    ts_draw_line(canvas, (ts_point){face->engine.x, face->engine.y - arm},
                 (ts_point){face->engine.x, face->engine.y + arm});
}

/* ---- along the tower shaft --------------------------------------------------------------- */

typedef struct tower {
    const ts_face *face;
    ts_point       foot;   /* the engine axis */
    double         ux, uy; /* outwards        */
    double         length; /* px              */
    double         half;   /* px, half the outside diameter */
} tower;

/* A point s px out along the axis and w px to its side. */
static ts_point at(const tower *one, double s, double w)
{
    return (ts_point){one->foot.x + s * one->ux - w * one->uy,
                      one->foot.y + s * one->uy + w * one->ux};
}

static void path_quad(const tower *one, double s0, double w0, double s1, double w1)
{
    const ts_point corners[4] = {at(one, s0, w0), at(one, s1, w1), at(one, s1, -w1),
                                 at(one, s0, -w0)};
    ts_path_polygon(&one->face->scene->canvas, corners, 4);
}

/* A bevel in outline: heel at s_heel with half width w, toe nearer to the apex. */
static void draw_cone(const tower *one, double apex, double s_heel, double w, double toe, int teeth)
{
    ts_canvas   *canvas = &one->face->scene->canvas;
    const double s_toe  = apex + (s_heel - apex) * toe;
    path_quad(one, s_heel, w, s_toe, w * toe);
    ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_3, TS_COLOUR_INK);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    for (int k = 0; k < teeth; k++) {
        const double angle = 2.0 * M_PI * k / teeth;
        if (cos(angle) <= 0.25)
            continue; /* the far half, and what would crowd the edge */
        ts_draw_line(canvas, at(one, s_heel, w * sin(angle)), at(one, s_toe, w * toe * sin(angle)));
    }
}

static void draw_bearing(const tower *one, double s)
{
    ts_canvas   *canvas = &one->face->scene->canvas;
    const double size   = fmax(4.0, 0.8 * one->half);
    for (int side = -1; side <= 1; side += 2) {
        const double   w = side * one->half, out = side * (one->half + size);
        const ts_point box[4] = {at(one, s - 0.5 * size, w), at(one, s + 0.5 * size, w),
                                 at(one, s + 0.5 * size, out), at(one, s - 0.5 * size, out)};
        ts_path_polygon(canvas, box, 4);
        ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_2, TS_COLOUR_INK);
        ts_draw_line(canvas, box[0], box[2]);
        ts_draw_line(canvas, box[1], box[3]);
    }
}

static bool stand_tower(const ts_face *face, uint32_t shaft, tower *one)
{
    const ts_train        *train  = face->scene->train;
    const ts_shaft_motion *motion = &face->scene->motion->shafts[shaft];
    const ts_tower_shaft  *record =
        &face->scene->drive->drive[train->shafts[shaft].drive].tower_shaft;
    const ts_point end    = ts_face_point(face, motion->x, motion->y);
    const double   length = ts_distance(face->engine, end);
    if (!motion->placed || !(length > 1.0))
        return false;
    const double outside = ts_measure_known(record->outside) ? record->outside.value : 0.0;
    *one                 = (tower){face,
                                   face->engine,
                                   (end.x - face->engine.x) / length,
                                   (end.y - face->engine.y) / length,
                                   length,
                                   fmax(3.0, 0.5 * outside * face->px)};
    return true;
}

static const ts_bevel_pair *pair_of(const ts_face *face, uint32_t mesh)
{
    if (mesh == TS_NOWHERE || !face->scene->motion->meshes[mesh].solved)
        return NULL;
    return &face->scene->motion->meshes[mesh].bevel;
}

/* derived: with the apex on the other axis, the heel of a bevel lies R_e cos(delta) from it. */
static void draw_tower(const ts_face *face, uint32_t shaft)
{
    tower one;
    if (!stand_tower(face, shaft, &one))
        return;
    ts_canvas           *canvas  = &face->scene->canvas;
    const ts_train      *train   = face->scene->train;
    const ts_bevel_pair *inner   = pair_of(face, train->shafts[shaft].mesh);
    const ts_bevel_pair *outer   = pair_of(face, ts_bevel_mesh_from(train, shaft));
    const double         s_inner = inner ? inner->R_e * cos(inner->delta_2) * face->px : 0.0;
    const double s_outer = one.length - (outer ? outer->R_e * cos(outer->delta_1) * face->px : 0.0);
    path_quad(&one, s_inner, one.half, s_outer, one.half);
    ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_3, TS_COLOUR_INK);
    const ts_measure bearing =
        face->scene->drive->drive[train->shafts[shaft].drive].tower_shaft.mid_bearing;
    if (ts_measure_known(bearing))
        draw_bearing(&one, bearing.value * face->px);
    if (inner)
        draw_cone(&one, 0.0, s_inner, 0.5 * inner->d_e2 * face->px, 1.0 - inner->b_over_R_e,
                  inner->in.z_2);
    if (outer)
        draw_cone(&one, one.length, s_outer, 0.5 * outer->d_e1 * face->px, 1.0 - outer->b_over_R_e,
                  outer->in.z_1);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    ts_draw_line(canvas, one.foot, at(&one, one.length, 0.0));
}

void ts_face_draw_towers(const ts_face *face)
{
    for (uint32_t s = 0; s < face->scene->train->shaft_count; s++)
        if (face->scene->train->shafts[s].kind == TS_SHAFT_TOWER)
            draw_tower(face, s);
}
