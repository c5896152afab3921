/* check/rule/pointed_tip.c: is there enough metal at the tip of every tooth? */
#include "check/envelope.h"
#include "check/nearest_pair.h"
#include "check/visit.h"

static const ts_formula least_formula = {
    .symbol  = "s_an_least",
    .meaning = "least thickness of a tooth at its tip",
    .unit    = "m",
    .text    = "0.2*m_n",
    .source  = "common practice, no source",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_s_an",
    .meaning = "reserve of the tip thickness",
    .unit    = "1",
    .text    = "s_an/s_an_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge_gear(ts_check *check, uint32_t index, const ts_gear_geometry *geometry)
{
    const ts_gear *gear = &check->train->gears[index];
    const double   m_n  = gear->m_n.value;
    ts_workings_about(check->workings, gear->node, TS_EVERY_CONDITION);
    ts_borrow_of_gear(check, gear->node, geometry, (ts_input){"m_n", m_n},
                      (const char *const[2]){"m_n", "m_n"});
    ts_borrow_of_gear(check, gear->node, geometry, (ts_input){"s_an", geometry->s_an},
                      (const char *const[2]){"s_an1", "s_an2"});
    ts_question question  = ts_question_about(check, gear->node, TS_EVERY_CONDITION);
    question.value        = geometry->s_an;
    question.limit        = TS_STEP(check->workings, least_formula, TS_TIP_LEAST * m_n, m_n);
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "s_an";
    question.limit_symbol = "s_an_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    if (geometry->s_an > 0.0)
        ts_says(check, finding, "the teeth of %s are %s thick at the tip, less than %s (0.2 m_n)",
                ts_gear_name(check, index),
                ts_shown_apart(check, geometry->s_an, question.limit, TS_KIND_LENGTH),
                ts_shown(check, question.limit, TS_KIND_LENGTH));
    else
        ts_says(check, finding, "the teeth of %s end in a point below their tip circle",
                ts_gear_name(check, index));
    const bool  first = geometry->index == 1;
    const char *remedy =
        ts_pair_remedy(check, geometry->mesh, first ? 0 : 1, first ? TS_FLAW_TIP_1 : TS_FLAW_TIP_2);
    if (remedy != NULL)
        ts_remedy(check, finding, "%s", remedy);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->gear_count; i++) {
        ts_gear_geometry geometry;
        if (ts_gear_geometry_of(check, i, &geometry))
            judge_gear(check, i, &geometry);
    }
    ts_skip(check, "no cylindrical gear has a geometry");
}

const ts_rule ts_rule_pointed_tip = {
    .id       = "C2-pointed-tip",
    .title    = "Tip thickness",
    .question = "Is every cylindrical tooth at least 0.2 modules thick at its tip?",
    .why      = "A thin tip hardens right through and chips; a pointed one is not even as high as "
                "the drawing says.",
    .level    = TS_REFUSE,
    .source   = "ISO 21771:2007 (definition of s_an); the limit: common practice, no source",
    .hint     = "use less profile shift, a smaller addendum or a smaller pressure angle",
    .run      = run,
};
