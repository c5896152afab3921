/* check/rule/engine_on_cranked_spool.c: does everything that the engine needs turn when it is
 * cranked?
 */
#include "check/visit.h"

static void run(ts_check *check)
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->pad_count; i++) {
        const ts_pad       *pad       = &train->pads[i];
        const ts_accessory *accessory = ts_accessory_at(check, pad);
        if (accessory == NULL || accessory->purpose.value != TS_FOR_ENGINE)
            continue;
        const ts_spool *spool = &check->drive->spools[train->shafts[pad->shaft].spool];
        ts_finding     *finding =
            ts_judge_fact(check, pad->node, TS_EVERY_CONDITION, ts_spool_is_cranked(spool));
        ts_says(check, finding,
                "%s serves the engine, and the %s spool that drives it is not cranked: at the "
                "start it waits for air",
                accessory->name, spool->name);
    }
    ts_skip(check, "no accessory on a pad is for the engine");
}

const ts_rule ts_rule_engine_on_cranked_spool = {
    .id       = "B1-engine-on-cranked-spool",
    .title    = "Engine needs on the cranked spool",
    .question = "Is everything that the engine needs to run driven by the spool that the starter "
                "turns?",
    .why      = "The other spool follows by air only, long after fuel, oil and the control's power "
                "are needed.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "move the accessory to a pad of the cranked spool",
    .run      = run,
};
