/* check/rule/keep_out.c: does anything enter a region that must stay free? */
#include "check/clearance.h"
#include "check/visit.h"

#define FACE_BOTH 2

static const ts_formula apart_formula = {
    .symbol  = "a_keep",
    .meaning = "distance of the axis from the centre of the keep-out",
    .unit    = "m",
    .text    = "sqrt((X - R_k*sin(phi_k))^2 + (Y - R_k*cos(phi_k))^2)",
    .source  = "derived: clock angles run clockwise from 12:00",
};
static const ts_formula needed_formula = {
    .symbol  = "a_keep_least",
    .meaning = "distance at which the gap that is wanted is left",
    .unit    = "m",
    .text    = "r + r_k + gap",
    .source  = "derived: two circles side by side",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_a_keep",
    .meaning = "reserve of the distance from a keep-out",
    .unit    = "1",
    .text    = "a_keep/a_keep_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* A gear lies between the faces, so that only what reaches through both can meet it. */
static bool concerns(const ts_check *check, const ts_keep_out *region, const ts_circle *circle)
{
    if (region->face.value == FACE_BOTH)
        return true;
    return circle->pad != TS_NOWHERE &&
           (int)check->train->pads[circle->pad].face == region->face.value;
}

static double reserve_at(const ts_check *check, const ts_keep_out *region, const ts_circle *circle)
{
    const ts_shaft_motion *axis = &check->motion->shafts[circle->shaft];
    const double           R_k = region->radius.value, phi_k = region->clock.value;
    const double           a = hypot(axis->x - R_k * sin(phi_k), axis->y - R_k * cos(phi_k));
    return a / (circle->r + region->size.value + check->drive->limits.body_gap.value) - 1.0;
}

static const ts_keep_out *tightest(const ts_check *check, const ts_circle *circle)
{
    const ts_keep_out *found = NULL;
    double             least = INFINITY;
    for (size_t i = 0; i < check->drive->engine.keep_out_count; i++) {
        const ts_keep_out *region = &check->drive->engine.keep_out[i];
        if (!concerns(check, region, circle))
            continue;
        const double left = reserve_at(check, region, circle);
        if (left < least) {
            least = left;
            found = region;
        }
    }
    return found;
}

static void note_parts(const ts_check *check, const ts_keep_out *region, const ts_circle *circle)
{
    const ts_shaft_motion *axis     = &check->motion->shafts[circle->shaft];
    const ts_node          shaft    = check->train->shafts[circle->shaft].node;
    ts_workings           *workings = check->workings;
    ts_borrow(check, circle->node, (ts_input){"X", axis->x}, shaft, "X");
    ts_borrow(check, circle->node, (ts_input){"Y", axis->y}, shaft, "Y");
    ts_workings_given(workings, "R_k", region->radius.value, "m", region->radius.node);
    ts_workings_given(workings, "phi_k", region->clock.value, "rad", region->clock.node);
    ts_workings_given(workings, "r_k", region->size.value, "m", region->size.node);
    ts_note_circle(check, circle);
}

static void judge_circle(ts_check *check, const ts_circle *circle)
{
    const ts_keep_out *region = tightest(check, circle);
    if (region == NULL)
        return;
    const ts_shaft_motion *axis = &check->motion->shafts[circle->shaft];
    const double           X = axis->x, Y = axis->y, r = circle->r;
    const double R_k = region->radius.value, phi_k = region->clock.value, r_k = region->size.value;
    const double gap = check->drive->limits.body_gap.value;
    note_parts(check, region, circle);
    const double dx = X - R_k * sin(phi_k), dy = Y - R_k * cos(phi_k);
    ts_question  question = ts_question_about(check, circle->node, TS_EVERY_CONDITION);
    question.value =
        TS_STEP(check->workings, apart_formula, sqrt(dx * dx + dy * dy), X, Y, R_k, phi_k);
    question.limit        = TS_STEP(check->workings, needed_formula, r + r_k + gap, r, r_k, gap);
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "a_keep";
    question.limit_symbol = "a_keep_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const double apart = question.value - r - r_k;
    const char  *name  = region->name.text != NULL ? region->name.text : "a keep-out";
    if (apart < 0.0)
        ts_says(check, finding, "%s enters %s by %s", ts_circle_name(check, circle), name,
                ts_shown(check, -apart, TS_KIND_LENGTH));
    else
        ts_says(check, finding, "%s leaves %s to %s, where %s is wanted",
                ts_circle_name(check, circle), ts_shown_apart(check, apart, gap, TS_KIND_LENGTH),
                name, ts_shown(check, gap, TS_KIND_LENGTH));
    ts_remedy(check, finding, "move it %s away",
              ts_shown_outward(check, question.limit - question.value, TS_KIND_LENGTH, +1));
}

static void run(ts_check *check)
{
    if (check->drive->engine.keep_out_count == 0) {
        ts_skip(check, "the file names no keep-out");
        return;
    }
    if (!ts_limit_known(check, &check->drive->limits.body_gap, "body gap", "gap", TS_KIND_LENGTH))
        return;
    ts_each_circle(check, judge_circle);
    ts_skip(check, "no body and no gear has a place");
}

const ts_rule ts_rule_keep_out = {
    .id       = "D2-keep-out",
    .title    = "Keep-out regions",
    .question = "Do all bodies and gears stay out of the regions that must stay free?",
    .why      = "A line, a mount or a hand needs that room, and it was there first.",
    .level    = TS_REFUSE,
    .source   = "derived: circles about the axes; the gap: common practice, no source",
    .hint     = "move the accessory, or the line",
    .run      = run,
};
