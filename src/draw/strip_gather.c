/* draw/strip_gather.c: what stands where along the arc of one box? */
#include "draw/unrolled.h"

#include "solid/gear_place.h"

#include <math.h>

static double known_or(ts_measure measure, double other)
{
    return ts_measure_known(measure) && isfinite(measure.value) ? measure.value : other;
}

static void gather_body(const ts_scene *scene, ts_strip_shaft *one, int side)
{
    const uint32_t p = scene->train->shafts[one->shaft].pad[side];
    if (p == TS_NOWHERE || scene->train->pads[p].accessory < 0)
        return;
    const ts_body *body = &scene->drive->accessories[scene->train->pads[p].accessory].body;
    one->r_body[side]   = fmax(0.0, known_or(body->radius, 0.0));
    one->length[side]   = fmax(0.0, known_or(body->length, 0.0));
}

/* Sorted by s; a box has few shafts. */
static void insert_shaft(ts_strip *out, ts_strip_shaft one)
{
    size_t i = out->shaft_count++;
    for (; i > 0 && out->shafts[i - 1].s > one.s; i--)
        out->shafts[i] = out->shafts[i - 1];
    out->shafts[i] = one;
}

static void gather_shafts(ts_scene *scene, ts_strip *out)
{
    const ts_train *train = scene->train;
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (train->shafts[s].kind != TS_SHAFT_BOX || train->shafts[s].drive != out->index)
            continue;
        const ts_shaft_motion *motion = &scene->motion->shafts[s];
        if (!motion->placed || !isfinite(motion->clock)) {
            out->unplaced++;
            continue;
        }
        ts_strip_shaft one = {.shaft = s, .s = out->R * motion->clock};
        gather_body(scene, &one, TS_FRONT);
        gather_body(scene, &one, TS_REAR);
        insert_shaft(out, one);
    }
}

static size_t strip_shaft_of(const ts_strip *strip, uint32_t shaft)
{
    size_t i = 0;
    while (i < strip->shaft_count && strip->shafts[i].shaft != shaft)
        i++;
    return i;
}

/* ---- gears and their planes -------------------------------------------------------------- */

static double tip_of(const ts_scene *scene, uint32_t gear, double r)
{
    for (uint32_t m = 0; m < scene->train->mesh_count; m++) {
        const ts_mesh        *mesh   = &scene->train->meshes[m];
        const ts_mesh_motion *motion = &scene->motion->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !motion->solved)
            continue;
        if (mesh->driver == gear)
            return 0.5 * motion->pair.d_a1;
        if (mesh->driven == gear)
            return 0.5 * motion->pair.d_a2;
    }
    return r;
}

/* The file does not say where planes lie; their order is a convention that the sheet names. */
static void gather_gears(ts_scene *scene, const ts_gear_place *places, ts_strip *out)
{
    for (uint32_t g = 0; g < scene->train->gear_count; g++) {
        const ts_gear *gear = &scene->train->gears[g];
        const size_t   at   = strip_shaft_of(out, gear->shaft);
        if (gear->role == TS_GEAR_BEVEL || at == out->shaft_count)
            continue;
        const double  r = 0.5 * gear->m_n.value / cos(gear->beta.value) * (double)gear->teeth.value;
        ts_strip_gear one = {.gear  = g,
                             .shaft = (uint32_t)at,
                             .plane = places[g].plane,
                             .r     = r,
                             .r_tip = tip_of(scene, g, r),
                             .face  = known_or(gear->face, (double)NAN)};
        if (!isfinite(one.r_tip))
            continue;
        if (one.plane >= TS_STRIP_PLANES)
            one.plane = TS_STRIP_PLANES - 1;
        if (one.plane + 1 > out->planes)
            out->planes = one.plane + 1;
        out->shafts[at].r_gear        = fmax(out->shafts[at].r_gear, one.r_tip);
        out->gears[out->gear_count++] = one;
    }
}

/* Planes stand side by side, as wide as their widest face, in the middle of the depth. */
static void stack_planes(ts_strip *out)
{
    const double between               = TS_PLANES_APART;
    double       wide[TS_STRIP_PLANES] = {0.0}, sum = 0.0;
    for (size_t i = 0; i < out->gear_count; i++)
        if (isfinite(out->gears[i].face))
            wide[out->gears[i].plane] = fmax(wide[out->gears[i].plane], out->gears[i].face);
    for (int p = 0; p < out->planes; p++)
        sum += wide[p] + (p > 0 ? between : 0.0);
    out->depth_known = ts_measure_known(out->drive->box.depth);
    out->depth       = known_or(out->drive->box.depth, sum + 16e-3);
    double z         = 0.5 * (out->depth - sum);
    for (int p = 0; p < out->planes; p++) {
        out->plane_z[p] = z + 0.5 * wide[p];
        z += wide[p] + between;
    }
}

static void find_bounds(ts_strip *out)
{
    out->left  = INFINITY;
    out->right = -INFINITY;
    for (size_t i = 0; i < out->shaft_count; i++) {
        const ts_strip_shaft *one = &out->shafts[i];
        const double          r   = fmax(one->r_gear + TS_LOOK_FIGURE_BOX_WALL_MM * 1e-3,
                                         fmax(one->r_body[TS_FRONT], one->r_body[TS_REAR]));
        out->left                 = fmin(out->left, one->s - r);
        out->right                = fmax(out->right, one->s + r);
        out->ahead                = fmax(out->ahead, one->length[TS_FRONT]);
        out->behind               = fmax(out->behind, one->length[TS_REAR]);
    }
}

ts_status ts_strip_gather(ts_scene *scene, uint32_t drive, ts_strip *out)
{
    *out        = (ts_strip){.scene = scene, .drive = &scene->drive->drive[drive], .index = drive};
    out->R      = known_or(out->drive->box.arc.radius, 0.0);
    out->shafts = TS_TAKE(scene->arena, ts_strip_shaft, scene->train->shaft_count);
    out->gears  = TS_TAKE(scene->arena, ts_strip_gear, scene->train->gear_count);
    ts_gear_place *places = TS_TAKE(scene->arena, ts_gear_place, scene->train->gear_count);
    if (!out->shafts || !out->gears || !places)
        return TS_NO_MEMORY;
    ts_gear_places(scene->motion, places);
    gather_shafts(scene, out);
    gather_gears(scene, places, out);
    stack_planes(out);
    find_bounds(out);
    return TS_OK;
}

double ts_strip_gap(const ts_strip *strip, size_t a, double r_a, size_t b, double r_b)
{
    const ts_shaft_motion *p = &strip->scene->motion->shafts[strip->shafts[a].shaft];
    const ts_shaft_motion *q = &strip->scene->motion->shafts[strip->shafts[b].shaft];
    return hypot(p->x - q->x, p->y - q->y) - r_a - r_b;
}
