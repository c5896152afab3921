/* report/shim_json.c: the shims and the backlash of a drive as JSON
 * (docs/schema/shims.schema.json).
 */
#include "report/shim_sheet.h"

#include <math.h>

static void bounds(ts_json *json, const char *key, const double j[2])
{
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_number_at(json, "least", j[0]);
    ts_json_number_at(json, "most", j[1]);
    ts_json_end(json, '}');
}

static void begin_mesh(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh *mesh = &answer->train->meshes[m];
    ts_buffer      at;

    ts_buffer_open(&at, answer->allocator);
    ts_source_address(answer->source, mesh->node, &at);
    ts_json_object(json);
    ts_json_string_at(json, "at", at.bytes);
    ts_json_string_at(json, "driver", answer->train->shafts[mesh->driver_shaft].name);
    ts_json_string_at(json, "driven", answer->train->shafts[mesh->driven_shaft].name);
    json->out->failed = json->out->failed || at.failed;
    ts_buffer_close(&at);
}

static void shim(ts_json *json, const ts_answer *answer, const ts_shim *one)
{
    ts_json_object(json);
    ts_json_string_at(json, "shaft",
                      answer->train->shafts[answer->train->gears[one->gear].shaft].name);
    ts_json_number_at(json, "t_xo", one->t_xo);
    ts_json_number_at(json, "t_xi", one->t_xi);
    ts_json_number_at(json, "k_j", one->k_j);
    ts_json_number_at(json, "stack", one->stack);
    ts_json_number_at(json, "likely", one->likely);
    ts_json_number_at(json, "thinnest", one->range[0]);
    ts_json_number_at(json, "thickest", one->range[1]);
    ts_json_end(json, '}');
}

static void bevels(ts_json *json, const ts_answer *answer, const ts_bevel_shims *one)
{
    begin_mesh(json, answer, one->mesh);
    ts_json_string_at(json, "missing", one->missing);
    if (one->missing == NULL) {
        ts_json_number_at(json, "step", one->step);
        ts_json_bool_at(json, "step by tolerance", one->chosen);
        ts_json_number_at(json, "left by half a step", one->j_step);
        bounds(json, "j_bn built", one->j_bn);
        bounds(json, "j_bn all travel and warmth", one->j_all);
        ts_json_key(json, "gears");
        ts_json_array(json);
        for (int i = 0; i < 2; i++)
            shim(json, answer, &one->shims[i]);
        ts_json_end(json, ']');
    }
    ts_json_end(json, '}');
}

static void cylindrical(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh_motion *turn = &answer->motion->meshes[m];
    const ts_span *centre = &answer->train->gears[answer->train->meshes[m].driver].system->centre;

    begin_mesh(json, answer, m);
    ts_json_number_at(json, "a_w", turn->a_w);
    bounds(json, "allowance", (double[]){centre->low, centre->high});
    bounds(json, "j_bn built", &turn->backlash.j_bn[TS_BACKLASH_MIN]);
    bounds(json, "j_bn any warmth", &turn->backlash.j_bn[TS_BACKLASH_LOW]);
    bounds(json, "j_wt built", &turn->backlash.j_wt[TS_BACKLASH_MIN]);
    ts_json_end(json, '}');
}

void ts_shim_json(const ts_answer *answer, const ts_shim_plan *plan, ts_buffer *out)
{
    ts_json json;

    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_key(&json, "bevels");
    ts_json_array(&json);
    for (uint32_t i = 0; i < plan->count; i++)
        bevels(&json, answer, &plan->items[i]);
    ts_json_end(&json, ']');
    ts_json_key(&json, "cylindrical");
    ts_json_array(&json);
    for (uint32_t m = 0; m < answer->train->mesh_count; m++)
        if (answer->train->meshes[m].kind == TS_MESH_CYLINDRICAL)
            cylindrical(&json, answer, m);
    ts_json_end(&json, ']');
    ts_json_key(&json, "assumed");
    ts_json_object(&json);
    ts_json_number_at(&json, "seat", TS_SHIM_SEAT);
    ts_json_number_at(&json, "bearing", TS_SHIM_BEARING);
    ts_json_number_at(&json, "crown", TS_SHIM_CROWN);
    ts_json_number_at(&json, "nominal shim", TS_SHIM_NOMINAL);
    ts_json_end(&json, '}');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
