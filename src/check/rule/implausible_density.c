/* check/rule/implausible_density.c: does the mass of an accessory fit the room it takes? */
#include "check/visit.h"
#include "motion/value_note.h"

/* kg/m3 of the cylinder that holds the body: a hollow casting, and more than solid copper. */
#define DENSITY_LEAST 300.0
#define DENSITY_MOST  9000.0

static const ts_formula density_formula = {
    .symbol  = "rho_body",
    .meaning = "mass over the volume of the cylinder that holds the body",
    .unit    = "kg/m3",
    .text    = "m/(pi*R^2*length)",
    .source  = "derived: volume of a cylinder",
};

static void judge_density(ts_check *check, const ts_accessory *accessory)
{
    const double m = accessory->mass.value, R = accessory->body.radius.value;
    const double length = accessory->body.length.value;
    ts_workings_about(check->workings, accessory->node, TS_EVERY_CONDITION);
    TS_NOTE_MEASURE(check->workings, check->drive, "m", accessory->mass, "kg", "mass");
    TS_NOTE_MEASURE(check->workings, check->drive, "R", accessory->body.radius, "m", "radius");
    TS_NOTE_MEASURE(check->workings, check->drive, "length", accessory->body.length, "m", "length");
    const double pi = 3.14159265358979323846;
    const double density =
        TS_STEP(check->workings, density_formula, m / (pi * (R * R) * length), m, R, length);
    const bool  light    = density < 1500.0;
    ts_question question = ts_question_about(check, accessory->node, TS_EVERY_CONDITION);
    question.value       = density;
    question.limit       = light ? DENSITY_LEAST : DENSITY_MOST;
    question.bound       = light ? TS_AT_LEAST : TS_AT_MOST;
    question.kind        = TS_KIND_DENSITY;
    question.symbol      = "rho_body";
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "%s, %s in a body of %s radius and %s length, is %s than anything of its kind (%s)",
            accessory->name, ts_shown(check, m, TS_KIND_MASS), ts_shown(check, R, TS_KIND_LENGTH),
            ts_shown(check, length, TS_KIND_LENGTH), light ? "lighter" : "heavier",
            ts_shown(check, density, TS_KIND_DENSITY));
}

static void run(ts_check *check)
{
    for (size_t i = 0; i < check->drive->accessory_count; i++) {
        const ts_accessory *accessory = &check->drive->accessories[i];
        if (ts_measure_known(accessory->mass) && ts_measure_known(accessory->body.radius) &&
            ts_measure_known(accessory->body.length))
            judge_density(check, accessory);
    }
    ts_skip(check, "no accessory states its mass and its body");
}

const ts_rule ts_rule_implausible_density = {
    .id       = "A3-implausible-density",
    .title    = "Implausible density",
    .question = "Is every accessory between 300 and 9,000 kg/m3 of the cylinder that holds it?",
    .why      = "A mass in pounds or a diameter for a radius shows here first, and both end in the "
                "mass statement and the clash test.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "look at the mass, and whether the body is given by its radius",
    .run      = run,
};
