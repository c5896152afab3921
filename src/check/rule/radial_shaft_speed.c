/* check/rule/radial_shaft_speed.c: how fast does the surface of the radial shaft run? */
#include "check/visit.h"

static const ts_formula surface_formula = {
    .symbol  = "v_s",
    .meaning = "surface speed of the radial shaft, as its mid bearing meets it",
    .unit    = "m/s",
    .text    = "n*D/2",
    .source  = "derived: speed times radius",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_v_s",
    .meaning = "reserve of the surface speed of the radial shaft",
    .unit    = "1",
    .text    = "v_s_most/v_s - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* Index of the condition in which the shaft is fastest; a speed that is not known wins. */
static uint32_t fastest_condition(const ts_check *check, uint32_t shaft)
{
    uint32_t found = 0;
    for (uint32_t c = 1; c < check->drive->condition_count; c++) {
        if (isnan(ts_shaft_speed(check, shaft, found)))
            break;
        if (!(ts_shaft_speed(check, shaft, c) <= ts_shaft_speed(check, shaft, found)))
            found = c;
    }
    return found;
}

static void judge_shaft(ts_check *check, uint32_t index, double most)
{
    const ts_shaft  *shaft     = &check->train->shafts[index];
    const uint32_t   condition = fastest_condition(check, index);
    const double     n         = ts_shaft_speed(check, index, condition);
    const ts_measure outside   = check->drive->drive[shaft->drive].tower_shaft.outside;
    if (!ts_measure_known(outside) || isnan(n)) {
        ts_not_computable(check, shaft->node, TS_EVERY_CONDITION, "the %s of %s",
                          isnan(n) ? "speed" : "outside diameter", shaft->name);
        return;
    }
    const double D = outside.value;
    if (check->workings != NULL) {
        ts_workings_about(check->workings, shaft->node, TS_EVERY_CONDITION);
        ts_workings_borrow(check->workings, "n", n, (ts_subject){shaft->node, (int32_t)condition},
                           "n");
        ts_workings_given(check->workings, "D", D, "m", outside.node);
    }
    ts_question question  = ts_question_about(check, shaft->node, TS_EVERY_CONDITION);
    question.value        = TS_STEP(check->workings, surface_formula, n * D / 2.0, n, D);
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_VELOCITY;
    question.symbol       = "v_s";
    question.limit_symbol = "v_s_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the surface of %s runs at %s at %s, faster than %s", shaft->name,
            ts_shown_apart(check, question.value, most, TS_KIND_VELOCITY),
            ts_condition_name(check, (int32_t)condition), ts_shown(check, most, TS_KIND_VELOCITY));
    ts_remedy(check, finding, "make it %s thick at most, or turn it slower",
              ts_shown_outward(check, 2.0 * most / n, TS_KIND_LENGTH, -1));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.radial_shaft_speed;
    if (!ts_limit_known(check, limit, "radial shaft speed", "v_s_most", TS_KIND_VELOCITY))
        return;
    for (uint32_t i = 0; i < check->train->shaft_count; i++)
        if (check->train->shafts[i].kind == TS_SHAFT_TOWER)
            judge_shaft(check, i, limit->value);
    ts_skip(check, "the drive has no radial shaft");
}

const ts_rule ts_rule_radial_shaft_speed = {
    .id       = "F2-radial-shaft-speed",
    .title    = "Surface speed of the radial shaft",
    .question = "Does the surface of every radial shaft stay below the speed that its mid bearing "
                "and seals bear?",
    .why    = "A mid bearing and its oil see that speed, whether the bearing is drawn yet or not.",
    .level  = TS_WARN,
    .source = "common practice, no source",
    .hint   = "make the shaft thinner, or turn it slower",
    .run    = run,
};
