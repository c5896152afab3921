/* check/rule/pad_sealed.c: is every pad driven, or closed so that no oil is lost? */
#include "check/visit.h"

static void run(ts_check *check)
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->pad_count; i++) {
        const ts_pad *pad = &train->pads[i];
        ts_finding   *finding =
            ts_judge_fact(check, pad->node, TS_EVERY_CONDITION, pad->use != TS_PAD_OPEN);
        ts_says(check, finding, "the %s pad of %s is open: nothing closes it",
                ts_face_name(pad->face), train->shafts[pad->shaft].name);
        ts_todo(check, finding, "write `cover` for a sealed cover, or name the accessory");
    }
    ts_skip(check, "the drive has no pad");
}

const ts_rule ts_rule_pad_sealed = {
    .id       = "A2-pad-sealed",
    .title    = "Sealed pads",
    .question = "Is every pad driven, or closed by something that seals?",
    .why      = "An open pad loses the oil of the whole box in minutes, and the engine with it.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "close the pad with a sealed cover",
    .run      = run,
};
