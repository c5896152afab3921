/* Which words say what a failure does? */
#include "report/effects_report.h"

const ts_column ts_effects_card_columns[2] = {{"", false}, {"", false}};

static const ts_train *train_of(const ts_effects *effects)
{
    return effects->motion->train;
}

void ts_effects_part(const ts_effects *effects, ts_failing of, uint32_t at, ts_buffer *out)
{
    const ts_train *train = train_of(effects);

    if (of == TS_FAILING_SHAFT) {
        const uint32_t *pad = train->shafts[at].pad;
        for (int face = 0; face < 2; face++)
            if (pad[face] != TS_NOWHERE && train->pads[pad[face]].accessory >= 0) {
                ts_buffer_add(out, "shaft of ");
                break;
            }
        ts_buffer_add(out, train->shafts[at].name);
    } else if (of == TS_FAILING_MESH) {
        const ts_mesh *mesh = &train->meshes[at];
        ts_buffer_print(out, "%s > %s", train->shafts[mesh->driver_shaft].name,
                        train->shafts[mesh->driven_shaft].name);
    } else if (train->pads[at].accessory >= 0) {
        ts_buffer_add(out, train->pads[at].name);
    } else {
        ts_buffer_print(out, "%s on %s, %s", train->pads[at].name,
                        train->shafts[train->pads[at].shaft].name,
                        train->pads[at].face == TS_FRONT ? "front" : "rear");
    }
}

ts_node ts_effects_node(const ts_effects *effects, ts_failure failure)
{
    const ts_train *train = train_of(effects);

    switch (ts_failing_of(failure.mode)) {
    case TS_FAILING_MESH:
        return train->meshes[failure.at].node;
    case TS_FAILING_SHAFT:
        return train->shafts[failure.at].node;
    default:
        return train->pads[failure.at].node;
    }
}

static void separate(ts_buffer *out, size_t begin)
{
    if (out->length > begin)
        ts_buffer_add(out, "; ");
}

/* Of the first effect of that kind; TS_GOES_ON where the drive knows none. */
static ts_goes state_of(const ts_effects *effects, const ts_outcome *outcome, ts_effect_kind kind)
{
    for (uint32_t e = 0; e < effects->effect_count; e++)
        if (effects->effects[e].kind == kind)
            return ts_effect_of(effects, &effects->effects[e], outcome);
    return TS_GOES_ON;
}

static void add_services(const ts_effects *effects, const ts_outcome *outcome, size_t begin,
                         ts_buffer *out)
{
    for (uint32_t e = 0; e < effects->effect_count; e++) {
        const ts_effect *effect = &effects->effects[e];
        const ts_goes    gone   = ts_effect_of(effects, effect, outcome);
        if (effect->kind != TS_EFFECT_SERVICE || gone == TS_GOES_ON)
            continue;
        separate(out, begin);
        ts_buffer_print(out, gone == TS_STOPS ? "%s lost" : "%s in doubt", effect->service);
    }
}

void ts_effects_brief(const ts_effects *effects, const ts_outcome *outcome, ts_buffer *out)
{
    const size_t  begin  = out->length;
    const ts_goes engine = state_of(effects, outcome, TS_EFFECT_ENGINE);

    if (engine != TS_GOES_ON)
        ts_buffer_add(out, engine == TS_STOPS ? "engine stops" : "engine in doubt");
    else if (state_of(effects, outcome, TS_EFFECT_START) == TS_STOPS)
        ts_buffer_add(out, "no start");
    add_services(effects, outcome, begin, out);
    if (outcome->oil_lost) {
        separate(out, begin);
        ts_buffer_add(out, "oil lost");
    }
    if (outcome->stuck_in) {
        separate(out, begin);
        ts_buffer_add(out, "starter carried round");
    }
    if (out->length == begin)
        ts_buffer_add(out, "none by itself");
}

void ts_effects_class(const ts_effects *effects, const ts_outcome *outcome, ts_buffer *out)
{
    const size_t  begin  = out->length;
    const ts_goes engine = state_of(effects, outcome, TS_EFFECT_ENGINE);

    if (engine != TS_GOES_ON)
        ts_buffer_print(out,
                        "the engine %s: loss of power alone, which 14 CFR 33.75(g)(1) calls a "
                        "minor effect (from memory)",
                        engine == TS_STOPS ? "stops" : "may stop");
    else if (state_of(effects, outcome, TS_EFFECT_START) == TS_STOPS)
        ts_buffer_add(out, "a running engine runs on; the next start fails");
    if (outcome->stuck_in) {
        separate(out, begin);
        ts_buffer_add(out, "a starter that is carried round must stay whole or be contained: "
                           "debris that is not is a hazardous effect of 14 CFR 33.75(g)(2) (from "
                           "memory)");
    }
    if (outcome->oil_lost) {
        separate(out, begin);
        ts_buffer_add(out, "oil leaves; the engine must be shut down before it is gone, and a fire "
                           "must be excluded (14 CFR 33.75(g)(2), from memory)");
    }
    if (out->length == begin)
        ts_buffer_add(out, "the engine runs on and starts");
}

/* Failures of which nothing shows until something else fails. */
static bool is_hidden(ts_failure_mode mode)
{
    return mode == TS_FAILS_NECK_HOLDS || mode == TS_FAILS_TUBE_HOLDS;
}

void ts_effects_seen(const ts_effects *effects, ts_failure failure, const ts_outcome *outcome,
                     ts_buffer *out)
{
    const size_t begin = out->length;

    const ts_goes engine = state_of(effects, outcome, TS_EFFECT_ENGINE);

    if (engine == TS_STOPS)
        ts_buffer_add(out, "the engine runs down");
    else if (engine == TS_IN_DOUBT)
        ts_buffer_add(out, "noise or heat at first, then the engine may run down");
    else if (state_of(effects, outcome, TS_EFFECT_START) == TS_STOPS)
        ts_buffer_add(out, "at the next start the spool does not turn");
    add_services(effects, outcome, begin, out);
    if (outcome->chips) {
        separate(out, begin);
        ts_effects_metal(effects, failure, out);
    }
    if (outcome->oil_lost) {
        separate(out, begin);
        ts_buffer_add(out, failure.mode == TS_FAILS_LEAK ? "oil at the drain of the pad"
                                                         : "oil quantity falls");
    }
    if (outcome->stuck_in) {
        separate(out, begin);
        ts_buffer_add(out, "noise and heat of the starter");
    }
    if (out->length == begin)
        ts_buffer_add(out, is_hidden(failure.mode)
                               ? "nothing; hidden until something seizes, found when the neck is "
                                 "measured"
                               : "nothing in flight; found at an inspection");
}

void ts_effects_effect(const ts_effect *effect, ts_buffer *out)
{
    switch (effect->kind) {
    case TS_EFFECT_ENGINE:
        ts_buffer_add(out, "the engine stops");
        break;
    case TS_EFFECT_START:
        ts_buffer_add(out, "no start");
        break;
    case TS_EFFECT_SERVICE:
        ts_buffer_print(out, "%s lost", effect->service);
        break;
    case TS_EFFECT_OIL:
        ts_buffer_add(out, "oil lost");
        break;
    default:
        ts_buffer_add(out, "starter carried round");
        break;
    }
}

bool ts_effects_breaks(const ts_effects *effects, const ts_breakage *broken, ts_buffer *out)
{
    const ts_train *train = effects->motion->train;

    if (broken->pad != TS_NOWHERE) {
        ts_buffer_print(out, "the neck of %s breaks", train->pads[broken->pad].name);
    } else if (broken->part != TS_NOWHERE) {
        const ts_part_capacity *part = &effects->select->parts.items[broken->part];
        ts_buffer_print(out, ts_part_gives_way(part->kind), part->what);
    } else if (broken->meant) {
        ts_buffer_print(out, "the neck of %s breaks", train->shafts[broken->shaft].name);
    } else {
        ts_buffer_add(out, "something on the way to the spool breaks");
        return false;
    }
    return true;
}

void ts_effects_pads(const ts_effects *effects, const ts_outcome *outcome, ts_goes goes,
                     ts_buffer *out)
{
    const ts_train *train = effects->motion->train;
    const size_t    begin = out->length;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0 && outcome->pads[p].goes == goes)
            ts_buffer_print(out, "%s%s", out->length > begin ? ", " : "", train->pads[p].name);
    if (out->length == begin)
        ts_buffer_add(out, "none");
}
