/* oil/heat_worst.c: where is a drive warmest, and how much oil would help? */
#include "oil/heat_parts.h"

#include <math.h>

#define FLOWS_MOST 1024.0 /* times the flow that there is: beyond, none helps */
#define HALVINGS   40

/* Rise of one drive in one condition with `times` the flow. */
static double rise_with(ts_heat *heat, const ts_heat_worst *at, uint32_t drive, double times)
{
    const ts_heat_desk desk = ts_heat_open(heat, at->method, (uint32_t)at->condition, NULL);

    for (uint32_t p = 0; p < heat->place_count; p++)
        heat->scratch->Q[p] = heat->jets[p].Q * times;
    ts_heat_settle(&desk);
    for (uint32_t p = 0; p < heat->place_count; p++)
        heat->scratch->Q[p] = heat->jets[p].Q;
    return desk.states[drive].rise;
}

/* m3/s that keep the rise at `rise`: more oil takes more heat, but throwing it off makes some too.
 */
static double flow_for(ts_heat *heat, const ts_heat_worst *at, uint32_t drive, double rise)
{
    double little = 1.0, enough = 1.0;

    if (!(rise > 0.0))
        return (double)INFINITY;
    while (rise_with(heat, at, drive, enough) > rise) {
        little = enough;
        enough *= 2.0;
        if (enough > FLOWS_MOST)
            return (double)INFINITY;
    }
    for (int i = 0; i < HALVINGS; i++) {
        const double middle = 0.5 * (little + enough);
        if (rise_with(heat, at, drive, middle) > rise)
            little = middle;
        else
            enough = middle;
    }
    return heat->Q * enough;
}

static void keep(ts_heat_worst *worst, int method, uint32_t condition, double value)
{
    if (worst->condition >= 0 && !(value > worst->value))
        return;
    worst->method    = method;
    worst->condition = (int32_t)condition;
    worst->value     = value;
}

void ts_heat_find_worst(ts_heat *heat)
{
    const ts_oil *oil = &heat->drive->oil;

    for (uint32_t d = 0; d < heat->drive->drive_count; d++) {
        ts_heat_worst rise = {.condition = -1, .flow = (double)NAN}, leaving = rise;

        for (int method = 0; method < TS_HEAT_METHODS; method++)
            for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
                const ts_heat_state *one = ts_heat_state_at(heat, method, c, d);
                if (one->dry)
                    continue;
                keep(&leaving, method, c, one->theta_in + one->rise);
                if (ts_heat_lasts(heat->drive, c))
                    keep(&rise, method, c, one->rise);
            }
        if (rise.condition >= 0 && rise.value > oil->rise.value)
            rise.flow = flow_for(heat, &rise, d, oil->rise.value);
        if (leaving.condition >= 0 && leaving.value > oil->hottest.value)
            leaving.flow =
                flow_for(heat, &leaving, d,
                         oil->hottest.value - heat->oil->theta_oil[(uint32_t)leaving.condition]);
        heat->rises[d]    = rise;
        heat->leavings[d] = leaving;
    }
}
