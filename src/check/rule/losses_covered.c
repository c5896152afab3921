/* check/rule/losses_covered.c: do the ratings count with the power that flows? */
#include "check/rule.h"

static const ts_formula most_formula = {
    .symbol  = "P_covered",
    .meaning = "power of the spool that the ratings cover",
    .unit    = "W",
    .text    = "P_rated*(1 + above)",
    .source  = "`power above rated` of the limits",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_P",
    .meaning = "reserve of the power that the ratings cover",
    .unit    = "1",
    .text    = "P_covered/P_spool - 1",
    .source  = "reserve = capacity / demand - 1",
};

static double rated(const ts_check *check, uint32_t d, uint32_t c)
{
    const uint32_t spool = (uint32_t)check->drive->drive[d].spool;

    return check->power->spool[(size_t)c * check->power->spool_count + spool].P;
}

/* The condition that lasts in which most power is rated; -1: none takes any. */
static int32_t hardest(const ts_check *check, uint32_t d)
{
    int32_t at   = -1;
    double  most = 0.0;

    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (ts_heat_lasts(check->drive, c) && rated(check, d, c) > most) {
            most = rated(check, d, c);
            at   = (int32_t)c;
        }
    return at;
}

static void judge(ts_check *check, uint32_t d)
{
    const int32_t  c     = hardest(check, d);
    const ts_heat *heat  = check->heat;
    const double   above = check->drive->limits.power_above_rated.value;

    if (c < 0)
        return;
    const double    P[2]    = {ts_heat_state_at(heat, 0, (uint32_t)c, d)->P_spool,
                               ts_heat_state_at(heat, 1, (uint32_t)c, d)->P_spool};
    const int       method  = P[1] > P[0];
    const double    P_spool = P[method], P_rated = rated(check, d, (uint32_t)c);
    const ts_node   node  = heat->nodes[d][method];
    const ts_spool *spool = &check->drive->spools[check->drive->drive[d].spool];

    ts_workings_about(check->workings, node, c);
    ts_workings_assumed(check->workings, "above", above, "1", "`power above rated` of the limits");
    ts_borrow_in(check, (ts_subject){node, c}, (ts_input){"P_rated", P_rated}, spool->node, "P");
    const double P_covered =
        TS_STEP(check->workings, most_formula, P_rated * (1.0 + above), P_rated, above);
    ts_question question  = ts_question_about(check, node, c);
    question.value        = P_spool;
    question.limit        = P_covered;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_POWER;
    question.symbol       = "P_spool";
    question.limit_symbol = "P_covered";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "with all its losses the %s spool gives %s at %s, %s more than the %s that shafts and "
            "teeth are rated with",
            spool->name, ts_shown(check, P_spool, TS_KIND_POWER), ts_condition_name(check, c),
            ts_shown_percent(check, P_spool / P_rated - 1.0),
            ts_shown(check, P_rated, TS_KIND_POWER));
}

static void run(ts_check *check)
{
    if (check->heat == NULL || check->heat->missing != NULL) {
        ts_skip(check, "losses could not be computed: J5-oil-rise says why");
        return;
    }
    if (!ts_limit_known(check, &check->drive->limits.power_above_rated, "power above rated",
                        "above", TS_KIND_NUMBER))
        return;
    for (uint32_t d = 0; d < check->drive->drive_count; d++)
        judge(check, d);
    ts_skip(check, "no drive takes power in a condition that lasts");
}

const ts_rule ts_rule_losses_covered = {
    .id       = "J1-losses-covered",
    .title    = "Losses covered by the ratings",
    .question = "Do the ratings count with the power that the spool gives once all is lost that is "
                "computed?",
    .why      = "Shafts and teeth are rated with the stated `loss` of each mesh; drag of bearings, "
                "windage and oil come through them too.",
    .level    = TS_WARN,
    .source   = "common practice, no source; losses by ISO/TR 14179 and NASA TP-1622 (from memory)",
    .hint     = "state more `loss` in the bevels and gears",
    .run      = run,
};
