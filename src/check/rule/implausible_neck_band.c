/* check/rule/implausible_neck_band.c: can a neck break in so narrow, or so wide, a band? */
#include "check/visit.h"

/* Greatest over least break torque: material and diameter scatter at least, and at most. */
#define SPREAD_LEAST 1.05
#define SPREAD_MOST  1.6

static const ts_formula spread_formula = {
    .symbol  = "spread",
    .meaning = "greatest over least break torque of the neck",
    .unit    = "1",
    .text    = "T_break_most/T_break_least",
    .source  = "derived: quotient of the two ends of the band",
};

static void judge_neck(ts_check *check, const ts_neck *neck, const char *name)
{
    if (!(neck->breaks.low > 0.0)) {
        ts_not_computable(check, neck->node, TS_EVERY_CONDITION,
                          "the least break torque of the neck of %s", name);
        return;
    }
    const double T_break_least = neck->breaks.low, T_break_most = neck->breaks.high;
    ts_workings_about(check->workings, neck->node, TS_EVERY_CONDITION);
    ts_workings_given(check->workings, "T_break_least", T_break_least, "N.m", neck->breaks.node);
    ts_workings_given(check->workings, "T_break_most", T_break_most, "N.m", neck->breaks.node);
    const double spread   = TS_STEP(check->workings, spread_formula, T_break_most / T_break_least,
                                    T_break_most, T_break_least);
    const bool   narrow   = spread < 1.2;
    ts_question  question = ts_question_about(check, neck->node, TS_EVERY_CONDITION);
    question.value        = spread;
    question.limit        = narrow ? SPREAD_LEAST : SPREAD_MOST;
    question.bound        = narrow ? TS_AT_LEAST : TS_AT_MOST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "spread";
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the neck of %s is said to break between %s and %s, a band %s", name,
            ts_shown(check, T_break_least, TS_KIND_TORQUE),
            ts_shown(check, T_break_most, TS_KIND_TORQUE),
            narrow ? "narrower than material and diameter allow" : "too wide to protect anything");
}

/* Of a neck with a diameter the band is computed, and held to the stated one. */
static bool band_given(const ts_neck *neck)
{
    return neck->node != 0 && neck->breaks.standing == TS_GIVEN &&
           neck->diameter.standing != TS_GIVEN;
}

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->accessory_count; i++)
        if (band_given(&check->drive->accessories[i].neck))
            judge_neck(check, &check->drive->accessories[i].neck,
                       check->drive->accessories[i].name);
    for (size_t i = 0; i < check->drive->drive_count; i++)
        if (band_given(&check->drive->drive[i].tower_shaft.neck))
            judge_neck(check, &check->drive->drive[i].tower_shaft.neck, "the tower shaft");
    ts_skip(check, "no neck states its break band");
}

const ts_rule ts_rule_implausible_neck_band = {
    .id       = "A3-implausible-neck-band",
    .title    = "Implausible neck band",
    .question = "Is the greatest break torque of every neck between 1.05 and 1.6 times the least?",
    .why      = "Strength scatters by several per cent and the diameter enters with its cube; a "
                "band without that scatter is a wish, and one far wider protects nothing.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "state the band from the scatter of strength and diameter",
    .run      = run,
};
