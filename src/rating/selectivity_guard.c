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
    raise_by_curve(guard, accessory);
    if (overload.standing == TS_UNKNOWN) {
        guard->T_over = (double)NAN;
    } else if (overload.standing == TS_GIVEN) {
        guard->T_over = overload.torque;
        guard->t_over = overload.time;
    }
    if (ts_measure_known(accessory->torque.statically))
        guard->T_static = accessory->torque.statically.value;
}

static void fill_shaft(ts_select *select, ts_guard *guard)
{
    const ts_power *power = select->teeth->power;
    const uint32_t  all   = power->motion->train->shaft_count;

    for (size_t c = 0; c < select->drive->condition_count; c++) {
        raise(&guard->run, power->T[c * all + guard->shaft], c);
        raise(&guard->start, -power->T[c * all + guard->shaft], c);
    }
}

static void highest(ts_guard *guard)
{
    guard->legit    = guard->run;
    guard->at_start = guard->start.T > guard->run.T && guard->T_over >= guard->start.T;
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
