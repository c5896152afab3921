/* check/rule/undercut.c: does the cutter take away part of the involute? */
#include "check/envelope.h"
#include "check/visit.h"

/* The least number of teeth free of undercut at the shift that the gear has, from the least shift
 * at the teeth that it has: both lie on z = 2*(h - x)*cos(beta)/sin(alpha_t)^2. */
static const ts_formula least_formula = {
    .symbol  = "z_min",
    .meaning = "least number of teeth without undercut at this profile shift",
    .unit    = "1",
    .text    = "z + 2*(x_min - x)*cos(beta)/sin(alpha_t)^2",
    .source  = "ISO 21771:2007 (undercut limit), solved for z",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_z_min",
    .meaning = "reserve of the number of teeth against undercut",
    .unit    = "1",
    .text    = "z/z_min - 1",
    .source  = "reserve = capacity / demand - 1",
};

static double least_teeth(const ts_check *check, const ts_gear *gear,
                          const ts_gear_geometry *geometry)
{
    const double z = (double)gear->teeth.value, x = geometry->x, x_min = geometry->x_min;
    const double beta    = gear->beta.value;
    const double alpha_t = check->motion->meshes[geometry->mesh].pair.alpha_t;
    ts_workings_about(check->workings, gear->node, TS_EVERY_CONDITION);
    const struct {
        ts_input          input;
        const char *const names[2];
    } parts[] = {
        {{"z", z}, {"z_1", "z_2"}},
        {{"x", x}, {"x_1", "x_2"}},
        {{"x_min", x_min}, {"x_min1", "x_min2"}},
        {{"beta", beta}, {"beta", "beta"}},
        {{"alpha_t", alpha_t}, {"alpha_t", "alpha_t"}},
    };
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
        ts_borrow_of_gear(check, gear->node, geometry, parts[i].input, parts[i].names);
    const double s = sin(alpha_t);
    return TS_STEP(check->workings, least_formula, z + 2.0 * (x_min - x) * cos(beta) / (s * s), z,
                   x_min, x, beta, alpha_t);
}

static void judge_gear(ts_check *check, uint32_t index, const ts_gear_geometry *geometry)
{
    const ts_gear *gear     = &check->train->gears[index];
    ts_question    question = ts_question_about(check, gear->node, TS_EVERY_CONDITION);
    question.value          = (double)gear->teeth.value;
    question.limit          = least_teeth(check, gear, geometry);
    question.bound          = TS_AT_LEAST;
    question.kind           = TS_KIND_NUMBER;
    question.symbol         = "z";
    question.limit_symbol   = "z_min";
    question.reserve        = &reserve_formula;
    ts_finding *finding     = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the teeth of %s are undercut: %d teeth with a profile shift of %s, where %s teeth are "
            "the exact limit",
            ts_gear_name(check, index), (int)gear->teeth.value,
            ts_shown(check, geometry->x, TS_KIND_NUMBER),
            ts_shown_apart(check, question.limit, question.value, TS_KIND_NUMBER));
    ts_remedy(check, finding, "use at least %d teeth, or a profile shift of at least %s",
              (int)ceil(question.limit),
              ts_shown_outward(check, geometry->x_min, TS_KIND_NUMBER, +1));
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

const ts_rule ts_rule_undercut = {
    .id       = "C2-undercut",
    .title    = "Undercut",
    .question = "Does the rack that cuts it leave every cylindrical tooth its whole involute?",
    .why      = "Undercut takes away the flank near the root: contact ends early, and the root is "
                "thin just where it is bent most.",
    .level    = TS_WARN,
    .source   = "ISO 21771:2007 (undercut limit of a rack-cut gear)",
    .hint     = "use more teeth, or a larger profile shift",
    .run      = run,
};
