/* check/rule/tower_shaft_reach.c: does the radial shaft end where the box input begins? */
#include "check/visit.h"

#define REACH_MOST 0.001 /* m, what shims and drawings round */

static const ts_formula miss_formula = {
    .symbol  = "a_miss",
    .meaning = "distance between the outer bevel apex of the radial shaft and the box input axis",
    .unit    = "m",
    .text    = "sqrt((X - X_2)^2 + (Y - Y_2)^2)",
    .source  = "derived: Pythagoras",
};

/* A wide spur carries the inner bevel off the engine axis, by a distance that the file does not
 * say. */
static bool starts_on_axis(const ts_check *check, const ts_shaft *tower)
{
    const ts_pick scheme = check->drive->drive[tower->drive].take_off.scheme;
    return !(scheme.standing == TS_GIVEN && scheme.value == TS_FLOAT_WIDE_SPUR);
}

static double miss_of(const ts_check *check, uint32_t tower, uint32_t input)
{
    const ts_shaft_motion *end  = &check->motion->shafts[tower],
                          *axis = &check->motion->shafts[input];
    const double  X = end->x, Y = end->y, X_2 = axis->x, Y_2 = axis->y;
    const ts_node about = check->train->shafts[tower].node;
    if (check->workings != NULL) {
        ts_borrow(check, about, (ts_input){"X_2", X_2}, check->train->shafts[input].node, "X");
        ts_borrow(check, about, (ts_input){"Y_2", Y_2}, check->train->shafts[input].node, "Y");
    }
    return TS_STEP(check->workings, miss_formula,
                   sqrt((X - X_2) * (X - X_2) + (Y - Y_2) * (Y - Y_2)), X, X_2, Y, Y_2);
}

static void judge_input(ts_check *check, uint32_t input)
{
    const uint32_t         tower = ts_driver_of(check->train, input);
    const ts_shaft        *shaft = &check->train->shafts[tower];
    const ts_shaft_motion *end   = &check->motion->shafts[tower];
    if (!end->placed || !check->motion->shafts[input].placed) {
        ts_not_computable(check, shaft->node, TS_EVERY_CONDITION, "the place of %s",
                          end->placed ? check->train->shafts[input].name : shaft->name);
        return;
    }
    ts_question question = ts_question_about(check, shaft->node, TS_EVERY_CONDITION);
    question.value       = miss_of(check, tower, input);
    question.limit       = REACH_MOST;
    question.bound       = TS_AT_MOST;
    question.kind        = TS_KIND_LENGTH;
    question.symbol      = "a_miss";
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the outer end of %s, %s from the engine axis at %s, misses the box input at %s and %s "
            "by %s",
            shaft->name, ts_shown(check, end->radius, TS_KIND_LENGTH),
            ts_shown_clock(check, end->clock),
            ts_shown(check, check->motion->shafts[input].radius, TS_KIND_LENGTH),
            ts_shown_clock(check, check->motion->shafts[input].clock),
            ts_shown(check, question.value, TS_KIND_LENGTH));
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->shaft_count; i++)
        if (ts_is_box_input(check->train, i) &&
            starts_on_axis(check, &check->train->shafts[ts_driver_of(check->train, i)]))
            judge_input(check, i);
    ts_skip(check, "no box is driven by a radial shaft from the engine axis");
}

const ts_rule ts_rule_tower_shaft_reach = {
    .id       = "D7-tower-shaft-reach",
    .title    = "Reach of the radial shaft",
    .question = "Does every radial shaft end at the axis of its box input?",
    .why    = "Length and clock angle of the shaft, and radius and clock angle of the arc, say the "
              "same thing twice; when they differ, one of them is from another scheme.",
    .level  = TS_WARN,
    .source = "derived: bevel apexes lie on both axes",
    .hint   = "make length and clock of the radial shaft agree with radius and clock of the arc",
    .run    = run,
};
