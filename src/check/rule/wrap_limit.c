/* check/rule/wrap_limit.c: how far round the engine does each box reach? */
#include "check/visit.h"

static const ts_formula wrap_formula = {
    .symbol  = "wrap",
    .meaning = "angle round the engine from the first to the last axis of the box",
    .unit    = "rad",
    .text    = "phi_most - phi_least",
    .source  = "derived: clock angles of a box count on from its input",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_wrap",
    .meaning = "reserve of the wrap",
    .unit    = "1",
    .text    = "wrap_most/wrap - 1",
    .source  = "reserve = capacity / demand - 1",
};

typedef struct reach {
    uint32_t first, last; /* shafts at the two ends                   */
    uint32_t unplaced;    /* a shaft without a place, or TS_NOWHERE   */
} reach;

static reach reach_of(const ts_check *check, uint32_t drive)
{
    reach found = {TS_NOWHERE, TS_NOWHERE, TS_NOWHERE};
    for (uint32_t i = 0; i < check->train->shaft_count; i++) {
        const ts_shaft        *shaft  = &check->train->shafts[i];
        const ts_shaft_motion *motion = &check->motion->shafts[i];
        if (shaft->kind != TS_SHAFT_BOX || shaft->drive != drive)
            continue;
        if (!motion->placed) {
            found.unplaced = i;
            continue;
        }
        if (found.first == TS_NOWHERE || motion->clock < check->motion->shafts[found.first].clock)
            found.first = i;
        if (found.last == TS_NOWHERE || motion->clock > check->motion->shafts[found.last].clock)
            found.last = i;
    }
    return found;
}

static double wrap_of(const ts_check *check, ts_node box, const reach *ends)
{
    const double phi_least = check->motion->shafts[ends->first].clock;
    const double phi_most  = check->motion->shafts[ends->last].clock;
    if (check->workings != NULL) {
        const ts_node first = check->train->shafts[ends->first].node;
        const ts_node last  = check->train->shafts[ends->last].node;
        ts_borrow(check, box, (ts_input){"phi_least", phi_least}, first, "phi");
        ts_borrow(check, box, (ts_input){"phi_most", phi_most}, last, "phi");
    }
    return TS_STEP(check->workings, wrap_formula, phi_most - phi_least, phi_most, phi_least);
}

static void judge_box(ts_check *check, uint32_t drive, double most)
{
    const ts_node box  = check->drive->drive[drive].box.node;
    const reach   ends = reach_of(check, drive);
    if (ends.unplaced != TS_NOWHERE || ends.first == TS_NOWHERE) {
        ts_not_computable(check, box, TS_EVERY_CONDITION, "the place of %s",
                          ends.unplaced != TS_NOWHERE ? check->train->shafts[ends.unplaced].name
                                                      : "any shaft of the box");
        return;
    }
    ts_question question  = ts_question_about(check, box, TS_EVERY_CONDITION);
    question.value        = wrap_of(check, box, &ends);
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_ANGLE;
    question.symbol       = "wrap";
    question.limit_symbol = "wrap_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the box reaches %s round the engine, from %s to %s; at most %s is "
            "wanted",
            ts_shown_apart(check, question.value, most, TS_KIND_ANGLE),
            check->train->shafts[ends.first].name, check->train->shafts[ends.last].name,
            ts_shown(check, most, TS_KIND_ANGLE));
    ts_remedy(check, finding, "take %s out: fewer teeth, fewer idlers, or a second box",
              ts_shown(check, question.value - most, TS_KIND_ANGLE));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.wrap;
    if (!ts_limit_known(check, limit, "wrap", "wrap_most", TS_KIND_ANGLE))
        return;
    for (size_t i = 0; i < check->drive->drive_count; i++)
        judge_box(check, (uint32_t)i, limit->value);
    ts_skip(check, "no spool is tapped");
}

const ts_rule ts_rule_wrap_limit = {
    .id       = "D1-wrap-limit",
    .title    = "Wrap",
    .question = "Does every box stay within the angle that it may reach round the engine?",
    .why      = "A box that reaches too far round cannot be lowered, and its ends leave the drip "
                "pan and the cowl doors.",
    .level    = TS_REFUSE,
    .source   = "common practice, no source",
    .hint     = "use fewer or smaller gears, or a second box",
    .run      = run,
};
