/* check/rule/box_underside.c: does each box hang under the engine? */
#include "check/visit.h"

#define HALF_TURN 3.14159265358979323846
#define MOST      (HALF_TURN / 3.0) /* two hours of the dial to either side of 6:00 */

static const ts_formula off_formula = {
    .symbol  = "phi_off",
    .meaning = "angle of the box input from 6:00",
    .unit    = "rad",
    .text    = "abs(phi - pi)",
    .source  = "derived: 6:00 is half a turn from 12:00",
};

static void judge_box(ts_check *check, const ts_box *box)
{
    const double turn = 2.0 * HALF_TURN;
    const double phi  = box->arc.clock.value - turn * floor(box->arc.clock.value / turn);
    ts_workings_about(check->workings, box->arc.node, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "phi", phi, "rad", box->arc.clock.node);
    ts_question question = ts_question_about(check, box->arc.node, TS_EVERY_CONDITION);
    question.value       = TS_STEP(check->workings, off_formula, fabs(phi - HALF_TURN), phi);
    question.limit       = MOST;
    question.bound       = TS_AT_MOST;
    question.kind        = TS_KIND_ANGLE;
    question.symbol      = "phi_off";
    ts_finding *finding  = ts_judge(check, &question);
    if (finding != NULL)
        ts_says(check, finding, "the box input stands at %s, off the underside of the engine",
                ts_shown_clock(check, box->arc.clock.value));
}

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->drive_count; i++)
        if (ts_measure_known(check->drive->drive[i].box.arc.clock))
            judge_box(check, &check->drive->drive[i].box);
    ts_skip(check, "no box has a clock angle");
}

const ts_rule ts_rule_box_underside = {
    .id       = "D5-box-underside",
    .title    = "Box on the underside",
    .question = "Does every box input stand between 4:00 and 8:00?",
    .why    = "Oil drains to the bottom, lines come from one side, and heavy units are lowered; a "
              "box elsewhere needs reasons and scavenge of its own.",
    .level  = TS_NOTE,
    .source = "common practice, no source",
    .hint   = "see that scavenge, lines and lifting are thought of",
    .run    = run,
};
