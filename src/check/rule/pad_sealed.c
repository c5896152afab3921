/* check/rule/pad_sealed.c: is every pad driven, or closed so that no oil is lost? */
#include "check/visit.h"

/* A pad of which the file says `unknown` is no pad of the train, and may be anything. */
static void ask_unknown(ts_check *check, const ts_shaft *shaft)
{
    const ts_pad_end *ends[] = {&shaft->record->front, &shaft->record->rear};
    for (size_t i = 0; i < 2; i++)
        if (ends[i]->standing == TS_UNKNOWN)
            (void)ts_not_computable(check, ends[i]->node, TS_EVERY_CONDITION,
                                    "what stands on the %s pad of %s",
                                    ts_face_name((ts_face_side)i), shaft->name);
}

static void run(ts_check *check)
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->shaft_count; i++)
        if (train->shafts[i].kind == TS_SHAFT_BOX)
            ask_unknown(check, &train->shafts[i]);
    for (uint32_t i = 0; i < train->pad_count; i++) {
        const ts_pad *pad = &train->pads[i];
        ts_finding   *finding =
            ts_judge_fact(check, pad->node, TS_EVERY_CONDITION, pad->use != TS_PAD_OPEN);
        ts_says(check, finding, "the %s pad of %s is open: nothing closes it",
                ts_face_name(pad->face), train->shafts[pad->shaft].name);
        ts_remedy(check, finding, "write `cover` for a sealed cover, or name the accessory");
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
