/* check/rule/implausible_torques.c: do the torques of an accessory stand in their natural order? */
#include "check/visit.h"

#include "check/highest_load.h"

static void judge_overload(ts_check *check, uint32_t pad, const ts_accessory *accessory)
{
    const ts_overload overload = accessory->torque.overload;
    const ts_peak     peak     = ts_highest_absorbed(check, pad);
    if (isnan(peak.T))
        return; /* A2-power-known speaks of it */
    ts_question question = ts_question_about(check, overload.node, TS_EVERY_CONDITION);
    question.value       = overload.torque;
    question.limit       = peak.T;
    question.bound       = TS_AT_LEAST;
    question.kind        = TS_KIND_TORQUE;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the overload of %s, %s, is less than the %s that it absorbs at %s",
            accessory->name, ts_shown_apart(check, overload.torque, peak.T, TS_KIND_TORQUE),
            ts_shown_apart(check, peak.T, overload.torque, TS_KIND_TORQUE),
            ts_condition_name(check, peak.condition));
    ts_remedy(check, finding,
              "state an overload of at least %s, or look at the power and the speed",
              ts_shown_outward(check, peak.T, TS_KIND_TORQUE, +1));
}

static void judge_static(ts_check *check, const ts_accessory *accessory)
{
    const double overload = accessory->torque.overload.torque;
    const double statical = accessory->torque.statically.value;
    ts_question  question =
        ts_question_about(check, accessory->torque.statically.node, TS_EVERY_CONDITION);
    question.value      = statical;
    question.limit      = overload;
    question.bound      = TS_AT_LEAST;
    question.kind       = TS_KIND_TORQUE;
    ts_finding *finding = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the static torque of %s, %s, is less than its overload of %s",
            accessory->name, ts_shown_apart(check, statical, overload, TS_KIND_TORQUE),
            ts_shown_apart(check, overload, statical, TS_KIND_TORQUE));
    ts_remedy(check, finding, "state a static torque of at least %s",
              ts_shown_outward(check, overload, TS_KIND_TORQUE, +1));
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_accessory *accessory = ts_accessory_at(check, &check->train->pads[i]);
        if (accessory == NULL || accessory->torque.overload.standing != TS_GIVEN)
            continue;
        judge_overload(check, i, accessory);
        if (ts_measure_known(accessory->torque.statically))
            judge_static(check, accessory);
    }
    ts_skip(check, "no accessory on a pad states an overload");
}

const ts_rule ts_rule_implausible_torques = {
    .id       = "A3-implausible-torques",
    .title    = "Implausible torques",
    .question = "Is every accessory's static torque at least its overload, and that at least what "
                "it absorbs?",
    .why      = "Torques out of order are torques in the wrong unit or of the wrong shaft.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "look at the units and at the shaft to which the torques are referred",
    .run      = run,
};
