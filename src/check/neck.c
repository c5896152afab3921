/* check/neck.c: is a neck far enough above the highest torque that it must pass? */
#include "check/neck.h"

static const ts_formula needed_formula = {
    .symbol  = "T_needed",
    .meaning = "break torque that the neck must at least have",
    .unit    = "N.m",
    .text    = "f_neck*abs(T_peak)",
    .source  = "common practice, no source",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_T_break",
    .meaning = "reserve of the neck above the torque that it must pass",
    .unit    = "1",
    .text    = "T_break_least/T_needed - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* The peak comes from the load of one condition, or from the overload that the file states. */
static void note_parts(const ts_check *check, const ts_neck_case *of)
{
    ts_workings_about(check->workings, of->neck->node, TS_EVERY_CONDITION);
    if (of->peak.condition >= 0 || (of->overload == 0 && of->peak.T > 0.0))
        ts_workings_borrow(check->workings, "T_peak", of->peak.noted,
                           (ts_subject){of->lender, of->peak.condition}, of->symbol);
    else if (of->overload != 0)
        ts_workings_given(check->workings, "T_peak", of->peak.noted, "N.m", of->overload);
    else
        ts_workings_assumed(check->workings, "T_peak", of->peak.noted, "N.m",
                            "nothing loads it in any condition");
}

static void say(ts_check *check, ts_finding *finding, const ts_neck_case *of)
{
    const ts_kind kind = TS_KIND_TORQUE;
    const char   *where =
        of->peak.condition < 0
              ? ""
              : ts_phrase(check, " at %s", ts_condition_name(check, of->peak.condition));
    ts_says(check, finding,
            "the neck of %s may break from %s, and %s reaches %s%s, which asks for %s", of->name,
            ts_shown_apart(check, finding->value, finding->limit, kind), of->load,
            ts_shown(check, of->peak.T, kind), where,
            ts_shown_apart(check, finding->limit, finding->value, kind));
    ts_neck_remedy(check, finding, of->number, finding->limit, false);
}

bool ts_neck_known(ts_check *check, uint32_t number)
{
    const ts_drive_neck *of = &check->select->necks->items[number];

    if (of->missing == NULL)
        return true;
    ts_not_computable(check, of->neck->node, TS_EVERY_CONDITION, "%s of the neck of %s",
                      of->missing, of->name);
    return false;
}

/* The break torque goes with the cube of the diameter, of a solid neck or one in proportion. */
void ts_neck_remedy(ts_check *check, ts_finding *finding, uint32_t number, double limit, bool most)
{
    const ts_drive_neck *of   = &check->select->necks->items[number];
    const double         band = most ? of->band.high : of->band.low;
    const char          *ends = most ? "end" : "begin", *bound = most ? "most" : "least";

    if (of->designed && limit > 0.0)
        ts_remedy(check, finding, "make its diameter %s at %s where it is %s",
                  ts_shown_outward(check, of->neck->diameter.value * cbrt(limit / band),
                                   TS_KIND_LENGTH, most ? -1 : +1),
                  bound, ts_shown(check, of->neck->diameter.value, TS_KIND_LENGTH));
    else if (limit > 0.0)
        ts_remedy(check, finding, "let its band %s at %s at %s", ends,
                  ts_shown_outward(check, limit, TS_KIND_TORQUE, most ? -1 : +1), bound);
}

void ts_judge_neck(ts_check *check, const ts_neck_case *of)
{
    const ts_node about = of->neck->node;
    if (!ts_neck_known(check, of->number))
        return;
    if (isnan(of->peak.T)) {
        ts_not_computable(check, about, TS_EVERY_CONDITION,
                          "the highest torque that the neck of %s must pass", of->name);
        return;
    }
    const double f_neck = of->factor, T_peak = of->peak.noted;
    if (check->workings != NULL)
        note_parts(check, of);
    ts_question question = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value       = check->select->necks->items[of->number].band.low;
    question.limit =
        TS_STEP(check->workings, needed_formula, f_neck * fabs(T_peak), f_neck, T_peak);
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_TORQUE;
    question.symbol       = "T_break_least";
    question.limit_symbol = "T_needed";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, of);
}
