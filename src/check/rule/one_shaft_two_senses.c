/* check/rule/one_shaft_two_senses.c: can front and rear of one shaft both have what they want? */
#include "check/visit.h"

#include "check/two_senses.h"

static void say(ts_check *check, ts_finding *finding, const ts_shaft *shaft)
{
    const ts_pad       *front  = &check->train->pads[shaft->pad[TS_FRONT]];
    const ts_pad       *rear   = &check->train->pads[shaft->pad[TS_REAR]];
    const ts_accessory *first  = ts_accessory_on(check, front);
    const ts_accessory *second = ts_accessory_on(check, rear);
    const char         *word   = first->turns.value == TS_CCW ? "ccw" : "cw";
    const int           wanted = first->turns.value == TS_CCW ? 1 : -1;
    const bool          right  = ts_pad_sense(check->motion, front) == wanted;
    ts_says(check, finding,
            "two opposite rotations are wanted of one wheel: %s (front) and %s (rear) both demand "
            "%s, facing their pads; %s gets it",
            first->name, second->name, word, right ? first->name : second->name);
    ts_remedy(check, finding,
              "move %s to a shaft that turns the other way, one mesh nearer or further",
              right ? second->name : first->name);
}

static void run(ts_check *check)
{
    const ts_train *train = check->train;
    for (uint32_t i = 0; i < train->shaft_count; i++) {
        const ts_shaft *shaft = &train->shafts[i];
        if (!ts_carries_two(check, i))
            continue;
        ts_finding *finding =
            ts_judge_fact(check, shaft->node, TS_EVERY_CONDITION, !ts_wants_two_senses(check, i));
        if (finding != NULL)
            say(check, finding, shaft);
    }
    ts_skip(check, "no shaft carries an accessory on both faces");
}

const ts_rule ts_rule_one_shaft_two_senses = {
    .id       = "C4-one-shaft-two-senses",
    .title    = "Two senses of one shaft",
    .question = "Do the two accessories on front and rear of one shaft demand opposite senses, as "
                "seen by somebody who faces each?",
    .why      = "One shaft turns one way, so its two ends look opposite. Two accessories that both "
                "demand cw can never share it, whatever is done to the train.",
    .level    = TS_REFUSE,
    .source   = "derived: the two faces of one shaft are seen from opposite sides",
    .hint     = "move one of the two to a shaft that turns the other way",
    .run      = run,
};
