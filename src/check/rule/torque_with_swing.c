/* check/rule/torque_with_swing.c: do teeth bear the torque with all that shakes it? */
#include "check/nearest_teeth.h"
#include "check/visit.h"

static const ts_formula peak_formula = {
    .symbol  = "T_peak",
    .meaning = "torque of the driven gear with its swing",
    .unit    = "N.m",
    .text    = "T_mean + T_swing",
    .source  = "derived: the highest of a torque that swings about its mean",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_T_peak",
    .meaning = "reserve of the teeth against the torque with its swing",
    .unit    = "1",
    .text    = "T_wall/T_peak - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* Which of its teeth give way first; NULL: a part of it is not known, or none is. */
static const ts_part_capacity *weakest_of(const ts_check *check, uint32_t mesh)
{
    const ts_part_capacities *parts = &check->select->parts;
    const ts_part_capacity   *weak  = NULL;

    for (size_t i = 0; i < parts->count; i++) {
        const ts_part_capacity *part = &parts->items[i];
        if (part->mesh != mesh || !(part->kind == TS_PART_ROOT || part->kind == TS_PART_FLANK))
            continue;
        if (!(part->T > 0.0))
            return NULL;
        if (weak == NULL || part->T < weak->T)
            weak = part;
    }
    return weak;
}

typedef struct peak {
    const ts_torque_swing *swing;
    int32_t                condition;
} peak;

static peak highest_of(const ts_check *check, uint32_t mesh)
{
    peak out = {NULL, TS_EVERY_CONDITION};

    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_torque_swing *here =
            ts_forced_at_mesh(check->forced, check->forced_count, c, mesh);
        if (here == NULL || !(here->swing > 0.0) || !isfinite(here->mean + here->swing))
            continue;
        if (out.swing == NULL || here->mean + here->swing > out.swing->mean + out.swing->swing)
            out = (peak){here, (int32_t)c};
    }
    return out;
}

static void say(ts_check *check, ts_finding *finding, uint32_t mesh, const peak *high,
                const ts_part_capacity *weak)
{
    const ts_torque_swing *swing = high->swing;

    ts_says(check, finding,
            "a %s of %s gives way at %s, and its torque at %s is %s with a swing of %s%s",
            ts_part_kind_word(weak->kind), ts_mesh_name(check, mesh),
            ts_shown_apart(check, weak->T, swing->mean + swing->swing, TS_KIND_TORQUE),
            ts_condition_name(check, high->condition), ts_shown(check, swing->mean, TS_KIND_TORQUE),
            ts_shown(check, swing->swing, TS_KIND_TORQUE),
            swing->swing > swing->mean ? ", by which flanks part: it is told too high" : "");
    ts_remedy(
        check, finding,
        "`twist` tells what shakes it: make those teeth finer, move the natural frequency, or "
        "tell the damping");
}

static void judge(ts_check *check, uint32_t mesh)
{
    const ts_mesh          *record = &check->train->meshes[mesh];
    const ts_part_capacity *weak   = weakest_of(check, mesh);
    const peak              high   = highest_of(check, mesh);

    /* What is not known is asked for by the rules about teeth, once. */
    if (weak == NULL || high.swing == NULL)
        return;
    const double T_mean = high.swing->mean, T_swing = high.swing->swing, T_wall = weak->T;
    ts_workings_about(check->workings, record->node, high.condition);
    ts_workings_assumed(check->workings, "T_mean", T_mean, "N.m",
                        "what the torque paths say of the driven gear, as a size");
    ts_workings_assumed(check->workings, "T_swing", T_swing, "N.m",
                        "forced response of the tree (docs/method/torsion.md)");
    if (weak->symbol != NULL)
        ts_borrow_in(check, (ts_subject){record->node, high.condition},
                     (ts_input){"T_wall", T_wall}, weak->node, weak->symbol);
    ts_question question = ts_question_about(check, record->node, high.condition);
    question.value       = T_wall;
    question.limit  = TS_STEP(check->workings, peak_formula, T_mean + T_swing, T_mean, T_swing);
    question.bound  = TS_AT_LEAST;
    question.kind   = TS_KIND_TORQUE;
    question.symbol = "T_wall";
    question.limit_symbol = "T_peak";
    question.reserve      = &reserve_formula;
    if (T_swing > T_mean)
        question.level = TS_NOTE;
    ts_finding *finding = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, mesh, &high, weak);
}

static void run(ts_check *check)
{
    for (uint32_t m = 0;
         check->forced != NULL && check->select != NULL && m < check->train->mesh_count; m++)
        judge(check, m);
    ts_skip(check, check->forced == NULL ? "torsion was not computed"
                                         : "no mesh has both a swing and a known strength");
}

const ts_rule ts_rule_torque_with_swing = {
    .id       = "F3-torque-with-swing",
    .title    = "Torque with its swing",
    .question = "Do the teeth of every mesh bear their torque together with all that shakes it?",
    .why    = "A drive that runs at a natural frequency of its torsion carries far more than what "
              "its pads take, and no rating of the teeth knows of it.",
    .level  = TS_WARN,
    .source = "forced vibration of a branched train with viscous damping: W. Thomson, Theory of "
              "Vibration with Applications, chapters 3 and 12 (from memory); errors of half the "
              "pitch tolerances: common practice, no source",
    .hint   = "move the natural frequency, or make the teeth that shake it finer",
    .run    = run,
};
