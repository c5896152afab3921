/* check/rule/shaft_life.c: does any shaft tire by all that it meets in its life together? */
#include "check/shaft_visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_S_K",
    .meaning = "reserve of the safety of the shaft over its life",
    .unit    = "1",
    .text    = "S_K/S_Dmin - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_line *line, double least)
{
    if (line->weakest_D < 0)
        return;
    const ts_line_notch *notch    = &line->notches[line->weakest_K];
    ts_question          question = ts_question_about(check, line->node, TS_EVERY_CONDITION);
    question.value                = line->S_K;
    question.limit                = least;
    question.bound                = TS_AT_LEAST;
    question.kind                 = TS_KIND_NUMBER;
    question.symbol               = "S_K";
    question.limit_symbol         = "S_Dmin";
    question.reserve              = &reserve_formula;
    ts_finding *finding           = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "%s has a safety of %s against fatigue over its life, all conditions and starts "
            "together, at its %s %s from the front (inner) end, less than %s",
            line->name, ts_shown_apart(check, line->S_K, least, TS_KIND_NUMBER),
            ts_din_notch_name(notch->section.notch), ts_shown(check, notch->x, TS_KIND_LENGTH),
            ts_shown(check, least, TS_KIND_NUMBER));
    ts_thicken(check, finding, notch, line->S_K, least);
}

static void run(ts_check *check)
{
    ts_each_safety(check, &check->drive->limits.shaft_fatigue_safety, "shaft fatigue safety",
                   "S_Dmin", judge);
}

const ts_rule ts_rule_shaft_life = {
    .id       = "E5-shaft-life",
    .title    = "Fatigue of the shafts over their life",
    .question = "Does every shaft bear all that it meets in its life together?",
    .why      = "What bears each load by itself for ever may still tire of bending and swinging "
                "torque together, and of what comes seldom and hard.",
    .level    = TS_WARN,
    .source   = "DIN 743-4:2012 with Haibach's sum of damage (both from memory); the least safety: "
                "common practice, no source",
    .hint     = "make it thicker there, round the step out, or bring the bearings nearer",
    .run      = run,
};
