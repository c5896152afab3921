/* check/rule/standards_differ.c: where do two standards not agree about the same teeth, and why? */
#include "check/tooth_safety.h"
#include "check/visit.h"

static const ts_formula apart_formula = {
    .symbol  = "apart",
    .meaning = "how far the safety by AGMA is from that by ISO, on the same gear in the "
               "same condition",
    .unit    = "1",
    .text    = "abs(S_AGMA/S_ISO - 1)",
    .source  = "derived: second opinion over first",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_apart",
    .meaning = "reserve of the difference",
    .unit    = "1",
    .text    = "apart_most/apart - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* ---- which factor ---------------------------------------------------------------------------- */

/* One factor, or two when the second pulls at least half as much. */
static const char *reason(ts_check *check, const ts_opinion_gap *gap, ts_rated_stress stress)
{
    const ts_opinion_reason by  = ts_opinion_reason_of(gap);
    const char             *one = ts_phrase(check, "%s, which alone makes it %s times as much",
                                            ts_opinion_factor_says(by.first, stress),
                                            ts_shown(check, gap->factor[by.first], TS_KIND_NUMBER));
    if (by.second == TS_FACTORS)
        return one;
    return ts_phrase(check, "%s, and %s, %s times", one, ts_opinion_factor_says(by.second, stress),
                     ts_shown(check, gap->factor[by.second], TS_KIND_NUMBER));
}

/* ---- the question ---------------------------------------------------------------------------- */

static double apart(const ts_opinion_gap *gap)
{
    return fabs(gap->ratio - 1.0);
}

static double note_apart(const ts_check *check, uint32_t mesh, const ts_opinion_gap *gap,
                         ts_rated_stress stress)
{
    static const char *const symbols[2][2] = {{"S_H1", "S_H2"}, {"S_F1", "S_F2"}};
    const char              *symbol        = symbols[stress == TS_RATED_CONTACT ? 0 : 1][gap->gear];
    const ts_subject         iso           = {check->teeth->strength[mesh].subject, gap->condition};
    const ts_subject         agma          = {check->opinion->mesh[mesh].subject, gap->condition};
    const double             S_AGMA = gap->second, S_ISO = gap->first;

    ts_workings_about(check->workings, check->train->meshes[mesh].node, TS_EVERY_CONDITION);
    ts_workings_borrow(check->workings, "S_AGMA", S_AGMA, agma, symbol);
    ts_workings_borrow(check->workings, "S_ISO", S_ISO, iso, symbol);
    return TS_STEP(check->workings, apart_formula, fabs(S_AGMA / S_ISO - 1.0), S_AGMA, S_ISO);
}

static void complain(ts_check *check, uint32_t mesh, const ts_opinion_gap *gap,
                     ts_rated_stress stress, ts_finding *finding)
{
    const bool bevel = check->train->meshes[mesh].kind == TS_MESH_BEVEL;
    ts_says(check, finding, "%s, %s of the %s at %s: S is %s by %s and %s by %s, most of it by %s",
            ts_mesh_name(check, mesh), ts_rated_stress_says(stress),
            ts_mesh_side_says(check->train, mesh, gap->gear),
            ts_condition_name(check, gap->condition), ts_shown(check, gap->second, TS_KIND_NUMBER),
            bevel ? "AGMA 2003" : "AGMA 2101", ts_shown(check, gap->first, TS_KIND_NUMBER),
            bevel ? "ISO 10300" : "ISO 6336", reason(check, gap, stress));
}

static void judge(ts_check *check, uint32_t mesh, double most)
{
    const ts_mesh_opinion *opinion = &check->opinion->mesh[mesh];
    const bool             bends =
        !(opinion->contact.condition >= 0) || apart(&opinion->bending) > apart(&opinion->contact);
    const ts_rated_stress stress = bends ? TS_RATED_BENDING : TS_RATED_CONTACT;
    const ts_opinion_gap *gap    = bends ? &opinion->bending : &opinion->contact;

    ts_question question =
        ts_question_about(check, check->train->meshes[mesh].node, TS_EVERY_CONDITION);
    question.value        = note_apart(check, mesh, gap, stress);
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "apart";
    question.limit_symbol = "apart_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        complain(check, mesh, gap, stress, finding);
}

static void say_missing(ts_check *check, uint32_t mesh, const char *missing)
{
    const char *name    = ts_mesh_name(check, mesh);
    ts_finding *finding = ts_not_computable(check, check->train->meshes[mesh].node,
                                            TS_EVERY_CONDITION, "a second opinion on %s", name);
    if (finding == NULL)
        return;
    ts_says(check, finding, "AGMA 2101 cannot rate %s: it lacks %s", name, missing);
    ts_remedy(check, finding, "rate it by hand, or waive this with the reason");
}

static void ask(ts_check *check, uint32_t mesh, double most)
{
    const ts_mesh_opinion *opinion = &check->opinion->mesh[mesh];

    if (opinion->missing != NULL)
        say_missing(check, mesh, opinion->missing);
    else if (opinion->contact.condition >= 0 || opinion->bending.condition >= 0)
        judge(check, mesh, most);
}

/* What ISO 6336 itself cannot rate is said by the rules that ask for its safety. */
static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.standards_apart;

    if (check->opinion != NULL &&
        !ts_limit_known(check, limit, "standards apart", "apart_most", TS_KIND_NUMBER))
        return;
    for (uint32_t m = 0; check->opinion != NULL && m < check->train->mesh_count; m++)
        if (ts_mesh_is_rated(check, m))
            ask(check, m, limit->value);
    ts_skip(check, "no mesh is rated by two standards");
}

const ts_rule ts_rule_standards_differ = {
    .id       = "E1-standards-differ",
    .title    = "Two standards on the same teeth",
    .question = "Do the standards of ISO and of AGMA agree about the safety of every mesh?",
    .why      = "Both rest on experience; where they part, the number of either is worth less than "
                "its digits, and the factor in which they part says what to look into.",
    .level    = TS_NOTE,
    .source =
        "ISO 6336:2019, ANSI/AGMA 2101-D04; bevels: ISO 10300:2014, ANSI/AGMA 2003-C10; 15 %: "
        "common practice, no source",
    .hint = "look into the factor that is named before you trust either",
    .run  = run,
};
