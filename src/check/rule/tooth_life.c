/* check/rule/tooth_life.c: do the teeth bear all conditions of a life together? */
#include "check/tooth_safety.h"
#include "check/visit.h"

#define RESERVE(S, S_min)                                                                          \
    {                                                                                              \
        .symbol = "reserve_" S, .meaning = "reserve of the safety of all conditions together",     \
        .unit = "1", .text = S "/" S_min " - 1", .source = "reserve = capacity / demand - 1"       \
    }
static const ts_formula reserves[2][2] = {
    {RESERVE("S_H1", "S_Hmin"), RESERVE("S_H2", "S_Hmin")},
    {RESERVE("S_F1", "S_Fmin"), RESERVE("S_F2", "S_Fmin")},
};
static const char *const symbols[2][2] = {{"S_H1", "S_H2"}, {"S_F1", "S_F2"}};

static void complain(ts_check *check, uint32_t mesh, const ts_mesh_strength *strength,
                     ts_finding *finding)
{
    const char  *gear = ts_mesh_side_says(check->train, mesh, strength->gear);
    const double least =
        strength->stress == TS_RATED_CONTACT ? check->teeth->S_Hmin : check->teeth->S_Fmin;

    ts_says(check, finding,
            "%s lasts %s of its life with the safety %s; set by %s%s: %s of the %s, with %s of the "
            "damage",
            ts_mesh_name(check, mesh), ts_shown_percent(check, strength->times),
            ts_shown(check, least, TS_KIND_NUMBER),
            ts_condition_name(check, strength->life.condition),
            ts_flank_words(check, strength->life.mesh, strength->life.condition),
            ts_rated_stress_says(strength->stress), gear,
            ts_shown_percent(check, strength->life.share));
    ts_remedy(check, finding, "%s",
              ts_wider_face(check, mesh, strength->stress, 1.0 / (1.0 + strength->reserve)));
}

static void judge(ts_check *check, uint32_t mesh)
{
    const ts_mesh_strength *strength = &check->teeth->strength[mesh];
    const bool              touch    = strength->stress == TS_RATED_CONTACT;
    const double            least    = touch ? check->teeth->S_Hmin : check->teeth->S_Fmin;

    ts_question question =
        ts_question_about(check, check->train->meshes[mesh].node, TS_EVERY_CONDITION);
    question.value        = strength->life.S;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = symbols[touch ? 0 : 1][strength->gear];
    question.limit_symbol = touch ? "S_Hmin" : "S_Fmin";
    question.reserve      = &reserves[touch ? 0 : 1][strength->gear];
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        complain(check, mesh, strength, finding);
}

/* A mesh that a single condition overcomes is refused for that already, and what cannot be rated is
 * said there. */
static void run(ts_check *check)
{
    const ts_limits *limits = &check->drive->limits;

    if (check->teeth != NULL && (!ts_limit_known(check, &limits->contact_safety, "contact safety",
                                                 "S_Hmin", TS_KIND_NUMBER) ||
                                 !ts_limit_known(check, &limits->bending_safety, "bending safety",
                                                 "S_Fmin", TS_KIND_NUMBER)))
        return;
    for (uint32_t m = 0; check->teeth != NULL && m < check->train->mesh_count; m++)
        if (ts_mesh_is_rated(check, m) && ts_mesh_bears_each_condition(check, m) &&
            !isnan(check->teeth->strength[m].reserve))
            judge(check, m);
    ts_skip(check, "no mesh is rated and bears every condition by itself");
}

const ts_rule ts_rule_tooth_life = {
    .id       = "E3-tooth-life",
    .title    = "Life of the teeth",
    .question = "Do the teeth of every mesh bear all conditions of a life together?",
    .why      = "Damage adds up: hours of cruise, and starts on the other flank; what each "
                "condition leaves by itself may be too little for all.",
    .level    = TS_REFUSE,
    .source = "ISO 6336-6:2019 (Palmgren and Miner); the least safety: common practice, no source",
    .hint   = "widen the faces, or change module, material or the hours",
    .run    = run,
};
