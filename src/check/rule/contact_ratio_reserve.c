/* check/rule/contact_ratio_reserve.c: which meshes run with little overlap of their teeth? */
#include "check/visit.h"

#define EPS_ALPHA_WANTED 1.4

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.contact_ratio;
    for (uint32_t i = 0; i < check->train->mesh_count; i++) {
        const ts_mesh        *mesh   = &check->train->meshes[i];
        const ts_mesh_motion *motion = &check->motion->meshes[i];
        /* Below the hard limit C1-contact-ratio speaks, and once is enough. */
        if (mesh->kind != TS_MESH_CYLINDRICAL || !motion->solved ||
            (ts_measure_known(*limit) && motion->pair.eps_alpha < limit->value))
            continue;
        ts_question question = ts_question_about(check, mesh->node, TS_EVERY_CONDITION);
        question.value       = motion->pair.eps_alpha;
        question.limit       = EPS_ALPHA_WANTED;
        question.bound       = TS_AT_LEAST;
        question.kind        = TS_KIND_NUMBER;
        question.symbol      = "eps_alpha";
        ts_finding *finding  = ts_judge(check, &question);
        if (finding != NULL)
            ts_says(check, finding,
                    "the transverse contact ratio of %s is %s, where 1.4 is preferred",
                    ts_mesh_name(check, i),
                    ts_shown_apart(check, question.value, EPS_ALPHA_WANTED, TS_KIND_NUMBER));
    }
    ts_skip(check, "no cylindrical mesh reaches the least contact ratio");
}

const ts_rule ts_rule_contact_ratio_reserve = {
    .id       = "C1-contact-ratio-reserve",
    .title    = "Preferred contact ratio",
    .question = "Is the transverse contact ratio of every cylindrical mesh at least 1.4?",
    .why      = "Between the limit and 1.4 a mesh runs, and is louder and more sensitive to centre "
                "distance and tip relief than it need be.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "use more teeth, a smaller pressure angle or less profile shift",
    .run      = run,
};
