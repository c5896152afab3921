/* check/rule/pump_tip_speed.c: do the gears of the pumps still fill? */
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_v_a",
    .meaning = "reserve of the tip speed",
    .unit    = "1",
    .text    = "v_most/v_a - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_pack *pack)
{
    if (!ts_measure_known(pack->told->tip_speed)) {
        (void)ts_not_computable(check, pack->told->node, pack->fastest,
                                "how fast the tips of the pump gears may be");
        return;
    }
    const double v_most = pack->told->tip_speed.value;
    ts_workings_about(check->workings, pack->told->node, pack->fastest);
    ts_workings_assumed(check->workings, "v_most", v_most, "m/s",
                        "`tip speed` of the pumps, or its default");
    ts_question question  = ts_question_about(check, pack->told->node, pack->fastest);
    question.value        = pack->v_a;
    question.limit        = v_most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_VELOCITY;
    question.symbol       = "v_a";
    question.limit_symbol = "v_most";
    question.reserve      = pack->v_a > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the tips of the gears of %s run at %s at %s, faster than %s",
            check->drive->accessories[pack->accessory].name,
            ts_shown(check, pack->v_a, TS_KIND_VELOCITY), ts_condition_name(check, pack->fastest),
            ts_shown(check, v_most, TS_KIND_VELOCITY));
    ts_remedy(
        check, finding, "take a `module` of at most %s, or a slower pad",
        ts_shown_outward(check, pack->told->module.value * v_most / pack->v_a, TS_KIND_LENGTH, -1));
}

static void run(ts_check *check)
{
    ts_visit_packs(check, judge);
}

const ts_rule ts_rule_pump_tip_speed = {
    .id       = "J3-pump-tip-speed",
    .title    = "Tips of the pump gears",
    .question = "Are the tips of the pump gears slow enough for their spaces to fill?",
    .why = "Spaces that pass the inlet too fast do not fill, and what is missing boils out of the "
           "oil.",
    .level  = TS_WARN,
    .source = "common practice, no source",
    .hint   = "take smaller gears or a slower pad",
    .run    = run,
};
