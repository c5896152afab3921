/* check/rule/power_balance.c: does all power and all torque add up? */
#include "check/visit.h"

#define IMBALANCE_MOST 1e-12

static void judge_balance(ts_check *check, ts_node node, int32_t condition, double imbalance,
                          const char *name)
{
    ts_question question = ts_question_about(check, node, condition);
    if (isnan(imbalance)) {
        ts_not_computable(check, node, condition, "the torque of %s", name);
        return;
    }
    question.value      = imbalance;
    question.limit      = IMBALANCE_MOST;
    question.bound      = TS_AT_MOST;
    question.kind       = TS_KIND_NUMBER;
    question.symbol     = condition >= 0 ? "imbalance" : NULL; /* noted for spools alone */
    ts_finding *finding = ts_judge(check, &question);
    if (finding != NULL)
        ts_says(check, finding, "%s does not add up at %s: a share of %s is missing", name,
                ts_condition_name(check, condition), ts_shown(check, imbalance, TS_KIND_NUMBER));
}

/* Power over the tree of a spool in each condition, and torque at every other shaft in the worst.
 */
static void run(ts_check *check)
{
    const ts_train *train  = check->train;
    const size_t    spools = check->drive->spool_count;
    for (size_t s = 0; s < spools; s++)
        for (uint32_t c = 0; c < check->drive->condition_count; c++)
            judge_balance(check, check->drive->spools[s].node, (int32_t)c,
                          check->power->spool[c * spools + s].imbalance,
                          check->drive->spools[s].name);
    for (uint32_t i = 0; i < train->shaft_count; i++) {
        double worst = 0.0;
        for (uint32_t c = 0; c < check->drive->condition_count; c++) {
            const double here = check->power->shaft_imbalance[c * train->shaft_count + i];
            worst             = isnan(worst) || here <= worst ? worst : here;
        }
        if (train->shafts[i].kind != TS_SHAFT_SPOOL)
            judge_balance(check, train->shafts[i].node, TS_EVERY_CONDITION, worst,
                          train->shafts[i].name);
    }
    ts_skip(check, "the drive has no spool");
}

const ts_rule ts_rule_power_balance = {
    .id       = "M2-power-balance",
    .title    = "Balance of power and torque",
    .question = "Do power and torque add up to 1e-12 at every shaft, in every condition?",
    .why      = "They always must. If they do not, the program is wrong, and so is every number of "
                "this answer.",
    .level    = TS_REFUSE,
    .source   = "derived: conservation of energy and of angular momentum",
    .hint     = "a fault of the program: please report it with this file",
    .run      = run,
};
