/* check/rule/slope_at_mesh.c: does any shaft stand askew where its teeth mesh? */
#include "check/bearing_visit.h"
#include "check/visit.h"

#include <math.h>

static const ts_formula reserve_formula = {
    .symbol  = "reserve_slope",
    .meaning = "reserve of the slope at the gear",
    .unit    = "1",
    .text    = "slope_most/slope - 1",
    .source  = "reserve = capacity / demand - 1",
};

static double slope_of(const ts_check *check, uint32_t l, int g, uint32_t c)
{
    const ts_line_gear_state *s = &ts_line_at(check->lines, l, c)->state[g];
    return hypot(s->theta[0], s->theta[1]);
}

static void judge(ts_check *check, uint32_t l, int g, double most)
{
    const ts_line_gear *gear = &check->lines->lines[l].gears[g];
    int32_t             at   = 0;

    for (uint32_t c = 1; c < check->drive->condition_count; c++)
        if (slope_of(check, l, g, c) > slope_of(check, l, g, (uint32_t)at))
            at = (int32_t)c;
    const double slope = slope_of(check, l, g, (uint32_t)at);
    if (check->workings != NULL) {
        ts_workings_about(check->workings, gear->node, TS_EVERY_CONDITION);
        ts_workings_borrow(check->workings, "slope", slope, (ts_subject){gear->node, at}, "slope");
    }
    ts_question question  = ts_question_about(check, gear->node, TS_EVERY_CONDITION);
    question.value        = slope;
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_ANGLE;
    question.symbol       = "slope";
    question.limit_symbol = "slope_most";
    question.reserve      = slope > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s slopes %s where its gear meshes at %s, more than %s",
            ts_gear_name(check, gear->gear), ts_shown_apart(check, slope, most, TS_KIND_ANGLE),
            ts_condition_name(check, at), ts_shown(check, most, TS_KIND_ANGLE));
    const ts_line *line = &check->lines->lines[l];
    if (line->kind == TS_LINE_BOX)
        ts_remedy(
            check, finding, "make `outside` about %s where it is %s",
            ts_shown_outward(check, line->d_seat * pow(slope / most, 0.25), TS_KIND_LENGTH, 1),
            ts_shown(check, line->d_seat, TS_KIND_LENGTH));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.slope_at_mesh;
    if (check->lines != NULL && check->lines->count > 0 &&
        !ts_limit_known(check, limit, "slope at mesh", "slope_most", TS_KIND_ANGLE))
        return;
    for (uint32_t l = 0; check->lines != NULL && l < check->lines->count; l++) {
        const ts_line *line = &check->lines->lines[l];
        for (int g = 0; g < line->gear_count && ts_line_is_known(line); g++)
            if (check->train->gears[line->gears[g].gear].role != TS_GEAR_BEVEL)
                judge(check, l, g, limit->value);
    }
    ts_skip(check, "no shaft with a cylindrical gear could be bent");
}

const ts_rule ts_rule_slope_at_mesh = {
    .id       = "E5-slope-at-mesh",
    .title    = "Slope at the mesh",
    .question = "Does every shaft stand straight enough where its cylindrical gears mesh?",
    .why      = "Teeth that meet askew carry on one end of their faces.",
    .level    = TS_WARN,
    .source   = "R. Budynas, K. Nisbett, Shigley's Mechanical Engineering Design, table 7-2 (from "
                "memory): 0.0005 rad for uncrowned spur gears",
    .hint     = "make the shaft thicker or its bearings stiffer, or bring them nearer to the gear",
    .run      = run,
};
