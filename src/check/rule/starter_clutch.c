/* check/rule/starter_clutch.c: is the starter let go when the engine outruns it? */
#include "check/visit.h"

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->accessory_count; i++) {
        const ts_accessory *accessory = &check->drive->accessories[i];
        if (accessory->purpose.value != TS_FOR_START)
            continue;
        ts_finding *finding = ts_judge_fact(check, accessory->node, TS_EVERY_CONDITION,
                                            accessory->clutch.value == TS_CLUTCH_OVERRUNNING);
        ts_says(check, finding,
                "%s serves the start only and has no overrunning clutch: the engine carries it "
                "round at every speed",
                accessory->name);
    }
    ts_skip(check, "no accessory serves the start only");
}

const ts_rule ts_rule_starter_clutch = {
    .id       = "G5-starter-clutch",
    .title    = "Overrunning clutch",
    .question = "Has every accessory that serves the start only an overrunning clutch?",
    .why      = "A starter is built for seconds at its cut-out speed; carried on to take-off it "
                "bursts.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "write `clutch: overrunning`, and see that there is one",
    .run      = run,
};
