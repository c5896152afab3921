/* check/rule/shaft_whirl.c: does every shaft run below its first critical speed? */
#include "check/rule.h"

static const ts_formula ratio_formula = {
    .symbol  = "whirl_ratio",
    .meaning = "first forward critical speed over the highest speed of the shaft",
    .unit    = "1",
    .text    = "n_critical/n_highest",
    .source  = "common practice, no source",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_whirl_ratio",
    .meaning = "reserve of the first critical speed",
    .unit    = "1",
    .text    = "whirl_ratio/whirl_margin - 1",
    .source  = "reserve = capacity / demand - 1",
};

static const char *what(ts_check *check, const ts_whirl_item *item)
{
    if (!item->radial)
        return "in its bearings";
    return isnan(item->mid) ? "without a mid bearing"
                            : ts_phrase(check, "with its mid bearing %s from the spool's apex",
                                        ts_shown(check, item->mid, TS_KIND_LENGTH));
}

static void advise(ts_check *check, ts_finding *finding, const ts_whirl_item *item)
{
    if (!item->radial)
        ts_remedy(check, finding, "stiffen its bearings, bring them together, or make it thicker");
    else if (isnan(item->mid))
        ts_remedy(check, finding,
                  "make it thicker, shorten it or give it a mid bearing: `whirl` shows what is "
                  "allowed; or damp it and prove that");
    else
        ts_remedy(
            check, finding,
            "make it thicker, or move its mid bearing: `whirl` shows what is allowed; or damp "
            "it and prove that");
}

static void judge(ts_check *check, const ts_whirl_item *item, double margin)
{
    /* What is missing, or cannot be built, is asked for by the rules about shafts, once, and named
     * by `whirl`; what never whirls holds. */
    if (item->missing != NULL || item->fault != NULL || !(item->top > 0.0) ||
        !isfinite(item->forward))
        return;
    const double n_critical = item->forward, n_highest = item->top;
    ts_workings_about(check->workings, item->node, TS_EVERY_CONDITION);
    ts_workings_assumed(check->workings, "n_highest", n_highest, "rad/s",
                        "the highest speed of all conditions");
    ts_question question = ts_question_about(check, item->node, TS_EVERY_CONDITION);
    question.value =
        TS_STEP(check->workings, ratio_formula, n_critical / n_highest, n_critical, n_highest);
    question.limit        = margin;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "whirl_ratio";
    question.limit_symbol = "whirl_margin";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s %s whirls first at %s, %s of the %s that it turns with at %s",
            item->name, what(check, item), ts_shown(check, item->forward, TS_KIND_ROTATIONAL_SPEED),
            ts_shown(check, question.value, TS_KIND_NUMBER),
            ts_shown(check, item->top, TS_KIND_ROTATIONAL_SPEED),
            ts_condition_name(check, item->top_at));
    advise(check, finding, item);
}

static void run(ts_check *check)
{
    const ts_measure *margin = &check->drive->limits.whirl_margin;

    if (check->whirls != NULL &&
        !ts_limit_known(check, margin, "whirl margin", "whirl_margin", TS_KIND_NUMBER))
        return;
    for (uint32_t i = 0; check->whirls != NULL && i < check->whirls->count; i++)
        judge(check, &check->whirls->items[i], margin->value);
    ts_skip(check, check->whirls == NULL ? "critical speeds were not computed"
                                         : "no shaft has a critical speed");
}

const ts_rule ts_rule_shaft_whirl = {
    .id       = "F2-shaft-whirl",
    .title    = "Whirl of the shafts",
    .question = "Is the first forward critical speed of every shaft far enough above its highest "
                "speed?",
    .why = "A long thin shaft that turns at its critical speed is bent by its own unbalance until "
           "splines and bearings bear it; the radial shaft is the fastest and longest of a drive.",
    .level  = TS_WARN,
    .source = "common practice, no source: 1.2 to 1.3 times the highest speed; critical speeds by "
              "beam elements, H. Nelson, J. Mechanical Design 102 (1980), 793 (from memory)",
    .hint   = "make it thicker or shorter, or give it a mid bearing",
    .run    = run,
};
