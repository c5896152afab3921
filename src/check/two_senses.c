/* check/two_senses.c: do both ends of one shaft demand what one shaft cannot give? */
#include "check/two_senses.h"

#include "check/visit.h"

static const ts_accessory *accessory_on(const ts_check *check, uint32_t shaft, ts_face_side face)
{
    const uint32_t pad = check->train->shafts[shaft].pad[face];
    return pad == TS_NOWHERE ? NULL : ts_accessory_at(check, &check->train->pads[pad]);
}

bool ts_carries_two(const ts_check *check, uint32_t shaft)
{
    return accessory_on(check, shaft, TS_FRONT) != NULL &&
           accessory_on(check, shaft, TS_REAR) != NULL;
}

static bool demands_one(const ts_accessory *accessory)
{
    const bool known =
        accessory->turns.standing == TS_GIVEN || accessory->turns.standing == TS_ASSUMED;
    return known && accessory->turns.value != TS_EITHER;
}

bool ts_wants_two_senses(const ts_check *check, uint32_t shaft)
{
    if (!ts_carries_two(check, shaft))
        return false;
    const ts_accessory *front = accessory_on(check, shaft, TS_FRONT);
    const ts_accessory *rear  = accessory_on(check, shaft, TS_REAR);
    return demands_one(front) && demands_one(rear) && front->turns.value == rear->turns.value;
}
