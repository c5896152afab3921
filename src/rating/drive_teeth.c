/* rating/drive_teeth.c: in which order are the teeth of a drive rated, and in what memory? */
#include "rating/drive_teeth.h"

#include "rating/drive_teeth_parts.h"

#include <math.h>

/* ---- memory ---------------------------------------------------------------------------------- */

/* The meshes of every gear, gear by gear: counted, then filled in. */
static bool list_meshes(const ts_train *train, ts_arena *arena, ts_teeth_scratch *scratch,
                        uint32_t *most)
{
    uint32_t *first = TS_TAKE(arena, uint32_t, (size_t)train->gear_count + 2);
    uint32_t *mesh  = TS_TAKE(arena, uint32_t, 2 * (size_t)train->mesh_count + 1);

    if (first == NULL || mesh == NULL)
        return false;
    for (uint32_t g = 0; g < train->gear_count + 2; g++)
        first[g] = 0;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        first[train->meshes[m].driver + 2]++;
        first[train->meshes[m].driven + 2]++;
    }
    *most = 0;
    for (uint32_t g = 2; g < train->gear_count + 2; g++) {
        *most = first[g] > *most ? first[g] : *most;
        first[g] += first[g - 1];
    }
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        mesh[first[train->meshes[m].driver + 1]++] = m;
        mesh[first[train->meshes[m].driven + 1]++] = m;
    }
    scratch->first = first;
    scratch->mesh  = mesh;
    return true;
}

ts_status ts_teeth_prepare(const ts_drive *drive, const ts_power *power, ts_arena *arena,
                           ts_teeth *out)
{
    const ts_train   *train  = power->motion->train;
    const size_t      meshes = train->mesh_count, gears = train->gear_count;
    ts_teeth_scratch *scratch = TS_TAKE(arena, ts_teeth_scratch, 1);
    uint32_t          most    = 0;

    *out = (ts_teeth){.motion          = power->motion,
                      .power           = power,
                      .scratch         = scratch,
                      .condition_count = (uint32_t)drive->condition_count};
    if (scratch == NULL || !list_meshes(train, arena, scratch, &most))
        return TS_NO_MEMORY;
    out->prepared   = TS_TAKE(arena, ts_iso6336_prepared, meshes);
    out->strength   = TS_TAKE(arena, ts_mesh_strength, meshes);
    out->cases      = TS_TAKE(arena, ts_mesh_case, meshes * drive->condition_count);
    out->lives      = TS_TAKE(arena, ts_flank_life, 4 * gears);
    scratch->peaks  = TS_TAKE(arena, ts_flank_peak, 2 * gears);
    scratch->wears  = TS_TAKE(arena, ts_wear, most * drive->condition_count);
    scratch->places = TS_TAKE(arena, ts_flank_life, most * drive->condition_count);
    scratch->parts  = TS_TAKE(arena, ts_input, most * drive->condition_count);
    if (out->prepared == NULL || out->strength == NULL || out->cases == NULL ||
        out->lives == NULL || scratch->peaks == NULL || scratch->wears == NULL ||
        scratch->places == NULL || scratch->parts == NULL)
        return TS_NO_MEMORY;
    return ts_bevels_prepare(train, drive->condition_count, arena, &out->bevels);
}

/* ---- the whole drive ------------------------------------------------------------------------- */

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

static void prepare_all(const ts_teeth_case *c)
{
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        const ts_gear *driven = &c->train->gears[c->train->meshes[m].driven];

        c->teeth->strength[m] = (ts_mesh_strength){.subject = driven->teeth.node,
                                                   .S_H     = {(double)NAN, (double)NAN},
                                                   .S_F     = {(double)NAN, (double)NAN},
                                                   .reserve = (double)NAN,
                                                   .times   = (double)NAN};
        if (c->train->meshes[m].kind == TS_MESH_CYLINDRICAL)
            ts_teeth_prepare_mesh(c, m);
        else
            ts_bevels_prepare_mesh(c, m);
    }
}

static void each_case(const ts_teeth_case *c,
                      void (*what)(const ts_teeth_case *c, uint32_t mesh, uint32_t condition))
{
    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++)
        for (uint32_t m = 0; m < c->train->mesh_count; m++)
            what(c, m, condition);
}

void ts_teeth_solve(const ts_drive *drive, ts_teeth *teeth, ts_workings *workings)
{
    const ts_teeth_case c = {drive, teeth->motion->train, teeth, workings};

    teeth->S_Hmin = known(drive->limits.contact_safety);
    teeth->S_Fmin = known(drive->limits.bending_safety);
    prepare_all(&c);
    each_case(&c, ts_teeth_load);
    ts_teeth_peaks(&c);
    each_case(&c, ts_teeth_rate);
    ts_teeth_add_up(&c);
}

/* ---- words ----------------------------------------------------------------------------------- */

const char *ts_rated_stress_says(ts_rated_stress stress)
{
    return stress == TS_RATED_CONTACT ? "pitting" : "bending";
}

const char *ts_mesh_side_says(const ts_train *train, uint32_t mesh, int side)
{
    const int64_t z_1 = train->gears[train->meshes[mesh].driver].teeth.value;
    const int64_t z_2 = train->gears[train->meshes[mesh].driven].teeth.value;

    if (z_1 == z_2)
        return side == 0 ? "driver" : "driven gear";
    return (side == 0) == (z_1 < z_2) ? "pinion" : "wheel";
}
