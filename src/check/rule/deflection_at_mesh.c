/* check/rule/deflection_at_mesh.c: does any shaft give way where its teeth mesh? */
#include "check/bearing_visit.h"
#include "check/visit.h"
#include "motion/value_note.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_v_modules",
    .meaning = "reserve of the deflection at the gear",
    .unit    = "1",
    .text    = "v_modules_most/v_modules - 1",
    .source  = "reserve = capacity / demand - 1",
};

static const ts_formula v_modules_formula = {
    .symbol  = "v_modules",
    .meaning = "deflection at the gear in modules",
    .unit    = "1",
    .text    = "v/m_n",
    .source  = "derived: over the normal module",
};

static double v_of(const ts_check *check, uint32_t l, int g, uint32_t c)
{
    const ts_line_gear_state *s = &ts_line_at(check->lines, l, c)->state[g];
    return hypot(s->v[0], s->v[1]);
}

static void judge(ts_check *check, uint32_t l, int g, double most)
{
    const ts_line_gear *gear = &check->lines->lines[l].gears[g];
    int32_t             at   = 0;

    for (uint32_t c = 1; c < check->drive->condition_count; c++)
        if (v_of(check, l, g, c) > v_of(check, l, g, (uint32_t)at))
            at = (int32_t)c;
    const double v   = v_of(check, l, g, (uint32_t)at);
    const double m_n = check->train->gears[gear->gear].m_n.value;
    ts_workings_about(check->workings, gear->node, TS_EVERY_CONDITION);
    ts_workings_borrow(check->workings, "v", v, (ts_subject){gear->node, at}, "v");
    TS_NOTE_MEASURE(check->workings, check->drive, "m_n", check->train->gears[gear->gear].m_n, "m",
                    "module");
    ts_question question  = ts_question_about(check, gear->node, TS_EVERY_CONDITION);
    question.value        = TS_STEP(check->workings, v_modules_formula, v / m_n, v, m_n);
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "v_modules";
    question.limit_symbol = "v_modules_most";
    question.reserve      = v > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s gives way %s where its gear meshes at %s, more than %s",
            ts_gear_name(check, gear->gear), ts_shown_apart(check, v, most * m_n, TS_KIND_LENGTH),
            ts_condition_name(check, at), ts_shown(check, most * m_n, TS_KIND_LENGTH));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.deflection_at_mesh;
    if (check->lines != NULL && check->lines->count > 0 &&
        !ts_limit_known(check, limit, "deflection at mesh", "v_modules_most", TS_KIND_NUMBER))
        return;
    for (uint32_t l = 0; check->lines != NULL && l < check->lines->count; l++) {
        const ts_line *line = &check->lines->lines[l];
        for (int g = 0; g < line->gear_count && ts_line_is_known(line); g++)
            if (check->train->gears[line->gears[g].gear].role != TS_GEAR_BEVEL)
                judge(check, l, g, limit->value);
    }
    ts_skip(check, "no shaft with a cylindrical gear could be bent");
}

const ts_rule ts_rule_deflection_at_mesh = {
    .id       = "E5-deflection-at-mesh",
    .title    = "Deflection at the mesh",
    .question = "Does every shaft keep its place where its cylindrical gears mesh?",
    .why      = "Gears that move apart lose contact ratio and knock when the load turns round.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "make the shaft thicker or its bearings stiffer, or bring them nearer to the gear",
    .run      = run,
};
