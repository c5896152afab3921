/* check/rule/starter_present.c: can the engine be started through this drive? */
#include "check/visit.h"

static bool drives_somewhere(const ts_check *check, const ts_accessory *accessory)
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (ts_accessory_drives(accessory, c))
            return true;
    return false;
}

/* The pad of the accessory that starts; one that is known to drive is preferred. */
static const ts_pad *find_starter(const ts_check *check)
{
    const ts_pad *silent = NULL;
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad       *pad       = &check->train->pads[i];
        const ts_accessory *accessory = ts_accessory_at(check, pad);
        if (accessory == NULL || !ts_accessory_starts(check, accessory))
            continue;
        if (drives_somewhere(check, accessory))
            return pad;
        silent = pad;
    }
    return silent;
}

/* What is missing is missing at the spool that is to be cranked. */
static ts_node spool_to_start(const ts_drive *drive)
{
    for (size_t i = 0; i < drive->spool_count; i++)
        if (ts_spool_is_cranked(&drive->spools[i]))
            return drive->spools[i].node;
    return drive->spool_count > 0 ? drive->spools[0].node : drive->node;
}

static void run(ts_check *check)
{
    const ts_node spool = spool_to_start(check->drive);
    const ts_pad *pad   = find_starter(check);
    if (pad == NULL) {
        ts_finding *finding = ts_judge_fact(check, spool, TS_EVERY_CONDITION, false);
        ts_says(check, finding, "no pad carries anything that turns the engine to start it");
        return;
    }
    const ts_accessory *starter = ts_accessory_at(check, pad);
    if (drives_somewhere(check, starter))
        (void)ts_judge_fact(check, spool, TS_EVERY_CONDITION, true);
    else
        ts_not_computable(check, spool, TS_EVERY_CONDITION,
                          "the torque with which %s drives, in any condition", starter->name);
}

const ts_rule ts_rule_starter_present = {
    .id       = "B1-starter-present",
    .title    = "A starter",
    .question = "Is there a starter, and is the torque known with which it drives?",
    .why      = "The start loads the teeth between starter and spool more than any running, and on "
                "their other flanks.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "give a pad to a starter, with its torque in `drives`",
    .run      = run,
};
