/* solid/part_casing.c: what does the casing of a box look like, as a wall round its gears? */
#include "solid/body_parts.h"

#include <math.h>

/* The discs of its axes, `less` m thinner than outside; each joined to the one that drives it. */
static size_t gather(const ts_scene_job *job, uint32_t drive, double less, ts_wall_disc *discs)
{
    const ts_train *train = job->train;
    const double    gap   = job->drive->mass.casing_gap.value;
    size_t         *disc  = TS_TAKE(job->arena, size_t, train->shaft_count);
    size_t          count = 0;

    for (uint32_t s = 0; disc != NULL && s < train->shaft_count; s++)
        disc[s] = SIZE_MAX;
    for (uint32_t s = 0; disc != NULL && s < train->shaft_count; s++) {
        const double r = ts_mass_tip_radius(job->mass, s);
        if (train->shafts[s].kind != TS_SHAFT_BOX || train->shafts[s].drive != drive || isnan(r))
            continue;
        const uint32_t m    = train->shafts[s].mesh;
        const uint32_t from = m != TS_NOWHERE ? train->meshes[m].driver_shaft : s;
        disc[s]             = count;
        discs[count] = (ts_wall_disc){.at = {job->motion->shafts[s].x, job->motion->shafts[s].y},
                                      .r  = r + gap - less,
                                      .joined = disc[from] != SIZE_MAX ? disc[from] : count};
        count++;
    }
    return count;
}

static bool trace(const ts_scene_job *job, uint32_t drive, double less, ts_wall_line *wall)
{
    ts_wall_disc *discs = TS_TAKE(job->arena, ts_wall_disc, job->train->shaft_count);

    return discs != NULL &&
           ts_wall_trace(discs, gather(job, drive, less, discs), job->arena, wall) == TS_OK &&
           ts_wall_chain(wall);
}

const char *ts_shape_casing(const ts_scene_job *job, const ts_mass_part *of, ts_part *part)
{
    const double depth = job->drive->drive[of->drive].box.depth.value;
    const double wall  = job->drive->mass.casing_wall.value;

    if (of->missing != NULL)
        return of->missing;
    if (!(2.0 * wall < depth))
        return "a wall thinner than half of its depth";
    if (!trace(job, of->drive, 0.0, &part->outside) || !trace(job, of->drive, wall, &part->inside))
        return "an outline that closes";
    part->origin[2] = ts_scene_station(job, of->drive);
    part->axis[2]   = 1.0;
    part->right[0]  = 1.0;
    part->z_1       = -0.5 * depth;
    part->z_2       = 0.5 * depth;
    part->floor     = wall;
    part->V =
        ts_wall_area(&part->outside) * depth - ts_wall_area(&part->inside) * (depth - 2.0 * wall);
    return NULL;
}
