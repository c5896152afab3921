/* How are torques, forces and powers written as JSON? */
#include "report/answer_json.h"

#include <math.h>

static const char *const flows[]  = {"towards the spool", "none", "away from the spool"};
static const char *const flanks[] = {"none", "leading", "trailing"};

typedef struct part {
    const char *symbol;
    ts_kind     kind;
    double      value;
} part;

static void number_or_null(ts_json *json, double value)
{
    if (isfinite(value))
        ts_json_number(json, value);
    else
        ts_json_null(json);
}

static void forces(ts_json *json, const ts_answer *answer, const ts_mesh *mesh, int32_t c,
                   const ts_mesh_load *load)
{
    const part parts[] = {
        {"T_1", TS_KIND_TORQUE, load->T[0]},   {"T_2", TS_KIND_TORQUE, load->T[1]},
        {"P_1", TS_KIND_POWER, load->P[0]},    {"P_2", TS_KIND_POWER, load->P[1]},
        {"P_loss", TS_KIND_POWER, load->loss}, {"F_t", TS_KIND_FORCE, load->F_t},
        {"F_r1", TS_KIND_FORCE, load->F_r[0]}, {"F_r2", TS_KIND_FORCE, load->F_r[1]},
        {"F_a1", TS_KIND_FORCE, load->F_a[0]}, {"F_a2", TS_KIND_FORCE, load->F_a[1]},
    };
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        ts_json_key(json, parts[i].symbol);
        ts_json_quantity(json, answer, parts[i].value, parts[i].kind,
                         (ts_json_place){mesh->node, c, parts[i].symbol});
    }
    ts_json_key(json, "force");
    ts_json_array(json);
    for (int i = 0; i < 3; i++)
        number_or_null(json, load->force[i]);
    ts_json_end(json, ']');
}

static void loads(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh *mesh = &answer->train->meshes[m];
    ts_json_key(json, "loads");
    ts_json_object(json);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_mesh_load *load = &answer->power->mesh[c * answer->train->mesh_count + m];
        ts_json_key(json, answer->drive->conditions[c].name);
        ts_json_object(json);
        ts_json_key(json, "flow");
        ts_json_string(json, flows[load->flow + 1]);
        ts_json_key(json, "flanks");
        ts_json_array(json);
        ts_json_string(json, flanks[load->flank[0]]);
        ts_json_string(json, flanks[load->flank[1]]);
        ts_json_end(json, ']');
        ts_json_key(json, "v");
        ts_json_quantity(json, answer, answer->motion->velocity[c * answer->train->mesh_count + m],
                         TS_KIND_VELOCITY, (ts_json_place){mesh->node, (int32_t)c, "v"});
        forces(json, answer, mesh, (int32_t)c, load);
        ts_json_end(json, '}');
    }
    ts_json_end(json, '}');
}

static void geometry(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_mesh        *mesh = &answer->train->meshes[m];
    const ts_mesh_motion *turn = &answer->motion->meshes[m];
    if (mesh->kind != TS_MESH_CYLINDRICAL || !turn->solved)
        return;
    const ts_cylindrical_pair *pair    = &turn->pair;
    const part                 parts[] = {
                        {"a_w", TS_KIND_LENGTH, turn->a_w},
                        {"alpha_wt", TS_KIND_ANGLE, pair->alpha_wt},
                        {"eps_alpha", TS_KIND_NUMBER, pair->eps_alpha},
                        {"eps_beta", TS_KIND_NUMBER, pair->eps_beta},
    };
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        ts_json_key(json, parts[i].symbol);
        ts_json_quantity(json, answer, parts[i].value, parts[i].kind,
                         (ts_json_place){mesh->node, TS_EVERY_CONDITION, parts[i].symbol});
    }
}

/* As built, and over the temperatures of the file where it has any. */
static void backlash(ts_json *json, const ts_answer *answer, uint32_t m)
{
    static const char *const names[2][TS_BACKLASH_ENDS] = {
        {"j_bnmin", "j_bnmax", "j_bnlow", "j_bnhigh"},
        {"j_wtmin", "j_wtmax", "j_wtlow", "j_wthigh"}};
    const ts_mesh        *mesh = &answer->train->meshes[m];
    const ts_mesh_motion *turn = &answer->motion->meshes[m];
    if (mesh->kind != TS_MESH_CYLINDRICAL || !turn->solved || turn->backlash_missing != NULL)
        return;
    for (int round = 0; round < 2; round++)
        for (int end = 0; end < TS_BACKLASH_ENDS; end++) {
            const double j = round == 0 ? turn->backlash.j_bn[end] : turn->backlash.j_wt[end];
            if (end >= TS_BACKLASH_LOW && isnan(j))
                continue;
            ts_json_key(json, names[round][end]);
            ts_json_quantity(json, answer, j, TS_KIND_LENGTH,
                             (ts_json_place){mesh->node, TS_EVERY_CONDITION, names[round][end]});
        }
}

static void mesh(ts_json *json, const ts_answer *answer, uint32_t m)
{
    const ts_train *train = answer->train;
    const ts_mesh  *mesh  = &train->meshes[m];
    ts_json_object(json);
    ts_json_node(json, answer, "address", mesh->node);
    ts_json_key(json, "kind");
    ts_json_string(json, mesh->kind == TS_MESH_BEVEL ? "bevel" : "cylindrical");
    ts_json_node(json, answer, "driver", train->shafts[mesh->driver_shaft].node);
    ts_json_node(json, answer, "driven", train->shafts[mesh->driven_shaft].node);
    ts_json_key(json, "teeth");
    ts_json_array(json);
    ts_json_integer(json, train->gears[mesh->driver].teeth.value);
    ts_json_integer(json, train->gears[mesh->driven].teeth.value);
    ts_json_end(json, ']');
    ts_json_key(json, "gcd");
    ts_json_integer(json, answer->motion->meshes[m].gcd);
    geometry(json, answer, m);
    backlash(json, answer, m);
    loads(json, answer, m);
    ts_json_strength(json, answer, m);
    ts_json_end(json, '}');
}

static void spool(ts_json *json, const ts_answer *answer, uint32_t s)
{
    const ts_node node = answer->drive->spools[s].node;
    ts_json_object(json);
    ts_json_key(json, "name");
    ts_json_string(json, answer->drive->spools[s].name);
    ts_json_node(json, answer, "address", node);
    ts_json_key(json, "loads");
    ts_json_object(json);
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const ts_spool_load *load    = &answer->power->spool[c * answer->drive->spool_count + s];
        const part           parts[] = {
                      {"T", TS_KIND_TORQUE, load->T},          {"P", TS_KIND_POWER, load->P},
                      {"P_pads", TS_KIND_POWER, load->P_pads}, {"P_driving", TS_KIND_POWER, load->P_driving},
                      {"P_lost", TS_KIND_POWER, load->P_lost},
        };
        ts_json_key(json, answer->drive->conditions[c].name);
        ts_json_object(json);
        for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
            ts_json_key(json, parts[i].symbol);
            ts_json_quantity(json, answer, parts[i].value, parts[i].kind,
                             (ts_json_place){node, (int32_t)c, parts[i].symbol});
        }
        ts_json_key(json, "imbalance");
        number_or_null(json, load->imbalance);
        ts_json_end(json, '}');
    }
    ts_json_end(json, '}');
    ts_json_end(json, '}');
}

void ts_json_carrying(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "meshes");
    ts_json_array(json);
    for (uint32_t m = 0; m < answer->train->mesh_count; m++)
        mesh(json, answer, m);
    ts_json_end(json, ']');
    ts_json_key(json, "spools");
    ts_json_array(json);
    for (uint32_t s = 0; s < answer->drive->spool_count; s++)
        spool(json, answer, s);
    ts_json_end(json, ']');
}
