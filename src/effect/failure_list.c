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

static void list_shaft(ts_effects *effects, uint32_t k)
{
    const ts_train *train = effects->motion->train;

    add(effects, TS_FAILS_SHEAR, k);
    add(effects, TS_FAILS_BEARING, k);
    add(effects, TS_FAILS_SHAFT_JAM, k);
    if (train->shafts[k].kind != TS_SHAFT_TOWER)
        return;
    add(effects, TS_FAILS_TUBE_SPLINE, k);
    if (effects->select->necks->of_shaft[k] == TS_NOWHERE)
        return;
    add(effects, TS_FAILS_TUBE_NECK, k);
    add(effects, TS_FAILS_TUBE_HOLDS, k);
}

static void list_pad(ts_effects *effects, uint32_t p)
{
    const ts_pad *pad = &effects->motion->train->pads[p];

    if (pad->accessory < 0) {
        if (pad->use == TS_PAD_COVER || pad->use == TS_PAD_HAND) {
            add(effects, TS_FAILS_LEAK, p);
            add(effects, TS_FAILS_COVER, p);
        }
        return;
    }
    add(effects, TS_FAILS_SEIZURE, p);
    if (effects->select->necks->of_pad[p] != TS_NOWHERE) {
        add(effects, TS_FAILS_NECK, p);
        add(effects, TS_FAILS_NECK_HOLDS, p);
    }
    add(effects, TS_FAILS_SPLINE, p);
    add(effects, TS_FAILS_DISCONNECT, p);
    if (ts_effect_has_clutch(effects->drive, pad)) {
        add(effects, TS_FAILS_CLUTCH_IN, p);
        add(effects, TS_FAILS_CLUTCH_SLIPS, p);
    }
    add(effects, TS_FAILS_LEAK, p);
}

#define MODES_OF_A_PART 7

ts_status ts_failures_list(ts_effects *effects, ts_arena *arena)
{
    const ts_train *train = effects->motion->train;
    const size_t    room =
        MODES_OF_A_PART * ((size_t)train->mesh_count + train->shaft_count + train->pad_count);

    effects->failures = TS_TAKE(arena, ts_failure, room > 0 ? room : 1);
    if (effects->failures == NULL)
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        add(effects, TS_FAILS_TEETH, m);
        add(effects, TS_FAILS_JET, m);
    }
    for (uint32_t k = 0; k < train->shaft_count; k++)
        if (train->shafts[k].kind != TS_SHAFT_SPOOL)
            list_shaft(effects, k);
    for (uint32_t p = 0; p < train->pad_count; p++)
        list_pad(effects, p);
    return TS_OK;
}

uint32_t ts_effect_tube(const ts_train *train, uint32_t k)
{
    while (train->shafts[k].mesh != TS_NOWHERE && train->shafts[k].kind != TS_SHAFT_TOWER)
        k = train->meshes[train->shafts[k].mesh].driver_shaft;
    return k;
}

/* ---- chips ----------------------------------------------------------------------------------- */

ts_plug ts_effect_plug(const ts_effects *effects, ts_failure failure)
{
    const ts_train       *train = effects->motion->train;
    const ts_failing      of    = ts_failing_of(failure.mode);
    const uint32_t        k     = of == TS_FAILING_MESH    ? train->meshes[failure.at].driven_shaft
                                  : of == TS_FAILING_SHAFT ? failure.at
                                                           : train->pads[failure.at].shaft;
    const ts_spool_drive *drive = &effects->drive->drive[train->shafts[k].drive];
    const bool    on_spool      = of == TS_FAILING_MESH && train->shafts[k].kind == TS_SHAFT_TOWER;
    const ts_pick plug          = on_spool ? drive->take_off.chip_plug : drive->box.chip_plug;

    if (!ts_pick_known(plug))
        return TS_PLUG_NOT_TOLD;
    return plug.value == TS_YES ? TS_PLUG_THERE : TS_PLUG_NONE;
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
