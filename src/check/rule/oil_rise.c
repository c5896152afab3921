/* check/rule/oil_rise.c: does the oil of every drive stay within its rise? */
#include "check/oil_told.h"

#define NEEDS ((unsigned)(TS_NEEDS_FEED | TS_NEEDS_VISCOSITY | TS_NEEDS_DENSITY | TS_NEEDS_RISE))

static const ts_formula reserve_formula = {
    .symbol  = "reserve_dtheta",
    .meaning = "reserve of the rise of the oil",
    .unit    = "1",
    .text    = "rise_most/dtheta - 1",
    .source  = "reserve = capacity / demand - 1",
};

static const char *drive_name(const ts_check *check, uint32_t d)
{
    return check->drive->spools[check->drive->drive[d].spool].name;
}

static void help(ts_check *check, ts_finding *finding, const ts_heat_worst *worst)
{
    if (isfinite(worst->flow))
        ts_remedy(check, finding, "give all boxes together a `flow` of at least %s",
                  ts_shown_outward(check, worst->flow, TS_KIND_VOLUME_FLOW, +1));
    else
        ts_remedy(check, finding,
                  "no flow would keep it there: throwing the oil off heats it as much; allow more "
                  "`rise`, or slower teeth");
}

static void judge(ts_check *check, uint32_t d)
{
    const ts_heat_worst *worst = &check->heat->rises[d];
    const ts_node        node  = check->heat->nodes[d][worst->method];

    if (worst->condition < 0)
        return;
    const ts_measure most = check->drive->oil.rise;
    ts_workings_about(check->workings, node, worst->condition);
    ts_workings_assumed(check->workings, "rise_most", most.value, TS_UNIT_DIFFERENCE,
                        "`rise` of the oil");
    ts_question question  = ts_question_about(check, node, worst->condition);
    question.value        = worst->value;
    question.limit        = most.value;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_TEMPERATURE_DIFFERENCE;
    question.symbol       = "dtheta";
    question.limit_symbol = "rise_most";
    question.reserve      = worst->value > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const ts_heat_state *state =
        ts_heat_state_at(check->heat, worst->method, (uint32_t)worst->condition, d);
    if (state->settled)
        ts_says(check, finding,
                "the oil of the %s drive warms by %s at %s, more than the %s allowed",
                drive_name(check, d),
                ts_shown_apart(check, worst->value, most.value, TS_KIND_TEMPERATURE_DIFFERENCE),
                ts_condition_name(check, worst->condition),
                ts_shown(check, most.value, TS_KIND_TEMPERATURE_DIFFERENCE));
    else
        ts_says(check, finding,
                "the oil of the %s drive boils at %s: what comes to it would have to warm by far "
                "more than the %s allowed",
                drive_name(check, d), ts_condition_name(check, worst->condition),
                ts_shown(check, most.value, TS_KIND_TEMPERATURE_DIFFERENCE));
    help(check, finding, worst);
}

/* A drive that turns while the pump stands. */
static void judge_dry(ts_check *check, uint32_t d)
{
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        if (!ts_heat_lasts(check->drive, c) || !ts_heat_state_at(check->heat, 0, c, d)->dry)
            continue;
        ts_finding *finding = ts_judge_fact(check, check->drive->drive[d].node, (int32_t)c, false);
        ts_says(check, finding, "the %s drive turns at %s, and no oil comes to it",
                drive_name(check, d), ts_condition_name(check, (int32_t)c));
    }
}

static void run(ts_check *check)
{
    if (check->heat == NULL) {
        ts_skip(check, "losses were not computed");
        return;
    }
    if (check->heat->no_teeth) {
        ts_skip(check, "a mesh has no teeth to lose power in");
        return;
    }
    if (check->heat->missing != NULL) {
        if (ts_oil_is_told(check, NEEDS, NULL))
            (void)ts_not_computable(check, check->drive->oil.node, TS_EVERY_CONDITION, "%s",
                                    check->heat->missing);
        return;
    }
    for (uint32_t d = 0; d < check->drive->drive_count; d++) {
        judge(check, d);
        judge_dry(check, d);
    }
    ts_skip(check, "no drive hangs on a spool");
}

const ts_rule ts_rule_oil_rise = {
    .id       = "J5-oil-rise",
    .title    = "Rise of the oil",
    .question = "Does the oil of every drive warm by no more than is allowed, wherever it stays?",
    .why    = "The heat of teeth, bearings and seals leaves with the oil; too little oil grows too "
              "hot to carry a film, and then to stay oil.",
    .level  = TS_WARN,
    .source = "common practice, no source; heat by ISO/TR 14179 and NASA TP-1622 (from memory)",
    .hint   = "give more oil",
    .run    = run,
};
