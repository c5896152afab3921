/* check/rule/bevel_contact_ratio.c: do the next teeth of bevels take over before the last let go?
 */
#include "check/nearest_bevel.h"
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_eps_vgamma",
    .meaning = "reserve of the modified contact ratio",
    .unit    = "1",
    .text    = "eps_vgamma/eps_alpha_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void judge(ts_check *check, uint32_t mesh, double least)
{
    const ts_mesh_motion *motion = &check->motion->meshes[mesh];
    ts_question           question =
        ts_question_about(check, check->train->meshes[mesh].node, TS_EVERY_CONDITION);
    question.value        = motion->virt.eps_vgamma;
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "eps_vgamma";
    question.limit_symbol = "eps_alpha_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the modified contact ratio of %s is %s, less than %s: %s by the profile and %s by "
            "the spiral",
            ts_mesh_name(check, mesh), ts_shown_apart(check, question.value, least, TS_KIND_NUMBER),
            ts_shown(check, least, TS_KIND_NUMBER),
            ts_shown(check, motion->virt.eps_valpha, TS_KIND_NUMBER),
            ts_shown(check, motion->virt.eps_vbeta, TS_KIND_NUMBER));
    const char *remedy = ts_bevel_remedy(check, mesh, TS_BEVEL_FLAW_LETS_GO);
    if (remedy != NULL)
        ts_remedy(check, finding, "%s", remedy);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.contact_ratio;
    if (!ts_limit_known(check, limit, "contact ratio", "eps_alpha_least", TS_KIND_NUMBER))
        return;
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        if (ts_has_bevel_teeth(check, m))
            judge(check, m, limit->value);
    ts_skip(check, "no bevel pair has teeth");
}

const ts_rule ts_rule_bevel_contact_ratio = {
    .id    = "C1-bevel-contact-ratio",
    .title = "Contact ratio of bevels",
    .question =
        "Is the contact ratio of every bevel pair large enough, profile and spiral together?",
    .why    = "Near 1 a pair of teeth lets go before the next has taken over; at the speed of "
              "bevels that is noise first and broken teeth later.",
    .level  = TS_REFUSE,
    .source = "ISO 10300-1:2014, annex A (modified contact ratio, from memory); the limit: common "
              "practice, no source",
    .hint   = "use more teeth, more spiral, a smaller pressure angle or a larger addendum",
    .run    = run,
};
