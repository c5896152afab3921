/* check/rule/backlash.c: is play left between the flanks, whatever the makers and the heat do? */
#include "check/visit.h"

static const ts_formula reserve_formulas[2] = {
    {.symbol  = "reserve_j_bn",
     .meaning = "reserve of the least backlash as built",
     .unit    = "1",
     .text    = "j_bnmin/j_bn_least - 1",
     .source  = "reserve = capacity / demand - 1"},
    {.symbol  = "reserve_j_bn",
     .meaning = "reserve of the least backlash at any temperature of the file",
     .unit    = "1",
     .text    = "j_bnlow/j_bn_least - 1",
     .source  = "reserve = capacity / demand - 1"},
};

/* By how much the teeth of each gear must become thinner, so that both give what lacks. */
static double thinner_by(const ts_mesh_motion *turn, double lacking, bool warm)
{
    return lacking / (2.0 * cos(turn->pair.in.alpha_n) * (warm ? turn->backlash.shrink : 1.0));
}

static void say(ts_check *check, ts_finding *finding, uint32_t m, double j, bool warm)
{
    const double      least = check->drive->limits.backlash.value;
    const char *const when  = warm ? "at a temperature that it meets" : "as built";
    if (j > 0.0)
        ts_says(check, finding, "the backlash of %s may be as little as %s %s, less than %s",
                ts_mesh_name(check, m), ts_shown_apart(check, j, least, TS_KIND_LENGTH), when,
                ts_shown(check, least, TS_KIND_LENGTH));
    else
        ts_says(check, finding, "the backlash of %s may close %s: its teeth would overlap by %s",
                ts_mesh_name(check, m), when, ts_shown(check, -j, TS_KIND_LENGTH));
}

static void judge(ts_check *check, uint32_t m, double least)
{
    const ts_mesh        *mesh = &check->train->meshes[m];
    const ts_mesh_motion *turn = &check->motion->meshes[m];
    if (turn->backlash_missing != NULL) {
        ts_not_computable(check, mesh->node, TS_EVERY_CONDITION, "%s of %s", turn->backlash_missing,
                          ts_mesh_name(check, m));
        return;
    }
    const double built    = turn->backlash.j_bn[TS_BACKLASH_MIN];
    const double running  = turn->backlash.j_bn[TS_BACKLASH_LOW];
    const bool   warm     = running < built;
    ts_question  question = ts_question_about(check, mesh->node, TS_EVERY_CONDITION);
    question.value        = warm ? running : built;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = warm ? "j_bnlow" : "j_bnmin";
    question.limit_symbol = "j_bn_least";
    question.reserve      = &reserve_formulas[warm ? 1 : 0];
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    say(check, finding, m, question.value, warm);
    const ts_span *thickness = &check->train->gears[mesh->driver].system->thickness;
    const double   thinner   = thinner_by(turn, least - question.value, warm);
    ts_remedy(check, finding,
              "move the tooth thickness allowance of both gears down by %s, to %s at its upper end",
              ts_shown_outward(check, thinner, TS_KIND_LENGTH, 1),
              ts_shown_outward(check, thickness->high - thinner, TS_KIND_LENGTH, -1));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.backlash;
    if (!ts_limit_known(check, limit, "backlash", "j_bn_least", TS_KIND_LENGTH))
        return;
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        if (check->train->meshes[m].kind == TS_MESH_CYLINDRICAL && check->motion->meshes[m].solved)
            judge(check, m, limit->value);
    ts_skip(check, "no cylindrical mesh has a geometry");
}

const ts_rule ts_rule_backlash = {
    .id       = "E10-backlash",
    .title    = "Backlash",
    .question = "Is play left between the flanks of every cylindrical mesh, at the worst of its "
                "allowances and temperatures?",
    .why      = "Teeth that bind bend their shafts, squeeze the oil out and seize; a light casing "
                "that is colder than its steel gears draws them together.",
    .level    = TS_REFUSE,
    .source   = "ISO 21771:2007 and ISO/TR 10064-2:1996 (from memory); the limit: common practice, "
                "no source",
    .hint     = "thin the teeth, or move the axes apart",
    .run      = run,
};
