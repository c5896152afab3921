/* check/rule/root_interference.c: does the tip of one gear dig into the fillet of the other? */
#include "check/visit.h"

/* Gear 1's root, reached by the tip of gear 2, or the other way about: the tighter one. */
static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->mesh_count; i++) {
        const ts_mesh             *mesh = &check->train->meshes[i];
        const ts_cylindrical_pair *pair = &check->motion->meshes[i].pair;
        if (mesh->kind != TS_MESH_CYLINDRICAL || !check->motion->meshes[i].solved)
            continue;
        /* Undercut has eaten into that involute already, and C2-undercut says so. */
        if (pair->rho_Ff1 < 0.0 || pair->rho_Ff2 < 0.0)
            continue;
        const bool  first    = pair->clear_Ff1 <= pair->clear_Ff2;
        ts_question question = ts_question_about(check, mesh->node, TS_EVERY_CONDITION);
        question.value       = first ? pair->clear_Ff1 : pair->clear_Ff2;
        question.limit       = 0.0;
        question.bound       = TS_AT_LEAST;
        question.kind        = TS_KIND_LENGTH;
        question.symbol      = first ? "clear_Ff1" : "clear_Ff2";
        ts_finding *finding  = ts_judge(check, &question);
        if (finding == NULL)
            continue;
        const char *root =
            check->train->shafts[first ? mesh->driver_shaft : mesh->driven_shaft].name;
        const char *tip =
            check->train->shafts[first ? mesh->driven_shaft : mesh->driver_shaft].name;
        ts_says(check, finding,
                "the tips of %s reach the fillets of %s: contact would begin %s before the "
                "involute does, along the path of contact",
                tip, root, ts_shown(check, -question.value, TS_KIND_LENGTH));
    }
    ts_skip(check, "no cylindrical mesh has a geometry free of undercut");
}

const ts_rule ts_rule_root_interference = {
    .id       = "C2-root-interference",
    .title    = "Interference at the root",
    .question = "Does every tooth meet the involute of its mate, and never the fillet?",
    .why      = "A tip that runs on the fillet digs a groove where the tooth is bent most, from "
                "the first minute.",
    .level    = TS_REFUSE,
    .source   = "ISO 21771:2007 (root form circle and ends of the path of contact)",
    .hint     = "shift the smaller gear positively, or shorten the tips of the larger",
    .run      = run,
};
