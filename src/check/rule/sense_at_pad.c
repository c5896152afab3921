/* check/rule/sense_at_pad.c: does every pad turn the way its accessory demands? */
#include "check/visit.h"

#include "check/two_senses.h"

static const char *sense_name(int sense)
{
    return sense > 0 ? "ccw" : "cw";
}

/* An idler turns everything beyond it round, the other face only this pad. */
static void say_remedy(ts_check *check, ts_finding *finding, const ts_pad *pad)
{
    const ts_shaft    *shaft = &check->train->shafts[pad->shaft];
    const ts_face_side other = pad->face == TS_FRONT ? TS_REAR : TS_FRONT;
    if (shaft->pad[other] == TS_NOWHERE)
        ts_remedy(check, finding,
                  "move it to the %s face of the same shaft, or put one idler more, or one less, "
                  "between it and the box input",
                  ts_face_name(other));
    else
        ts_remedy(check, finding,
                  "put one idler more, or one less, between it and the box input, or change places "
                  "with what stands on the %s face",
                  ts_face_name(other));
}

static void judge_pad(ts_check *check, const ts_pad *pad, const ts_accessory *accessory)
{
    const int sense  = ts_pad_sense(check->motion, pad);
    const int wanted = accessory->turns.value == TS_CCW ? 1 : -1;
    if (accessory->turns.standing == TS_UNKNOWN || accessory->turns.standing == TS_ABSENT) {
        ts_not_computable(check, pad->node, TS_EVERY_CONDITION, "the rotation that %s demands",
                          accessory->name);
        return;
    }
    if (sense == 0) {
        ts_not_computable(check, pad->node, TS_EVERY_CONDITION, "the rotation of the spool");
        return;
    }
    ts_finding *finding = ts_judge_fact(check, pad->node, TS_EVERY_CONDITION,
                                        accessory->turns.value == TS_EITHER || sense == wanted);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s demands %s, and its pad turns %s, both facing the pad",
            accessory->name, sense_name(wanted), sense_name(sense));
    say_remedy(check, finding, pad);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad       *pad       = &check->train->pads[i];
        const ts_accessory *accessory = ts_accessory_at(check, pad);
        /* Where one shaft can never suit both, C4-one-shaft-two-senses says so, once. */
        if (accessory != NULL && !ts_wants_two_senses(check, pad->shaft))
            judge_pad(check, pad, accessory);
    }
    ts_skip(check, "no accessory stands on a pad of its own sense");
}

const ts_rule ts_rule_sense_at_pad = {
    .id       = "C4-sense-at-pad",
    .title    = "Sense at the pad",
    .question = "Does every pad turn the way its accessory demands, seen by somebody who faces it?",
    .why      = "A pump turned backwards delivers nothing and runs dry; every external mesh on the "
                "way reverses, and so does the other face.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "use the other face, or one idler more or less",
    .run      = run,
};
