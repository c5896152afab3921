/* check/rule/shaft_fatigue.c: does any shaft tire? */
#include "check/shaft_visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_S_D",
    .meaning = "reserve of the safety of the shaft",
    .unit    = "1",
    .text    = "S_D/S_Dmin - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_line *line, double least)
{
    const int            weak  = line->weakest_D;
    const ts_line_notch *notch = &line->notches[weak < 0 ? 0 : weak];

    if (weak < 0)
        return;
    ts_question question  = ts_question_about(check, line->node, TS_EVERY_CONDITION);
    question.value        = notch->S_D;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "S_D";
    question.limit_symbol = "S_Dmin";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "%s has a safety of %s against fatigue at its %s %s from the front (inner) end%s%s, "
            "less than "
            "%s: it bends with %s and carries %s there",
            line->name, ts_shown_apart(check, notch->S_D, least, TS_KIND_NUMBER),
            ts_din_notch_name(notch->section.notch), ts_shown(check, notch->x, TS_KIND_LENGTH),
            notch->at_D < 0 ? ", by the swing of all conditions" : " at ",
            notch->at_D < 0 ? "" : ts_condition_name(check, notch->at_D),
            ts_shown(check, least, TS_KIND_NUMBER), ts_shown(check, notch->M, TS_KIND_TORQUE),
            ts_shown(check, notch->T, TS_KIND_TORQUE));
    ts_thicken(check, finding, notch, notch->S_D, least);
}

static void run(ts_check *check)
{
    ts_each_safety(check, &check->drive->limits.shaft_fatigue_safety, "shaft fatigue safety",
                   "S_Dmin", judge);
}

const ts_rule ts_rule_shaft_fatigue = {
    .id       = "E5-shaft-fatigue",
    .title    = "Fatigue of the shafts",
    .question = "Does every shaft bear its loads for ever, at every change of its outline?",
    .why      = "A shaft turns under its bending a billion times, and breaks at a step.",
    .level    = TS_REFUSE,
    .source   = "DIN 743:2012 (from memory); the least safety: common practice, no source",
    .hint     = "make it thicker there, round the step out, or bring the bearings nearer",
    .run      = run,
};
