/* check/rule/bevel_undercut.c: does the cutter take away part of the flank of a bevel? */
#include "check/visit.h"

#include "element/bevel_step.h"

#define CLEAR_TEXT(I, M)      "x_hm" I " - max(x_hmmin_m" I ", x_hmmin_i" I ")"
#define CLEAR_MEAN_TEXT(I, M) "x_hm" I " - x_hmmin_m" I
#define ISO_23509             "ISO 23509:2016, clause 7 (from memory)"

static const ts_formula clear_formulas[2] =
    TS_BEVEL_BOTH("clear_undercut", "profile shift over the least one without undercut", "1",
                  CLEAR_TEXT, ISO_23509);
static const ts_formula clear_mean_formulas[2] = TS_BEVEL_BOTH(
    "clear_undercut", "the same, of the mean section alone", "1", CLEAR_MEAN_TEXT, ISO_23509);
static const char *const symbols[2] = {"clear_undercut1", "clear_undercut2"};

/* Without a cutter the inner end of spiral teeth is not known, and the mean section decides. */
static double clear_of(const ts_check *check, const ts_mesh_motion *motion, int gear)
{
    const ts_bevel_spiral *ends  = &motion->ends;
    const double           mean  = gear == 0 ? ends->x_hmmin_m1 : ends->x_hmmin_m2;
    const double           inner = gear == 0 ? ends->x_hmmin_i1 : ends->x_hmmin_i2;
    const double           x_hm  = motion->teeth.x_hm[gear];

    if (isnan(inner))
        return TS_BEVEL_STEP(check->workings, clear_mean_formulas, x_hm - mean,
                             TS_BEVEL_SELF("x_hm", x_hm), TS_BEVEL_SELF("x_hmmin_m", mean));
    return TS_BEVEL_STEP(check->workings, clear_formulas, x_hm - fmax(mean, inner),
                         TS_BEVEL_SELF("x_hm", x_hm), TS_BEVEL_SELF("x_hmmin_m", mean),
                         TS_BEVEL_SELF("x_hmmin_i", inner));
}

static void judge(ts_check *check, uint32_t mesh, int gear)
{
    const ts_mesh        *record = &check->train->meshes[mesh];
    const ts_mesh_motion *motion = &check->motion->meshes[mesh];
    const uint32_t        shaft  = gear == 0 ? record->driver_shaft : record->driven_shaft;
    ts_workings_about(check->workings, record->node, TS_EVERY_CONDITION);
    ts_question question = ts_question_about(check, record->node, TS_EVERY_CONDITION);
    question.value       = clear_of(check, motion, gear);
    question.limit       = 0.0;
    question.bound       = TS_AT_LEAST;
    question.kind        = TS_KIND_NUMBER;
    question.symbol      = symbols[gear];
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    const double x_hm = motion->teeth.x_hm[gear], least = x_hm - question.value;
    ts_says(check, finding,
            "the bevel of %s is undercut: its profile shift is %s, where %s is the least",
            check->train->shafts[shaft].name, ts_shown_apart(check, x_hm, least, TS_KIND_NUMBER),
            ts_shown(check, least, TS_KIND_NUMBER));
    ts_remedy(
        check, finding, "use more teeth, or a `profile shift` of %s %s",
        gear == 0 ? "at least" : "at most",
        ts_shown_outward(check, gear == 0 ? least : -least, TS_KIND_NUMBER, gear == 0 ? +1 : -1));
}

static void run(ts_check *check)
{
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        for (int gear = 0; gear < 2 && ts_has_bevel_teeth(check, m); gear++)
            judge(check, m, gear);
    ts_skip(check, "no bevel pair has teeth");
}

const ts_rule ts_rule_bevel_undercut = {
    .id       = "C2-bevel-undercut",
    .title    = "Undercut of bevels",
    .question = "Does the crown gear that cuts it leave every bevel tooth its whole flank?",
    .why   = "Undercut takes away the flank near the root, first at the inner end, and the root is "
             "thin just where it is bent most.",
    .level = TS_WARN,
    .source = "ISO 23509:2016, clause 7 (from memory)",
    .hint   = "use more teeth, more profile shift or a larger pressure angle",
    .run    = run,
};
