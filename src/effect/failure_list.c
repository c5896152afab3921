/* effect/failure_list.c: which part may fail in which way, and which effects have a name? */
#include "effect/effect_parts.h"

#include <string.h>

static const struct {
    const char *name;
    ts_failing  of;
} modes[TS_FAILURE_MODES] = {
    [TS_FAILS_TEETH]        = {"teeth lost", TS_FAILING_MESH},
    [TS_FAILS_JET]          = {"jet blocked", TS_FAILING_MESH},
    [TS_FAILS_SHEAR]        = {"sheared", TS_FAILING_SHAFT},
    [TS_FAILS_BEARING]      = {"bearing lost", TS_FAILING_SHAFT},
    [TS_FAILS_SHAFT_JAM]    = {"jammed", TS_FAILING_SHAFT},
    [TS_FAILS_TUBE_SPLINE]  = {"spline worn through", TS_FAILING_SHAFT},
    [TS_FAILS_TUBE_NECK]    = {"neck broken", TS_FAILING_SHAFT},
    [TS_FAILS_TUBE_HOLDS]   = {"neck too strong", TS_FAILING_SHAFT},
    [TS_FAILS_SEIZURE]      = {"seized", TS_FAILING_PAD},
    [TS_FAILS_NECK]         = {"neck broken", TS_FAILING_PAD},
    [TS_FAILS_NECK_HOLDS]   = {"neck too strong", TS_FAILING_PAD},
    [TS_FAILS_SPLINE]       = {"spline worn through", TS_FAILING_PAD},
    [TS_FAILS_DISCONNECT]   = {"let go", TS_FAILING_PAD},
    [TS_FAILS_CLUTCH_IN]    = {"clutch stuck in", TS_FAILING_PAD},
    [TS_FAILS_CLUTCH_SLIPS] = {"clutch slips", TS_FAILING_PAD},
    [TS_FAILS_LEAK]         = {"leaks", TS_FAILING_PAD},
    [TS_FAILS_COVER]        = {"cover missing", TS_FAILING_PAD},
};

const char *ts_failure_name(ts_failure_mode mode)
{
    return modes[mode].name;
}

ts_failing ts_failing_of(ts_failure_mode mode)
{
    return modes[mode].of;
}

bool ts_effect_has_clutch(const ts_drive *drive, const ts_pad *pad)
{
    return pad->accessory >= 0 && ts_pick_known(drive->accessories[pad->accessory].clutch) &&
           drive->accessories[pad->accessory].clutch.value == TS_CLUTCH_OVERRUNNING;
}

/* Whatever drives its pad in some condition, whatever else it is for. */
bool ts_effect_is_starter(const ts_drive *drive, const ts_pad *pad)
{
    if (pad->accessory < 0)
        return false;
    const ts_accessory *one = &drive->accessories[pad->accessory];
    for (size_t c = 0; c < drive->condition_count; c++)
        if (ts_measure_known(one->drives[c]) && one->drives[c].value > 0.0)
            return true;
    return false;
}

static void add(ts_effects *effects, ts_failure_mode mode, uint32_t at)
{
    effects->failures[effects->failure_count++] = (ts_failure){mode, at};
}

/* ---- what a part cannot do --------------------------------------------------------------------
 */

static bool dips(const ts_drive *drive, const ts_train *train, uint32_t m)
{
    const ts_mesh        *mesh = &train->meshes[m];
    const ts_spool_drive *one  = &drive->drive[train->shafts[mesh->driven_shaft].drive];
    const ts_pick         way =
        mesh->bevels == &one->take_off.bevels ? one->take_off.lubrication : one->box.lubrication;

    return ts_pick_known(way) && way.value == TS_OILED_BY_DIPPING;
}

static const char *shaft_lacks(const ts_train *train, const ts_necks *necks, ts_failure failure)
{
    const bool tower = train->shafts[failure.at].kind == TS_SHAFT_TOWER;

    if (train->shafts[failure.at].kind == TS_SHAFT_SPOOL)
        return "a spool is part of the engine, and what is asked here is the drive";
    if (failure.mode == TS_FAILS_TUBE_SPLINE)
        return tower ? NULL
                     : "it is one with its gears; the splines of its pads are told with them";
    if (failure.mode != TS_FAILS_TUBE_NECK && failure.mode != TS_FAILS_TUBE_HOLDS)
        return NULL;
    if (!tower)
        return "a shaft of a box has no neck of its own; those of its pads are told with them";
    return necks->of_shaft[failure.at] != TS_NOWHERE ? NULL
                                                     : "the file gives this radial shaft no neck";
}

static const char *empty_pad_lacks(const ts_pad *pad, ts_failure failure)
{
    if (failure.mode != TS_FAILS_LEAK && failure.mode != TS_FAILS_COVER)
        return "no accessory stands on it";
    return pad->use == TS_PAD_COVER || pad->use == TS_PAD_HAND
               ? NULL
               : "nothing closes it, as A2-pad-sealed finds";
}

static const char *pad_lacks(const ts_drive *drive, const ts_train *train, const ts_necks *necks,
                             ts_failure failure)
{
    const ts_pad *pad = &train->pads[failure.at];

    if (pad->accessory < 0)
        return empty_pad_lacks(pad, failure);
    switch (failure.mode) {
    case TS_FAILS_NECK:
    case TS_FAILS_NECK_HOLDS:
        return necks->of_pad[failure.at] != TS_NOWHERE ? NULL : "the file gives it no neck";
    case TS_FAILS_CLUTCH_IN:
    case TS_FAILS_CLUTCH_SLIPS:
        return ts_effect_has_clutch(drive, pad) ? NULL : "it has no overrunning clutch";
    case TS_FAILS_COVER:
        return "its accessory closes the pad";
    default:
        return NULL;
    }
}

const char *ts_failure_lacking(const ts_drive *drive, const ts_train *train, const ts_necks *necks,
                               ts_failure failure)
{
    switch (ts_failing_of(failure.mode)) {
    case TS_FAILING_MESH:
        return failure.mode == TS_FAILS_JET && dips(drive, train, failure.at)
                   ? "its teeth dip into the oil, and no jet feeds them"
                   : NULL;
    case TS_FAILING_SHAFT:
        return shaft_lacks(train, necks, failure);
    default:
        return pad_lacks(drive, train, necks, failure);
    }
}

/* ---- the list ---------------------------------------------------------------------------------
 */

/* The modes stand in the order of ts_failure_mode. */
static void list_part(ts_effects *effects, ts_failing of, uint32_t at)
{
    for (int mode = 0; mode < TS_FAILURE_MODES; mode++) {
        const ts_failure one = {(ts_failure_mode)mode, at};
        if (ts_failing_of(one.mode) == of &&
            ts_failure_lacking(effects->drive, effects->motion->train, effects->select->necks,
                               one) == NULL)
            add(effects, one.mode, at);
    }
}

#define MODES_OF_A_PART 9

ts_status ts_failures_list(ts_effects *effects, ts_arena *arena)
{
    const ts_train *train = effects->motion->train;
    const size_t    room =
        MODES_OF_A_PART * ((size_t)train->mesh_count + train->shaft_count + train->pad_count);

    effects->failures = TS_TAKE(arena, ts_failure, room > 0 ? room : 1);
    if (effects->failures == NULL)
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        list_part(effects, TS_FAILING_MESH, m);
    for (uint32_t k = 0; k < train->shaft_count; k++)
        list_part(effects, TS_FAILING_SHAFT, k);
    for (uint32_t p = 0; p < train->pad_count; p++)
        list_part(effects, TS_FAILING_PAD, p);
    return TS_OK;
}

uint32_t ts_effect_tube(const ts_train *train, uint32_t k)
{
    while (train->shafts[k].mesh != TS_NOWHERE && train->shafts[k].kind != TS_SHAFT_TOWER)
        k = train->meshes[train->shafts[k].mesh].driver_shaft;
    return k;
}

/* ---- chips ----------------------------------------------------------------------------------- */

static ts_plug of_lines(const ts_sump *sump)
{
    size_t told = 0, there = 0;

    for (size_t i = 0; i < sump->element_count; i++) {
        const ts_pick plug = sump->elements[i].chip_plug;
        told += ts_pick_known(plug);
        there += ts_pick_known(plug) && plug.value == TS_YES;
    }
    if (there == sump->element_count)
        return TS_PLUG_THERE;
    return there > 0 ? TS_PLUG_SOME : told > 0 ? TS_PLUG_NONE : TS_PLUG_NOT_TOLD;
}

ts_chip_way ts_chip_way_from(const ts_drive *drive, uint32_t number, bool take_off)
{
    const ts_spool_drive *one  = &drive->drive[number];
    const ts_pick         plug = take_off ? one->take_off.chip_plug : one->box.chip_plug;
    const ts_sump        *sump = take_off ? one->take_off.sump : one->box.sump;
    ts_chip_way           way  = {.take_off = take_off, .drive = number};

    if (ts_pick_known(plug) && plug.value == TS_YES) {
        way.plug = TS_PLUG_THERE;
    } else if (sump != NULL && sump->element_count > 0) {
        way.sump = sump;
        way.plug = of_lines(sump);
    } else if (ts_pick_known(plug)) {
        way.plug = TS_PLUG_NONE;
    }
    return way;
}

ts_chip_way ts_chip_way_of(const ts_drive *drive, const ts_train *train, ts_failure failure)
{
    const ts_failing of = ts_failing_of(failure.mode);
    const uint32_t   k  = of == TS_FAILING_MESH    ? train->meshes[failure.at].driven_shaft
                          : of == TS_FAILING_SHAFT ? failure.at
                                                   : train->pads[failure.at].shaft;

    return ts_chip_way_from(drive, train->shafts[k].drive,
                            of == TS_FAILING_MESH && train->shafts[k].kind == TS_SHAFT_TOWER);
}

/* ---- effects --------------------------------------------------------------------------------- */

const char *ts_effect_service(const ts_accessory *accessory)
{
    return accessory->serves.text != NULL && accessory->serves.text[0] != '\0'
               ? accessory->serves.text
               : accessory->name;
}

static bool is_listed(const ts_effects *effects, const char *service)
{
    for (uint32_t e = 0; e < effects->effect_count; e++)
        if (effects->effects[e].kind == TS_EFFECT_SERVICE &&
            strcmp(effects->effects[e].service, service) == 0)
            return true;
    return false;
}

static bool any_pad(const ts_effects *effects, bool (*is)(const ts_drive *, const ts_pad *))
{
    const ts_train *train = effects->motion->train;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (is(effects->drive, &train->pads[p]))
            return true;
    return false;
}

ts_status ts_effects_list(ts_effects *effects, ts_arena *arena)
{
    const ts_train *train = effects->motion->train;

    effects->effects = TS_TAKE(arena, ts_effect, TS_EFFECT_KINDS + train->pad_count);
    if (effects->effects == NULL)
        return TS_NO_MEMORY;
    effects->effects[effects->effect_count++] = (ts_effect){TS_EFFECT_ENGINE, NULL};
    if (any_pad(effects, ts_effect_is_starter))
        effects->effects[effects->effect_count++] = (ts_effect){TS_EFFECT_START, NULL};
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const int32_t a = train->pads[p].accessory;
        if (a < 0 || effects->drive->accessories[a].purpose.value != TS_FOR_AIRCRAFT)
            continue;
        const char *service = ts_effect_service(&effects->drive->accessories[a]);
        if (!is_listed(effects, service))
            effects->effects[effects->effect_count++] = (ts_effect){TS_EFFECT_SERVICE, service};
    }
    effects->effects[effects->effect_count++] = (ts_effect){TS_EFFECT_OIL, NULL};
    if (any_pad(effects, ts_effect_has_clutch))
        effects->effects[effects->effect_count++] = (ts_effect){TS_EFFECT_STARTER, NULL};
    return TS_OK;
}
