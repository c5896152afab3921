/* check/rule/neck_outside_spline.c: does every neck lie outside of the spline that carries it? */
#include "check/guard.h"

#define SPLINE_ZONE 0.040894 /* m, 1.610 in from the tip of the shaft */

static void judge(ts_check *check, const ts_guard *guard)
{
    const ts_neck *neck = check->select->necks->items[guard->neck].neck;

    ts_workings_about(check->workings, neck->node, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "l_tip", neck->from_tip.value, "m", neck->from_tip.node);
    ts_question question = ts_question_about(check, neck->node, TS_EVERY_CONDITION);
    question.value       = neck->from_tip.value;
    question.limit       = SPLINE_ZONE;
    question.bound       = TS_AT_LEAST;
    question.kind        = TS_KIND_LENGTH;
    question.symbol      = "l_tip";
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the neck of %s lies %s from the tip of its shaft, inside of the %s that "
            "belong to the spline",
            ts_guard_name(check, guard), ts_shown(check, question.value, TS_KIND_LENGTH),
            ts_shown(check, question.limit, TS_KIND_LENGTH));
    ts_remedy(check, finding, "move it %s further from the tip",
              ts_shown_outward(check, question.limit - question.value, TS_KIND_LENGTH, +1));
}

static void run(ts_check *check)
{
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->count; i++) {
        const ts_guard *guard = &check->select->guards[i];

        if (guard->neck != TS_NOWHERE &&
            ts_measure_known(check->select->necks->items[guard->neck].neck->from_tip))
            judge(check, guard);
    }
    ts_skip(check, "no neck says how far it lies `from tip`");
}

const ts_rule ts_rule_neck_outside_spline = {
    .id       = "G1-neck-outside-spline",
    .title    = "Neck outside of the spline",
    .question = "Does every neck lie outside of the zone of its spline?",
    .why    = "In the spline the mate carries part of the torque past the neck, so it breaks late, "
              "and its fragments jam in the teeth.",
    .level  = TS_REFUSE,
    .source = "SAE AS972, public notes (read): no shear section within 1.610 in of the shaft's tip",
    .hint   = "move the neck away from the tip",
    .run    = run,
};
