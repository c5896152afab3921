/* motion/turning.c: in what exact ratio to its spool, and which way, does every shaft turn? */
#include "motion/motion_parts.h"
#include "motion/value_note.h"

/* Positive axes: model/train.h.  Where two gears touch, both flanks move alike.
 *
 * Parallel axes, teeth outside: the point of mesh lies between the axes, so the senses differ.
 *
 * Spool to radial shaft.  With u the outward direction of the radial shaft, z rearward and the
 * spool's gear on side s (+1 rear) of it, the point of mesh from the apex is r_1*u + s*r_2*z.  A
 * spool that turns w about z moves it by w*r_1*(z x u), a radial shaft that turns w_2 about u by
 * w_2*s*r_2*(u x z).  Equal when w_2 = -s*w*r_1/r_2.
 *
 * Radial shaft to box input, the radial shaft's gear on the engine's side of the crossing: the
 * point is -r_2*u + s*r_1*z; w about u moves it by w*s*r_1*(u x z), w_2 about z by -w_2*r_2*(z x
 * u).  Equal when w_2 = s*w*r_1/r_2.  Shaft angles other than 90 degrees change the radii, not the
 * signs. */
#define EQUAL_VELOCITY "derived: both gears move alike at the point of mesh"

static const ts_formula ratio_formula = {
    .symbol  = "ratio",
    .meaning = "speed over that of the spool, kept as an exact fraction",
    .unit    = "1",
    .text    = "ratio_1*z_1/z_2",
    .source  = EQUAL_VELOCITY,
};
static const ts_formula sense_external_formula = {
    .symbol  = "sense",
    .meaning = "sense of rotation, 1 anticlockwise seen from behind",
    .unit    = "1",
    .text    = "-sense_1",
    .source  = EQUAL_VELOCITY,
};
static const ts_formula sense_outward_formula = {
    .symbol  = "sense",
    .meaning = "sense of rotation, 1 anticlockwise seen from outside towards the engine axis",
    .unit    = "1",
    .text    = "-side*sense_1",
    .source  = EQUAL_VELOCITY,
};
static const ts_formula sense_inward_formula = {
    .symbol  = "sense",
    .meaning = "sense of rotation, 1 anticlockwise seen from behind",
    .unit    = "1",
    .text    = "side*sense_1",
    .source  = EQUAL_VELOCITY,
};

/* What a mesh is about stands with the shaft that it drives; for bevels, shaft and gears are two
 * records of the file, and the shaft borrows. */
static void note_teeth(const ts_drive *drive, const ts_motion *motion, const ts_mesh *mesh,
                       ts_workings *workings)
{
    static const char *const symbols[2] = {"z_1", "z_2"};
    const uint32_t           gears[2]   = {mesh->driver, mesh->driven};
    const ts_node            of_shaft   = motion->train->shafts[mesh->driven_shaft].node;

    for (int g = 0; g < 2; g++) {
        const ts_tally *z = &motion->train->gears[gears[g]].teeth;

        ts_workings_about(workings, mesh->node, TS_EVERY_CONDITION);
        ts_note_value(
            workings, drive,
            &(ts_value_note){symbols[g], (double)z->value, "1", "teeth", z->standing, z->node});
        ts_workings_about(workings, of_shaft, TS_EVERY_CONDITION);
        if (mesh->node != of_shaft)
            ts_workings_borrow(workings, symbols[g], (double)z->value,
                               (ts_subject){mesh->node, TS_EVERY_CONDITION}, symbols[g]);
    }
}

static void solve_ratio(ts_motion *motion, const ts_mesh *mesh, ts_workings *workings)
{
    const ts_train *train = motion->train;
    const ts_tally  z[2]  = {train->gears[mesh->driver].teeth, train->gears[mesh->driven].teeth};
    const ts_shaft_motion *driver  = &motion->shafts[mesh->driver_shaft];
    ts_shaft_motion       *driven  = &motion->shafts[mesh->driven_shaft];
    const ts_rational      nothing = {0, 0};

    driven->ratio = z[0].value > 0 && z[1].value > 0
                        ? ts_rational_times(driver->ratio, ts_rational_of(z[0].value, z[1].value))
                        : nothing;
    if (!ts_rational_valid(driven->ratio))
        return;
    const double ratio_1 = ts_rational_value(driver->ratio);
    const double z_1 = (double)z[0].value, z_2 = (double)z[1].value;

    if (workings != NULL)
        ts_workings_borrow(workings, "ratio_1", ratio_1,
                           (ts_subject){train->shafts[mesh->driver_shaft].node, TS_EVERY_CONDITION},
                           "ratio");
    TS_STEP(workings, ratio_formula, ts_rational_value(driven->ratio), ratio_1, z_1, z_2);
}

static void solve_sense(const ts_drive *drive, ts_motion *motion, const ts_mesh *mesh,
                        ts_workings *workings)
{
    const ts_shaft *shaft   = &motion->train->shafts[mesh->driven_shaft];
    ts_node         lender  = motion->train->shafts[mesh->driver_shaft].node;
    const double    sense_1 = motion->shafts[mesh->driver_shaft].sense;
    double          sense   = 0.0;

    ts_workings_borrow(workings, "sense_1", sense_1, (ts_subject){lender, TS_EVERY_CONDITION},
                       "sense");
    if (mesh->kind == TS_MESH_CYLINDRICAL) {
        sense = TS_STEP(workings, sense_external_formula, -sense_1, sense_1);
    } else {
        const ts_pick *pick = &mesh->bevels->side;
        const double   side = pick->value == TS_REAR ? 1.0 : -1.0;

        ts_note_value(workings, drive,
                      &(ts_value_note){"side", side, "1", "side", pick->standing, pick->node});
        sense = shaft->kind == TS_SHAFT_TOWER
                    ? TS_STEP(workings, sense_outward_formula, -side * sense_1, side, sense_1)
                    : TS_STEP(workings, sense_inward_formula, side * sense_1, side, sense_1);
    }
    motion->shafts[mesh->driven_shaft].sense = (sense > 0.0) - (sense < 0.0);
}

static void start_at_spool(const ts_drive *drive, const ts_shaft *shaft, ts_shaft_motion *motion,
                           ts_workings *workings)
{
    const ts_pick *turns = &drive->spools[shaft->spool].turns;
    const bool     known = turns->standing == TS_GIVEN || turns->standing == TS_ASSUMED;

    motion->ratio = ts_rational_of(1, 1);
    motion->sense = !known ? 0 : turns->value == TS_CCW ? 1 : -1;
    if (workings == NULL)
        return;
    ts_workings_about(workings, shaft->node, TS_EVERY_CONDITION);
    ts_workings_assumed(workings, "ratio", 1.0, "1", "the spool is what speeds are referred to");
    ts_note_value(
        workings, drive,
        &(ts_value_note){"sense", motion->sense, "1", "turns", turns->standing, turns->node});
}

static void diagnose_ratio(const ts_drive *drive, const ts_motion *motion, const ts_shaft *shaft,
                           ts_diagnostics *list)
{
    const ts_mesh      *mesh  = &motion->train->meshes[shaft->mesh];
    const ts_tally      z_1   = motion->train->gears[mesh->driver].teeth;
    const ts_tally      z_2   = motion->train->gears[mesh->driven].teeth;
    const bool          known = z_1.value > 0 && z_2.value > 0;
    const ts_diagnostic rest  = {
         .code     = known ? "ratio-overflow" : "teeth-unknown",
         .line     = ts_node_line(drive, mesh->node),
         .column   = ts_node_column(drive, mesh->node),
         .expected = known ? "a chain of tooth numbers whose ratio is a fraction of 63-bit numbers"
                           : "the tooth numbers of both gears, at least 1",
    };

    if (known)
        ts_diagnose_format(list, &rest,
                           "the ratio of %s to its spool does not fit into 64 bits any more",
                           shaft->name);
    else
        ts_diagnose_format(list, &rest, "the ratio of %s to its spool cannot be computed",
                           shaft->name);
}

void ts_motion_turning(const ts_drive *drive, ts_motion *motion, ts_diagnostics *list,
                       ts_workings *workings)
{
    const ts_train *train = motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft *shaft = &train->shafts[s];

        motion->shafts[s] = (ts_shaft_motion){0};
        if (shaft->mesh == TS_NOWHERE) {
            start_at_spool(drive, shaft, &motion->shafts[s], workings);
            continue;
        }
        const ts_mesh *mesh = &train->meshes[shaft->mesh];

        if (workings != NULL)
            note_teeth(drive, motion, mesh, workings);
        solve_ratio(motion, mesh, workings);
        solve_sense(drive, motion, mesh, workings);
        /* What follows a ratio that cannot be had has none either; one message is enough. */
        if (!ts_rational_valid(motion->shafts[s].ratio) &&
            ts_rational_valid(motion->shafts[mesh->driver_shaft].ratio))
            diagnose_ratio(drive, motion, shaft, list);
    }
}
