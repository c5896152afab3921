/* power/power.c: who drives whom, with what torque, and which flank carries it? */
#include "power/power.h"

#include "motion/value_note.h"
#include "power/power_parts.h"

/* The largest sum: all terms of one shaft, all pads of a drive, or all its meshes. */
static size_t terms_most(const ts_train *train)
{
    const size_t pads = train->pad_count, meshes = train->mesh_count;

    return pads + meshes + 1;
}

/* Backwards, so that every list runs forwards. */
static void link_meshes(const ts_train *train, const ts_power_order *order)
{
    for (uint32_t s = 0; s < train->shaft_count; s++)
        order->first_mesh[s] = TS_NOWHERE;
    for (uint32_t m = train->mesh_count; m-- > 0;) {
        const uint32_t driver = train->meshes[m].driver_shaft;

        order->next_mesh[m]       = order->first_mesh[driver];
        order->first_mesh[driver] = m;
    }
}

ts_status ts_power_prepare(const ts_drive *drive, const ts_motion *motion, ts_arena *arena,
                           ts_power *out)
{
    const ts_train *train      = motion->train;
    const size_t    conditions = motion->condition_count;
    ts_power_order *order      = TS_TAKE(arena, ts_power_order, 1);

    *out = (ts_power){
        .motion          = motion,
        .spool_count     = (uint32_t)drive->spool_count,
        .mesh            = TS_TAKE(arena, ts_mesh_load, conditions * train->mesh_count),
        .pad             = TS_TAKE(arena, ts_pad_load, conditions * train->pad_count),
        .spool           = TS_TAKE(arena, ts_spool_load, conditions * drive->spool_count),
        .T               = TS_TAKE(arena, double, conditions * train->shaft_count),
        .shaft_imbalance = TS_TAKE(arena, double, conditions * train->shaft_count),
        .order           = order,
    };
    if (order == NULL || out->mesh == NULL || out->pad == NULL || out->spool == NULL ||
        out->T == NULL || out->shaft_imbalance == NULL)
        return TS_NO_MEMORY;
    order->first_mesh = TS_TAKE(arena, uint32_t, train->shaft_count);
    order->next_mesh  = TS_TAKE(arena, uint32_t, train->mesh_count);
    order->terms      = TS_TAKE(arena, ts_input, terms_most(train));
    if (order->first_mesh == NULL || order->next_mesh == NULL || order->terms == NULL)
        return TS_NO_MEMORY;
    link_meshes(train, order);
    return ts_oil_units_prepare(drive, motion, arena, &out->units);
}

static void note_losses(const ts_drive *drive, const ts_train *train, ts_workings *workings)
{
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        ts_workings_about(workings, train->meshes[m].node, TS_EVERY_CONDITION);
        TS_NOTE_MEASURE(workings, drive, "loss", train->meshes[m].loss, "1", "loss");
    }
}

ts_status ts_power_solve(const ts_drive *drive, ts_power *power, ts_workings *workings)
{
    const ts_motion *motion = power->motion;
    const ts_train  *train  = motion->train;

    ts_oil_units_solve(&power->units, workings);
    if (workings != NULL)
        note_losses(drive, train, workings);
    for (uint32_t i = 0; i < motion->condition_count; i++) {
        const ts_power_case c = {
            .drive           = drive,
            .motion          = motion,
            .train           = train,
            .power           = power,
            .workings        = workings,
            .condition       = i,
            .speed           = &motion->speed[(size_t)i * train->shaft_count],
            .mesh            = &power->mesh[(size_t)i * train->mesh_count],
            .pad             = &power->pad[(size_t)i * train->pad_count],
            .spool           = &power->spool[(size_t)i * power->spool_count],
            .T               = &power->T[(size_t)i * train->shaft_count],
            .shaft_imbalance = &power->shaft_imbalance[(size_t)i * train->shaft_count],
        };

        ts_power_pads(&c);
        ts_power_torques(&c);
        ts_power_balances(&c);
    }
    return TS_OK;
}
