/* oil/heat_worst.c: where is a drive warmest, and how much oil would help? */
#include "oil/heat_parts.h"

#include <math.h>

#define FLOWS_MOST 1024.0 /* times the flow that there is: beyond, none helps */
#define HALVINGS   40

/* By how much the oil may warm there: with what lasts, or (`leaving`) on its way out in any
 * condition. */
static double allowed_in(const ts_heat *heat, uint32_t condition, bool leaving)
{
    const ts_oil *oil = &heat->drive->oil;

    if (leaving)
        return oil->hottest.value - heat->oil->theta_oil[condition];
    return ts_heat_lasts(heat->drive, condition) ? oil->rise.value : (double)INFINITY;
}

/* Does `times` the flow keep the drive within its limit in every condition by both methods?  A
 * spool that stands feeds no pump, and is judged by itself. */
static bool is_kept(ts_heat *heat, uint32_t drive, double times, bool leaving)
{
    bool kept = true;

    for (uint32_t p = 0; p < heat->place_count; p++)
        heat->scratch->Q[p] = heat->jets[p].Q * times;
    for (int method = 0; method < TS_HEAT_METHODS && kept; method++)
        for (uint32_t c = 0; c < heat->motion->condition_count && kept; c++) {
            const ts_heat_desk desk = ts_heat_open(heat, method, c, NULL);

            if (ts_heat_state_at(heat, method, c, drive)->dry)
                continue;
            ts_heat_settle(&desk);
            kept = desk.states[drive].rise <= allowed_in(heat, c, leaving);
        }
    for (uint32_t p = 0; p < heat->place_count; p++)
        heat->scratch->Q[p] = heat->jets[p].Q;
    return kept;
}

/* m3/s that keep every condition: more oil takes more heat, but throwing it off makes some too. */
static double flow_for(ts_heat *heat, uint32_t drive, bool leaving)
{
    double little = 1.0, enough = 1.0;

    while (!is_kept(heat, drive, enough, leaving)) {
        little = enough;
        enough *= 2.0;
        if (enough > FLOWS_MOST)
            return (double)INFINITY;
    }
    for (int i = 0; i < HALVINGS; i++) {
        const double middle = 0.5 * (little + enough);
        if (is_kept(heat, drive, middle, leaving))
            enough = middle;
        else
            little = middle;
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
            rise.flow = flow_for(heat, d, false);
        if (leaving.condition >= 0 && leaving.value > oil->hottest.value)
            leaving.flow = flow_for(heat, d, true);
        heat->rises[d]    = rise;
        heat->leavings[d] = leaving;
    }
}
