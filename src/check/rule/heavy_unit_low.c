/* check/rule/heavy_unit_low.c: can the heavy accessories be lowered when they come off? */
#include "check/visit.h"

#define HEAVY 20.0 /* kg, more than one person lifts overhead */

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad          *pad       = &check->train->pads[i];
        const ts_accessory    *accessory = ts_accessory_at(check, pad);
        const ts_shaft_motion *axis      = &check->motion->shafts[pad->shaft];
        if (accessory == NULL || !ts_measure_known(accessory->mass) ||
            accessory->mass.value < HEAVY || !axis->placed)
            continue;
        ts_finding *finding = ts_judge_fact(check, pad->node, TS_EVERY_CONDITION, axis->y <= 0.0);
        if (finding != NULL)
            ts_says(check, finding, "%s (%s) hangs above the engine axis, at %s", accessory->name,
                    ts_shown(check, accessory->mass.value, TS_KIND_MASS),
                    ts_shown_clock(check, axis->clock));
    }
    ts_skip(check, "no accessory on a pad is known to weigh 20 kg or more");
}

const ts_rule ts_rule_heavy_unit_low = {
    .id       = "D4-heavy-unit-low",
    .title    = "Heavy units below",
    .question = "Does every accessory of 20 kg or more stand below the engine axis?",
    .why    = "What is heavy must be lowered on a hoist; from above the engine it has to be lifted "
              "out over it.",
    .level  = TS_WARN,
    .source = "common practice, no source",
    .hint   = "move the accessory to a pad in the lower half",
    .run    = run,
};
