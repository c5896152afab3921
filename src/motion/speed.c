/* motion/speed.c: how fast do shafts turn and teeth meet in every condition? */
#include "motion/motion_parts.h"
#include "motion/value_note.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static const ts_formula n_formula = {
    .symbol  = "n",
    .meaning = "speed",
    .unit    = "rad/s",
    .text    = "ratio*n_spool",
    .source  = "derived: both gears of every mesh move alike where they touch",
};
static const ts_formula v_formula = {
    .symbol  = "v",
    .meaning = "pitch line velocity",
    .unit    = "m/s",
    .text    = "n_1*r_1",
    .source  = "derived: speed times radius",
};
static const ts_formula f_z_formula = {
    .symbol  = "f_z",
    .meaning = "frequency at which teeth meet",
    .unit    = "Hz",
    .text    = "n_1*z_1/(2*pi)",
    .source  = "derived: turns a second times teeth",
};

static void note_spool_speed(const ts_drive *drive, const ts_shaft *spool, uint32_t condition,
                             ts_workings *workings)
{
    ts_workings_about(workings, spool->node, (int32_t)condition);
    TS_NOTE_MEASURE(workings, drive, "n", drive->conditions[condition].speed[spool->spool], "rad/s",
                    spool->name);
}

static void solve_shafts(const ts_drive *drive, ts_motion *motion, uint32_t condition,
                         ts_workings *workings)
{
    const ts_train   *train = motion->train;
    double           *speed = &motion->speed[(size_t)condition * train->shaft_count];
    const ts_measure *given = drive->conditions[condition].speed;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft  *shaft   = &train->shafts[s];
        const ts_measure measure = given[shaft->spool];
        const double     n_spool = ts_measure_known(measure) ? measure.value : (double)NAN;

        if (shaft->kind == TS_SHAFT_SPOOL) {
            speed[s] = n_spool;
            note_spool_speed(drive, shaft, condition, workings);
            continue;
        }
        const double ratio = ts_rational_value(motion->shafts[s].ratio);

        speed[s] = ratio * n_spool;
        if (isnan(speed[s]))
            continue;
        ts_workings_about(workings, shaft->node, (int32_t)condition);
        ts_workings_borrow(workings, "n_spool", n_spool,
                           (ts_subject){drive->spools[shaft->spool].node, (int32_t)condition}, "n");
        TS_STEP(workings, n_formula, speed[s], ratio, n_spool);
    }
}

static void solve_mesh(ts_motion *motion, uint32_t condition, uint32_t m, ts_workings *workings)
{
    const ts_train *train = motion->train;
    const ts_mesh  *mesh  = &train->meshes[m];
    const size_t    at    = (size_t)condition * train->mesh_count + m;
    const double n_1 = motion->speed[(size_t)condition * train->shaft_count + mesh->driver_shaft];
    const double z_1 = (double)train->gears[mesh->driver].teeth.value;
    const double r_1 = motion->meshes[m].r_1;

    motion->velocity[at] = motion->frequency[at] = (double)NAN;
    if (isnan(n_1) || !(z_1 > 0.0))
        return;
    ts_workings_about(workings, mesh->node, (int32_t)condition);
    ts_workings_borrow(workings, "n_1", n_1,
                       (ts_subject){train->shafts[mesh->driver_shaft].node, (int32_t)condition},
                       "n");
    motion->frequency[at] = TS_STEP(workings, f_z_formula, n_1 * z_1 / (2.0 * pi), n_1, z_1);
    if (motion->meshes[m].solved)
        motion->velocity[at] = TS_STEP(workings, v_formula, n_1 * r_1, n_1, r_1);
}

void ts_motion_speeds(const ts_drive *drive, ts_motion *motion, ts_workings *workings)
{
    for (uint32_t c = 0; c < motion->condition_count; c++) {
        solve_shafts(drive, motion, c, workings);
        for (uint32_t m = 0; m < motion->train->mesh_count; m++)
            solve_mesh(motion, c, m, workings);
    }
}
