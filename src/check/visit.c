/* check/visit.c: where does a shaft stand in its train, and what is it called? */
#include "check/visit.h"

bool ts_accessory_starts(const ts_check *check, const ts_accessory *accessory)
{
    if (accessory->purpose.value == TS_FOR_START)
        return true;
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (ts_accessory_drives(accessory, c))
            return true;
    return false;
}

uint32_t ts_box_of(const ts_train *train, uint32_t shaft)
{
    while (train->shafts[shaft].kind == TS_SHAFT_BOX) {
        if (ts_is_box_input(train, shaft))
            return shaft;
        shaft = ts_driver_of(train, shaft);
    }
    return TS_NOWHERE;
}

uint32_t ts_meshes_to_input(const ts_train *train, uint32_t shaft)
{
    uint32_t count = 0;
    while (train->shafts[shaft].kind == TS_SHAFT_BOX && !ts_is_box_input(train, shaft)) {
        shaft = ts_driver_of(train, shaft);
        count++;
    }
    return count;
}

const char *ts_mesh_name(ts_check *check, uint32_t mesh)
{
    const ts_train *train  = check->train;
    const ts_mesh  *record = &train->meshes[mesh];
    return ts_phrase(
        check, "%s (%d teeth) with %s (%d teeth)", train->shafts[record->driver_shaft].name,
        (int)train->gears[record->driver].teeth.value, train->shafts[record->driven_shaft].name,
        (int)train->gears[record->driven].teeth.value);
}

const char *ts_gear_name(ts_check *check, uint32_t gear)
{
    const ts_gear *record = &check->train->gears[gear];
    const char    *shaft  = check->train->shafts[record->shaft].name;
    if (record->step == 0)
        return shaft;
    return record->step == 1 ? ts_phrase(check, "%s (step)", shaft)
                             : ts_phrase(check, "%s (step %d)", shaft, (int)record->step);
}

const char *ts_face_name(ts_face_side face)
{
    return face == TS_FRONT ? "front" : "rear";
}

void ts_visit_packs(ts_check *check, void (*judge)(ts_check *check, const ts_pack *pack))
{
    const ts_oil_units *units = &check->power->units;

    for (uint32_t i = 0; i < units->pack_count; i++)
        if (units->packs[i].missing == NULL)
            judge(check, &units->packs[i]);
    ts_skip(check, "no accessory tells its `pumps`, or not enough of them");
}
