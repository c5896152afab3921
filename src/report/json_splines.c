/* How are the splines of the pads written as JSON? */
#include "report/answer_json.h"

#include <math.h>

static void value(ts_json *json, const ts_answer *answer, const char *key, double si, ts_kind kind,
                  ts_json_place place)
{
    ts_json_key(json, key);
    ts_json_quantity(json, answer, si, kind, place);
}

static void stresses(ts_json *json, const ts_answer *answer, const ts_spline_case *one,
                     ts_node node, int32_t c)
{
    value(json, answer, "torque", one->T, TS_KIND_TORQUE, (ts_json_place){node, c, "T"});
    for (int i = 0; i < TS_SPLINE_STRESSES; i++) {
        const char *symbol = ts_spline_stress_symbol((ts_spline_stress)i);
        value(json, answer, symbol, one->S[i], TS_KIND_STRESS, (ts_json_place){node, c, symbol});
    }
    if (!isnan(one->h_w))
        value(json, answer, "h_w", one->h_w, TS_KIND_LENGTH, (ts_json_place){node, c, "h_w"});
}

static void spline(ts_json *json, const ts_answer *answer, const ts_drive_spline *item)
{
    const ts_json_place length = {item->node, TS_EVERY_CONDITION, "L_e"};

    value(json, answer, "engaged", item->L_e, TS_KIND_LENGTH, length);
    ts_json_key(json, "made_up");
    ts_json_bool(json, item->made);
    value(json, answer, "pitch_diameter", item->shape.D, TS_KIND_LENGTH,
          (ts_json_place){item->node, TS_EVERY_CONDITION, "D"});
    value(json, answer, "slide", item->slide, TS_KIND_LENGTH,
          (ts_json_place){item->node, TS_EVERY_CONDITION, "slide"});
    value(json, answer, "K_m", item->K_m, TS_KIND_NUMBER,
          (ts_json_place){item->node, TS_EVERY_CONDITION, "K_m"});
    ts_json_key(json, "worn_micrometres");
    ts_json_number(json, 1e6 * item->h_w);
    if (item->overload.known) {
        ts_json_key(json, "overload");
        ts_json_object(json);
        stresses(json, answer, &item->overload, item->over, TS_EVERY_CONDITION);
        ts_json_end(json, '}');
    }
    ts_json_key(json, "conditions");
    ts_json_object(json);
    for (uint32_t c = 0; c < answer->drive->condition_count; c++) {
        if (!item->cases[c].known)
            continue;
        ts_json_key(json, answer->drive->conditions[c].name);
        ts_json_object(json);
        stresses(json, answer, &item->cases[c], item->node, (int32_t)c);
        ts_json_end(json, '}');
    }
    ts_json_end(json, '}');
}

void ts_json_splines(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "splines");
    ts_json_array(json);
    for (uint32_t i = 0; answer->splines != NULL && i < answer->splines->count; i++) {
        const ts_drive_spline *item = &answer->splines->items[i];

        ts_json_object(json);
        ts_json_key(json, "pad");
        ts_json_string(json, answer->train->pads[item->pad].name);
        ts_json_key(json, "number");
        ts_json_string(json, item->number);
        if (item->missing != NULL) {
            ts_json_key(json, "missing");
            ts_json_string(json, item->missing);
        } else {
            spline(json, answer, item);
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
