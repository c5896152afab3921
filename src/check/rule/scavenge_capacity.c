/* check/rule/scavenge_capacity.c: do scavenge elements of told widths take oil and air away? */
#include "check/visit.h"

/* Are all elements of the sump as wide as was computed here? */
static bool is_sized(const ts_pack *pack, const ts_sump *sump)
{
    for (uint32_t e = 1; e < pack->element_count; e++)
        if (pack->elements[e].sump == sump && pack->elements[e].given)
            return false;
    return true;
}

static bool is_slipping(const ts_pack *pack, const ts_sump *sump)
{
    for (uint32_t e = 1; e < pack->element_count; e++)
        if (pack->elements[e].sump == sump && isnan(pack->elements[e].V_g))
            return true;
    return false;
}

/* Over all elements of the sump, covered or not, where least. */
static double least_taken(const ts_check *check, const ts_pack *pack, const ts_sump *sump,
                          int32_t *at)
{
    double least = (double)INFINITY;

    *at = TS_EVERY_CONDITION;
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const double oil  = sump->share.value * pack->states[c].Q;
        double       able = 0.0;
        if (!ts_condition_lasts(&check->drive->conditions[c]) || !(oil > 0.0))
            continue;
        for (uint32_t e = 1; e < pack->element_count; e++)
            if (pack->elements[e].sump == sump)
                able += pack->cases[(size_t)c * TS_PACK_ELEMENTS + e].able;
        if (able / oil < least) {
            least = able / oil;
            *at   = (int32_t)c;
        }
    }
    return least;
}

static void judge_sump(ts_check *check, const ts_pack *pack, const ts_sump *sump)
{
    int32_t      at    = TS_EVERY_CONDITION;
    const double taken = least_taken(check, pack, sump, &at);

    if (is_slipping(pack, sump)) {
        (void)ts_not_computable(check, sump->node, TS_EVERY_CONDITION,
                                "a scavenge element from which not all slips back");
        return;
    }
    if (is_sized(pack, sump)) {
        (void)ts_judge_fact(check, sump->node, TS_EVERY_CONDITION, true);
        return;
    }
    ts_question question = ts_question_about(check, sump->node, at);
    question.value       = taken;
    question.limit       = sump->ratio.value;
    question.bound       = TS_AT_LEAST;
    question.kind        = TS_KIND_NUMBER;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the scavenge elements of the sump %s take %s times the oil that comes to it at %s, "
            "and oil and air are %s times as much",
            sump->name, ts_shown(check, taken, TS_KIND_NUMBER), ts_condition_name(check, at),
            ts_shown(check, sump->ratio.value, TS_KIND_NUMBER));
    ts_remedy(check, finding, "make them %s times as wide, or tell no `width` and have them sized",
              ts_shown_outward(check, sump->ratio.value / taken, TS_KIND_NUMBER, +1));
}

static void judge(ts_check *check, const ts_pack *pack)
{
    for (size_t i = 0; i < pack->told->sump_count; i++)
        judge_sump(check, pack, &pack->told->sumps[i]);
}

static void run(ts_check *check)
{
    ts_visit_packs(check, judge);
}

const ts_rule ts_rule_scavenge_capacity = {
    .id       = "J3-scavenge-capacity",
    .title    = "Scavenge capacity",
    .question = "Do the scavenge elements of every sump take the oil that comes to it and the air "
                "with it, in every condition that lasts?",
    .why   = "Oil that is not taken away floods the sump, gears churn in it, and it leaves through "
             "seals and breather.",
    .level = TS_WARN,
    .source = "common practice, no source; volumetric efficiency by Wilson (from memory)",
    .hint   = "widen the scavenge elements",
    .run    = run,
};
