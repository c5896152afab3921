/* How are losses, heat and oil written as JSON, by docs/schema/oil.schema.json? */
#include "report/oil_report.h"

#include "report/json_quantity.h"
#include "report/oil_grid.h"

#include <math.h>

static const char *const kinds[TS_HEAT_KINDS] = {
    [TS_HEAT_TEETH]        = "teeth",
    [TS_HEAT_WINDAGE]      = "windage",
    [TS_HEAT_OIL]          = "oil",
    [TS_HEAT_BEARING_OIL]  = "bearing_oil",
    [TS_HEAT_BEARING_LOAD] = "bearing_load",
    [TS_HEAT_SEAL]         = "seal",
    [TS_HEAT_SPLINE]       = "spline",
};
static const char *const sites[] = {
    [TS_HEAT_AT_MESH] = "mesh", [TS_HEAT_AT_BEARING] = "bearing", [TS_HEAT_AT_PAD] = "pad"};
static const char *const methods[TS_HEAT_METHODS] = {"first", "second"};

/* ---- drives in conditions -------------------------------------------------------------------- */

static void state(ts_json *json, const ts_heat_state *one)
{
    ts_json_object(json);
    ts_json_number_at(json, "power_from_spool", one->P_spool);
    ts_json_number_at(json, "power_at_pads", one->P_pads);
    ts_json_number_at(json, "heat", one->heat);
    ts_json_number_at(json, "imbalance", one->imbalance);
    ts_json_number_at(json, "flow", one->Q);
    ts_json_number_at(json, "feed", one->theta_in);
    ts_json_number_at(json, "rise", one->dry ? (double)NAN : one->rise);
    ts_json_number_at(json, "viscosity", one->nu);
    ts_json_bool_at(json, "settled", one->settled && !one->dry);
    ts_json_end(json, '}');
}

static void drives(ts_json *json, const ts_heat *heat, const ts_answer *answer)
{
    ts_json_key(json, "drives");
    ts_json_array(json);
    for (uint32_t d = 0; d < answer->drive->drive_count; d++) {
        ts_json_object(json);
        ts_json_string_at(json, "spool", answer->drive->spools[answer->drive->drive[d].spool].name);
        ts_json_key(json, "conditions");
        ts_json_array(json);
        for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
            ts_json_object(json);
            ts_json_string_at(json, "condition", answer->drive->conditions[c].name);
            for (int method = 0; method < TS_HEAT_METHODS; method++) {
                ts_json_key(json, methods[method]);
                state(json, ts_heat_state_at(heat, method, c, d));
            }
            ts_json_end(json, '}');
        }
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

/* ---- places ---------------------------------------------------------------------------------- */

static void place_case(ts_json *json, const ts_heat *heat, const ts_answer *answer, uint32_t c,
                       uint32_t p, int method)
{
    const ts_heat_case *one = ts_heat_at(heat, method, c, p);

    ts_json_key(json, methods[method]);
    ts_json_object(json);
    ts_json_key(json, "heat");
    ts_json_quantity(json, answer, one->sum, TS_KIND_POWER,
                     (ts_json_place){heat->places[p].node[method], (int32_t)c, "P_heat"});
    for (int kind = 0; kind < TS_HEAT_KINDS; kind++)
        if (one->P[kind] > 0.0)
            ts_json_number_at(json, kinds[kind], one->P[kind]);
    if (one->law_ended)
        ts_json_bool_at(json, "law_ended", true);
    ts_json_end(json, '}');
}

static void jet(ts_json *json, const ts_heat *heat, const ts_answer *answer, uint32_t p)
{
    const ts_heat_jet *one = &heat->jets[p];

    ts_json_key(json, "oil");
    ts_json_object(json);
    ts_json_number_at(json, "needs", one->need);
    ts_json_number_at(json, "is_given", one->Q);
    if (one->count > 0) {
        ts_json_integer_at(json, "holes", one->count);
        ts_json_number_at(json, "diameter", one->d);
        ts_json_number_at(json, "speed", one->v);
        ts_json_number_at(json, "pressure", one->dp);
        ts_json_number_at(json, "gap", answer->drive->oil.jet_gap.value);
        ts_json_number_at(json, "drift", one->drift);
        ts_json_string_at(json, "at", ts_answer_condition(answer, one->at));
    }
    if (one->count > 0 && heat->places[p].site == TS_HEAT_AT_MESH) {
        ts_json_number_at(json, "teeth", one->v_t);
        ts_json_number_at(json, "depth", one->depth);
        ts_json_number_at(json, "tooth_depth", one->h);
        ts_json_string_at(json, "side", ts_jet_side_says(one->side));
    }
    ts_json_end(json, '}');
}

static void place(ts_json *json, const ts_heat *heat, const ts_answer *answer, uint32_t p)
{
    const ts_heat_place *one  = &heat->places[p];
    const uint32_t       pads = heat->motion->train->pad_count;

    ts_json_object(json);
    ts_json_string_at(json, "site", sites[one->site]);
    ts_json_string_at(json, "name", one->name);
    ts_json_key(json, "conditions");
    ts_json_array(json);
    for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
        ts_json_object(json);
        ts_json_string_at(json, "condition", answer->drive->conditions[c].name);
        for (int method = 0; method < TS_HEAT_METHODS; method++)
            place_case(json, heat, answer, c, p, method);
        if (one->site == TS_HEAT_AT_PAD)
            ts_json_number_at(json, "comes_through", heat->share[(size_t)c * pads + one->pad]);
        if (one->site == TS_HEAT_AT_MESH) {
            ts_json_number_at(json, "loss_stated", heat->motion->train->meshes[p].loss.value);
            ts_json_number_at(json, "loss_to_state", ts_heat_share_to_state(heat, c, p));
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    if (one->site != TS_HEAT_AT_PAD)
        jet(json, heat, answer, p);
    ts_json_end(json, '}');
}

static void places(ts_json *json, const ts_heat *heat, const ts_answer *answer)
{
    ts_json_key(json, "places");
    ts_json_array(json);
    for (uint32_t p = 0; p < heat->place_count; p++)
        if (heat->places[p].missing == NULL)
            place(json, heat, answer, p);
    ts_json_end(json, ']');
}

/* ---- other feeds, cold oil ------------------------------------------------------------------- */

static void feeds(ts_json *json, const ts_oil_answer *oil, const ts_answer *answer)
{
    ts_json_key(json, "feeds");
    ts_json_array(json);
    for (uint32_t i = 0; i < answer->drive->drive_count * TS_OIL_FEEDS; i++) {
        const ts_heat_state *one = &oil->feeds[i];
        ts_json_object(json);
        ts_json_string_at(json, "spool",
                          answer->drive->spools[answer->drive->drive[i / TS_OIL_FEEDS].spool].name);
        ts_json_string_at(json, "condition", answer->drive->conditions[oil->condition].name);
        ts_json_number_at(json, "feed", one->theta_in);
        ts_json_number_at(json, "heat", one->heat);
        ts_json_number_at(json, "rise", one->dry ? (double)NAN : one->rise);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}

static void drag(ts_json *json, const ts_oil_answer *oil, const ts_answer *answer)
{
    if (oil->crank < 0)
        return;
    ts_json_key(json, "drag");
    ts_json_object(json);
    ts_json_string_at(json, "spool", answer->drive->spools[oil->cranked].name);
    ts_json_string_at(json, "condition", ts_answer_condition(answer, oil->crank));
    ts_json_key(json, "torque");
    ts_json_array(json);
    for (int i = 0; i < TS_OIL_COLDS; i++) {
        ts_json_object(json);
        ts_json_number_at(json, "oil", oil->cold[i]);
        ts_json_number_at(json, "torque", oil->drag[i]);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
    ts_json_end(json, '}');
}

void ts_oil_json(const ts_oil_answer *oil, const ts_answer *answer, ts_buffer *out)
{
    const ts_heat *heat = oil->heat;
    ts_json        json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_head(&json, answer);
    if (heat->missing != NULL) {
        ts_json_string_at(&json, "because", heat->missing);
    } else {
        ts_json_number_at(&json, "flow", heat->Q);
        ts_json_number_at(&json, "full_flow_from", heat->n_full);
        ts_json_integer_at(&json, "bearings_left_out", heat->skipped);
        drives(&json, heat, answer);
        places(&json, heat, answer);
        feeds(&json, oil, answer);
        drag(&json, oil, answer);
    }
    ts_oil_units_json(&json, &heat->power->units);
    ts_oil_sources_json(&json);
    ts_oil_assumptions_json(&json, answer);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
