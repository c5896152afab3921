/* check/rule/root_interference.c: does the tip of one gear dig into the fillet of the other? */
#include "check/nearest_pair.h"
#include "check/visit.h"
#include "element/undercut_reach.h"

#include <math.h>

/* How far the mate keeps from the end of the involute of one gear, or from that of its undercut. */
typedef struct room {
    double      value; /* m along the path of contact; NaN: there is no such end */
    const char *symbol;
    bool        undercut;
} room;

static room room_of(ts_check *check, uint32_t m, int gear)
{
    const ts_cylindrical_pair *pair = &check->motion->meshes[m].pair;
    const double               rho  = gear == 0 ? pair->rho_Ff1 : pair->rho_Ff2;

    if (!(rho < 0.0))
        return (room){gear == 0 ? pair->clear_Ff1 : pair->clear_Ff2,
                      gear == 0 ? "clear_Ff1" : "clear_Ff2", false};
    ts_workings_about(check->workings, check->train->meshes[m].node, TS_EVERY_CONDITION);
    return (room){ts_undercut_room(pair, gear, check->workings),
                  gear == 0 ? "clear_u1" : "clear_u2", true};
}

static void complain(ts_check *check, uint32_t m, bool first, const room *tighter,
                     ts_finding *finding)
{
    const ts_mesh *mesh = &check->train->meshes[m];
    const char *root = check->train->shafts[first ? mesh->driver_shaft : mesh->driven_shaft].name;
    const char *tip  = check->train->shafts[first ? mesh->driven_shaft : mesh->driver_shaft].name;
    const char *by   = ts_shown(check, -tighter->value, TS_KIND_LENGTH);

    if (tighter->undercut)
        ts_says(check, finding,
                "undercut takes away the flank of %s on which the tips of %s begin contact: the "
                "involute is left whole %s further along the path of contact",
                root, tip, by);
    else
        ts_says(check, finding,
                "the tips of %s reach the fillets of %s: contact would begin %s before the "
                "involute does, along the path of contact",
                tip, root, by);
}

/* Gear 1's root, reached by the tip of gear 2, or the other way about: the tighter one. */
static void judge(ts_check *check, uint32_t m)
{
    const room  one = room_of(check, m, 0), two = room_of(check, m, 1);
    const bool  first   = !(two.value < one.value);
    const room *tighter = first ? &one : &two;
    ts_question question =
        ts_question_about(check, check->train->meshes[m].node, TS_EVERY_CONDITION);

    if (isnan(one.value) || isnan(two.value)) {
        (void)ts_not_computable(check, question.object, question.condition,
                                "where the involute begins in %s", ts_mesh_name(check, m));
        return;
    }
    question.value      = tighter->value;
    question.limit      = 0.0;
    question.bound      = TS_AT_LEAST;
    question.kind       = TS_KIND_LENGTH;
    question.symbol     = tighter->symbol;
    ts_finding *finding = ts_judge(check, &question);
    if (finding == NULL)
        return;
    complain(check, m, first, tighter, finding);
    const char *remedy =
        ts_pair_remedy(check, m, first ? 0 : 1, first ? TS_FLAW_ROOT_1 : TS_FLAW_ROOT_2);
    if (remedy != NULL)
        ts_remedy(check, finding, "%s", remedy);
}

static void run(ts_check *check)
{
    for (uint32_t m = 0; m < check->train->mesh_count; m++)
        if (check->train->meshes[m].kind == TS_MESH_CYLINDRICAL && check->motion->meshes[m].solved)
            judge(check, m);
    ts_skip(check, "no cylindrical mesh has a geometry");
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
