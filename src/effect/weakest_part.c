/* effect/weakest_part.c: what breaks first between a spool and a shaft that is held? */
#include "effect/effect_parts.h"

#include <math.h>

/* Told at the spool: without losses every part on the way carries the same power there. */
static double at_spool(const ts_effects *effects, uint32_t shaft, double T)
{
    return T * ts_rational_value(effects->motion->shafts[shaft].ratio);
}

static bool lets_go(ts_part_kind kind)
{
    return kind == TS_PART_ROOT || kind == TS_PART_SPLINE || kind == TS_PART_SHAFT;
}

ts_status ts_weakest_prepare(ts_effects *effects, ts_arena *arena)
{
    const ts_train *train = effects->motion->train;

    effects->weakest = TS_TAKE(arena, ts_weakest, (size_t)train->shaft_count + 1);
    return effects->weakest == NULL ? TS_NO_MEMORY : TS_OK;
}

static void take_if_weaker(ts_effects *effects, uint32_t i)
{
    const ts_part_capacity *part = &effects->select->parts.items[i];
    const uint32_t          k    = ts_part_shaft(effects->motion->train, part);
    const double            T    = at_spool(effects, k, part->T);
    ts_weakest             *here = &effects->weakest[k];

    if (isnan(here->T) || T < here->T)
        *here = (ts_weakest){i, T};
}

/* Roots first: a shaft whose mesh has none that is known stays unknown, whatever else stands on it.
 * Then each shaft hears from its driver, which stands before it. */
void ts_weakest_solve(ts_effects *effects)
{
    const ts_train           *train = effects->motion->train;
    const ts_part_capacities *parts = &effects->select->parts;

    for (uint32_t k = 0; k < train->shaft_count; k++)
        effects->weakest[k] = (ts_weakest){
            TS_NOWHERE, train->shafts[k].kind == TS_SHAFT_SPOOL ? (double)INFINITY : (double)NAN};
    for (uint32_t i = 0; i < parts->count; i++)
        if (parts->items[i].kind == TS_PART_ROOT && isfinite(parts->items[i].T))
            take_if_weaker(effects, i);
    for (uint32_t i = 0; i < parts->count; i++) {
        const ts_part_capacity *part = &parts->items[i];
        if (!part->of_pad && lets_go(part->kind) && isfinite(part->T) &&
            !isnan(effects->weakest[ts_part_shaft(train, part)].T))
            take_if_weaker(effects, i);
    }
    for (uint32_t k = 0; k < train->shaft_count; k++) {
        if (train->shafts[k].mesh == TS_NOWHERE)
            continue;
        const ts_weakest before =
            effects->weakest[train->meshes[train->shafts[k].mesh].driver_shaft];
        if (isnan(before.T) || before.T < effects->weakest[k].T)
            effects->weakest[k] = before;
    }
}

static ts_suspect of_neck(const ts_effects *effects, uint32_t neck, uint32_t shaft)
{
    const ts_drive_neck *one = &effects->select->necks->items[neck];

    return (ts_suspect){.kind = one->pad == TS_NOWHERE ? TS_SUSPECT_TUBE : TS_SUSPECT_PAD,
                        .low  = at_spool(effects, shaft, one->band.low),
                        .high = at_spool(effects, shaft, one->band.high),
                        .part = TS_NOWHERE};
}

/* The one of those on the way that must break; `sure` where the others cannot have come before. */
ts_suspect ts_suspect_of(const ts_effects *effects, const ts_held *held)
{
    const ts_necks *necks = effects->select->necks;
    const uint32_t  k = held->shaft, tube = ts_effect_tube(effects->motion->train, k);
    ts_suspect      all[3], best;
    int             count = 0;

    if (held->neck != TS_NOWHERE)
        all[count++] = of_neck(effects, held->neck, k);
    if (necks->of_shaft[tube] != TS_NOWHERE && !held->tube_holds)
        all[count++] = of_neck(effects, necks->of_shaft[tube], tube);
    all[count++] = (ts_suspect){.kind = TS_SUSPECT_PART,
                                .low  = effects->weakest[k].T,
                                .high = effects->weakest[k].T,
                                .part = effects->weakest[k].part};
    best         = all[0];
    for (int i = 1; i < count; i++)
        if (all[i].high < best.high || isnan(best.high))
            best = all[i];
    best.sure = isfinite(best.high);
    best.next = INFINITY;
    for (int i = 0; i < count; i++) {
        if (all[i].kind == best.kind)
            continue;
        best.sure = best.sure && best.high < all[i].low;
        best.next =
            isnan(all[i].low) || isnan(best.next) ? (double)NAN : fmin(best.next, all[i].low);
    }
    const double ratio = ts_rational_value(effects->motion->shafts[k].ratio);
    best.low /= ratio;
    best.high /= ratio;
    best.next /= ratio;
    best.shaft = best.kind == TS_SUSPECT_PAD ? TS_NOWHERE
                 : best.part != TS_NOWHERE   ? ts_part_shaft(effects->motion->train,
                                                             &effects->select->parts.items[best.part])
                                             : tube;
    return best;
}
