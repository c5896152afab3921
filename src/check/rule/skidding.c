/* check/rule/skidding.c: do the elements of every bearing follow when the engine is slammed? */
#include "check/bearing_visit.h"

static const ts_formula follow_formula = {
    .symbol  = "slip",
    .meaning = "load of the bearing over that with which its elements follow the shaft",
    .unit    = "1",
    .text    = "P/F_follow",
    .source  = "derived: traction at the inner race against the inertia of elements and cage",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_slip",
    .meaning = "reserve of the load against skidding",
    .unit    = "1",
    .text    = "slip/slip_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* A pair is pressed together, and a ball bearing that lets its shaft slide is held by a spring. */
static bool is_preloaded(const ts_line_bearing *b)
{
    return b->bearing.form != TS_BEARING_CYLINDRICAL_ROLLER;
}

static void judge(ts_check *check, const ts_bearing_at *at, double least)
{
    const ts_line_bearing *b         = at->bearing;
    const int32_t          condition = b->slip_start_at;

    if (is_preloaded(b) || condition < 0)
        return;
    const double P = ts_line_at(check->lines, at->number, (uint32_t)condition)->duty[at->k].P;
    const double F_follow = b->F_follow;
    ts_workings_about(check->workings, b->node, condition);
    ts_workings_borrow(check->workings, "F_follow", F_follow,
                       (ts_subject){b->node, TS_EVERY_CONDITION}, "F_follow");
    (void)TS_STEP(check->workings, follow_formula, P / F_follow, P, F_follow);
    ts_workings_about(check->workings, b->node, TS_EVERY_CONDITION);
    ts_workings_borrow(check->workings, "slip", P / F_follow, (ts_subject){b->node, condition},
                       "slip");
    ts_question question  = ts_question_about(check, b->node, TS_EVERY_CONDITION);
    question.value        = P / F_follow;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "slip";
    question.limit_symbol = "slip_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "%s carries %s at %s, and %s are due for its rollers to follow %s at the box input",
            ts_bearing_name(check, at), ts_shown(check, P, TS_KIND_FORCE),
            ts_condition_name(check, condition), ts_shown(check, F_follow * least, TS_KIND_FORCE),
            "5000 rpm each second");
    ts_remedy(check, finding,
              "take a lighter series, balls with a spring, or press it with %s more",
              ts_shown_outward(check, F_follow * least - P, TS_KIND_FORCE, 1));
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

const ts_rule ts_rule_skidding = {
    .id    = "E7-skidding",
    .title = "Skidding rollers",
    .question =
        "Do the rollers of every bearing follow the shaft at the box's acceleration limits?",
    .why = "A lightly loaded roller lags behind when the engine is slammed, and smears both races "
           "within seconds.",
    .level  = TS_WARN,
    .source = "SAE 841605: +3600 and -5000 rpm each second at the box input; the traction of the "
              "oil, 0.03: common practice, no source",
    .hint   = "take a lighter series, balls with a spring, or a press by an oval race",
    .run    = run,
};
