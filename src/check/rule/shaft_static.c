/* check/rule/shaft_static.c: does any shaft yield? */
#include "check/shaft_visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_S_F",
    .meaning = "reserve of the safety of the shaft",
    .unit    = "1",
    .text    = "S_F/S_Fmin - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_line *line, double least)
{
    const int            weak  = line->weakest_F;
    const ts_line_notch *notch = &line->notches[weak < 0 ? 0 : weak];

    if (weak < 0)
        return;
    ts_question question  = ts_question_about(check, line->node, TS_EVERY_CONDITION);
    question.value        = notch->S_F;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "S_F";
    question.limit_symbol = "S_Fmin";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "%s has a safety of %s against yield at its %s %s from the front (inner) end%s%s, less "
            "than "
            "%s: it bends with %s and carries %s there",
            line->name, ts_shown_apart(check, notch->S_F, least, TS_KIND_NUMBER),
            ts_din_notch_name(notch->section.notch), ts_shown(check, notch->x, TS_KIND_LENGTH),
            notch->at_F < 0 ? ", by the swing of all conditions" : " at ",
            notch->at_F < 0 ? "" : ts_condition_name(check, notch->at_F),
            ts_shown(check, least, TS_KIND_NUMBER), ts_shown(check, notch->M, TS_KIND_TORQUE),
            ts_shown(check, notch->T, TS_KIND_TORQUE));
    ts_thicken(check, finding, notch, notch->S_F, least);
}

static void run(ts_check *check)
{
    ts_each_safety(check, &check->drive->limits.shaft_static_safety, "shaft static safety",
                   "S_Fmin", judge);
}

const ts_rule ts_rule_shaft_static = {
    .id       = "E5-shaft-static",
    .title    = "Static safety of the shafts",
    .question = "Does every shaft keep its shape under the greatest load of every condition?",
    .why      = "A bent shaft runs out of true for the rest of its life.",
    .level    = TS_REFUSE,
    .source   = "DIN 743:2012 (from memory); the least safety: common practice, no source",
    .hint     = "make it thicker there, round the step out, or bring the bearings nearer",
    .run      = run,
};
