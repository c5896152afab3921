/* check/rule/bevel_thrust_sense.c: does the thrust push the bevels out of mesh, both ways of power?
 */
#include "check/visit.h"

#define DEGREE 0.017453292519943295

/* The most inward thrust that either gear meets, and what the other hand of spiral would make of
 * the worst. */
typedef struct thrust {
    double  least;      /* N, away from the apex; negative: into mesh */
    double  other_hand; /* N, the least with the other hand           */
    int     member;     /* 0 driver, 1 driven                         */
    int32_t condition;
    bool    known;
} thrust;

/* Changing hand turns the sign of the spiral's part and leaves that of the pressure angle. */
static double with_other_hand(const ts_check *check, uint32_t mesh, const ts_mesh_load *load,
                              int member)
{
    const ts_bevel_pair *pair  = &check->motion->meshes[mesh].bevel;
    const double         delta = member == 0 ? pair->delta_1 : pair->delta_2;
    const double outward = load->F_t * tan(pair->in.alpha_n) * sin(delta) / cos(pair->in.beta_m);
    return 2.0 * outward - load->F_a[member];
}

static thrust find_thrust(const ts_check *check, uint32_t mesh)
{
    thrust found = {INFINITY, INFINITY, 0, TS_EVERY_CONDITION, true};
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_mesh_load *load = ts_load_of(check, mesh, c);
        if (load->flow == TS_FLOW_NONE && !isnan(load->F_t))
            continue;
        for (int member = 0; member < 2; member++) {
            const double F_a = load->F_a[member];
            found.known      = found.known && !isnan(F_a);
            found.other_hand = fmin(found.other_hand, with_other_hand(check, mesh, load, member));
            if (F_a < found.least) {
                found.least     = F_a;
                found.member    = member;
                found.condition = (int32_t)c;
            }
        }
    }
    return found;
}

/* sin(beta_m) <= tan(alpha_n)*tan(delta) keeps both parts of the thrust outwards whichever flank
 * works; the smaller pitch angle decides. */
static double spiral_most(const ts_bevel_pair *pair)
{
    const double delta = fmin(pair->delta_1, pair->delta_2);
    const double most  = tan(pair->in.alpha_n) * tan(delta);
    return most < 1.0 ? asin(most) : (double)NAN;
}

static void say(ts_check *check, ts_finding *finding, uint32_t mesh, const thrust *found)
{
    const ts_mesh       *record = &check->train->meshes[mesh];
    const ts_bevel_pair *pair   = &check->motion->meshes[mesh].bevel;
    const uint32_t       shaft  = found->member == 0 ? record->driver_shaft : record->driven_shaft;
    ts_says(check, finding, "the bevel of %s is pulled into mesh with %s at %s",
            check->train->shafts[shaft].name, ts_shown(check, -found->least, TS_KIND_FORCE),
            ts_condition_name(check, found->condition));
    /* Rounded down to a tenth of a degree, so that typing it in is enough. */
    const double most = floor(spiral_most(pair) / DEGREE * 10.0) / 10.0 * DEGREE;
    if (found->other_hand > found->least)
        ts_remedy(check, finding,
                  "the other hand of spiral leaves %s; up to %s of spiral pulls neither gear in, "
                  "whichever way power flows",
                  found->other_hand >= 0.0
                      ? "no inward thrust"
                      : ts_phrase(check, "%s inwards",
                                  ts_shown(check, -found->other_hand, TS_KIND_FORCE)),
                  ts_shown(check, most, TS_KIND_ANGLE));
    else
        ts_remedy(check, finding,
                  "hold the bearing against it both ways, or use at most %s of spiral, which pulls "
                  "neither gear in",
                  ts_shown(check, most, TS_KIND_ANGLE));
}

static void judge_mesh(ts_check *check, uint32_t mesh)
{
    const ts_mesh *record = &check->train->meshes[mesh];
    const thrust   found  = find_thrust(check, mesh);
    if (!found.known) {
        ts_not_computable(check, record->node, TS_EVERY_CONDITION, "the tooth forces of %s",
                          ts_mesh_name(check, mesh));
        return;
    }
    if (found.condition == TS_EVERY_CONDITION)
        return; /* it never carries anything */
    const char *symbol = found.member == 0 ? "F_a1" : "F_a2";
    if (check->workings != NULL) {
        ts_workings_about(check->workings, record->node, TS_EVERY_CONDITION);
        ts_workings_borrow(check->workings, symbol, found.least,
                           (ts_subject){record->node, found.condition}, symbol);
    }
    ts_question question = ts_question_about(check, record->node, TS_EVERY_CONDITION);
    question.value       = found.least;
    question.limit       = 0.0;
    question.bound       = TS_AT_LEAST;
    question.kind        = TS_KIND_FORCE;
    question.symbol      = symbol;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, mesh, &found);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->mesh_count; i++)
        if (check->train->meshes[i].kind == TS_MESH_BEVEL && check->motion->meshes[i].solved)
            judge_mesh(check, i);
    ts_skip(check, "no bevel pair with a geometry carries a load");
}

const ts_rule ts_rule_bevel_thrust_sense = {
    .id       = "E8-bevel-thrust-sense",
    .title    = "Thrust of the bevels",
    .question = "Is every bevel pushed out of mesh, by the running load and by the start?",
    .why    = "A bevel that is pulled in closes its own backlash and can seize; pushed out it only "
              "asks for a thrust bearing.",
    .level  = TS_WARN,
    .source = "common practice, no source; the forces: ISO 23509:2016",
    .hint   = "change the hand of spiral, or use less spiral",
    .run    = run,
};
