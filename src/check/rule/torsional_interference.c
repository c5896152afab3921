/* check/rule/torsional_interference.c: does any drive live near a natural frequency of its torsion
 * that parts its flanks? */
#include "check/visit.h"

static const double two_pi = 6.28318530717958647693;

static const ts_formula share_formula = {
    .symbol  = "parting_share",
    .meaning = "share of its time in which flanks of a drive part near a natural frequency",
    .unit    = "1",
    .text    = "t_parting/t_carrying",
    .source =
        "derived: time in conditions in which a mesh swings by more than it carries, mostly by "
        "what is near a natural frequency, over the time of all",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_parting_share",
    .meaning = "reserve of the time with flanks that part",
    .unit    = "1",
    .text    = "parting_share_most/parting_share - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* A mesh in a condition. */
typedef struct meeting {
    const ts_torque_swing *swing;
    const ts_drive_forced *tree;
    uint32_t               mesh;
    int32_t                condition;
} meeting;

typedef struct stay {
    double  parting, carrying; /* s */
    double  longest;
    meeting worst; /* in the longest condition with parting flanks */
} stay;

/* Flanks part, and sources near natural frequencies do it alone or are the larger part of it. */
static bool parts_by_modes(const ts_torque_swing *here)
{
    const double near = here->near.swing;

    return here->swing > here->mean &&
           (near > here->mean || near * near > here->swing * here->swing / 2.0);
}

/* That which such sources swing most over its mean; its swing is NULL where none parts by them. */
static meeting worst_of(const ts_drive_forced *tree, uint32_t c)
{
    meeting out = {NULL, tree, TS_NOWHERE, (int32_t)c};

    for (size_t i = 0; i < tree->twist->model.spring_count; i++) {
        const ts_torque_swing *here = ts_forced_spring(tree, c, i);
        if (tree->twist->joints[i].link != TS_LINK_MESH || !(here->mean > 0.0) ||
            !parts_by_modes(here))
            continue;
        if (out.swing != NULL &&
            here->near.swing / here->mean <= out.swing->near.swing / out.swing->mean)
            continue;
        out.swing = here;
        out.mesh  = tree->twist->joints[i].mesh;
    }
    return out;
}

static stay stay_of(const ts_check *check, uint32_t drive)
{
    stay out = {.longest = -1.0};

    for (uint32_t c = 0; c < check->drive->condition_count; c++)
        for (size_t k = 0; k < check->forced_count; k++) {
            const ts_drive_forced *tree = &check->forced[k];
            const double           t    = ts_condition_seconds(&check->drive->conditions[c]);
            if (tree->twist->drive != drive || tree->here == NULL || !tree->here[c] || !(t > 0.0))
                continue;
            const meeting worst = worst_of(tree, c);
            out.carrying += t;
            if (worst.swing == NULL)
                continue;
            out.parting += t;
            if (t > out.longest) {
                out.longest = t;
                out.worst   = worst;
            }
        }
    return out;
}

static const char *cause(ts_check *check, const ts_shake_source *source)
{
    const ts_train *train = check->train;

    if (source->kind == TS_SHAKER_ACCESSORY)
        return ts_phrase(check, "the torque of the %s",
                         check->drive->accessories[source->accessory].name);
    const ts_mesh *mesh = &train->meshes[source->mesh];
    if (source->kind == TS_SHAKER_TEETH)
        return ts_phrase(check, "the teeth of %s with %s", train->shafts[mesh->driver_shaft].name,
                         train->shafts[mesh->driven_shaft].name);
    return ts_phrase(
        check, "the pitch of the gear on %s, once a turn",
        train->shafts[source->side == 0 ? mesh->driver_shaft : mesh->driven_shaft].name);
}

static void say(ts_check *check, ts_finding *finding, double share, const meeting *worst)
{
    ts_says(check, finding,
            "flanks of the %s drive part for %s of its time; most of it at %s, where %s carries %s "
            "and swings by %s, %s of it from what is near natural frequencies, most of all from %s "
            "near mode %d, %s",
            check->drive->spools[check->drive->drive[worst->tree->twist->drive].spool].name,
            ts_shown_percent(check, share), ts_condition_name(check, worst->condition),
            ts_mesh_name(check, worst->mesh), ts_shown(check, worst->swing->mean, TS_KIND_TORQUE),
            ts_shown(check, worst->swing->swing, TS_KIND_TORQUE),
            ts_shown(check, worst->swing->near.swing, TS_KIND_TORQUE),
            cause(check, &worst->swing->near.source),
            (int)(worst->swing->near.mode - worst->tree->twist->modes.rigid + 1),
            ts_shown(check, worst->tree->twist->modes.omega[worst->swing->near.mode] / two_pi,
                     TS_KIND_FREQUENCY));
}

static void judge(ts_check *check, uint32_t drive, double most)
{
    const ts_node node  = check->drive->drive[drive].node;
    const stay    times = stay_of(check, drive);

    if (!(times.carrying > 0.0))
        return;
    const double t_parting = times.parting, t_carrying = times.carrying;
    ts_workings_about(check->workings, node, TS_EVERY_CONDITION);
    ts_workings_assumed(check->workings, "t_parting", t_parting, "s",
                        "the sum of `hours`, or `events` times `lasts`, of conditions in which "
                        "flanks part near a natural frequency (docs/method/torsion.md)");
    ts_workings_assumed(check->workings, "t_carrying", t_carrying, "s",
                        "the same sum of all conditions");
    ts_question question = ts_question_about(check, node, TS_EVERY_CONDITION);
    question.value =
        TS_STEP(check->workings, share_formula, t_parting / t_carrying, t_parting, t_carrying);
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "parting_share";
    question.limit_symbol = "parting_share_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL && times.worst.swing != NULL)
        say(check, finding, question.value, &times.worst);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.time_with_parting;

    if (check->forced != NULL && !ts_limit_known(check, limit, "time with parting flanks",
                                                 "parting_share_most", TS_KIND_NUMBER))
        return;
    for (uint32_t d = 0; check->forced != NULL && d < check->drive->drive_count; d++)
        judge(check, d, limit->value);
    ts_skip(check, check->forced == NULL ? "torsion was not computed"
                                         : "no tree has modes that could be computed");
}

const ts_rule ts_rule_torsional_interference = {
    .id    = "F5-torsional-interference",
    .title = "Torsional interference",
    .question =
        "Does every drive spend little of its time where a natural frequency parts its flanks?",
    .why    = "Where an excitation meets a natural frequency of the train, flanks part and hammer; "
              "a passage is borne, a condition in which the engine lives is not.",
    .level  = TS_NOTE,
    .source = "interference of excitations and natural frequencies, weighted by the time spent: "
              "common practice, no source",
    .hint   = "`draw --figure interference` shows what meets what; move the frequency, or tell the "
              "ripple and the damping that are known",
    .run    = run,
};
