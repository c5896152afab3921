/* How are heat and oil film of the flanks written as JSON? */
#include "report/answer_json.h"

#include <math.h>

typedef struct part {
    const char *symbol;
    ts_kind     kind;
    double      value;
} part;

static void parts_of(ts_json *json, const ts_answer *answer, ts_subject about, const part *parts,
                     size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (!isfinite(parts[i].value))
            continue;
        ts_json_key(json, parts[i].symbol);
        ts_json_quantity(json, answer, parts[i].value, parts[i].kind,
                         (ts_json_place){about.object, about.condition, parts[i].symbol});
    }
}

static void open_record(ts_json *json, const char *key, const char *method, const char *missing)
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_string_at(json, "method", method);
    if (missing != NULL)
        ts_json_string_at(json, "because", missing);
}

/* The least of all conditions and where that is; never asked: nothing. */
static void least(ts_json *json, const ts_answer *answer, uint32_t m, const char *symbol,
                  const char *at, const ts_least_safety *it)
{
    const part one = {symbol, TS_KIND_NUMBER, it->S};

    if (it->condition < 0)
        return;
    parts_of(json, answer, (ts_subject){answer->train->meshes[m].node, TS_EVERY_CONDITION}, &one,
             1);
    ts_json_string_at(json, at, ts_answer_condition(answer, it->condition));
}

static void scuffing_remarks(ts_json *json, unsigned remarks)
{
    ts_json_key(json, "remarks");
    ts_json_array(json);
    for (int i = 0; i < TS_SCUFFING_REMARKS; i++)
        if ((remarks & (1u << i)) != 0)
            ts_json_string(json, ts_scuffing_remark_says((ts_scuffing_remark)(1 << i)));
    ts_json_end(json, ']');
}

static void film_remarks(ts_json *json, unsigned remarks)
{
    ts_json_key(json, "remarks");
    ts_json_array(json);
    for (int i = 0; i < TS_MICROPITTING_REMARKS; i++)
        if ((remarks & (1u << i)) != 0)
            ts_json_string(json, ts_micropitting_remark_says((ts_micropitting_remark)(1 << i)));
    ts_json_end(json, ']');
}

/* ---- one condition --------------------------------------------------------------------------- */

static void heat(ts_json *json, const ts_answer *answer, uint32_t m, uint32_t c)
{
    const ts_scuffing_case *one =
        &answer->rubbing->cases[(size_t)c * answer->train->mesh_count + m];
    const ts_subject about   = {answer->teeth->strength[m].subject, (int32_t)c};
    const part       parts[] = {
              {"theta_Bmax", TS_KIND_TEMPERATURE, one->theta_Bmax},
              {"S_B", TS_KIND_NUMBER, one->S_B},
              {"theta_int", TS_KIND_TEMPERATURE, one->theta_int},
              {"S_intS", TS_KIND_NUMBER, one->S_intS},
    };
    ts_json_key(json, ts_answer_condition(answer, (int32_t)c));
    ts_json_object(json);
    if (one->missing != NULL) {
        ts_json_string_at(json, "because", one->missing);
    } else {
        ts_json_string_at(json, "driver", ts_mesh_side_says(answer->train, m, one->driver - 1));
        parts_of(json, answer, about, parts, sizeof parts / sizeof parts[0]);
        if (one->hot_spot != NULL)
            ts_json_string_at(json, "hottest", one->hot_spot);
        scuffing_remarks(json, one->remarks);
    }
    ts_json_end(json, '}');
}

static void film(ts_json *json, const ts_answer *answer, uint32_t m, uint32_t c)
{
    const ts_film_of_case *one = &answer->rubbing->films[(size_t)c * answer->train->mesh_count + m];
    const ts_subject       about   = {answer->teeth->strength[m].subject, (int32_t)c};
    const part             parts[] = {
                    {"lambda_GFmin", TS_KIND_NUMBER, one->lambda_GFmin},
                    {"S_lambda", TS_KIND_NUMBER, one->S_lambda},
    };
    ts_json_key(json, ts_answer_condition(answer, (int32_t)c));
    ts_json_object(json);
    if (one->missing != NULL) {
        ts_json_string_at(json, "because", one->missing);
    } else {
        parts_of(json, answer, about, parts, sizeof parts / sizeof parts[0]);
        ts_json_string_at(json, "thinnest", one->where);
        film_remarks(json, one->remarks);
    }
    ts_json_end(json, '}');
}

static void conditions(ts_json *json, const ts_answer *answer, uint32_t m,
                       void (*each)(ts_json *json, const ts_answer *answer, uint32_t m, uint32_t c))
{
    ts_json_key(json, "conditions");
    ts_json_object(json);
    for (uint32_t c = 0; c < answer->drive->condition_count; c++)
        if (answer->rubbing->mesh[m].missing == NULL && ts_rubbing_stands(answer->rubbing, m, c))
            each(json, answer, m, c);
    ts_json_end(json, '}');
    ts_json_end(json, '}');
}

void ts_json_rubbing(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh_rubbing *mesh  = &answer->rubbing->mesh[m];
    const bool             bevel = answer->train->meshes[m].kind == TS_MESH_BEVEL;

    open_record(json, "scuffing",
                bevel ? "ISO/TS 6336-21:2017 on virtual cylindrical gears"
                      : "ISO/TS 6336-20:2017, -21:2017",
                mesh->missing);
    least(json, answer, m, "S_B", "S_B_at", &mesh->S_B);
    least(json, answer, m, "S_intS", "S_intS_at", &mesh->S_intS);
    conditions(json, answer, m, heat);
    if (bevel || !answer->rubbing->filmed)
        return;
    open_record(json, "micropitting", "ISO/TS 6336-22:2018, method B, an indication",
                mesh->missing);
    least(json, answer, m, "lambda_GFmin", "lambda_GFmin_at", &mesh->lambda_GFmin);
    conditions(json, answer, m, film);
}
