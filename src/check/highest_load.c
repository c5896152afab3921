/* check/highest_load.c: what is the highest torque that a pad or a mesh meets in ordinary life? */
#include "check/highest_load.h"

#include "check/visit.h"

static void raise(ts_peak *peak, double T, uint32_t condition)
{
    if (isnan(T))
        *peak = (ts_peak){(double)NAN, (int32_t)condition};
    else if (T > peak->T)
        *peak = (ts_peak){T, (int32_t)condition};
}

/* Absorbed with way +1, driven with way -1. */
static ts_peak highest_at_pad(const ts_check *check, uint32_t pad, double way)
{
    ts_peak peak = {0.0, TS_EVERY_CONDITION};
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_pad_load *load = ts_load_at(check, pad, c);
        raise(&peak, load->standing == TS_UNKNOWN ? (double)NAN : way * load->T, c);
    }
    return peak;
}

ts_peak ts_highest_absorbed(const ts_check *check, uint32_t pad)
{
    return highest_at_pad(check, pad, 1.0);
}

ts_peak ts_highest_driven(const ts_check *check, uint32_t pad)
{
    return highest_at_pad(check, pad, -1.0);
}

ts_peak ts_highest_in_mesh(const ts_check *check, uint32_t mesh, bool start)
{
    ts_peak peak = {0.0, TS_EVERY_CONDITION};
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_mesh_load *load = ts_load_of(check, mesh, c);
        if ((load->flow == TS_FLOW_INWARD) == start)
            raise(&peak, fabs(load->T[1]), c);
    }
    return peak;
}
