/* How are speeds, senses and places written as JSON? */
#include "report/answer_json.h"

#include <math.h>

static const char *const kinds[] = {"spool", "radial shaft", "box shaft"};

static void speeds(ts_json *json, const ts_answer *answer, uint32_t shaft, ts_node node)
{
    ts_json_key(json, "speed");
    ts_json_object(json);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const double n = answer->motion->speed[c * answer->train->shaft_count + shaft];
        ts_json_key(json, answer->drive->conditions[c].name);
        ts_json_quantity(json, answer, n, TS_KIND_ROTATIONAL_SPEED,
                         (ts_json_place){node, (int32_t)c, "n"});
    }
    ts_json_end(json, '}');
}

static void ratio(ts_json *json, ts_rational ratio)
{
    ts_json_key(json, "ratio");
    ts_json_object(json);
    ts_json_key(json, "over");
    ts_json_integer(json, ratio.over);
    ts_json_key(json, "under");
    ts_json_integer(json, ratio.under);
    ts_json_end(json, '}');
}

static void place(ts_json *json, const ts_answer *answer, uint32_t s)
{
    const ts_shaft_motion *turn = &answer->motion->shafts[s];
    const ts_node          node = answer->train->shafts[s].node;
    ts_json_key(json, "x");
    ts_json_quantity(json, answer, turn->placed ? turn->x : (double)NAN, TS_KIND_LENGTH,
                     (ts_json_place){node, TS_EVERY_CONDITION, "X"});
    ts_json_key(json, "y");
    ts_json_quantity(json, answer, turn->placed ? turn->y : (double)NAN, TS_KIND_LENGTH,
                     (ts_json_place){node, TS_EVERY_CONDITION, "Y"});
}

static void shaft(ts_json *json, const ts_answer *answer, uint32_t s)
{
    const ts_shaft        *shaft = &answer->train->shafts[s];
    const ts_shaft_motion *turn  = &answer->motion->shafts[s];
    ts_json_object(json);
    ts_json_key(json, "name");
    ts_json_string(json, shaft->name);
    ts_json_node(json, answer, "address", shaft->node);
    ts_json_key(json, "kind");
    ts_json_string(json, kinds[shaft->kind]);
    ts_json_key(json, "number");
    ts_json_integer(json, shaft->number);
    ts_json_key(json, "spool");
    ts_json_string(json, answer->drive->spools[shaft->spool].name);
    ts_json_key(json, "turns");
    ts_json_string(json, turn->sense > 0 ? "ccw" : "cw");
    ts_json_key(json, "seen");
    ts_json_string(json, shaft->kind == TS_SHAFT_TOWER ? "from outside, looking to the engine axis"
                                                       : "from behind, looking forward");
    ratio(json, turn->ratio);
    if (shaft->kind == TS_SHAFT_BOX)
        place(json, answer, s);
    speeds(json, answer, s, shaft->node);
    ts_json_end(json, '}');
}

static void band(ts_json *json, const ts_span *span)
{
    const ts_unit *rpm = ts_kind_shown(TS_KIND_ROTATIONAL_SPEED, TS_UNITS_METRIC);
    ts_json_object(json);
    ts_json_key(json, "low");
    if (isfinite(span->low))
        ts_json_number(json, ts_from_si(span->low, rpm));
    else
        ts_json_null(json);
    ts_json_key(json, "high");
    if (isfinite(span->high))
        ts_json_number(json, ts_from_si(span->high, rpm));
    else
        ts_json_null(json);
    ts_json_key(json, "unit");
    ts_json_string(json, rpm->name);
    ts_json_end(json, '}');
}

static void bands(ts_json *json, const ts_answer *answer, const ts_accessory *accessory)
{
    ts_json_key(json, "band");
    ts_json_object(json);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        if (accessory->speed[c].standing != TS_GIVEN)
            continue;
        ts_json_key(json, answer->drive->conditions[c].name);
        band(json, &accessory->speed[c]);
    }
    ts_json_end(json, '}');
}

static void pad_loads(ts_json *json, const ts_answer *answer, uint32_t p)
{
    const ts_node node = answer->train->pads[p].node;
    for (int which = 0; which < 2; which++) {
        ts_json_key(json, which == 0 ? "power" : "torque");
        ts_json_object(json);
        for (size_t c = 0; c < answer->drive->condition_count; c++) {
            const ts_pad_load *load = &answer->power->pad[c * answer->train->pad_count + p];
            ts_json_key(json, answer->drive->conditions[c].name);
            ts_json_quantity(json, answer, which == 0 ? load->P : load->T,
                             which == 0 ? TS_KIND_POWER : TS_KIND_TORQUE,
                             (ts_json_place){node, (int32_t)c, which == 0 ? "P" : "T"});
        }
        ts_json_end(json, '}');
    }
}

static void pad(ts_json *json, const ts_answer *answer, uint32_t p)
{
    const ts_pad *pad = &answer->train->pads[p];
    ts_json_object(json);
    ts_json_key(json, "name");
    ts_json_string(json, pad->name);
    ts_json_node(json, answer, "address", pad->node);
    ts_json_node(json, answer, "shaft", answer->train->shafts[pad->shaft].node);
    ts_json_key(json, "face");
    ts_json_string(json, pad->face == TS_FRONT ? "front" : "rear");
    ts_json_key(json, "turns");
    ts_json_string(json, ts_pad_sense(answer->motion, pad) > 0 ? "ccw" : "cw");
    ts_json_key(json, "seen");
    ts_json_string(json, "facing the pad");
    speeds(json, answer, pad->shaft, answer->train->shafts[pad->shaft].node);
    if (pad->accessory >= 0) {
        bands(json, answer, &answer->drive->accessories[pad->accessory]);
        pad_loads(json, answer, p);
    }
    ts_json_end(json, '}');
}

void ts_json_turning(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "shafts");
    ts_json_array(json);
    for (uint32_t s = 0; s < answer->train->shaft_count; s++)
        shaft(json, answer, s);
    ts_json_end(json, ']');
    ts_json_key(json, "pads");
    ts_json_array(json);
    for (uint32_t p = 0; p < answer->train->pad_count; p++)
        pad(json, answer, p);
    ts_json_end(json, ']');
}
