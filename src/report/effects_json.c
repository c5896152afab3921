/* How is what stops written as JSON, by docs/schema/effects.schema.json? */
#include "report/effects_report.h"

#include "report/json_quantity.h"

#include <math.h>

static void made(ts_json *json, const char *key, ts_buffer *text)
{
    ts_json_key(json, key);
    ts_json_made(json, text);
    ts_buffer_close(text);
}

static ts_buffer opened(const ts_answer *answer)
{
    ts_buffer text;
    ts_buffer_open(&text, answer->allocator);
    return text;
}

static const char *const goes_names[] = {
    [TS_GOES_ON] = "on", [TS_IN_DOUBT] = "doubt", [TS_STOPS] = "stops"};

/* The shaft nearest to the spool that does no better than this one: there the way is interrupted.
 */
static uint32_t interrupted_at(const ts_effects *effects, const ts_outcome *outcome, uint32_t k)
{
    const ts_train *train = effects->motion->train;

    while (train->shafts[k].mesh != TS_NOWHERE) {
        const uint32_t driver = train->meshes[train->shafts[k].mesh].driver_shaft;
        if (outcome->shafts[driver].goes != outcome->shafts[k].goes)
            return k;
        k = driver;
    }
    return k;
}

static void pads(ts_json *json, const ts_effects *effects, const ts_answer *answer,
                 const ts_outcome *outcome)
{
    const ts_train *train = effects->motion->train;

    ts_json_key(json, "pads");
    ts_json_array(json);
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_pad *pad = &train->pads[p];
        if (pad->accessory < 0)
            continue;
        ts_json_object(json);
        ts_json_string_at(json, "accessory", pad->name);
        ts_json_string_at(json, "goes", goes_names[outcome->pads[p].goes]);
        if (outcome->pads[p].goes != TS_GOES_ON) {
            const bool by_shaft = outcome->shafts[pad->shaft].goes == outcome->pads[p].goes;
            ts_json_node(json, answer, "interrupted_at",
                         by_shaft ? train->shafts[interrupted_at(effects, outcome, pad->shaft)].node
                                  : pad->node);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void torque(ts_json *json, const char *key, double T)
{
    ts_json_key(json, key);
    if (isfinite(T))
        ts_json_number(json, T);
    else
        ts_json_null(json);
}

static void breakages(ts_json *json, const ts_effects *effects, const ts_answer *answer,
                      const ts_outcome *outcome)
{
    const ts_train *train = effects->motion->train;

    ts_json_key(json, "breaks");
    ts_json_array(json);
    for (uint32_t i = 0; i < outcome->breakage_count; i++) {
        const ts_breakage *one = &outcome->breakages[i];
        ts_json_object(json);
        if (one->pad != TS_NOWHERE)
            ts_json_node(json, answer, "neck", train->pads[one->pad].node);
        else if (one->part == TS_NOWHERE && one->meant)
            ts_json_node(json, answer, "neck", train->shafts[one->shaft].node);
        else if (one->part != TS_NOWHERE)
            ts_json_node(json, answer, "part", effects->select->parts.items[one->part].node);
        ts_json_bool_at(json, "meant", one->meant);
        torque(json, "at_most", one->T);
        torque(json, "next_at_least", one->T_next);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void failures(ts_json *json, const ts_effects *effects, const ts_answer *answer)
{
    static const char *const kinds[] = {
        [TS_FAILING_MESH] = "mesh", [TS_FAILING_SHAFT] = "shaft", [TS_FAILING_PAD] = "pad"};

    static const char *const plugs[] = {[TS_PLUG_NOT_TOLD] = "not told",
                                        [TS_PLUG_NONE]     = "none",
                                        [TS_PLUG_SOME]     = "in some lines",
                                        [TS_PLUG_THERE]    = "there"};

    ts_json_key(json, "failures");
    ts_json_array(json);
    for (uint32_t i = 0; i < effects->failure_count; i++) {
        const ts_failure  failure = effects->failures[i];
        const ts_outcome *outcome = &effects->outcomes[i];
        const ts_failing  of      = ts_failing_of(failure.mode);
        ts_buffer         text    = opened(answer), metal;

        ts_json_object(json);
        ts_json_string_at(json, "kind", kinds[of]);
        ts_effects_part(effects, of, failure.at, &text);
        made(json, "part", &text);
        ts_json_node(json, answer, "at", ts_effects_node(effects, failure));
        ts_json_string_at(json, "mode", ts_failure_name(failure.mode));
        pads(json, effects, answer, outcome);
        breakages(json, effects, answer, outcome);
        ts_json_bool_at(json, "start_possible", outcome->start_possible);
        ts_json_bool_at(json, "oil_lost", outcome->oil_lost);
        ts_json_bool_at(json, "metal_in_oil", outcome->chips);
        ts_json_string_at(
            json, "chip_plug",
            plugs[ts_chip_way_of(effects->drive, effects->motion->train, failure).plug]);
        metal = opened(answer);
        ts_effects_metal(effects, failure, &metal);
        made(json, "metal", &metal);
        ts_json_bool_at(json, "starter_carried", outcome->stuck_in);
        text = opened(answer);
        ts_effects_brief(effects, outcome, &text);
        made(json, "effect", &text);
        text = opened(answer);
        ts_effects_class(effects, outcome, &text);
        made(json, "engine", &text);
        text = opened(answer);
        ts_effects_seen(effects, failure, outcome, &text);
        made(json, "seen", &text);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void causes(ts_json *json, const ts_effects *effects, const ts_answer *answer)
{
    ts_json_key(json, "causes");
    ts_json_array(json);
    for (uint32_t e = 0; e < effects->effect_count; e++) {
        const ts_causes *list = &effects->causes[e];
        ts_buffer        text = opened(answer);

        ts_json_object(json);
        ts_effects_effect(&effects->effects[e], &text);
        made(json, "effect", &text);
        ts_json_key(json, "sets");
        ts_json_array(json);
        for (size_t i = 0; i < list->count; i++) {
            ts_json_array(json);
            ts_json_integer(json, list->items[i].first);
            if (list->items[i].second != TS_NOWHERE)
                ts_json_integer(json, list->items[i].second);
            ts_json_end(json, ']');
        }
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

void ts_effects_json(const ts_effects *effects, const ts_answer *answer, ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    ts_json_count_at(&json, "accessories", effects->drive->accessory_count);
    failures(&json, effects, answer);
    ts_effects_lacks_json(&json, effects, answer);
    causes(&json, effects, answer);
    ts_evidence_json(&json, answer);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
