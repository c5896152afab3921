/* check/rule/jet_speed.c: is every oil jet fast enough to come between the teeth? */
#include "check/visit.h"

static const ts_formula least_formula = {
    .symbol  = "v_least",
    .meaning = "least speed of the jet",
    .unit    = "m/s",
    .text    = "share*v_t",
    .source  = "`jet speed` of the limits",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_v_jet",
    .meaning = "reserve of the speed of the jet",
    .unit    = "1",
    .text    = "v_jet/v_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, uint32_t mesh)
{
    const ts_heat_jet *jet    = &check->heat->jets[mesh];
    const ts_node      node   = check->train->meshes[mesh].node;
    const ts_node      lender = check->heat->places[mesh].node[0];
    const double       v_t = jet->v_t, v_jet = jet->v;
    const double       share = check->drive->limits.jet_speed.value;

    ts_workings_about(check->workings, node, TS_EVERY_CONDITION);
    ts_workings_assumed(check->workings, "share", share, "1", "`jet speed` of the limits");
    ts_borrow(check, node, (ts_input){"v_t", v_t}, lender, "v_t");
    ts_borrow(check, node, (ts_input){"v_jet", v_jet}, lender, "v_jet");
    const double v_least  = TS_STEP(check->workings, least_formula, share * v_t, share, v_t);
    ts_question  question = ts_question_about(check, node, TS_EVERY_CONDITION);
    question.value        = v_jet;
    question.limit        = v_least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_VELOCITY;
    question.symbol       = "v_jet";
    question.limit_symbol = "v_least";
    question.reserve      = v_least > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the oil jet of %s runs at %s and its teeth at %s at %s: it comes %s deep into spaces "
            "of %s",
            ts_mesh_name(check, mesh), ts_shown(check, v_jet, TS_KIND_VELOCITY),
            ts_shown(check, v_t, TS_KIND_VELOCITY), ts_condition_name(check, jet->at),
            ts_shown(check, jet->depth, TS_KIND_LENGTH), ts_shown(check, jet->h, TS_KIND_LENGTH));
    const double more = v_least / v_jet;
    ts_remedy(check, finding, "raise `jet pressure` to at least %s",
              ts_shown_outward(check, check->drive->oil.jet_pressure.value * more * more,
                               TS_KIND_STRESS, +1));
}

static void run(ts_check *check)
{
    if (check->heat == NULL || check->heat->missing != NULL) {
        ts_skip(check, "losses could not be computed: J5-oil-rise says why");
        return;
    }
    if (!ts_limit_known(check, &check->drive->limits.jet_speed, "jet speed", "share",
                        TS_KIND_NUMBER))
        return;
    for (uint32_t m = 0; m < check->heat->bearing_begin; m++)
        if (check->heat->jets[m].count > 0 && check->heat->jets[m].v_t > 0.0)
            judge(check, m);
    ts_skip(check, "no mesh is fed by jets");
}

const ts_rule ts_rule_jet_speed = {
    .id       = "J2-jet-speed",
    .title    = "Speed of the jets",
    .question = "Is every oil jet fast enough to come between the teeth it is aimed at?",
    .why   = "The next tooth cuts a slow jet off before it is deep: it wets the tips, which throw "
             "it off, and the flanks stay hot.",
    .level = TS_WARN,
    .source =
        "common practice, no source; depth by the rack model of Akin, Mross and Townsend 1975",
    .hint = "raise `jet pressure`",
    .run  = run,
};
