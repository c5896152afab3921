/* check/rule/start_reaches_spool.c: does torque arrive at the spool when the starter drives? */
#include "check/visit.h"

static bool spool_is_driven(const ts_check *check, uint32_t spool, uint32_t condition)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad       *pad       = &check->train->pads[i];
        const ts_accessory *accessory = ts_accessory_at(check, pad);
        if (accessory != NULL && check->train->shafts[pad->shaft].spool == spool &&
            ts_accessory_drives(accessory, condition))
            return true;
    }
    return false;
}

static void judge_spool(ts_check *check, uint32_t spool, uint32_t condition)
{
    const ts_spool      *record = &check->drive->spools[spool];
    const ts_spool_load *load = &check->power->spool[condition * check->drive->spool_count + spool];
    const int32_t        where = (int32_t)condition;
    if (isnan(load->T)) {
        ts_not_computable(check, record->node, where, "the torque of the %s spool at %s",
                          record->name, ts_condition_name(check, where));
        return;
    }
    ts_finding *finding = ts_judge_fact(check, record->node, where, load->T < 0.0);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the starter drives at %s, and still the %s spool gives %s: the accessories and the "
            "meshes take all of it",
            ts_condition_name(check, where), record->name,
            ts_shown(check, load->T, TS_KIND_TORQUE));
}

static void run(ts_check *check)
{
    for (uint32_t s = 0; s < check->drive->spool_count; s++)
        for (uint32_t c = 0; c < check->drive->condition_count; c++)
            if (spool_is_driven(check, s, c))
                judge_spool(check, s, c);
    ts_skip(check, "nothing drives its pad in any condition");
}

const ts_rule ts_rule_start_reaches_spool = {
    .id       = "B4-start-reaches-spool",
    .title    = "The start reaches the spool",
    .question = "Does torque arrive at the spool in every condition in which a starter drives?",
    .why      = "What the accessories take during the start does not turn the engine; a pump that "
                "does not unload can eat a starter.",
    .level    = TS_REFUSE,
    .source   = "derived: torque balance at the spool",
    .hint     = "unload the accessories during the start, or take a stronger starter",
    .run      = run,
};
