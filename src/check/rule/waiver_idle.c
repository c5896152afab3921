/* check/rule/waiver_idle.c: does every waiver cover something? */
#include "check/visit.h"
#include "check/waiver_use.h"

static const ts_rule *rule_named(const ts_check *check, const char *id)
{
    for (size_t i = 0; i < check->rule_count; i++)
        if (ts_text_is(ts_text_of(id), check->rules[i]->id))
            return check->rules[i];
    return NULL;
}

#define RULES_MOST 512

static const char *nearest_id(const ts_check *check, const char *id)
{
    const char  *ids[RULES_MOST];
    const size_t count = check->rule_count < RULES_MOST ? check->rule_count : RULES_MOST;
    for (size_t i = 0; i < count; i++)
        ids[i] = check->rules[i]->id;
    return ts_text_nearest(ts_text_of(id), ids, count);
}

static void say_unknown_rule(ts_check *check, ts_finding *finding, const char *id)
{
    const char *nearest = nearest_id(check, id);
    ts_says(check, finding, "there is no rule called %s", id);
    if (nearest != NULL)
        ts_remedy(check, finding, "did you mean %s?", nearest);
}

static void say_unjudged(ts_check *check, ts_finding *finding, const ts_waiver *waiver)
{
    ts_says(check, finding, "what %s asks at %s could not be computed, and that cannot be waived",
            waiver->rule.text, waiver->at.text);
    ts_remedy(check, finding, "state what is not known");
}

static void judge_waiver(ts_check *check, const ts_waiver *waiver, const ts_waiver_use *use)
{
    const bool  busy    = use->matched > use->unjudged;
    ts_finding *finding = ts_judge_fact(check, waiver->node, TS_EVERY_CONDITION, busy);
    if (finding == NULL)
        return;
    const char    *at   = waiver->at.text != NULL ? waiver->at.text : "";
    const char    *id   = waiver->rule.text != NULL ? waiver->rule.text : "";
    const ts_rule *rule = rule_named(check, id);
    if (rule == NULL)
        say_unknown_rule(check, finding, id);
    else if (rule->after_waivers)
        ts_says(check, finding, "%s judges the waivers, and cannot be waived itself", id);
    else if (use->object == 0)
        ts_says(check, finding, "nothing in this file has the address %s", at);
    else if (!use->sound)
        ts_says(check, finding, "the waiver of %s at %s gives no reason", id, at);
    else if (use->unjudged > 0)
        say_unjudged(check, finding, waiver);
    else
        ts_says(check, finding, "%s finds nothing at %s", id, at);
}

static void run(ts_check *check)
{
    const ts_drive *drive = check->drive;
    for (size_t i = 0; i < drive->waived_count; i++)
        judge_waiver(check, &drive->waived[i], &ts_check_waiver_uses(check)[i]);
    ts_skip(check, "the drive waives nothing");
}

const ts_rule ts_rule_waiver_idle = {
    .id       = "A4-waiver-idle",
    .title    = "Idle waiver",
    .question = "Does every waiver cover a finding?",
    .why      = "A waiver that covers nothing today may silently cover something tomorrow that "
                "nobody decided on.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "take the waiver out, or correct its rule or address",
    .run      = run,
    .after_waivers = true,
};
