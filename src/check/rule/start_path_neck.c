/* check/rule/start_path_neck.c: does the start pass a neck that it would break? */
#include "check/highest_load.h"
#include "check/neck.h"
#include "check/visit.h"

static void judge_tower(ts_check *check, uint32_t index, double factor)
{
    const ts_shaft *shaft = &check->train->shafts[index];
    const ts_neck  *neck  = &check->drive->drive[shaft->drive].tower_shaft.neck;
    if (neck->node == 0)
        return;
    const ts_guard *guard    = &check->select->guards[check->select->of_shaft[index]];
    ts_neck_case    question = {
           .neck   = neck,
           .number = check->select->necks->of_shaft[index],
           .name   = shaft->name,
           .peak   = ts_highest_in_mesh(check, shaft->mesh, true),
           .factor = factor,
           .load   = "the start",
           .lender = check->train->meshes[shaft->mesh].node,
           .symbol = "T_2",
    };
    if (guard->start_by != TS_NOWHERE) {
        question.peak   = (ts_peak){guard->start.T, guard->start.T, TS_EVERY_CONDITION};
        question.load   = ts_phrase(check, "the start at the most that %s drives with",
                                    check->train->pads[guard->start_by].name);
        question.lender = neck->node;
        question.symbol = "T_start";
    }
    if (question.peak.condition == TS_EVERY_CONDITION && !(question.peak.T > 0.0) &&
        !isnan(question.peak.T))
        return;
    ts_judge_neck(check, &question);
}

/* The highest of its curve, where it has one: a starter pulls hardest from rest, before the first
 * condition is reached. */
static ts_peak highest_of_starter(const ts_check *check, uint32_t pad, const ts_guard *guard)
{
    if (guard->summit == 0)
        return ts_highest_driven(check, pad);
    return (ts_peak){guard->start.T, guard->start.T, TS_EVERY_CONDITION};
}

static void judge_pad(ts_check *check, uint32_t index, double factor)
{
    const ts_pad       *pad       = &check->train->pads[index];
    const ts_accessory *accessory = ts_accessory_at(check, pad);
    if (accessory == NULL || accessory->neck.node == 0 || !ts_accessory_starts(check, accessory))
        return;
    const ts_guard    *guard    = &check->select->guards[check->select->of_pad[index]];
    const ts_neck_case question = {
        .neck     = &accessory->neck,
        .number   = check->select->necks->of_pad[index],
        .name     = accessory->name,
        .peak     = highest_of_starter(check, index, guard),
        .factor   = factor,
        .load     = guard->summit != 0 ? "the highest torque of its curve" : "the start",
        .lender   = pad->node,
        .symbol   = "T",
        .overload = guard->summit,
    };
    ts_judge_neck(check, &question);
}

static void run(ts_check *check)
{
    const ts_measure *limit  = &check->drive->limits.neck_factor;
    const double      factor = limit->value;
    if (!ts_limit_known(check, limit, "neck factor", "f_neck", TS_KIND_NUMBER))
        return;
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->train->pad_count; i++)
        judge_pad(check, i, factor);
    for (uint32_t i = 0; i < check->train->shaft_count; i++)
        if (check->train->shafts[i].kind == TS_SHAFT_TOWER)
            judge_tower(check, i, factor);
    ts_skip(check, "no neck lies between a starter and its spool");
}

const ts_rule ts_rule_start_path_neck = {
    .id    = "G1-start-path-neck",
    .title = "Necks on the start path",
    .question =
        "Is the start torque far enough below every neck that it passes, at the starter and "
        "in the radial shaft?",
    .why    = "The start is the highest torque of the whole life, thousands of times over; a neck "
              "whose band it reaches breaks on some cold morning.",
    .level  = TS_REFUSE,
    .source = "common practice, no source",
    .hint   = "make the neck stronger, or the starter weaker",
    .run    = run,
};
