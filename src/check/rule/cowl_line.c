/* check/rule/cowl_line.c: do bodies and gears stay inside the cowl? */
#include "check/clearance.h"
#include "check/cowl.h"
#include "check/visit.h"

static const ts_formula distance_equation = {
    .symbol  = "a_cowl",
    .meaning = "distance of the axis from the nearest point of the cowl line",
    .unit    = "m",
    .text    = "sqrt(R^2 + R_cowl^2 - 2*R*R_cowl*cos(phi_cowl - phi))",
    .source  = "derived: cosine rule; the nearest point is found by Newton's method",
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

/* The point that was found is noted, and the distance to it proves itself by the cosine rule. */
static double note_distance(const ts_check *check, const ts_circle *circle, double a, double clock)
{
    const ts_shaft_motion *axis  = &check->motion->shafts[circle->shaft];
    const ts_node          shaft = check->train->shafts[circle->shaft].node;
    const double           R = axis->radius, phi = axis->clock, phi_cowl = clock;
    ts_workings_about(check->workings, circle->node, TS_EVERY_CONDITION);
    if (check->workings == NULL || a < 0.0)
        return a;
    ts_borrow(check, circle->node, (ts_input){"R", R}, shaft, "R");
    ts_borrow(check, circle->node, (ts_input){"phi", phi}, shaft, "phi");
    const double R_cowl = ts_cowl_radius(&check->drive->engine, clock);
    ts_workings_assumed(check->workings, "phi_cowl", phi_cowl, "rad",
                        "clock angle of the nearest point of the cowl line of the file");
    ts_workings_assumed(check->workings, "R_cowl", R_cowl, "m",
                        "radius of the cowl line there, linear between its two points");
    const double residual =
        a - sqrt(fmax(0.0, R * R + R_cowl * R_cowl - 2.0 * R * R_cowl * cos(phi_cowl - phi)));
    ts_search_note(
        check->workings, &distance_equation, a, residual,
        (const ts_input[]){{"R", R}, {"R_cowl", R_cowl}, {"phi_cowl", phi_cowl}, {"phi", phi}}, 4);
    return a;
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
    ts_todo(check, finding, "move its axis %s inwards, or take a smaller body",
            ts_shown_outward(check, finding->limit - finding->value, TS_KIND_LENGTH, +1));
}

static void judge_circle(ts_check *check, const ts_circle *circle)
{
    const ts_shaft_motion *axis = &check->motion->shafts[circle->shaft];
    const double           gap = check->drive->limits.body_gap.value, r = circle->r;
    double                 clock = 0.0;
    const double distance = ts_cowl_distance(&check->drive->engine, axis->x, axis->y, &clock);
    if (isnan(distance)) {
        ts_not_computable(check, circle->node, TS_EVERY_CONDITION, "the cowl line at %s",
                          ts_shown_clock(check, axis->clock));
        return;
    }
    ts_question question = ts_question_about(check, circle->node, TS_EVERY_CONDITION);
    question.value       = note_distance(check, circle, distance, clock);
    ts_note_circle(check, circle);
    question.limit        = TS_STEP(check->workings, needed_formula, r + gap, r, gap);
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "a_cowl";
    question.limit_symbol = "a_cowl_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, circle, clock);
}

static void run(ts_check *check)
{
    if (check->drive->engine.cowl_count < 2) {
        ts_skip(check, "the file draws no cowl line");
        return;
    }
    (void)ts_limit(check, &check->drive->limits.body_gap, "gap", TS_KIND_LENGTH);
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
