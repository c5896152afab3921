/* check/rule/oil_return.c: does the oil leave no hotter than it may? */
#include "check/rule.h"

static void judge(ts_check *check, uint32_t d)
{
    const ts_heat_worst *worst = &check->heat->leavings[d];
    const ts_node        node  = check->heat->nodes[d][worst->method];
    const ts_measure     most  = check->drive->oil.hottest;

    if (worst->condition < 0)
        return;
    if (!ts_measure_known(most)) {
        (void)ts_not_computable(check, check->drive->oil.node, TS_EVERY_CONDITION,
                                "how hot the oil may leave");
        return;
    }
    ts_question question = ts_question_about(check, node, worst->condition);
    question.value       = worst->value;
    question.limit       = most.value;
    question.bound       = TS_AT_MOST;
    question.kind        = TS_KIND_TEMPERATURE;
    question.symbol      = "theta_out";
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const bool settled =
        ts_heat_state_at(check->heat, worst->method, (uint32_t)worst->condition, d)->settled;
    ts_says(check, finding,
            settled ? "the oil of the %s drive leaves with %s at %s, hotter than %s"
                    : "the oil of the %s drive boils: it would have to leave with %s at %s, hotter "
                      "than %s",
            check->drive->spools[check->drive->drive[d].spool].name,
            ts_shown_apart(check, worst->value, most.value, TS_KIND_TEMPERATURE),
            ts_condition_name(check, worst->condition),
            ts_shown(check, most.value, TS_KIND_TEMPERATURE));
    if (isfinite(worst->flow))
        ts_remedy(check, finding, "give all boxes together a `flow` of at least %s, or cool it",
                  ts_shown_outward(check, worst->flow, TS_KIND_VOLUME_FLOW, +1));
    else
        ts_remedy(check, finding, "no flow would keep it there: feed it colder");
}

static void run(ts_check *check)
{
    if (check->heat == NULL || check->heat->missing != NULL) {
        ts_skip(check, "losses could not be computed: J5-oil-rise says why");
        return;
    }
    for (uint32_t d = 0; d < check->drive->drive_count; d++)
        judge(check, d);
    ts_skip(check, "no drive hangs on a spool");
}

const ts_rule ts_rule_oil_return = {
    .id       = "J5-oil-return",
    .title    = "Temperature of the return",
    .question = "Does the oil leave every drive no hotter than it may, in every condition?",
    .why      = "Hot oil ages within hours and leaves coke where it lies still; far above, it no "
                "longer stays oil.",
    .level    = TS_WARN,
    .source   = "common practice, no source; heat by ISO/TR 14179 and NASA TP-1622 (from memory)",
    .hint     = "give more oil, or colder",
    .run      = run,
};
