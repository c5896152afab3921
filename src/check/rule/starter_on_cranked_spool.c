/* check/rule/starter_on_cranked_spool.c: does the starter turn the spool that is meant to be
 * cranked?
 */
#include "check/visit.h"

static void run(ts_check *check)
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->pad_count; i++) {
        const ts_pad       *pad       = &train->pads[i];
        const ts_accessory *accessory = ts_accessory_at(check, pad);
        if (accessory == NULL || !ts_accessory_starts(check, accessory))
            continue;
        const ts_spool *spool = &check->drive->spools[train->shafts[pad->shaft].spool];
        ts_finding     *finding =
            ts_judge_fact(check, pad->node, TS_EVERY_CONDITION, ts_spool_is_cranked(spool));
        ts_says(check, finding, "%s turns the %s spool, which is not the one to be cranked",
                accessory->name, spool->name);
    }
    ts_skip(check, "no accessory on a pad starts the engine");
}

const ts_rule ts_rule_starter_on_cranked_spool = {
    .id       = "B1-starter-on-cranked-spool",
    .title    = "Starter on the cranked spool",
    .question = "Does whatever starts the engine stand on the spool that is cranked?",
    .why      = "The compressor that must breathe first is on that spool; turning another one does "
                "not light the engine.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "move the starter to a pad of the cranked spool, or say which spool is cranked",
    .run      = run,
};
