/* check/rule/pack_length.c: does the pump pack fit into its body? */
#include "check/visit.h"

static void judge(ts_check *check, const ts_pack *pack)
{
    const ts_accessory *accessory = &check->drive->accessories[pack->accessory];

    if (!ts_measure_known(accessory->body.length)) {
        (void)ts_not_computable(check, pack->told->node, TS_EVERY_CONDITION,
                                "the length of the body of %s", accessory->name);
        return;
    }
    ts_question question = ts_question_about(check, pack->told->node, TS_EVERY_CONDITION);
    question.value       = pack->length;
    question.limit       = accessory->body.length.value;
    question.bound       = TS_AT_MOST;
    question.kind        = TS_KIND_LENGTH;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the %d elements of %s and their plates are %s long, its body %s",
            (int)pack->element_count, accessory->name,
            ts_shown(check, pack->length, TS_KIND_LENGTH),
            ts_shown(check, accessory->body.length.value, TS_KIND_LENGTH));
    ts_remedy(check, finding, "take a larger `module`, or a body of at least %s",
              ts_shown_outward(check, pack->length, TS_KIND_LENGTH, +1));
}

static void run(ts_check *check)
{
    ts_visit_packs(check, judge);
}

const ts_rule ts_rule_pack_length = {
    .id       = "J3-pack-length",
    .title    = "Length of the pump pack",
    .question = "Do the elements of the pump pack fit into the length of its body?",
    .why      = "The body is what clashes are looked for with: pumps that do not fit into it stand "
                "somewhere else.",
    .level    = TS_WARN,
    .source   = "derived: widths and plates one behind the other",
    .hint     = "take a larger `module`",
    .run      = run,
};
