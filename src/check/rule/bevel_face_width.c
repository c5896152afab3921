/* check/rule/bevel_face_width.c: are bevels so wide that their inner ends carry nothing? */
#include "check/visit.h"

static const ts_formula most_formula = {
    .symbol  = "b_most",
    .meaning = "widest face of usual practice",
    .unit    = "m",
    .text    = "min(0.3*R_e, 10*m_et)",
    .source  = "ISO 23509:2016, annex B, and ANSI/AGMA 2003 (from memory)",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_b_most",
    .meaning = "reserve of the face width of bevels",
    .unit    = "1",
    .text    = "b_most/b - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, uint32_t mesh)
{
    const ts_node        node = check->train->meshes[mesh].node;
    const ts_bevel_pair *pair = &check->motion->meshes[mesh].bevel;
    const double         R_e = pair->R_e, m_et = pair->in.m_et;
    ts_workings_about(check->workings, node, TS_EVERY_CONDITION);
    ts_question question = ts_question_about(check, node, TS_EVERY_CONDITION);
    question.value       = pair->in.b;
    question.limit  = TS_STEP(check->workings, most_formula, ts_bevel_face_most(pair), R_e, m_et);
    question.bound  = TS_AT_MOST;
    question.kind   = TS_KIND_LENGTH;
    question.symbol = "b";
    question.limit_symbol = "b_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the bevels of %s are %s wide, where %s are the most at an outer cone distance of %s "
            "and a module of %s",
            ts_mesh_name(check, mesh),
            ts_shown_apart(check, question.value, question.limit, TS_KIND_LENGTH),
            ts_shown(check, question.limit, TS_KIND_LENGTH), ts_shown(check, R_e, TS_KIND_LENGTH),
            ts_shown(check, m_et, TS_KIND_LENGTH));
    ts_remedy(check, finding, "make the face %s at most, or the module larger",
              ts_shown_outward(check, question.limit, TS_KIND_LENGTH, -1));
}

static void run(ts_check *check)
{
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        if (check->train->meshes[m].kind == TS_MESH_BEVEL && check->motion->meshes[m].solved)
            judge(check, m);
    ts_skip(check, "no bevel pair has a geometry");
}

const ts_rule ts_rule_bevel_face_width = {
    .id       = "C2-bevel-face-width",
    .title    = "Face width of bevels",
    .question = "Is no bevel wider than 0.3 of its outer cone distance, nor than 10 modules?",
    .why    = "Towards the apex the teeth grow small: a wide face adds weight and little strength, "
              "and the least shift of the pattern puts the load on the weak end.",
    .level  = TS_WARN,
    .source = "ISO 23509:2016, annex B, and ANSI/AGMA 2003 (from memory)",
    .hint   = "make the face narrower or the module larger",
    .run    = run,
};
