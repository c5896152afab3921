/* check/rule/roller_load.c: does every roller bearing carry enough to roll, where time is spent? */
#include "check/bearing_visit.h"

static const ts_formula ratio_formula = {
    .symbol  = "least_share",
    .meaning = "load of the bearing over its least load",
    .unit    = "1",
    .text    = "P/F_rmin",
    .source  = "derived: load over the least load",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_least_share",
    .meaning = "reserve of the load over the least load",
    .unit    = "1",
    .text    = "least_share/slip_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* In which the drive spends most of its time while the shaft turns; -1: none. */
static int32_t longest(const ts_check *check, const ts_bearing_at *at)
{
    int32_t found = -1;
    double  most  = 0.0;
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const double t = ts_condition_seconds(&check->drive->conditions[c]);
        if (!(t > most) || !(fabs(ts_line_at(check->lines, at->number, c)->omega) > 0.0))
            continue;
        most  = t;
        found = (int32_t)c;
    }
    return found;
}

static void judge(ts_check *check, const ts_bearing_at *at, double least)
{
    const ts_line_bearing *b         = at->bearing;
    const int32_t          condition = longest(check, at);

    if (b->bearing.form != TS_BEARING_CYLINDRICAL_ROLLER || condition < 0)
        return;
    const ts_duty_rating *duty =
        &ts_line_at(check->lines, at->number, (uint32_t)condition)->duty[at->k];
    const double P = duty->P, F_rmin = duty->F_rmin;
    ts_workings_about(check->workings, b->node, condition);
    (void)TS_STEP(check->workings, ratio_formula, P / F_rmin, P, F_rmin);
    ts_workings_about(check->workings, b->node, TS_EVERY_CONDITION);
    ts_workings_borrow(check->workings, "least_share", P / F_rmin, (ts_subject){b->node, condition},
                       "least_share");
    ts_question question  = ts_question_about(check, b->node, TS_EVERY_CONDITION);
    question.value        = P / F_rmin;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "least_share";
    question.limit_symbol = "slip_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        ts_says(check, finding, "%s carries %s at %s, where most time is spent; %s keep it rolling",
                ts_bearing_name(check, at), ts_shown(check, P, TS_KIND_FORCE),
                ts_condition_name(check, condition),
                ts_shown(check, F_rmin * least, TS_KIND_FORCE));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.bearing_slip;
    if (check->lines != NULL && check->lines->count > 0 &&
        !ts_limit_known(check, limit, "bearing slip", "slip_least", TS_KIND_NUMBER))
        return;
    ts_each_bearing(check, limit->value, judge);
    ts_skip(check, "no shaft turns in a roller bearing; balls are held by a spring or as a pair");
}

const ts_rule ts_rule_roller_load = {
    .id       = "E7-roller-load",
    .title    = "Least load of the rollers",
    .question = "Does every roller bearing carry its least load where most time is spent?",
    .why      = "Rollers that carry next to nothing slide for thousands of hours.",
    .level    = TS_NOTE,
    .source   = "common practice, no source: 0.02 of the dynamic capacity",
    .hint     = "take a lighter series or balls with a spring",
    .run      = run,
};
