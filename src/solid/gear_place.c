/* solid/gear_place.c: in which plane of its box does a gear lie, and how far is it turned? */
#include "solid/gear_place.h"

#include <math.h>

/* Carries the phase over one mesh so that a tooth of the one stands in a space of the other.
 * derived: on the line of centres the middle of a tooth of gear 1 lies u pitches behind, so a
 * middle of a space of gear 2 must lie there too; gear 2 turns the other way. */
static void carry_phase(const ts_motion *motion, uint32_t m, ts_gear_place *out)
{
    const ts_mesh         *mesh = &motion->train->meshes[m];
    const ts_shaft_motion *a    = &motion->shafts[mesh->driver_shaft];
    const ts_shaft_motion *b    = &motion->shafts[mesh->driven_shaft];
    const double           z_1  = (double)motion->train->gears[mesh->driver].teeth.value;
    const double           z_2  = (double)motion->train->gears[mesh->driven].teeth.value;
    const double           line = atan2(b->y - a->y, b->x - a->x);
    const double           u = (line - 0.5 * M_PI - out[mesh->driver].phase) * z_1 / (2.0 * M_PI);
    out[mesh->driven].phase  = line + 0.5 * M_PI + (u - 0.5) * 2.0 * M_PI / z_2;
}

static void set_planes(const ts_train *train, uint32_t shaft, int main_plane, ts_gear_place *out)
{
    for (uint32_t g = 0; g < train->gear_count; g++)
        if (train->gears[g].shaft == shaft && train->gears[g].role != TS_GEAR_BEVEL)
            out[g].plane = main_plane + (int)train->gears[g].step;
}

static int held(int plane)
{
    return plane < TS_PLANES_MOST ? plane : TS_PLANES_MOST - 1;
}

/* Planes of one box, side by side. */
static void stack_planes(const ts_train *train, uint32_t drive, ts_gear_place *out)
{
    double wide[TS_PLANES_MOST] = {0.0}, middle[TS_PLANES_MOST], sum = 0.0;
    int    planes = 0;

    for (uint32_t g = 0; g < train->gear_count; g++) {
        if (train->gears[g].role == TS_GEAR_BEVEL ||
            train->shafts[train->gears[g].shaft].drive != drive)
            continue;
        const int plane = held(out[g].plane);
        planes          = plane + 1 > planes ? plane + 1 : planes;
        if (ts_measure_known(train->gears[g].face))
            wide[plane] = fmax(wide[plane], train->gears[g].face.value);
    }
    for (int p = 0; p < planes; p++) {
        sum += p > 0 ? TS_PLANES_APART : 0.0;
        middle[p] = sum + 0.5 * wide[p];
        sum += wide[p];
    }
    for (uint32_t g = 0; g < train->gear_count; g++)
        if (train->gears[g].role != TS_GEAR_BEVEL &&
            train->shafts[train->gears[g].shaft].drive == drive)
            out[g].z = middle[held(out[g].plane)] - 0.5 * sum;
}

void ts_gear_places(const ts_motion *motion, ts_gear_place *out)
{
    const ts_train *train = motion->train;

    for (uint32_t g = 0; g < train->gear_count; g++)
        out[g] = (ts_gear_place){0.0, 0, 0.0};
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh *mesh = &train->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL) {
            set_planes(train, mesh->driven_shaft, 0, out);
            continue;
        }
        set_planes(train, mesh->driven_shaft, out[mesh->driver].plane, out);
        if (motion->shafts[mesh->driver_shaft].placed && motion->shafts[mesh->driven_shaft].placed)
            carry_phase(motion, m, out);
    }
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_TOWER)
            stack_planes(train, train->shafts[s].drive, out);
}
