/* check/rule/second_opinion.c: would the teeth hold by a second standard too? */
#include "check/tooth_safety.h"
#include "check/visit.h"

#define RESERVE(S, S_min)                                                                          \
    {                                                                                              \
        .symbol = "reserve_" S "AGMA", .meaning = "reserve of the safety by AGMA 2101",            \
        .unit = "1", .text = S "AGMA/" S_min " - 1", .source = "reserve = capacity / demand - 1"   \
    }
static const ts_formula reserves[2][2] = {
    {RESERVE("S_H1", "S_Hmin"), RESERVE("S_H2", "S_Hmin")},
    {RESERVE("S_F1", "S_Fmin"), RESERVE("S_F2", "S_Fmin")},
};
static const char *const symbols[2][2] = {{"S_H1", "S_H2"}, {"S_F1", "S_F2"}};
static const char *const shown[2][2]   = {{"S_H1AGMA", "S_H2AGMA"}, {"S_F1AGMA", "S_F2AGMA"}};

static double value_of(const ts_mesh_opinion *opinion)
{
    return opinion->stress == TS_RATED_CONTACT ? opinion->S_H[opinion->gear].S
                                               : opinion->S_F[opinion->gear].S;
}

static void complain(ts_check *check, uint32_t mesh, const ts_mesh_opinion *opinion,
                     const ts_question *question, ts_finding *finding)
{
    const bool touch = opinion->stress == TS_RATED_CONTACT;

    ts_says(check, finding,
            "by AGMA 2101 the safety of %s against %s is %s at %s, less than %s; the %s sets it%s",
            ts_mesh_name(check, mesh), touch ? "pitting" : "breakage of a tooth",
            ts_shown_apart(check, question->value, question->limit, TS_KIND_NUMBER),
            ts_condition_name(check, opinion->condition),
            ts_shown(check, question->limit, TS_KIND_NUMBER),
            ts_mesh_side_says(check->train, mesh, opinion->gear),
            ts_flank_words(check, mesh, opinion->condition));
    ts_remedy(check, finding, "%s",
              ts_wider_face(check, mesh, opinion->stress, question->limit / question->value));
}

static void judge(ts_check *check, uint32_t mesh)
{
    const ts_mesh_opinion *opinion  = &check->opinion->mesh[mesh];
    const int              stress   = opinion->stress == TS_RATED_CONTACT ? 0 : 1;
    const ts_node          node     = check->train->meshes[mesh].node;
    ts_question            question = ts_question_about(check, node, TS_EVERY_CONDITION);

    question.value        = value_of(opinion);
    question.limit        = stress == 0 ? check->teeth->S_Hmin : check->teeth->S_Fmin;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = shown[stress][opinion->gear];
    question.limit_symbol = stress == 0 ? "S_Hmin" : "S_Fmin";
    question.reserve      = &reserves[stress][opinion->gear];
    ts_workings_about(check->workings, node, TS_EVERY_CONDITION);
    ts_workings_borrow(check->workings, question.symbol, question.value,
                       (ts_subject){opinion->subject, opinion->condition},
                       symbols[stress][opinion->gear]);
    ts_finding *finding = ts_judge(check, &question);
    if (finding != NULL)
        complain(check, mesh, opinion, &question, finding);
}

/* What ISO 6336 cannot rate is said by the rules that ask for its safety, and what AGMA 2101 lacks
 * by the one that sets both side by side. */
static void run(ts_check *check)
{
    const ts_limits *limits = &check->drive->limits;

    if (check->opinion != NULL && ts_measure_known(limits->contact_safety) &&
        ts_measure_known(limits->bending_safety)) {
        (void)ts_limit_known(check, &limits->contact_safety, "contact safety", "S_Hmin",
                             TS_KIND_NUMBER);
        (void)ts_limit_known(check, &limits->bending_safety, "bending safety", "S_Fmin",
                             TS_KIND_NUMBER);
    }
    for (uint32_t m = 0; check->opinion != NULL && m < check->train->mesh_count; m++)
        if (check->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
            isfinite(check->opinion->mesh[m].reserve))
            judge(check, m);
    ts_skip(check, "no cylindrical mesh is rated");
}

const ts_rule ts_rule_second_opinion = {
    .id       = "E1-second-opinion",
    .title    = "Second opinion on the teeth",
    .question = "Does every mesh keep its least safeties by AGMA 2101 too, in every condition?",
    .why      = "A mesh that one standard passes and the other does not has no reserve that can "
                "be relied on.",
    .level    = TS_WARN,
    .source   = "ANSI/AGMA 2101-D04, clause 5 (from memory); least safeties: as for ISO 6336",
    .hint     = "see which factor makes the difference, and widen the face unless you know better",
    .run      = run,
};
