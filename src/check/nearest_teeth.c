/* check/nearest_teeth.c: which tooth number of one gear would bring every pad into its band? */
#include "check/nearest_teeth.h"

#include "check/visit.h"

#define TEETH_FEWEST 12

/* Does the speed of `other` change when the main gear of `shaft` gets other teeth?  A train that
 * leaves the shaft by that same gear does not notice: the gear is an idler to it. */
static bool depends(const ts_train *train, uint32_t other, uint32_t shaft)
{
    while (other != shaft) {
        if (train->shafts[other].kind != TS_SHAFT_BOX || ts_is_box_input(train, other))
            return false;
        const ts_mesh *mesh = &train->meshes[train->shafts[other].mesh];
        if (mesh->driver_shaft == shaft)
            return train->gears[mesh->driver].role != TS_GEAR_MAIN;
        other = mesh->driver_shaft;
    }
    return true;
}

static bool fits(const ts_check *check, const ts_pad *pad, double factor)
{
    const ts_accessory *accessory = ts_accessory_at(check, pad);
    const double        margin    = 1.0 + check->drive->limits.speed_margin.value;
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_span *band = &accessory->speed[c];
        const double   n    = factor * ts_shaft_speed(check, pad->shaft, c);
        if (band->standing == TS_ABSENT)
            continue;
        if (!(n >= band->low * margin || band->low <= 0.0) || !(n * margin <= band->high))
            return false;
    }
    return true;
}

static bool all_fit(const ts_check *check, uint32_t shaft, double factor)
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->pad_count; i++) {
        const ts_pad *pad = &train->pads[i];
        if (ts_accessory_at(check, pad) == NULL || !depends(train, pad->shaft, shaft))
            continue;
        if (!fits(check, pad, factor))
            return false;
    }
    return true;
}

int ts_nearest_teeth(const ts_check *check, uint32_t shaft)
{
    const ts_train *train = check->train;
    if (train->shafts[shaft].kind != TS_SHAFT_BOX || ts_is_box_input(train, shaft))
        return 0;
    const ts_mesh *mesh  = &train->meshes[train->shafts[shaft].mesh];
    const int      teeth = (int)train->gears[mesh->driven].teeth.value;
    for (int step = 1; step <= 2 * teeth; step++) {
        const int fewer = teeth - step, more = teeth + step;
        if (fewer >= TEETH_FEWEST && 3 * fewer >= teeth &&
            all_fit(check, shaft, (double)teeth / fewer))
            return fewer;
        if (all_fit(check, shaft, (double)teeth / more))
            return more;
    }
    return 0;
}
