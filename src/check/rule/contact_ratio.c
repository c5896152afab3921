/* check/rule/contact_ratio.c: does a second pair of teeth take over before the first lets go? */
#include "check/nearest_pair.h"
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_eps_alpha",
    .meaning = "reserve of the transverse contact ratio",
    .unit    = "1",
    .text    = "eps_alpha/eps_alpha_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void complain(ts_check *check, uint32_t mesh, const ts_question *question,
                     ts_finding *finding)
{
    ts_says(check, finding, "the transverse contact ratio of %s is %s, less than %s",
            ts_mesh_name(check, mesh),
            ts_shown_apart(check, question->value, question->limit, TS_KIND_NUMBER),
            ts_shown(check, question->limit, TS_KIND_NUMBER));
    const char *remedy = ts_pair_remedy(check, mesh, -1, TS_FLAW_LETS_GO);
    if (remedy != NULL)
        ts_remedy(check, finding, "%s", remedy);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.contact_ratio;
    const double      least = limit->value;
    if (!ts_limit_known(check, limit, "contact ratio", "eps_alpha_least", TS_KIND_NUMBER))
        return;
    for (uint32_t i = 0; i < check->train->mesh_count; i++) {
        const ts_mesh *mesh = &check->train->meshes[i];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !check->motion->meshes[i].solved)
            continue;
        ts_question question  = ts_question_about(check, mesh->node, TS_EVERY_CONDITION);
        question.value        = check->motion->meshes[i].pair.eps_alpha;
        question.limit        = least;
        question.bound        = TS_AT_LEAST;
        question.kind         = TS_KIND_NUMBER;
        question.symbol       = "eps_alpha";
        question.limit_symbol = "eps_alpha_least";
        question.reserve      = &reserve_formula;
        ts_finding *finding   = ts_judge(check, &question);
        if (finding != NULL)
            complain(check, i, &question, finding);
    }
    ts_skip(check, "no cylindrical mesh has a geometry");
}

const ts_rule ts_rule_contact_ratio = {
    .id       = "C1-contact-ratio",
    .title    = "Contact ratio",
    .question = "Is the transverse contact ratio of every cylindrical mesh large enough?",
    .why      = "Near 1 a pair of teeth lets go before the next has taken over, and tolerances and "
                "bending decide which; the load hammers.",
    .level    = TS_REFUSE,
    .source   = "ISO 21771:2007 (definition of eps_alpha); the limit: common practice, no source",
    .hint     = "use more teeth, a smaller pressure angle or less profile shift",
    .run      = run,
};
