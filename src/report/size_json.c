/* How are chosen widths written as JSON, by docs/schema/size.schema.json? */
#include "report/size_report.h"

#include "report/json_quantity.h"

#include <math.h>

static void gear(ts_json *json, const ts_answer *answer, const ts_gear_width *width)
{
    static const char *const needs[] = {
        [TS_WIDTH_KEPT]   = "kept",
        [TS_WIDTH_LEAST]  = "least width",
        [TS_WIDTH_NEEDED] = "safety",
    };
    const ts_train *train = answer->train;
    ts_json_object(json);
    ts_json_node(json, answer, "address", train->gears[width->gear].node);
    ts_json_string_at(json, "shaft", train->shafts[train->gears[width->gear].shaft].name);
    ts_json_key(json, "teeth");
    ts_json_integer(json, train->gears[width->gear].teeth.value);
    ts_json_number_at(json, "before", width->before);
    ts_json_number_at(json, "after", width->after);
    ts_json_string_at(json, "need", needs[width->need]);
    if (width->mesh != TS_NOWHERE)
        ts_json_node(json, answer, "set_by", train->meshes[width->mesh].node);
    if (width->need == TS_WIDTH_NEEDED) {
        ts_json_string_at(json, "stress", ts_rated_stress_says(width->fails.stress));
        if (width->fails.life.condition >= 0)
            ts_json_string_at(json, "condition",
                              ts_answer_condition(answer, width->fails.life.condition));
    }
    ts_json_end(json, '}');
}

static void mesh(ts_json *json, const ts_answer *answer, const ts_mesh_width *width, uint32_t m)
{
    static const char *const states[] = {
        [TS_MESH_NOT_SIZED] = "not sized",
        [TS_MESH_SIZED]     = "sized",
        [TS_MESH_AT_LEAST]  = "least width",
        [TS_MESH_TOO_WEAK]  = "too weak",
    };
    ts_json_object(json);
    ts_json_node(json, answer, "address", answer->train->meshes[m].node);
    ts_json_string_at(json, "state", states[width->state]);
    ts_json_number_at(json, "margin", answer->teeth->strength[m].reserve);
    if (width->state == TS_MESH_NOT_SIZED) {
        ts_json_string_at(json, width->missing != NULL ? "missing" : "why",
                          width->missing != NULL ? width->missing : width->fault);
    } else {
        ts_json_number_at(json, "common", width->common);
        ts_json_number_at(json, "least", width->least);
        ts_json_number_at(json, "most", width->most);
    }
    ts_json_end(json, '}');
}

static void meshes(ts_json *json, const ts_answer *answer, const ts_width_plan *plan)
{
    ts_json_key(json, "meshes");
    ts_json_array(json);
    for (uint32_t m = 0; m < answer->train->mesh_count; m++)
        if (answer->train->meshes[m].kind == TS_MESH_CYLINDRICAL)
            mesh(json, answer, &plan->meshes[m], m);
    ts_json_end(json, ']');
}

void ts_size_json_head(ts_json *json, const ts_answer *answer, bool fits, ts_buffer *out)
{
    static const char *const verdicts[] = {"holds", "does not hold", "not computable"};
    ts_json_begin(json, out, false);
    ts_json_object(json);
    ts_json_string_at(json, "tool", "towershaft");
    ts_json_string_at(json, "version", answer->version);
    ts_json_string_at(json, "caution", answer->caution);
    ts_json_key(json, "sized");
    ts_json_object(json);
    ts_json_string_at(json, "path", answer->source->name);
    ts_json_string_at(json, "sha256", answer->sha256);
    ts_json_string_at(json, "verdict", verdicts[answer->outcome->verdict]);
    ts_json_end(json, '}');
    ts_json_bool_at(json, "fits", fits);
}

void ts_size_json(const ts_width_plan *plan, double step, const ts_answer *answer, ts_buffer *out)
{
    ts_json json;
    ts_size_json_head(&json, answer, plan->fits, out);
    ts_json_number_at(&json, "step", step);
    ts_json_number_at(&json, "mass_before", plan->mass_before);
    ts_json_number_at(&json, "mass_after", plan->mass_after);
    ts_json_key(&json, "ratings");
    ts_json_integer(&json, (int64_t)plan->ratings);
    ts_json_key(&json, "gears");
    ts_json_array(&json);
    for (size_t i = 0; i < plan->gear_count; i++)
        gear(&json, answer, &plan->gears[i]);
    ts_json_end(&json, ']');
    meshes(&json, answer, plan);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
