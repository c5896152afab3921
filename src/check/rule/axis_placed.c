/* check/rule/axis_placed.c: has every axis a place round the engine? */
#include "check/visit.h"

static void judge_shaft(ts_check *check, uint32_t index)
{
    const ts_shaft        *shaft  = &check->train->shafts[index];
    const ts_shaft_motion *motion = &check->motion->shafts[index];
    if (shaft->record->toward.standing == TS_UNKNOWN) {
        ts_not_computable(check, shaft->node, TS_EVERY_CONDITION, "the direction `toward` of %s",
                          shaft->name);
        return;
    }
    ts_finding *finding = ts_judge_fact(check, shaft->node, TS_EVERY_CONDITION, motion->placed);
    if (finding != NULL)
        ts_says(check, finding, "%s cannot be placed: %s", shaft->name, motion->fault);
}

/* What hangs on a shaft without a place, or on a mesh without a centre distance, has none either;
 * only the first of them is told. */
static bool cause_lies_before(const ts_check *check, uint32_t index)
{
    const ts_shaft *shaft = &check->train->shafts[index];
    if (ts_is_box_input(check->train, index))
        return false;
    return !check->motion->meshes[shaft->mesh].solved ||
           !check->motion->shafts[ts_driver_of(check->train, index)].placed;
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->shaft_count; i++)
        if (check->train->shafts[i].kind == TS_SHAFT_BOX && !cause_lies_before(check, i))
            judge_shaft(check, i);
    ts_skip(check, "no box shaft has a centre distance");
}

const ts_rule ts_rule_axis_placed = {
    .id       = "D1-axis-placed",
    .title    = "Every axis has its place",
    .question = "Can every axis be placed at its centre distance, on the arc or in the direction "
                "that the file says?",
    .why      = "Two circles need not cross: a shaft off the arc may be too far from it for the "
                "next to come back.",
    .level    = TS_REFUSE,
    .source   = "derived: crossing of the arc with the centre distance",
    .hint     = "give the shaft a direction with `toward`, or change the centre distance",
    .run      = run,
};
