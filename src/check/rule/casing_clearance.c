/* check/rule/casing_clearance.c: do bodies and gears clear the engine casing? */
#include "check/clearance.h"
#include "check/visit.h"

static const ts_formula needed_formula = {
    .symbol  = "R_least",
    .meaning = "distance from the engine axis at which the gap that is wanted is left",
    .unit    = "m",
    .text    = "R_casing + r + gap",
    .source  = "derived: a circle outside a circle",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_R",
    .meaning = "reserve of the distance from the engine casing",
    .unit    = "1",
    .text    = "R/R_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge_circle(ts_check *check, const ts_circle *circle)
{
    const double R        = check->motion->shafts[circle->shaft].radius;
    const double R_casing = check->drive->engine.casing.value, r = circle->r;
    const double gap = check->drive->limits.body_gap.value;
    ts_borrow(check, circle->node, (ts_input){"R", R}, check->train->shafts[circle->shaft].node,
              "R");
    ts_note_circle(check, circle);
    ts_question question = ts_question_about(check, circle->node, TS_EVERY_CONDITION);
    question.value       = R;
    question.limit = TS_STEP(check->workings, needed_formula, R_casing + r + gap, R_casing, r, gap);
    question.bound = TS_AT_LEAST;
    question.kind  = TS_KIND_LENGTH;
    question.symbol       = "R";
    question.limit_symbol = "R_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const double apart = R - r - R_casing;
    if (apart < 0.0)
        ts_says(check, finding, "%s reaches %s into the engine casing",
                ts_circle_name(check, circle), ts_shown(check, -apart, TS_KIND_LENGTH));
    else
        ts_says(check, finding, "%s leaves %s to the engine casing, where %s is wanted",
                ts_circle_name(check, circle), ts_shown_apart(check, apart, gap, TS_KIND_LENGTH),
                ts_shown(check, gap, TS_KIND_LENGTH));
    ts_remedy(check, finding, "move its axis %s outwards",
              ts_shown_outward(check, question.limit - R, TS_KIND_LENGTH, +1));
}

static void run(ts_check *check)
{
    const ts_measure *casing = &check->drive->engine.casing;
    if (casing->standing == TS_ABSENT) {
        ts_skip(check, "the file does not state the engine casing");
        return;
    }
    if (!ts_limit_known(check, casing, "casing", "R_casing", TS_KIND_LENGTH) ||
        !ts_limit_known(check, &check->drive->limits.body_gap, "body gap", "gap", TS_KIND_LENGTH))
        return;
    ts_each_circle(check, judge_circle);
    ts_skip(check, "no body and no gear has a place");
}

const ts_rule ts_rule_casing_clearance = {
    .id       = "D2-casing-clearance",
    .title    = "Clearance to the casing",
    .question = "Do all bodies and gears clear the engine casing?",
    .why      = "The casing grows when it is hot and moves when the engine is loaded; what touches "
                "it wears through.",
    .level    = TS_REFUSE,
    .source   = "derived: circles about the axes; the gap: common practice, no source",
    .hint     = "use a larger arc, or a smaller gear or body",
    .run      = run,
};
