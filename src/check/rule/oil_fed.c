/* check/rule/oil_fed.c: does the pressure element give the boxes the oil that their jets ask for?
 */
#include "check/oil_told.h"

#define NEEDS ((unsigned)(TS_NEEDS_FEED | TS_NEEDS_VISCOSITY | TS_NEEDS_DENSITY | TS_NEEDS_RISE))

static const ts_formula boxes_formula = {
    .symbol  = "Q_boxes",
    .meaning = "oil that the pressure element gives the boxes",
    .unit    = "m3/s",
    .text    = "Q_fed - elsewhere",
    .source  = "derived: what does not go elsewhere",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_Q",
    .meaning = "reserve of the oil for the boxes",
    .unit    = "1",
    .text    = "Q_boxes/Q_jets - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* The condition that lasts in which least is fed. */
static uint32_t leanest(const ts_check *check, const ts_pack *pack)
{
    uint32_t at = TS_NOWHERE;

    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (ts_condition_lasts(&check->drive->conditions[c]) && pack->states[c].n > 0.0 &&
            (at == TS_NOWHERE || pack->states[c].Q < pack->states[at].Q))
            at = c;
    return at;
}

static void judge(ts_check *check, const ts_pack *pack)
{
    const ts_node  node  = pack->told->node;
    const uint32_t c     = leanest(check, pack);
    const double   Q_fed = pack->states[c].Q, elsewhere = pack->told->elsewhere.value;

    if (isnan(pack->elements[0].V_g)) {
        (void)ts_not_computable(check, node, TS_EVERY_CONDITION,
                                "a pressure element from which not all slips back");
        return;
    }
    ts_workings_about(check->workings, node, (int32_t)c);
    ts_workings_assumed(check->workings, "elsewhere", elsewhere, "m3/s",
                        "`elsewhere` of the pumps, or its default");
    ts_workings_assumed(check->workings, "Q_jets", check->heat->Q, "m3/s",
                        "what the jets of all boxes pass: towershaft oil");
    const double Q_boxes =
        TS_STEP(check->workings, boxes_formula, Q_fed - elsewhere, Q_fed, elsewhere);
    ts_question question  = ts_question_about(check, node, (int32_t)c);
    question.value        = Q_boxes;
    question.limit        = check->heat->Q;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_VOLUME_FLOW;
    question.symbol       = "Q_boxes";
    question.limit_symbol = "Q_jets";
    question.reserve      = check->heat->Q > 0.0 ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s leaves %s for the boxes at %s, and their jets pass %s",
            check->drive->accessories[pack->accessory].name,
            ts_shown(check, Q_boxes, TS_KIND_VOLUME_FLOW), ts_condition_name(check, (int32_t)c),
            ts_shown(check, check->heat->Q, TS_KIND_VOLUME_FLOW));
    ts_remedy(check, finding, "give `pumps` a `flow` of at least %s%s",
              ts_shown_outward(check, check->heat->Q + elsewhere, TS_KIND_VOLUME_FLOW, +1),
              pack->elements[0].given ? ", and gears that are wide enough for it" : "");
}

static void run(ts_check *check)
{
    const ts_oil_units *units = &check->power->units;
    const bool          cold  = check->heat == NULL || check->heat->missing != NULL;

    if (units->pack_count > 0 && !ts_oil_is_told(check, NEEDS, NULL))
        return;
    for (uint32_t i = 0; i < units->pack_count; i++)
        if (units->packs[i].missing != NULL)
            (void)ts_not_computable(check, units->packs[i].told->node, TS_EVERY_CONDITION, "%s",
                                    units->packs[i].missing);
        else if (!cold)
            judge(check, &units->packs[i]);
    ts_skip(check, cold ? "losses could not be computed: J5-oil-rise says why"
                        : "no accessory tells its `pumps`");
}

const ts_rule ts_rule_oil_fed = {
    .id       = "J3-oil-fed",
    .title    = "Oil for the boxes",
    .question = "Does the pressure element give the boxes the oil that their jets pass, in every "
                "condition that lasts?",
    .why = "Jets that are sized for more than comes lose their pressure, and every place gets less "
           "than it was given.",
    .level  = TS_WARN,
    .source = "derived: continuity; needs by ISO/TR 14179 and NASA TP-1622 (from memory)",
    .hint   = "raise `flow` of the pumps",
    .run    = run,
};
