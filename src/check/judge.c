/* check/judge.c: does one value keep its limit, and what is written down about it? */
#include "check/rule.h"

#include "check/desk.h"

#include <stdarg.h>
#include <string.h>

ts_question ts_question_about(const ts_check *check, ts_node object, int32_t condition)
{
    return (ts_question){
        .object    = object,
        .condition = condition,
        .level     = check->desk->rule->level,
        .value     = NAN,
        .limit     = NAN,
    };
}

/* capacity / demand - 1.  Without a demand (0 wanted, or a limit without end) there is no reserve
 * to speak of, and the result is NaN. */
static double reserve_of(const ts_question *question)
{
    const double capacity = question->bound == TS_AT_MOST ? question->limit : question->value;
    const double demand   = question->bound == TS_AT_MOST ? question->value : question->limit;
    if (!(demand > 0.0) || !isfinite(capacity) || !isfinite(demand))
        return NAN;
    return capacity / demand - 1.0;
}

/* Every comparison with a NaN is false, and false does not hold. */
static bool holds(const ts_question *question, double reserve)
{
    const bool kept = question->bound == TS_AT_MOST ? question->value <= question->limit
                                                    : question->value >= question->limit;
    if (!kept || !(question->wanted > 0.0))
        return kept;
    return isnan(reserve) || reserve >= question->wanted;
}

static void note_reserve(const ts_check *check, const ts_question *question, double reserve)
{
    if (question->reserve == NULL || isnan(reserve))
        return;
    ts_workings_about(check->workings, question->object, question->condition);
    (void)ts_step_list(check->workings, question->reserve, reserve,
                       (const ts_input[]){
                           {question->symbol, question->value},
                           {question->limit_symbol, question->limit},
                       },
                       2);
}

/* Of value and limit; a question without numbers has none. */
static const char *unit_of(const ts_question *question)
{
    if (isnan(question->value) && isnan(question->limit))
        return NULL;
    const ts_unit *unit = ts_kind_si(question->kind);
    return unit != NULL ? unit->name : NULL;
}

/* An end without limit is no number that anybody can be shown. */
static double shown_number(double value)
{
    return isfinite(value) ? value : (double)NAN;
}

static ts_judgement *write_judgement(ts_check *check, const ts_question *question, bool passed)
{
    ts_desk      *desk      = check->desk;
    ts_judgement *judgement = ts_desk_judgement(desk);
    if (judgement == NULL)
        return NULL;
    *judgement = (ts_judgement){
        .rule      = desk->rule->id,
        .node      = question->object,
        .condition = question->condition,
        .symbol    = question->symbol,
        .unit      = unit_of(question),
        .value     = shown_number(question->value),
        .limit     = shown_number(question->limit),
        .margin    = NAN,
        .passed    = passed,
    };
    desk->result->judged++;
    desk->result->passed += passed ? 1 : 0;
    return judgement;
}

static ts_finding *write_finding(ts_check *check, const ts_question *question,
                                 const ts_judgement *judgement, ts_state state)
{
    ts_desk    *desk    = check->desk;
    ts_finding *finding = ts_desk_finding(desk);
    if (finding == NULL)
        return NULL;
    *finding = (ts_finding){
        .rule      = desk->rule->id,
        .level     = question->level,
        .state     = state,
        .node      = question->object,
        .condition = question->condition,
        .says      = "",
        .remedy    = desk->rule->hint,
        .value     = judgement->value,
        .limit     = judgement->limit,
        .margin    = judgement->margin,
        .symbol    = judgement->symbol,
        .unit      = judgement->unit,
        .source    = question->source != NULL ? question->source : desk->rule->source,
    };
    return finding;
}

static ts_finding *write_not_computable(ts_check *check, const ts_question *question,
                                        const char *what)
{
    const ts_judgement *judgement = write_judgement(check, question, false);
    if (judgement == NULL)
        return NULL;
    ts_finding *finding = write_finding(check, question, judgement, TS_NOT_COMPUTABLE);
    ts_says(check, finding, "cannot be judged: %s is not known", what);
    ts_remedy(check, finding, "state %s in the file", what);
    return finding;
}

/* Rules say better what they lack; this is what stands between them and a NaN that they missed. */
static const char *missing_number(ts_check *check, const ts_question *question)
{
    const bool  value = isnan(question->value);
    const char *name  = value ? question->symbol : question->limit_symbol;
    return ts_phrase(check, "%s %s", value ? "the value" : "the limit",
                     name != NULL ? name : "of this question");
}

ts_finding *ts_judge(ts_check *check, const ts_question *question)
{
    if (check->desk->failed)
        return NULL;
    if (isnan(question->value) || isnan(question->limit)) {
        (void)write_not_computable(check, question, missing_number(check, question));
        return NULL;
    }
    const double  reserve   = reserve_of(question);
    const bool    passed    = holds(question, reserve);
    ts_judgement *judgement = write_judgement(check, question, passed);
    if (judgement == NULL)
        return NULL;
    judgement->margin = reserve;
    note_reserve(check, question, reserve);
    return passed ? NULL : write_finding(check, question, judgement, TS_OPEN);
}

ts_finding *ts_judge_fact(ts_check *check, ts_node object, int32_t condition, bool so)
{
    if (check->desk->failed)
        return NULL;
    const ts_question   question  = ts_question_about(check, object, condition);
    const ts_judgement *judgement = write_judgement(check, &question, so);
    if (judgement == NULL || so)
        return NULL;
    return write_finding(check, &question, judgement, TS_OPEN);
}

ts_finding *ts_not_computable(ts_check *check, ts_node object, int32_t condition, const char *what,
                              ...)
{
    if (check->desk->failed)
        return NULL;
    va_list parts;
    va_start(parts, what);
    const char *phrase = ts_phrase_list(check, what, parts);
    va_end(parts);
    const ts_question question = ts_question_about(check, object, condition);
    return write_not_computable(check, &question, phrase);
}

void ts_skip(ts_check *check, const char *why)
{
    ts_rule_outcome *result = check->desk->result;
    if (result->judged == 0 && result->skipped == NULL)
        result->skipped = why;
}

static void note_limit(const ts_check *check, const ts_measure *limit, const char *symbol,
                       ts_kind kind)
{
    const ts_unit *unit = ts_kind_si(kind);
    const char    *name = unit != NULL ? unit->name : "1";
    ts_workings_about(check->workings, 0, TS_EVERY_CONDITION);
    if (limit->standing == TS_GIVEN)
        ts_workings_given(check->workings, symbol, limit->value, name, limit->node);
    else
        ts_workings_assumed(check->workings, symbol, limit->value, name,
                            "the default of this limit; see the register of assumptions");
}

bool ts_limit_known(ts_check *check, const ts_measure *limit, const char *key, const char *symbol,
                    ts_kind kind)
{
    if (!ts_measure_known(*limit)) {
        (void)ts_not_computable(check, limit->node, TS_EVERY_CONDITION, "`%s`", key);
        return false;
    }
    if (check->workings != NULL)
        note_limit(check, limit, symbol, kind);
    return true;
}

void ts_borrow_in(const ts_check *check, ts_subject about, ts_input input, ts_node lender,
                  const char *symbol)
{
    const bool own = about.object == lender && strcmp(input.name, symbol) == 0;
    ts_workings_about(check->workings, about.object, about.condition);
    if (!own)
        ts_workings_borrow(check->workings, input.name, input.value,
                           (ts_subject){lender, about.condition}, symbol);
}

void ts_borrow(const ts_check *check, ts_node about, ts_input input, ts_node lender,
               const char *symbol)
{
    ts_borrow_in(check, (ts_subject){about, TS_EVERY_CONDITION}, input, lender, symbol);
}
