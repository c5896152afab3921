/* check/rule/bevel_thin_toe.c: is there enough metal at the tip of every bevel tooth, at its inner
 * end?
 */
#include "check/nearest_bevel.h"
#include "check/nearest_pair.h"
#include "check/visit.h"

static const ts_formula least_formula = {
    .symbol  = "s_ai_least",
    .meaning = "least thickness of a bevel tooth at its tip, inner end",
    .unit    = "m",
    .text    = "0.2*m_ni",
    .source  = "common practice, no source",
};
static const ts_formula reserves[2] = {
    {"reserve_s_ai1", "reserve of the tip thickness, inner end", "1", "s_ai1/s_ai_least - 1",
     "reserve = capacity / demand - 1"},
    {"reserve_s_ai2", "reserve of the tip thickness, inner end", "1", "s_ai2/s_ai_least - 1",
     "reserve = capacity / demand - 1"},
};
static const char *const symbols[2] = {"s_ai1", "s_ai2"};

static void judge(ts_check *check, uint32_t mesh, int gear)
{
    const ts_mesh      *record = &check->train->meshes[mesh];
    const ts_bevel_toe *toe    = &check->motion->meshes[mesh].toe;
    const uint32_t      shaft  = gear == 0 ? record->driver_shaft : record->driven_shaft;
    const double        s_ai = toe->s_ai[gear], m_ni = toe->m_ni;
    ts_workings_about(check->workings, record->node, TS_EVERY_CONDITION);
    ts_question question  = ts_question_about(check, record->node, TS_EVERY_CONDITION);
    question.value        = s_ai;
    question.limit        = TS_STEP(check->workings, least_formula, TS_TIP_LEAST * m_ni, m_ni);
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = symbols[gear];
    question.limit_symbol = "s_ai_least";
    question.reserve      = &reserves[gear];
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    if (s_ai > 0.0)
        ts_says(
            check, finding,
            "the bevel of %s is %s thick at the tip of its inner end, less than %s (0.2 modules)",
            check->train->shafts[shaft].name,
            ts_shown_apart(check, s_ai, question.limit, TS_KIND_LENGTH),
            ts_shown(check, question.limit, TS_KIND_LENGTH));
    else
        ts_says(check, finding,
                "the teeth of the bevel of %s end in a point below their tip at the inner end",
                check->train->shafts[shaft].name);
    const char *remedy =
        ts_bevel_remedy(check, mesh, gear == 0 ? TS_BEVEL_FLAW_TOE_1 : TS_BEVEL_FLAW_TOE_2);
    if (remedy != NULL)
        ts_remedy(check, finding, "%s", remedy);
}

static void run(ts_check *check)
{
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        for (int gear = 0; gear < 2 && ts_has_bevel_teeth(check, m); gear++)
            judge(check, m, gear);
    ts_skip(check, "no bevel pair has teeth");
}

const ts_rule ts_rule_bevel_thin_toe = {
    .id       = "C2-bevel-thin-toe",
    .title    = "Inner end of bevel teeth",
    .question = "Is every bevel tooth at least 0.2 modules thick at the tip of its inner end?",
    .why      = "The inner end, the toe, is where a bevel tooth is thinnest; a thin tip hardens "
                "right through and chips.",
    .level    = TS_REFUSE,
    .source = "derived: the virtual gear of ISO 10300-1, annex A, at the inner cone distance; the "
              "limit: common practice, no source",
    .hint   = "use less profile shift or thickness shift, a narrower face or a smaller addendum",
    .run    = run,
};
