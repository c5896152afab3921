/* check/rule/bearing_static.c: does any load dent the races of a bearing? */
#include "check/bearing_visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_S_0",
    .meaning = "reserve of the static safety",
    .unit    = "1",
    .text    = "S_0/S_0least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_bearing_at *at, double least)
{
    const ts_line_bearing *b = at->bearing;

    ts_question question  = ts_question_about(check, b->node, TS_EVERY_CONDITION);
    question.level        = ts_bearing_level(question.level, b);
    question.value        = b->rating.S_0;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "S_0";
    question.limit_symbol = "S_0least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const ts_line_case *one =
        ts_line_at(check->lines, at->number, (uint32_t)b->rating.worst_static);
    ts_says(check, finding, "%s has a static safety of %s at %s, less than %s: %s on %s",
            ts_bearing_name(check, at), ts_shown_apart(check, b->rating.S_0, least, TS_KIND_NUMBER),
            ts_condition_name(check, b->rating.worst_static),
            ts_shown(check, least, TS_KIND_NUMBER),
            ts_shown(check, one->duty[at->k].P_0, TS_KIND_FORCE),
            ts_shown(check, b->ability.C_0r, TS_KIND_FORCE));
    ts_remedy(check, finding, "%s", ts_bearing_remedy(check, at, least / b->rating.S_0));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.bearing_static_safety;
    if (check->lines != NULL && check->lines->count > 0 &&
        !ts_limit_known(check, limit, "bearing static safety", "S_0least", TS_KIND_NUMBER))
        return;
    ts_each_bearing(check, limit->value, judge);
    ts_skip(check, "no bearing could be rated");
}

const ts_rule ts_rule_bearing_static = {
    .id       = "E7-bearing-static",
    .title    = "Static safety of the bearings",
    .question = "Does every bearing keep its least static safety in every condition?",
    .why    = "The start presses hardest while the bearing hardly turns: a dent that it leaves is "
              "heard, and grows.",
    .level  = TS_REFUSE,
    .source = "ISO 76:2006, clause 8 (from memory)",
    .hint   = "take a larger bearing or a pair",
    .run    = run,
};
