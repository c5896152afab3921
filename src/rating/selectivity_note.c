/* rating/selectivity_note.c: how did the wall of a pad come about? */
#include "rating/selectivity_parts.h"

#include <math.h>

static const ts_formula keep_formula = {
    .symbol  = "keep",
    .meaning = "share of the spool's power that reaches the shaft",
    .unit    = "1",
    .text    = "keep_1*(1 - loss)",
    .source  = "derived: a share of the power is lost in each mesh",
};
static const ts_formula g_formula = {
    .symbol  = "g",
    .meaning = "torque at the part over torque at the pad",
    .unit    = "1",
    .text    = "ratio/ratio_part*keep_part/keep",
    .source  = "derived: power is torque times speed, less what the meshes lose",
};
static const ts_formula L_formula = {
    .symbol  = "L",
    .meaning = "torque that all others take at the part in the worst condition",
    .unit    = "N.m",
    .text    = "T_there - T_here*g",
    .source  = "derived: all that passes the part, less the share of this pad",
};
static const ts_formula wall_formula = {
    .symbol  = "T_wall",
    .meaning = "least torque at the pad that breaks something on the way to the spool",
    .unit    = "N.m",
    .text    = "(T_part - L)/g",
    .source  = "derived: the part that leaves least, in the worst condition",
};
static const ts_formula free_formula = {
    .symbol  = "T_wall",
    .meaning = "least torque at the pad that breaks something on the way to the spool",
    .unit    = "N.m",
    .text    = "T_part/g",
    .source  = "derived: the part that leaves least; nothing else hangs on it",
};

static const ts_formula reach_formula = {
    .symbol  = "g",
    .meaning = "torque in the radial shaft over torque at the pad that takes it",
    .unit    = "1",
    .text    = "ratio_pad/ratio*keep/keep_pad",
    .source  = "derived: power is torque times speed, less what the meshes lose",
};
static const ts_formula run_formula = {
    .symbol  = "T_run",
    .meaning = "torque in the radial shaft with one overload",
    .unit    = "N.m",
    .text    = "T + (T_over - T_pad)*g",
    .source  = "derived: the overload in place of what that pad takes then",
};
static const ts_formula start_formula = {
    .symbol  = "T_start",
    .meaning = "torque of the start in the radial shaft",
    .unit    = "N.m",
    .text    = "T_top*ratio_pad/ratio*keep_pad/keep",
    .source  = "derived: what drives at its most, less what the meshes lose; others take nothing",
};

static double known_loss(const ts_mesh *mesh)
{
    return ts_measure_known(mesh->loss) ? mesh->loss.value : 0.0;
}

/* The share of every shaft between the guard's and the spool, about the shaft. */
static void note_shares(const ts_select *select, uint32_t s, ts_workings *workings)
{
    const ts_train *train = select->teeth->motion->train;

    for (;;) {
        const ts_shaft  *shaft = &train->shafts[s];
        const ts_subject own   = {shaft->node, TS_EVERY_CONDITION};

        if (ts_workings_find(workings, own, "keep") != SIZE_MAX)
            return;
        ts_workings_about(workings, own.object, own.condition);
        if (shaft->mesh == TS_NOWHERE) {
            ts_workings_assumed(workings, "keep", 1.0, "1", "nothing is lost before the spool");
            return;
        }
        const ts_mesh *mesh   = &train->meshes[shaft->mesh];
        const double   keep_1 = select->scratch->keep[mesh->driver_shaft];
        const double   loss   = known_loss(mesh);

        ts_workings_borrow(workings, "keep_1", keep_1,
                           (ts_subject){train->shafts[mesh->driver_shaft].node, TS_EVERY_CONDITION},
                           "keep");
        if (mesh->node != shaft->node)
            ts_workings_borrow(workings, "loss", loss, (ts_subject){mesh->node, TS_EVERY_CONDITION},
                               "loss");
        (void)TS_STEP(workings, keep_formula, select->scratch->keep[s], keep_1, loss);
        s = mesh->driver_shaft;
    }
}

static double note_others(const ts_select *select, const ts_guard *guard, uint32_t e, double g,
                          ts_node about, ts_workings *workings)
{
    const ts_power  *power = select->teeth->power;
    const ts_train  *train = power->motion->train;
    const size_t     c     = (size_t)guard->once.with;
    const ts_subject there = {train->shafts[e].node, guard->once.with};
    const ts_subject here  = {guard->pad == TS_NOWHERE ? train->shafts[guard->shaft].node : about,
                             guard->once.with};
    const double T_there = power->T[c * train->shaft_count + e];
    const double T_here  = guard->pad == TS_NOWHERE
                               ? power->T[c * train->shaft_count + guard->shaft]
                               : power->pad[c * train->pad_count + guard->pad].T;

    ts_workings_borrow(workings, "T_there", T_there, there, "T");
    ts_workings_borrow(workings, "T_here", T_here, here, "T");
    return TS_STEP(workings, L_formula, T_there - T_here * g, T_there, T_here, g);
}

void ts_select_note(const ts_select *select, const ts_guard *guard, ts_workings *workings)
{
    const ts_train *train = select->teeth->motion->train;
    const ts_node   about = guard->pad == TS_NOWHERE ? select->necks->items[guard->neck].neck->node
                                                     : train->pads[guard->pad].node;

    if (guard->once.part == TS_NOWHERE || workings == NULL)
        return;
    const ts_part_capacity *part = &select->parts.items[guard->once.part];
    const uint32_t          p = guard->shaft, e = ts_part_shaft(train, part);
    const ts_subject        from  = {train->shafts[p].node, TS_EVERY_CONDITION};
    const ts_subject        to    = {train->shafts[e].node, TS_EVERY_CONDITION};
    const double            ratio = select->scratch->ratio[p], keep = select->scratch->keep[p];
    const double ratio_part = select->scratch->ratio[e], keep_part = select->scratch->keep[e];

    note_shares(select, p, workings);
    ts_workings_about(workings, about, TS_EVERY_CONDITION);
    ts_workings_borrow(workings, "ratio", ratio, from, "ratio");
    ts_workings_borrow(workings, "keep", keep, from, "keep");
    ts_workings_borrow(workings, "ratio_part", ratio_part, to, "ratio");
    ts_workings_borrow(workings, "keep_part", keep_part, to, "keep");
    const double g      = TS_STEP(workings, g_formula, ratio / ratio_part * keep_part / keep, ratio,
                                  ratio_part, keep_part, keep);
    const double T_part = part->T;
    if (part->symbol != NULL)
        ts_workings_borrow(workings, "T_part", T_part, (ts_subject){part->node, TS_EVERY_CONDITION},
                           part->symbol);
    if (guard->once.with == TS_EVERY_CONDITION) {
        (void)TS_STEP(workings, free_formula, T_part / g, T_part, g);
        return;
    }
    const double L = note_others(select, guard, e, g, about, workings);
    (void)TS_STEP(workings, wall_formula, (T_part - L) / g, T_part, L, g);
}

static void note_reach(const ts_select *select, const ts_guard *tower, uint32_t pad,
                       int32_t condition, ts_workings *workings)
{
    const ts_train  *train = select->teeth->motion->train;
    const uint32_t   p = train->pads[pad].shaft, s = tower->shaft;
    const ts_subject from = {train->shafts[p].node, TS_EVERY_CONDITION};
    const ts_subject to   = {train->shafts[s].node, TS_EVERY_CONDITION};

    note_shares(select, p, workings);
    ts_workings_about(workings, select->necks->items[tower->neck].neck->node, condition);
    ts_workings_borrow(workings, "ratio_pad", select->scratch->ratio[p], from, "ratio");
    ts_workings_borrow(workings, "keep_pad", select->scratch->keep[p], from, "keep");
    ts_workings_borrow(workings, "ratio", select->scratch->ratio[s], to, "ratio");
    ts_workings_borrow(workings, "keep", select->scratch->keep[s], to, "keep");
}

static void note_overload(const ts_select *select, const ts_guard *tower, ts_workings *workings)
{
    const ts_power    *power = select->teeth->power;
    const ts_train    *train = power->motion->train;
    const uint32_t     pad = tower->run_by, p = train->pads[pad].shaft, s = tower->shaft;
    const size_t       c         = (size_t)tower->run.condition;
    const double       ratio_pad = select->scratch->ratio[p], ratio = select->scratch->ratio[s];
    const double       keep_pad = select->scratch->keep[p], keep = select->scratch->keep[s];
    const double       T      = power->T[c * train->shaft_count + s];
    const double       T_pad  = power->pad[c * train->pad_count + pad].T;
    const double       T_over = select->guards[select->of_pad[pad]].T_over;
    const ts_overload *told =
        &select->drive->accessories[train->pads[pad].accessory].torque.overload;

    note_reach(select, tower, pad, tower->run.condition, workings);
    const double g = TS_STEP(workings, reach_formula, ts_select_reach(select, tower, pad, false),
                             ratio_pad, ratio, keep, keep_pad);
    ts_workings_borrow(workings, "T", T, (ts_subject){train->shafts[s].node, tower->run.condition},
                       "T");
    ts_workings_borrow(workings, "T_pad", T_pad,
                       (ts_subject){train->pads[pad].node, tower->run.condition}, "T");
    ts_workings_given(workings, "T_over", T_over, "N.m", told->node);
    (void)TS_STEP(workings, run_formula, tower->run.T, T, T_over, T_pad, g);
}

static void note_top(const ts_select *select, const ts_guard *tower, ts_workings *workings)
{
    const ts_train    *train     = select->teeth->motion->train;
    const uint32_t     pad       = tower->start_by;
    const ts_guard    *guard     = &select->guards[select->of_pad[pad]];
    const double       ratio_pad = select->scratch->ratio[train->pads[pad].shaft];
    const double       keep_pad  = select->scratch->keep[train->pads[pad].shaft];
    const double       ratio     = select->scratch->ratio[tower->shaft];
    const double       keep      = select->scratch->keep[tower->shaft];
    const bool         over      = ts_select_overload_tops(guard);
    const double       T_top     = over ? guard->T_over : guard->start.T;
    const ts_overload *told =
        &select->drive->accessories[train->pads[pad].accessory].torque.overload;

    note_reach(select, tower, pad, TS_EVERY_CONDITION, workings);
    ts_workings_given(workings, "T_top", T_top, "N.m", over ? told->node : guard->summit);
    (void)TS_STEP(workings, start_formula, tower->start.T, T_top, ratio_pad, ratio, keep_pad, keep);
}

void ts_select_note_tower(const ts_select *select, const ts_guard *guard, ts_workings *workings)
{
    if (guard->pad != TS_NOWHERE || workings == NULL)
        return;
    if (guard->run_by != TS_NOWHERE && isfinite(guard->run.T))
        note_overload(select, guard, workings);
    if (guard->start_by != TS_NOWHERE && isfinite(guard->start.T))
        note_top(select, guard, workings);
}
