/* pump/drive_pumps.c: which oil pumps and breathers has a drive? */
#include "pump/drive_pumps_parts.h"

/* ---- memory ---------------------------------------------------------------------------------- */

static ts_status take_pack(const ts_drive *drive, const ts_train *train, int32_t a, ts_arena *arena,
                           ts_pack *out)
{
    const ts_pumps *told     = &drive->accessories[a].pumps;
    const size_t    dips     = 1 + told->attitude_count;
    const bool      windmill = ts_measure_known(told->windmill);

    *out        = (ts_pack){.told      = told,
                            .accessory = a,
                            .pad       = ts_train_pad_of(train, a),
                            .rows      = (uint32_t)drive->condition_count + windmill};
    out->cases  = TS_TAKE(arena, ts_pack_case, (size_t)out->rows * TS_PACK_ELEMENTS);
    out->states = TS_TAKE(arena, ts_pack_state, out->rows);
    out->dips   = TS_TAKE(arena, ts_pack_dip, dips * TS_PACK_ELEMENTS);
    out->taken  = TS_TAKE(arena, double, dips *(told->sump_count + 1));
    return out->cases != NULL && out->states != NULL && out->dips != NULL && out->taken != NULL
               ? TS_OK
               : TS_NO_MEMORY;
}

static ts_status take_breather(const ts_drive *drive, const ts_train *train, int32_t a,
                               ts_arena *arena, ts_breather *out)
{
    *out = (ts_breather){.told      = &drive->accessories[a].separator,
                         .accessory = a,
                         .pad       = ts_train_pad_of(train, a),
                         .cases     = TS_TAKE(arena, ts_breather_case, drive->condition_count)};
    return out->cases != NULL ? TS_OK : TS_NO_MEMORY;
}

ts_status ts_oil_units_prepare(const ts_drive *drive, const ts_motion *motion, ts_arena *arena,
                               ts_oil_units *out)
{
    size_t packs = 0, breathers = 0;

    for (size_t a = 0; a < drive->accessory_count; a++) {
        packs += drive->accessories[a].pumps.node != 0;
        breathers += drive->accessories[a].separator.node != 0;
    }
    *out             = (ts_oil_units){.drive = drive, .motion = motion};
    out->packs       = TS_TAKE(arena, ts_pack, packs + 1);
    out->breathers   = TS_TAKE(arena, ts_breather, breathers + 1);
    ts_status status = out->packs != NULL && out->breathers != NULL ? TS_OK : TS_NO_MEMORY;
    for (size_t a = 0; a < drive->accessory_count && status == TS_OK; a++) {
        if (drive->accessories[a].pumps.node != 0)
            status =
                take_pack(drive, motion->train, (int32_t)a, arena, &out->packs[out->pack_count++]);
        if (status == TS_OK && drive->accessories[a].separator.node != 0)
            status = take_breather(drive, motion->train, (int32_t)a, arena,
                                   &out->breathers[out->breather_count++]);
    }
    return status;
}

/* ---- solving --------------------------------------------------------------------------------- */

void ts_oil_units_solve(ts_oil_units *units, ts_workings *workings)
{
    const ts_units_desk desk = {units, workings};

    for (uint32_t i = 0; i < units->pack_count; i++)
        ts_pack_solve(&desk, &units->packs[i]);
    for (uint32_t i = 0; i < units->breather_count; i++)
        ts_breather_solve(&desk, &units->breathers[i]);
}

const ts_pack *ts_pack_of(const ts_oil_units *units, int32_t accessory)
{
    for (uint32_t i = 0; i < units->pack_count; i++)
        if (units->packs[i].accessory == accessory)
            return &units->packs[i];
    return NULL;
}

const ts_breather *ts_breather_of(const ts_oil_units *units, int32_t accessory)
{
    for (uint32_t i = 0; i < units->breather_count; i++)
        if (units->breathers[i].accessory == accessory)
            return &units->breathers[i];
    return NULL;
}
