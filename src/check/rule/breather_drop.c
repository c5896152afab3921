/* check/rule/breather_drop.c: does the breather hold the chambers at a low pressure? */
#include "check/rule.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_dp",
    .meaning = "reserve of the pressure drop",
    .unit    = "1",
    .text    = "dp_most/dp - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_breather *breather)
{
    const ts_node node = breather->told->node;
    uint32_t      at   = 0;

    for (uint32_t c = 1; c < check->drive->condition_count; c++)
        if (breather->cases[c].dp > breather->cases[at].dp)
            at = c;
    if (!ts_measure_known(breather->told->drop)) {
        (void)ts_not_computable(check, node, (int32_t)at, "how much pressure may drop over %s",
                                check->drive->accessories[breather->accessory].name);
        return;
    }
    const double dp_most = breather->told->drop.value, dp = breather->cases[at].dp;
    ts_workings_about(check->workings, node, (int32_t)at);
    ts_workings_assumed(check->workings, "dp_most", dp_most, "Pa",
                        "`drop` of the separator, or its default");
    ts_question question  = ts_question_about(check, node, (int32_t)at);
    question.value        = dp;
    question.limit        = dp_most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_STRESS;
    question.symbol       = "dp";
    question.limit_symbol = "dp_most";
    question.reserve      = dp > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s drops over %s at %s, more than %s",
            ts_shown(check, dp, TS_KIND_STRESS),
            check->drive->accessories[breather->accessory].name,
            ts_condition_name(check, (int32_t)at), ts_shown(check, dp_most, TS_KIND_STRESS));
}

static void run(ts_check *check)
{
    const ts_oil_units *units = &check->power->units;

    for (uint32_t i = 0; i < units->breather_count; i++)
        if (units->breathers[i].missing == NULL)
            judge(check, &units->breathers[i]);
    ts_skip(check, "no accessory tells its `separator`, or not enough of it");
}

const ts_rule ts_rule_breather_drop = {
    .id    = "J4-breather-drop",
    .title = "Pressure drop of the breather",
    .question =
        "Does so little pressure drop over the breather that seals hold, in every condition?",
    .why    = "What drops there raises the pressure of every chamber that is vented through it.",
    .level  = TS_WARN,
    .source = "derived: air that turns with the rotor, law of the orifice (discharge 0.7: common "
              "practice, no source)",
    .hint   = "a wider bore or a smaller rotor",
    .run    = run,
};
