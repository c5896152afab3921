/* check/rule/neck_above_load.c: do the necks bear all that is legitimate while the engine runs? */
#include "check/highest_load.h"
#include "check/neck.h"
#include "check/visit.h"

/* The overload is legitimate too. */
static ts_peak highest_legitimate(const ts_check *check, uint32_t pad)
{
    const ts_accessory *accessory = ts_accessory_on(check, &check->train->pads[pad]);
    const ts_overload   overload  = accessory->torque.overload;
    ts_peak             peak      = ts_highest_absorbed(check, pad);
    if (overload.standing == TS_UNKNOWN)
        peak.T = (double)NAN;
    else if (overload.standing == TS_GIVEN && overload.torque > peak.T)
        peak = (ts_peak){overload.torque, overload.torque, TS_EVERY_CONDITION};
    return peak;
}

static void judge_tower(ts_check *check, uint32_t index, double factor)
{
    const ts_shaft *shaft = &check->train->shafts[index];
    const ts_neck  *neck  = &check->drive->drive[shaft->drive].tower_shaft.neck;
    if (neck->node == 0)
        return;
    const ts_guard *guard    = &check->select->guards[check->select->of_shaft[index]];
    const bool      over     = guard->run_by != TS_NOWHERE;
    ts_neck_case    question = {
           .neck   = neck,
           .number = check->select->necks->of_shaft[index],
           .name   = shaft->name,
           .peak   = ts_highest_in_mesh(check, shaft->mesh, false),
           .factor = factor,
           .load   = "what it carries",
           .lender = check->train->meshes[shaft->mesh].node,
           .symbol = "T_2",
    };
    if (over) {
        question.peak   = (ts_peak){guard->run.T, guard->run.T, guard->run.condition};
        question.load   = ts_phrase(check, "what it carries with the overload of %s",
                                    check->train->pads[guard->run_by].name);
        question.lender = neck->node;
        question.symbol = "T_run";
    }
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
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad       *pad       = &check->train->pads[i];
        const ts_accessory *accessory = ts_accessory_at(check, pad);
        if (accessory == NULL || accessory->neck.node == 0)
            continue;
        const ts_peak      peak     = highest_legitimate(check, i);
        const ts_neck_case question = {
            .neck     = &accessory->neck,
            .number   = check->select->necks->of_pad[i],
            .name     = accessory->name,
            .peak     = peak,
            .factor   = factor,
            .load     = peak.condition == TS_EVERY_CONDITION ? "its overload" : "what it absorbs",
            .lender   = pad->node,
            .symbol   = "T",
            .overload = peak.condition == TS_EVERY_CONDITION && peak.T > 0.0
                            ? accessory->torque.overload.node
                            : 0,
        };
        ts_judge_neck(check, &question);
    }
    for (uint32_t i = 0; i < check->train->shaft_count; i++)
        if (check->train->shafts[i].kind == TS_SHAFT_TOWER)
            judge_tower(check, i, factor);
    ts_skip(check, "nothing on a pad has a neck, and no radial shaft has one");
}

const ts_rule ts_rule_neck_above_load = {
    .id    = "G1-neck-above-load",
    .title = "Neck above the load",
    .question =
        "Is the least break torque of every neck far enough above the highest torque that is "
        "legitimate there while the engine runs?",
    .why    = "A neck that breaks in ordinary service costs a flight for nothing, and after the "
              "third time somebody fits a stronger one.",
    .level  = TS_REFUSE,
    .source = "common practice, no source",
    .hint   = "make the neck stronger, or lower the overload",
    .run    = run,
};
