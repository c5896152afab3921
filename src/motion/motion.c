/* motion/motion.c: how fast and which way does everything turn, and where does it stand? */
#include "motion/motion.h"

#include "motion/motion_parts.h"

ts_status ts_motion_prepare(const ts_drive *drive, const ts_train *train, ts_arena *arena,
                            ts_motion *out)
{
    const size_t conditions = drive->condition_count;

    *out = (ts_motion){
        .train           = train,
        .condition_count = (uint32_t)conditions,
        .shafts          = TS_TAKE(arena, ts_shaft_motion, train->shaft_count),
        .meshes          = TS_TAKE(arena, ts_mesh_motion, train->mesh_count),
        .speed           = TS_TAKE(arena, double, conditions * train->shaft_count),
        .velocity        = TS_TAKE(arena, double, conditions * train->mesh_count),
        .frequency       = TS_TAKE(arena, double, conditions * train->mesh_count),
    };
    if (out->shafts == NULL || out->meshes == NULL || out->speed == NULL || out->velocity == NULL ||
        out->frequency == NULL)
        return TS_NO_MEMORY;
    return TS_OK;
}

ts_status ts_motion_solve(const ts_drive *drive, ts_motion *motion, ts_diagnostics *list,
                          ts_workings *workings)
{
    const size_t before = ts_diagnostics_count(list);

    ts_motion_turning(drive, motion, list, workings);
    ts_motion_statements(drive, motion, list);
    ts_motion_meshes(drive, motion, workings);
    ts_motion_places(drive, motion, workings);
    ts_motion_directions(motion, workings);
    ts_motion_speeds(drive, motion, workings);
    return ts_diagnostics_count(list) == before ? TS_OK : TS_NOT_UNDERSTOOD;
}

/* Who faces a rear pad looks forward and sees the shaft as from behind; who faces a front pad looks
 * rearward and sees it the other way. */
int ts_pad_sense(const ts_motion *motion, const ts_pad *pad)
{
    const int sense = motion->shafts[pad->shaft].sense;

    return pad->face == TS_REAR ? sense : -sense;
}
