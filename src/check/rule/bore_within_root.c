/* check/rule/bore_within_root.c: does the bore of a gear leave metal under its teeth? */
#include "check/envelope.h"
#include "check/visit.h"

#include "motion/value_note.h"

static const ts_formula within_formula = {
    .symbol  = "d_within",
    .meaning = "diameter inside the rim, or of the roots of a gear without one",
    .unit    = "m",
    .text    = "d_f - 2*s_R",
    .source  = "derived: the rim lies below the roots",
};

static ts_measure bore_of(const ts_check *check, const ts_gear *gear)
{
    const ts_box_shaft *record = check->train->shafts[gear->shaft].record;

    return record != NULL ? record->bore : (ts_measure){(double)NAN, 0, TS_ABSENT};
}

static double within(ts_check *check, const ts_gear *gear, const ts_gear_geometry *geometry)
{
    const ts_cylindrical_pair *pair = &check->motion->meshes[geometry->mesh].pair;
    const double               d_f  = geometry->index == 1 ? pair->d_f1 : pair->d_f2;
    const double               s_R  = ts_measure_known(gear->rim) ? gear->rim.value : 0.0;

    ts_borrow_of_gear(check, gear->node, geometry, (ts_input){"d_f", d_f},
                      (const char *const[2]){"d_f1", "d_f2"});
    if (ts_measure_known(gear->rim))
        ts_workings_given(check->workings, "s_R", s_R, "m", gear->rim.node);
    else
        ts_workings_assumed(check->workings, "s_R", s_R, "m", "no rim: solid up to its bore");
    return TS_STEP(check->workings, within_formula, d_f - 2.0 * s_R, d_f, s_R);
}

static void complain(ts_check *check, uint32_t index, double bore, double most, ts_finding *finding)
{
    const ts_gear *gear = &check->train->gears[index];
    const char    *name = ts_gear_name(check, index);

    if (!ts_measure_known(gear->rim)) {
        ts_says(check, finding, "the bore of %s is %s, beyond the roots of its teeth at %s", name,
                ts_shown_apart(check, bore, most, TS_KIND_LENGTH),
                ts_shown(check, most, TS_KIND_LENGTH));
        ts_remedy(check, finding, "use a bore of less than %s",
                  ts_shown_outward(check, most, TS_KIND_LENGTH, -1));
        return;
    }
    const double room = (most - bore) / 2.0 + gear->rim.value;
    ts_says(check, finding,
            "the rim of %s is %s thick, where %s lie between its bore and its roots", name,
            ts_shown_apart(check, gear->rim.value, room, TS_KIND_LENGTH),
            ts_shown(check, room, TS_KIND_LENGTH));
    if (room > 0.0)
        ts_remedy(check, finding, "make the rim %s at most, or leave it away: solid",
                  ts_shown_outward(check, room, TS_KIND_LENGTH, -1));
    else
        ts_remedy(check, finding, "use a bore of less than %s",
                  ts_shown_outward(check, bore + 2.0 * room, TS_KIND_LENGTH, -1));
}

static void judge(ts_check *check, uint32_t index, const ts_gear_geometry *geometry)
{
    const ts_gear   *gear  = &check->train->gears[index];
    const ts_measure given = bore_of(check, gear);
    const double     bore  = ts_measure_known(given) ? given.value : 0.0;

    ts_workings_about(check->workings, gear->node, TS_EVERY_CONDITION);
    if (ts_measure_known(given))
        ts_workings_given(check->workings, "d_bore", bore, "m", given.node);
    else
        ts_workings_assumed(check->workings, "d_bore", bore, "m", "no bore is told");
    ts_question question  = ts_question_about(check, gear->node, TS_EVERY_CONDITION);
    question.value        = bore;
    question.limit        = within(check, gear, geometry);
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "d_bore";
    question.limit_symbol = "d_within";
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        complain(check, index, bore, question.limit, finding);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->gear_count; i++) {
        const ts_gear   *gear = &check->train->gears[i];
        ts_gear_geometry geometry;

        if (gear->role != TS_GEAR_BEVEL &&
            (ts_measure_known(gear->rim) || ts_measure_known(bore_of(check, gear))) &&
            ts_gear_geometry_of(check, i, &geometry))
            judge(check, i, &geometry);
    }
    ts_skip(check, "every cylindrical gear is solid, and no bore is told");
}

const ts_rule ts_rule_bore_within_root = {
    .id       = "C2-bore-within-root",
    .title    = "Bore under the roots",
    .question = "Does the bore of every cylindrical gear leave room for its rim under the roots?",
    .why      = "A bore beyond the roots, or a rim thicker than what is there, is no gear that "
                "anybody can make, and every number about it would be of another one.",
    .level    = TS_REFUSE,
    .source   = "derived: the rim lies between the bore and the root circle",
    .hint     = "use a smaller bore, a thinner rim or more teeth",
    .run      = run,
};
