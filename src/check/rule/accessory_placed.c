/* check/rule/accessory_placed.c: does every accessory that is described stand on a pad? */
#include "check/visit.h"

static bool stands_on_a_pad(const ts_check *check, int32_t accessory)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++)
        if (check->train->pads[i].accessory == accessory)
            return true;
    return false;
}

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->accessory_count; i++) {
        const ts_accessory *accessory = &check->drive->accessories[i];
        ts_finding         *finding   = ts_judge_fact(check, accessory->node, TS_EVERY_CONDITION,
                                                      stands_on_a_pad(check, (int32_t)i));
        ts_says(check, finding, "%s is described, and no pad carries it", accessory->name);
        ts_remedy(check, finding, "name it as `front` or `rear` of a shaft, or take it out");
    }
    ts_skip(check, "no accessory is described");
}

const ts_rule ts_rule_accessory_placed = {
    .id       = "B1-accessory-placed",
    .title    = "Every accessory has its pad",
    .question = "Does every accessory that is described stand on a pad?",
    .why      = "What no pad carries is not driven, and its power and mass are in no sum.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "give the accessory a pad",
    .run      = run,
};
