/* check/rule/neck_below_upstream.c: does every neck break before anything behind it does? */
#include "check/guard.h"
#include "check/neck.h"

static const ts_formula allowed_formula = {
    .symbol  = "T_allowed",
    .meaning = "greatest break torque that a neck may have here",
    .unit    = "N.m",
    .text    = "T_wall/f_neck",
    .source  = "common practice, no source",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_T_wall",
    .meaning = "reserve of what stands behind the neck",
    .unit    = "1",
    .text    = "T_allowed/T_break_most - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, const ts_guard *guard, double f_neck)
{
    const ts_drive_neck *of     = &check->select->necks->items[guard->neck];
    const ts_node        about  = of->neck->node;
    const double         T_wall = guard->once.T;

    if (!ts_wall_known(check, guard, about) || !ts_neck_known(check, guard->neck))
        return;
    ts_borrow(check, about, (ts_input){"T_wall", T_wall}, ts_guard_wall_node(check, guard),
              "T_wall");
    ts_question question = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value       = of->band.high;
    question.limit  = TS_STEP(check->workings, allowed_formula, T_wall / f_neck, T_wall, f_neck);
    question.bound  = TS_AT_MOST;
    question.kind   = TS_KIND_TORQUE;
    question.symbol = "T_break_most";
    question.limit_symbol = "T_allowed";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the neck of %s may hold until %s, and %s%s", of->name,
            ts_shown_apart(check, question.value, T_wall, TS_KIND_TORQUE),
            ts_wall_says(check, &guard->once, question.value),
            question.value < T_wall ? ", which is too near" : "");
    ts_neck_remedy(check, finding, guard->neck, question.limit, true);
}

static void run(ts_check *check)
{
    const ts_measure *limit  = &check->drive->limits.neck_factor;
    const double      factor = limit->value;
    if (!ts_limit_known(check, limit, "neck factor", "f_neck", TS_KIND_NUMBER))
        return;
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->count; i++)
        if (check->select->guards[i].neck != TS_NOWHERE)
            judge(check, &check->select->guards[i], factor);
    ts_skip(check, "nothing on a pad has a neck, and no radial shaft has one");
}

const ts_rule ts_rule_neck_below_upstream = {
    .id       = "G2-neck-below-upstream",
    .title    = "Neck below what stands behind it",
    .question = "Does every neck break, at its strongest, before anything between it and its spool "
                "gives way?",
    .why      = "When an accessory seizes, the weakest part of the way breaks; a neck that is "
                "stronger than a tooth turns a lost pump into a lost gearbox.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "make the neck weaker, or what stands behind it stronger",
    .run      = run,
};
