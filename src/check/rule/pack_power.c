/* check/rule/pack_power.c: is the power that is stated of a pump pack as much as it takes? */
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_P",
    .meaning = "reserve of the stated power",
    .unit    = "1",
    .text    = "P_stated/P_pack - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge_at(ts_check *check, const ts_pack *pack, uint32_t c)
{
    const ts_accessory *accessory = &check->drive->accessories[pack->accessory];
    const ts_measure    stated    = accessory->power[c];
    const double        P         = pack->states[c].P;

    if (!ts_measure_known(stated) || !(pack->states[c].n > 0.0) || isnan(P))
        return;
    ts_workings_about(check->workings, pack->told->node, (int32_t)c);
    ts_workings_assumed(check->workings, "P_stated", stated.value, "W", "`power` of the accessory");
    ts_question question  = ts_question_about(check, pack->told->node, (int32_t)c);
    question.value        = P;
    question.limit        = stated.value;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_POWER;
    question.symbol       = "P_pack";
    question.limit_symbol = "P_stated";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the elements of %s take %s at %s, and %s is stated", accessory->name,
            ts_shown(check, P, TS_KIND_POWER), ts_condition_name(check, (int32_t)c),
            ts_shown(check, stated.value, TS_KIND_POWER));
    ts_remedy(check, finding, "state at least %s, or no `power`: then what is computed is its load",
              ts_shown_outward(check, P, TS_KIND_POWER, +1));
}

static void judge(ts_check *check, const ts_pack *pack)
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        judge_at(check, pack, c);
}

static void run(ts_check *check)
{
    ts_visit_packs(check, judge);
}

const ts_rule ts_rule_pack_power = {
    .id       = "J3-pack-power",
    .title    = "Power of the pump pack",
    .question = "Is the power that is stated of a pump pack no less than what its elements take?",
    .why      = "Teeth, shafts and neck are rated with the power that is stated.",
    .level    = TS_WARN,
    .source   = "Wilson, positive-displacement pumps and fluid motors, 1949 (from memory)",
    .hint     = "state more power",
    .run      = run,
};
