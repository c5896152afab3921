/* effect/effect.c: what may fail in a drive, what does each failure leave, what causes what? */
#include "effect/effect.h"

#include "effect/effect_parts.h"

ts_status ts_effects_each(ts_effects *effects, ts_arena *arena)
{
    effects->outcomes = TS_TAKE(arena, ts_outcome, (size_t)effects->failure_count + 1);
    if (effects->outcomes == NULL)
        return TS_NO_MEMORY;
    for (uint32_t i = 0; i < effects->failure_count; i++) {
        const ts_status status =
            ts_outcome_take(effects->motion->train, arena, &effects->outcomes[i]);
        if (status != TS_OK)
            return status;
        ts_outcome_solve(effects, &effects->failures[i], 1, &effects->outcomes[i]);
    }
    return TS_OK;
}

ts_status ts_effects_prepare(const ts_drive *drive, const ts_motion *motion,
                             const ts_select *select, ts_arena *arena, ts_effects *out)
{
    *out             = (ts_effects){.drive = drive, .motion = motion, .select = select};
    ts_status status = ts_failures_list(out, arena);
    if (status == TS_OK)
        status = ts_effects_list(out, arena);
    if (status == TS_OK)
        status = ts_weakest_prepare(out, arena);
    if (status == TS_OK)
        ts_weakest_solve(out);
    return status;
}

ts_status ts_effects_solve(const ts_drive *drive, const ts_motion *motion, const ts_select *select,
                           ts_arena *arena, ts_effects *out)
{
    ts_status status = ts_effects_prepare(drive, motion, select, arena, out);
    if (status == TS_OK)
        status = ts_effects_each(out, arena);
    if (status == TS_OK)
        status = ts_causes_list(out, arena);
    return status;
}
