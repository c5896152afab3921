/* check/rule/breather_droplets.c: are drops thrown out of the air that leaves? */
#include "check/rule.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_d_cut",
    .meaning = "reserve of the drop that passes",
    .unit    = "1",
    .text    = "d_most/d_cut - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* The condition that lasts in which the largest drop passes. */
static uint32_t worst(const ts_check *check, const ts_breather *breather)
{
    uint32_t at = TS_NOWHERE;

    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        if (ts_condition_lasts(&check->drive->conditions[c]) &&
            (at == TS_NOWHERE || breather->cases[c].d_cut > breather->cases[at].d_cut))
            at = c;
    return at;
}

static void judge(ts_check *check, const ts_breather *breather)
{
    const ts_node  node = breather->told->node;
    const uint32_t c    = worst(check, breather);
    const char    *name = check->drive->accessories[breather->accessory].name;

    if (c == TS_NOWHERE || !ts_measure_known(breather->told->droplet)) {
        (void)ts_not_computable(check, node, TS_EVERY_CONDITION, "%s",
                                c == TS_NOWHERE ? "a condition that lasts (`hours`)"
                                                : "the smallest drop that must be thrown out");
        return;
    }
    const double d_most = breather->told->droplet.value, d_cut = breather->cases[c].d_cut;
    ts_question  question = ts_question_about(check, node, (int32_t)c);
    ts_workings_about(check->workings, node, (int32_t)c);
    ts_workings_assumed(check->workings, "d_most", d_most, "m",
                        "`droplet` of the separator, or its default");
    question.value        = d_cut;
    question.limit        = d_most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = isfinite(d_cut) ? "d_cut" : NULL;
    question.limit_symbol = isfinite(d_cut) ? "d_most" : NULL;
    question.reserve      = d_cut > 0.0 && isfinite(d_cut) ? &reserve_formula : NULL;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    if (!isfinite(d_cut)) {
        ts_says(check, finding, "%s stands still at %s and throws no drop out", name,
                ts_condition_name(check, (int32_t)c));
        return;
    }
    ts_says(check, finding, "%s lets drops of up to %s um pass at %s, larger than %s um", name,
            ts_shown(check, d_cut * 1e6, TS_KIND_NUMBER), ts_condition_name(check, (int32_t)c),
            ts_shown(check, d_most * 1e6, TS_KIND_NUMBER));
    ts_remedy(check, finding,
              "make its rotor %s times as long, let it out less air, or turn it %s "
              "times as fast",
              ts_shown_outward(check, d_cut * d_cut / (d_most * d_most), TS_KIND_NUMBER, +1),
              ts_shown_outward(check, d_cut / d_most, TS_KIND_NUMBER, +1));
}

static void run(ts_check *check)
{
    const ts_oil_units *units = &check->power->units;

    for (uint32_t i = 0; i < units->breather_count; i++)
        if (units->breathers[i].missing == NULL)
            judge(check, &units->breathers[i]);
    ts_skip(check, "no accessory tells its `separator`, or not enough of it");
}

const ts_rule ts_rule_breather_droplets = {
    .id    = "J4-breather-droplets",
    .title = "Drops through the breather",
    .question =
        "Does the breather throw out the drops that it must, in every condition that lasts?",
    .why   = "Oil that leaves with the air is lost, and a tank that was full at the start is empty "
             "at the end.",
    .level = TS_WARN,
    .source = "derived: Stokes drag against the swirl; common practice, no source",
    .hint   = "a longer or faster rotor, or less air",
    .run    = run,
};
