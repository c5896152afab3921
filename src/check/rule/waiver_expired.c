/* check/rule/waiver_expired.c: has a waiver ended while what it waived is still there? */
#include "check/visit.h"
#include "check/waiver_use.h"

static void ask_date(ts_check *check, const ts_waiver *waiver)
{
    if (waiver->until.standing == TS_UNKNOWN) {
        (void)ts_not_computable(check, waiver->node, TS_EVERY_CONDITION,
                                "the last day of the waiver of %s", waiver->rule.text);
        return;
    }
    ts_finding *finding = ts_not_computable(check, waiver->node, TS_EVERY_CONDITION,
                                            "today's date, by which the waiver of %s may be over,",
                                            waiver->rule.text);
    ts_remedy(check, finding, "say what day it is, or take `until` out");
}

static void judge_waiver(ts_check *check, const ts_waiver *waiver, const ts_waiver_use *use)
{
    if (use->end == TS_WAIVER_UNJUDGED) {
        ask_date(check, waiver);
        return;
    }
    ts_finding *finding =
        ts_judge_fact(check, waiver->node, TS_EVERY_CONDITION, use->end != TS_WAIVER_ENDED);
    ts_says(check, finding, "the waiver of %s at %s has ended, so what it waived is open again",
            waiver->rule.text, waiver->at.text);
}

static void run(ts_check *check)
{
    const ts_drive *drive = check->drive;
    for (size_t i = 0; i < drive->waived_count; i++) {
        const ts_waiver_use *use = &ts_check_waiver_uses(check)[i];
        if (use->matched > 0 && use->end != TS_WAIVER_ENDLESS)
            judge_waiver(check, &drive->waived[i], use);
    }
    ts_skip(check, "no waiver that covers a finding states its last day");
}

const ts_rule ts_rule_waiver_expired = {
    .id       = "A4-waiver-expired",
    .title    = "Expired waiver",
    .question = "Is every waiver still in force?",
    .why      = "A concession is given for a time; when that is over, somebody must decide again.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "correct what was waived, or have the waiver renewed with a later last day",
    .run      = run,
    .after_waivers = true,
};
