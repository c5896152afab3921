/* check/rule/neck_fragments.c: do the ends of a broken neck stay where they are? */
#include "check/guard.h"

static void judge(ts_check *check, const ts_guard *guard)
{
    const ts_neck *neck    = check->select->necks->items[guard->neck].neck;
    ts_finding    *finding = ts_judge_fact(check, neck->node, TS_EVERY_CONDITION,
                                           neck->fragments.value == TS_FRAGMENTS_RETAINED);

    ts_says(check, finding, "when the neck of %s has broken, its ends are loose",
            ts_guard_name(check, guard));
    ts_remedy(check, finding, "hold both ends axially, with a stop that keeps them out of the box");
}

static void run(ts_check *check)
{
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->count; i++) {
        const ts_guard *guard = &check->select->guards[i];

        if (guard->neck != TS_NOWHERE &&
            ts_pick_known(check->select->necks->items[guard->neck].neck->fragments))
            judge(check, guard);
    }
    ts_skip(check, "no neck is designed, and none says what becomes of its `fragments`");
}

const ts_rule ts_rule_neck_fragments = {
    .id       = "G1-neck-fragments",
    .title    = "Fragments retained",
    .question = "Do the ends of every neck stay where they are when it has broken?",
    .why      = "The gearbox turns on after a neck has done its work; an end that wanders into the "
                "teeth or the seal undoes it.",
    .level    = TS_REFUSE,
    .source   = "SAE AS972, public notes (read): ingestion stop, and the seal survives the failure",
    .hint     = "hold the ends",
    .run      = run,
};
