/* check/rule/jet_drift.c: does every oil jet cross its gap to what it is aimed at? */
#include "check/visit.h"

static const ts_formula most_formula = {
    .symbol  = "drift_most",
    .meaning = "most that the jet may be carried aside",
    .unit    = "m",
    .text    = "share*gap",
    .source  = "`jet drift` of the limits",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_drift",
    .meaning = "reserve of the way aside",
    .unit    = "1",
    .text    = "drift_most/drift - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, uint32_t p)
{
    const ts_heat_place *place = &check->heat->places[p];
    const ts_heat_jet   *jet   = &check->heat->jets[p];
    const ts_node        node  = place->node[0];
    const double         drift = jet->drift, gap = check->drive->oil.jet_gap.value;
    const double         share = check->drive->limits.jet_drift.value;

    ts_workings_about(check->workings, node, TS_EVERY_CONDITION);
    ts_workings_assumed(check->workings, "share", share, "1", "`jet drift` of the limits");
    const double drift_most = TS_STEP(check->workings, most_formula, share * gap, share, gap);
    ts_question  question   = ts_question_about(check, node, TS_EVERY_CONDITION);
    question.value          = drift;
    question.limit          = drift_most;
    question.bound          = TS_AT_MOST;
    question.kind           = TS_KIND_LENGTH;
    question.symbol         = "drift";
    question.limit_symbol   = "drift_most";
    question.reserve        = drift > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding     = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the oil jet of %s runs at %s through wind of %s across its gap of %s at %s and comes "
            "%s beside its aim",
            place->name, ts_shown(check, jet->v, TS_KIND_VELOCITY),
            ts_shown(check, jet->u, TS_KIND_VELOCITY), ts_shown(check, gap, TS_KIND_LENGTH),
            ts_condition_name(check, jet->at),
            ts_shown_apart(check, drift, drift_most, TS_KIND_LENGTH));
    ts_remedy(check, finding, "bring its hole to within %s (`jet gap`), or raise `jet pressure`",
              ts_shown_outward(check, gap * drift_most / drift, TS_KIND_LENGTH, -1));
}

static void run(ts_check *check)
{
    if (check->heat == NULL || check->heat->missing != NULL) {
        ts_skip(check, "losses could not be computed: J5-oil-rise says why");
        return;
    }
    if (!ts_limit_known(check, &check->drive->limits.jet_drift, "jet drift", "share",
                        TS_KIND_NUMBER))
        return;
    for (uint32_t p = 0; p < check->heat->pad_begin; p++)
        if (check->heat->jets[p].count > 0 && check->drive->oil.jet_gap.value > 0.0)
            judge(check, p);
    ts_skip(check, "no jet has a gap to cross");
}

const ts_rule ts_rule_jet_drift = {
    .id       = "J2-jet-drift",
    .title    = "Gap of the jets",
    .question = "Does every oil jet cross its gap to the teeth or the bearing it is aimed at?",
    .why   = "The wind of fast teeth and cages bends a thin slow jet: a bearing that is fed across "
             "a gap starves.",
    .level = TS_WARN,
    .source = "common practice, no source; drift derived: a round jet across the wind",
    .hint   = "bring the hole nearer, or raise `jet pressure`",
    .run    = run,
};
