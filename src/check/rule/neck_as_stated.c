/* check/rule/neck_as_stated.c: does a designed neck break inside of the band that is stated for it?
 */
#include "check/guard.h"
#include "check/neck.h"

static void judge(ts_check *check, uint32_t number)
{
    const ts_drive_neck *of    = &check->select->necks->items[number];
    const ts_node        about = of->neck->node;

    if (of->neck->breaks.standing == TS_UNKNOWN) {
        ts_not_computable(check, about, TS_EVERY_CONDITION, "the stated band of the neck of %s",
                          of->name);
        return;
    }
    if (!ts_neck_known(check, number))
        return;
    const bool  weak     = of->band.low / of->stated.low < of->stated.high / of->band.high;
    ts_question question = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value       = weak ? of->band.low : of->band.high;
    question.limit       = weak ? of->stated.low : of->stated.high;
    question.bound       = weak ? TS_AT_LEAST : TS_AT_MOST;
    question.kind        = TS_KIND_TORQUE;
    question.symbol      = weak ? "T_break_least" : "T_break_most";
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the neck of %s breaks between %s and %s by its metal and size, and %s "
            "to %s is stated for it",
            of->name, ts_shown(check, of->band.low, TS_KIND_TORQUE),
            ts_shown(check, of->band.high, TS_KIND_TORQUE),
            ts_shown(check, of->stated.low, TS_KIND_TORQUE),
            ts_shown(check, of->stated.high, TS_KIND_TORQUE));
    if (of->band.high / of->band.low <= of->stated.high / of->stated.low)
        ts_neck_remedy(check, finding, number, question.limit, !weak);
    else
        ts_remedy(check, finding,
                  "narrow the scatter: the band is %s wide from end to end where %s is "
                  "stated",
                  ts_shown(check, of->band.high / of->band.low, TS_KIND_NUMBER),
                  ts_shown(check, of->stated.high / of->stated.low, TS_KIND_NUMBER));
}

static void run(ts_check *check)
{
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->necks->count; i++) {
        const ts_drive_neck *of = &check->select->necks->items[i];

        if (of->designed && of->neck->breaks.standing != TS_ABSENT)
            judge(check, i);
    }
    ts_skip(check, "no neck has both a diameter and a stated band");
}

const ts_rule ts_rule_neck_as_stated = {
    .id       = "G1-neck-as-stated",
    .title    = "Neck as stated",
    .question = "Does every neck with a diameter break inside of the band that is stated for it?",
    .why    = "The stated band is what was agreed with the accessory's maker; the one that metal, "
              "size and temperature give is what is fitted.",
    .level  = TS_REFUSE,
    .source = "derived: guaranteed bounds of src/element/shear_neck.h",
    .hint   = "change the diameter, or narrow the scatter of strength and size",
    .run    = run,
};
