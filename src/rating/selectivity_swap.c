/* rating/selectivity_swap.c: what would the neck of one pad do in another one? */
#include "rating/selectivity.h"

#include <math.h>
#include <string.h>

static const ts_word *spline_of(const ts_select *select, const ts_guard *guard)
{
    const ts_train *train = select->teeth->motion->train;
    return &select->drive->accessories[train->pads[guard->pad].accessory].spline;
}

/* A shaft end with another spline does not go into the pad; where one is not told, it might. */
static bool fits(const ts_select *select, const ts_guard *guard, const ts_guard *other)
{
    if (guard->pad == TS_NOWHERE || other->pad == TS_NOWHERE)
        return false;
    const ts_word *here = spline_of(select, guard), *there = spline_of(select, other);

    return here->text == NULL || there->text == NULL || strcmp(here->text, there->text) == 0;
}

static ts_swap_verdict judge(const ts_select *select, const ts_guard *guard, ts_neck_limits band)
{
    const double f = select->f, wall = guard->once.T;

    if (isnan(band.low) || isnan(band.high) || isnan(guard->legit.T) || isnan(wall) || isnan(f))
        return TS_SWAP_NOT_KNOWN;
    if (band.high >= wall)
        return TS_SWAP_LATE;
    if (band.low <= guard->legit.T)
        return TS_SWAP_EARLY;
    return band.low >= f * guard->legit.T && band.high * f <= wall ? TS_SWAP_HOLDS : TS_SWAP_NEAR;
}

ts_swap ts_select_swapped(const ts_select *select, const ts_guard *guard, const ts_guard *other)
{
    const ts_neck_limits band = other->neck == TS_NOWHERE
                                    ? (ts_neck_limits){(double)NAN, (double)NAN}
                                    : select->necks->items[other->neck].band;

    return (ts_swap){
        .verdict = judge(select, guard, band), .fits = fits(select, guard, other), .band = band};
}
