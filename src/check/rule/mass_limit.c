/* check/rule/mass_limit.c: is the drive as light as it was promised? */
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_mass",
    .meaning = "reserve of the mass",
    .unit    = "1",
    .text    = "m_most/m_metal - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* What rims and webs on the gears that are solid would save, and the gear that gives most. */
static double saving_of(const ts_check *check, const char **most_by)
{
    double sum = 0.0, most = 0.0;
    *most_by = NULL;
    for (size_t i = 0; i < check->mass->part_count; i++) {
        const ts_mass_part *part = &check->mass->parts[i];
        if (part->kind != TS_MASS_GEAR || part->missing != NULL)
            continue;
        const double less = part->m.value - part->m.low;
        sum += less;
        if (less > most) {
            most     = less;
            *most_by = part->name;
        }
    }
    return sum;
}

static void remedy(ts_check *check, ts_finding *finding, double excess)
{
    const char  *by     = NULL;
    const double saving = saving_of(check, &by);
    if (by == NULL || !(saving > 0.0)) {
        ts_remedy(check, finding, "take %s out", ts_shown(check, excess, TS_KIND_MASS));
        return;
    }
    ts_remedy(check, finding,
              "take %s out; rims and webs on the gears that are solid would save up to %s, most of "
              "it the gear of %s",
              ts_shown(check, excess, TS_KIND_MASS), ts_shown(check, saving, TS_KIND_MASS), by);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.mass;
    const ts_node     whole = check->drive->node;
    if (limit->standing == TS_ABSENT || check->mass == NULL) {
        ts_skip(check, limit->standing == TS_ABSENT ? "the file sets no limit of mass"
                                                    : "nothing was weighed");
        return;
    }
    if (!ts_limit_known(check, limit, "mass", "m_most", TS_KIND_MASS))
        return;
    for (size_t i = 0; i < check->mass->part_count; i++) {
        const ts_mass_part *part = &check->mass->parts[i];
        if (part->missing == NULL || part->kind == TS_MASS_ACCESSORY)
            continue;
        ts_not_computable(check, whole, TS_EVERY_CONDITION, "%s of %s", part->missing, part->name);
        return;
    }
    const double m_metal = check->mass->metal.value;
    ts_borrow(check, whole, (ts_input){"m_metal", m_metal}, 0, "m_metal");
    ts_question question  = ts_question_about(check, whole, TS_EVERY_CONDITION);
    question.value        = m_metal;
    question.limit        = limit->value;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_MASS;
    question.symbol       = "m_metal";
    question.limit_symbol = "m_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the drive without its accessories weighs %s, between %s and %s by what is assumed; at "
            "most %s is wanted",
            ts_shown_apart(check, m_metal, limit->value, TS_KIND_MASS),
            ts_shown(check, check->mass->metal.low, TS_KIND_MASS),
            ts_shown(check, check->mass->metal.high, TS_KIND_MASS),
            ts_shown(check, limit->value, TS_KIND_MASS));
    remedy(check, finding, m_metal - limit->value);
}

const ts_rule ts_rule_mass_limit = {
    .id       = "E9-mass-limit",
    .title    = "Mass",
    .question = "Does the drive without its accessories weigh no more than is wanted?",
    .why      = "Mass surprises late, when arrangement and teeth are settled.",
    .level    = TS_WARN,
    .source   = "the file's own limit",
    .hint     = "lighten gears and walls, or use fewer or smaller gears",
    .run      = run,
};
