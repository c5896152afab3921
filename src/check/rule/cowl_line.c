/* check/rule/cowl_line.c: do bodies and gears stay inside the cowl? */
#include "check/clearance.h"
#include "check/cowl.h"
#include "check/visit.h"

#define NEAREST "derived: cosine rule; the nearest point of the line is found by Newton's method"

static const ts_formula inside_formula = {
    .symbol  = "a_cowl",
    .meaning = "distance of the axis from the nearest point of the cowl line",
    .unit    = "m",
    .text    = "sqrt(R^2 + R_cowl^2 - 2*R*R_cowl*cos(phi_cowl - phi))",
    .source  = NEAREST,
};
static const ts_formula outside_formula = {
    .symbol  = "a_cowl",
    .meaning = "distance of the axis from the nearest point of the cowl line, negative outside",
    .unit    = "m",
    .text    = "-sqrt(R^2 + R_cowl^2 - 2*R*R_cowl*cos(phi_cowl - phi))",
    .source  = NEAREST,
};
static const ts_formula needed_formula = {
    .symbol  = "a_cowl_least",
    .meaning = "distance at which the gap that is wanted is left",
    .unit    = "m",
    .text    = "r + gap",
    .source  = "derived: a circle inside the line",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_a_cowl",
    .meaning = "reserve of the distance from the cowl",
    .unit    = "1",
    .text    = "a_cowl/a_cowl_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void note_parts(const ts_check *check, const ts_circle *circle, const ts_cowl_place *place)
{
    const ts_shaft_motion *axis  = &check->motion->shafts[circle->shaft];
    const ts_node          shaft = check->train->shafts[circle->shaft].node;
    ts_borrow(check, circle->node, (ts_input){"R", axis->radius}, shaft, "R");
    ts_borrow(check, circle->node, (ts_input){"phi", axis->clock}, shaft, "phi");
    ts_workings_assumed(check->workings, "phi_cowl", place->clock, "rad",
                        "clock angle of the nearest point of the cowl line of the file");
    ts_workings_assumed(check->workings, "R_cowl", place->radius, "m",
                        "radius of the cowl line there, linear between its two points");
    ts_note_circle(check, circle);
}

static double distance_of(const ts_check *check, const ts_circle *circle,
                          const ts_cowl_place *place)
{
    const ts_shaft_motion *axis = &check->motion->shafts[circle->shaft];
    const double           R = axis->radius, phi = axis->clock;
    const double           R_cowl = place->radius, phi_cowl = place->clock;
    const double square = R * R + R_cowl * R_cowl - 2.0 * R * R_cowl * cos(phi_cowl - phi);
    /* Rounding may leave a little less than nothing when the axis stands on the line itself. */
    if (!(square > 0.0))
        return 0.0;
    const double a = sqrt(square);
    return place->outside ? TS_STEP(check->workings, outside_formula, -a, R, R_cowl, phi_cowl, phi)
                          : TS_STEP(check->workings, inside_formula, a, R, R_cowl, phi_cowl, phi);
}

static void say(ts_check *check, ts_finding *finding, const ts_circle *circle, double clock)
{
    const double gap   = check->drive->limits.body_gap.value;
    const double apart = finding->value - circle->r;
    const char  *where = ts_shown_clock(check, clock);
    if (apart < 0.0)
        ts_says(check, finding, "%s reaches %s through the cowl line, near %s",
                ts_circle_name(check, circle), ts_shown(check, -apart, TS_KIND_LENGTH), where);
    else
        ts_says(check, finding, "%s leaves %s to the cowl line near %s, where %s is wanted",
                ts_circle_name(check, circle), ts_shown_apart(check, apart, gap, TS_KIND_LENGTH),
                where, ts_shown(check, gap, TS_KIND_LENGTH));
    ts_remedy(check, finding, "move its axis %s inwards, or take a smaller body",
              ts_shown_outward(check, finding->limit - finding->value, TS_KIND_LENGTH, +1));
}

static void judge_circle(ts_check *check, const ts_circle *circle)
{
    const ts_shaft_motion *axis = &check->motion->shafts[circle->shaft];
    const double           gap = check->drive->limits.body_gap.value, r = circle->r;
    const ts_cowl_place place = ts_cowl_nearest(&check->drive->engine, axis->radius, axis->clock);
    if (!place.reached) {
        ts_not_computable(check, circle->node, TS_EVERY_CONDITION, "the cowl line at %s",
                          ts_shown_clock(check, axis->clock));
        return;
    }
    if (check->workings != NULL)
        note_parts(check, circle, &place);
    ts_question question  = ts_question_about(check, circle->node, TS_EVERY_CONDITION);
    question.value        = distance_of(check, circle, &place);
    question.limit        = TS_STEP(check->workings, needed_formula, r + gap, r, gap);
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "a_cowl";
    question.limit_symbol = "a_cowl_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, circle, place.clock);
}

static void run(ts_check *check)
{
    if (check->drive->engine.cowl_count < 2) {
        ts_skip(check, "the file draws no cowl line");
        return;
    }
    if (!ts_limit_known(check, &check->drive->limits.body_gap, "body gap", "gap", TS_KIND_LENGTH))
        return;
    ts_each_circle(check, judge_circle);
    ts_skip(check, "no body and no gear has a place");
}

const ts_rule ts_rule_cowl_line = {
    .id       = "D2-cowl-line",
    .title    = "Cowl line",
    .question = "Do all bodies and gears stay inside the cowl?",
    .why    = "The cowl is another company's, is frozen first, and a blister on it is paid for in "
              "fuel for thirty years.",
    .level  = TS_REFUSE,
    .source = "derived: distance of a circle from the cowl line; the gap: common practice, no "
              "source",
    .hint   = "move the accessory inwards or to where the cowl is wider",
    .run    = run,
};
