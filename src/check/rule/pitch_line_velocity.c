/* check/rule/pitch_line_velocity.c: which meshes run so fast that they ask for jets and baffles? */
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_v",
    .meaning = "reserve of the pitch line velocity",
    .unit    = "1",
    .text    = "v_most/v - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* Index of the condition in which the mesh is fastest; a speed that is not known wins. */
static uint32_t fastest_condition(const ts_check *check, uint32_t mesh)
{
    const uint32_t meshes = check->train->mesh_count;
    const double  *v      = check->motion->velocity;
    uint32_t       found  = 0;
    for (uint32_t c = 1; c < check->drive->condition_count && !isnan(v[found * meshes + mesh]); c++)
        if (!(v[c * meshes + mesh] <= v[found * meshes + mesh]))
            found = c;
    return found;
}

static void judge_mesh(ts_check *check, uint32_t mesh, double most)
{
    const ts_mesh *record    = &check->train->meshes[mesh];
    const uint32_t condition = fastest_condition(check, mesh);
    const double   v         = check->motion->velocity[condition * check->train->mesh_count + mesh];
    if (isnan(v)) {
        ts_not_computable(check, record->node, TS_EVERY_CONDITION, "the speed of %s at %s",
                          ts_mesh_name(check, mesh), ts_condition_name(check, (int32_t)condition));
        return;
    }
    if (check->workings != NULL) {
        ts_workings_about(check->workings, record->node, TS_EVERY_CONDITION);
        ts_workings_borrow(check->workings, "v", v, (ts_subject){record->node, (int32_t)condition},
                           "v");
    }
    ts_question question  = ts_question_about(check, record->node, TS_EVERY_CONDITION);
    question.value        = v;
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_VELOCITY;
    question.symbol       = "v";
    question.limit_symbol = "v_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        ts_says(check, finding, "%s runs at %s at %s, faster than %s", ts_mesh_name(check, mesh),
                ts_shown_apart(check, v, most, TS_KIND_VELOCITY),
                ts_condition_name(check, (int32_t)condition),
                ts_shown(check, most, TS_KIND_VELOCITY));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.pitch_line_velocity;
    if (!ts_limit_known(check, limit, "pitch line velocity", "v_most", TS_KIND_VELOCITY))
        return;
    for (uint32_t i = 0; i < check->train->mesh_count; i++)
        if (check->motion->meshes[i].solved)
            judge_mesh(check, i, limit->value);
    ts_skip(check, "no mesh has a geometry");
}

const ts_rule ts_rule_pitch_line_velocity = {
    .id       = "J2-pitch-line-velocity",
    .title    = "Pitch line velocity",
    .question = "Does every mesh stay below the speed at which splash no longer feeds it?",
    .why    = "Fast teeth fling the oil off before they meet: jets must reach the mesh and baffles "
              "keep the windage down, and both take room.",
    .level  = TS_WARN,
    .source = "common practice, no source",
    .hint   = "show the jets and baffles of this mesh, and raise `pitch line velocity` in `limits`",
    .run    = run,
};
