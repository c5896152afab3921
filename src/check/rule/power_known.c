/* check/rule/power_known.c: is the load of every pad known in every condition? */
#include "check/visit.h"

/* A starter behind an overrunning clutch is at rest wherever it is not said to drive. */
static bool may_be_silent(const ts_accessory *accessory, uint32_t condition)
{
    return accessory->clutch.value == TS_CLUTCH_OVERRUNNING &&
           accessory->drives[condition].standing == TS_ABSENT &&
           accessory->power[condition].standing == TS_ABSENT;
}

/* A power above 0 that is wanted where the pad stands still; power/ takes it for unknown. */
static bool wants_power_at_rest(const ts_check *check, const ts_pad *pad, uint32_t condition)
{
    const ts_measure power = ts_accessory_on(check, pad)->power[condition];
    return ts_measure_known(power) && power.value > 0.0 &&
           ts_shaft_speed(check, pad->shaft, condition) <= 0.0;
}

static void judge_rest(ts_check *check, const ts_pad *pad, uint32_t condition)
{
    const char *where   = ts_condition_name(check, (int32_t)condition);
    const bool  wants   = wants_power_at_rest(check, pad, condition);
    ts_finding *finding = ts_judge_fact(check, pad->node, (int32_t)condition, !wants);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s is said to absorb %s at %s, where its pad stands still", pad->name,
            ts_shown(check, ts_accessory_on(check, pad)->power[condition].value, TS_KIND_POWER),
            where);
    ts_remedy(check, finding, "state 0 kW for %s, or the speed of the spool there", where);
}

static void judge_pad(ts_check *check, uint32_t index, uint32_t condition)
{
    const ts_pad       *pad       = &check->train->pads[index];
    const ts_accessory *accessory = ts_accessory_on(check, pad);
    const ts_standing   standing  = ts_load_at(check, index, condition)->standing;
    const bool          known     = standing == TS_GIVEN || standing == TS_ASSUMED;
    if (may_be_silent(accessory, condition))
        return;
    if (known || wants_power_at_rest(check, pad, condition))
        judge_rest(check, pad, condition);
    else
        (void)ts_not_computable(check, pad->node, (int32_t)condition, "the power of %s at %s",
                                accessory->name, ts_condition_name(check, (int32_t)condition));
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        if (ts_accessory_at(check, &check->train->pads[i]) == NULL)
            continue;
        for (uint32_t c = 0; c < check->drive->condition_count; c++)
            judge_pad(check, i, c);
    }
    ts_skip(check, "no accessory stands on a pad");
}

const ts_rule ts_rule_power_known = {
    .id       = "A2-power-known",
    .title    = "Known loads",
    .question = "Is the power of every accessory known in every condition, and possible there?",
    .why      = "A load that is not known is left out of every torque between its pad and the "
                "spool, and all of them look smaller than they are.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "state the power of the accessory in every condition",
    .run      = run,
};
