/* rating/selectivity_guard.c: which torques are legitimate at a pad, or at a neck in a tower
 * shaft? */
#include "rating/selectivity_parts.h"

#include "model/curve_judge.h"

#include <math.h>

static void raise(ts_met_torque *peak, double T, size_t c)
{
    if (isnan(T))
        *peak = (ts_met_torque){(double)NAN, (int32_t)c};
    else if (T > peak->T)
        *peak = (ts_met_torque){T, (int32_t)c};
}

/* `drives` tells the torque of its conditions alone: what a starter puts into its pad on the way
 * there, at rest above all, is told by its curve. */
static void raise_by_curve(ts_guard *guard, const ts_accessory *accessory)
{
    const ts_torque_point *top = ts_curve_summit(accessory->curve, accessory->curve_count);

    if (accessory->curve_count > 0 && top == NULL) {
        guard->start = (ts_met_torque){(double)NAN, TS_EVERY_CONDITION};
    } else if (top != NULL && top->torque.value > guard->start.T) {
        guard->start  = (ts_met_torque){top->torque.value, TS_EVERY_CONDITION};
        guard->summit = top->node;
    }
}

/* Does what is told as its overload flow inwards?  Of what drives and never absorbs, always: a
 * starter.  Of what does both, where it is no less than the torque that it drives with: conditions
 * tell that, for the top of a curve is met at rest alone; else the curve. */
static bool drives_over(const ts_guard *guard, const ts_accessory *accessory)
{
    const ts_overload     *overload = &accessory->torque.overload;
    const ts_torque_point *top      = ts_curve_summit(accessory->curve, accessory->curve_count);
    const double driven = guard->start.T > 0.0 || top == NULL ? guard->start.T : top->torque.value;

    if (!(driven > 0.0) || overload->standing == TS_ABSENT)
        return false;
    return !(guard->run.T > 0.0) || (driven > guard->run.T && overload->torque >= driven);
}

static void fill_pad(ts_select *select, ts_guard *guard)
{
    const ts_power     *power     = select->teeth->power;
    const ts_train     *train     = power->motion->train;
    const ts_pad       *pad       = &train->pads[guard->pad];
    const ts_accessory *accessory = &select->drive->accessories[pad->accessory];
    const ts_overload   overload  = accessory->torque.overload;

    for (size_t c = 0; c < select->drive->condition_count; c++) {
        const ts_pad_load *load    = &power->pad[c * train->pad_count + guard->pad];
        const bool         unknown = load->standing == TS_UNKNOWN;

        raise(&guard->run, unknown ? (double)NAN : load->T, c);
        raise(&guard->start, unknown ? (double)NAN : -load->T, c);
    }
    guard->at_start = drives_over(guard, accessory);
    raise_by_curve(guard, accessory);
    guard->plain_run   = guard->run.T;
    guard->plain_start = guard->start.T;
    if (overload.standing == TS_UNKNOWN) {
        guard->T_over = (double)NAN;
    } else if (overload.standing == TS_GIVEN) {
        guard->T_over = overload.torque;
        guard->t_over = overload.time;
    }
    if (ts_measure_known(accessory->torque.statically))
        guard->T_static = accessory->torque.statically.value;
}

/* Does the torque of that pad pass the shaft? */
static bool passes(const ts_train *train, uint32_t pad, uint32_t shaft)
{
    uint32_t s = train->pads[pad].shaft;

    while (s != shaft && train->shafts[s].mesh != TS_NOWHERE)
        s = train->meshes[train->shafts[s].mesh].driver_shaft;
    return s == shaft;
}

double ts_select_reach(const ts_select *select, const ts_guard *tower, uint32_t pad, bool inwards)
{
    const ts_select_scratch *scratch = select->scratch;
    const uint32_t           p = select->teeth->motion->train->pads[pad].shaft, s = tower->shaft;
    const double             kept = scratch->keep[p] / scratch->keep[s];

    return scratch->ratio[p] / scratch->ratio[s] * (inwards ? kept : 1.0 / kept);
}

/* One overload of a pad behind the shaft, beside what all else takes in a condition. */
static void raise_by_overload(const ts_select *select, ts_guard *tower, const ts_guard *pad)
{
    const ts_power *power = select->teeth->power;
    const ts_train *train = power->motion->train;
    const double    g     = ts_select_reach(select, tower, pad->pad, false);

    for (size_t c = 0; c < select->drive->condition_count; c++) {
        const double T   = power->T[c * train->shaft_count + tower->shaft];
        const double own = power->pad[c * train->pad_count + pad->pad].T;
        const double all = T + (pad->T_over - own) * g;

        if (!(T > 0.0) || own < 0.0 || (!isnan(all) && !(all > tower->run.T)))
            continue;
        raise(&tower->run, all, c);
        tower->run_by = pad->pad;
    }
}

bool ts_select_overload_tops(const ts_guard *pad)
{
    return pad->at_start && !(pad->T_over <= pad->start.T);
}

/* What a pad drives with beyond what its conditions say: the top of its curve, an overload. */
static void raise_by_starter(const ts_select *select, ts_guard *tower, const ts_guard *pad)
{
    const bool   over = ts_select_overload_tops(pad);
    const double most = over ? pad->T_over : pad->start.T;
    const double T    = most * ts_select_reach(select, tower, pad->pad, true);

    if ((!over && pad->summit == 0 && !isnan(T)) || (!isnan(T) && !(T > tower->start.T)))
        return;
    raise(&tower->start, T, 0);
    tower->start.condition = TS_EVERY_CONDITION;
    tower->start_by        = pad->pad;
}

/* What the pads behind it drive with without an overload. */
static double plain_start(const ts_select *select, const ts_guard *tower)
{
    const ts_train *train = select->teeth->motion->train;
    double          most  = tower->start.T;

    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_guard *pad =
            select->of_pad[p] == TS_NOWHERE ? NULL : &select->guards[select->of_pad[p]];

        if (pad != NULL && pad->summit != 0 && passes(train, p, tower->shaft))
            most = fmax(most, pad->start.T * ts_select_reach(select, tower, p, true));
    }
    return most;
}

static void fill_shaft(ts_select *select, ts_guard *guard)
{
    const ts_power *power = select->teeth->power;
    const ts_train *train = power->motion->train;

    for (size_t c = 0; c < select->drive->condition_count; c++) {
        raise(&guard->run, power->T[c * train->shaft_count + guard->shaft], c);
        raise(&guard->start, -power->T[c * train->shaft_count + guard->shaft], c);
    }
    guard->plain_run   = guard->run.T;
    guard->plain_start = plain_start(select, guard);
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_guard *pad =
            select->of_pad[p] == TS_NOWHERE ? NULL : &select->guards[select->of_pad[p]];

        if (pad == NULL || !passes(train, p, guard->shaft))
            continue;
        raise_by_starter(select, guard, pad);
        if (!pad->at_start && pad->T_over != 0.0)
            raise_by_overload(select, guard, pad);
    }
}

static void highest(ts_guard *guard)
{
    guard->legit = guard->run;
    if (isnan(guard->start.T) || guard->start.T > guard->legit.T)
        guard->legit = guard->start;
    if (isnan(guard->T_over) || guard->T_over > guard->legit.T)
        guard->legit = (ts_met_torque){guard->T_over, TS_EVERY_CONDITION};
}

void ts_select_fill_guards(ts_select *select)
{
    static const ts_met_torque nothing = {0.0, TS_EVERY_CONDITION};
    const double              *ratio   = select->scratch->ratio;

    for (uint32_t i = 0; i < select->count; i++) {
        ts_guard *guard = &select->guards[i];

        guard->run = guard->start = nothing;
        guard->summit             = 0;
        guard->at_start           = false;
        guard->run_by = guard->start_by = TS_NOWHERE;
        guard->T_over = guard->t_over = 0.0;
        guard->T_static               = (double)NAN;
        if (guard->pad != TS_NOWHERE)
            fill_pad(select, guard);
        else
            fill_shaft(select, guard);
        highest(guard);
        guard->reference = select->scratch->input[guard->shaft];
        guard->refer     = ratio[guard->shaft] / ratio[guard->reference];
    }
}
