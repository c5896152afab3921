/* check/highest_load.c: what is the highest torque that a pad or a mesh meets in ordinary life? */
#include "check/highest_load.h"

#include "check/visit.h"

static const ts_peak nothing = {0.0, 0.0, TS_EVERY_CONDITION};

static void raise(ts_peak *peak, double T, double noted, uint32_t condition)
{
    if (isnan(T))
        *peak = (ts_peak){(double)NAN, (double)NAN, (int32_t)condition};
    else if (T > peak->T)
        *peak = (ts_peak){T, noted, (int32_t)condition};
}

/* Absorbed with way +1, driven with way -1. */
static ts_peak highest_at_pad(const ts_check *check, uint32_t pad, double way)
{
    ts_peak peak = nothing;
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_pad_load *load    = ts_load_at(check, pad, c);
        const bool         unknown = load->standing == TS_UNKNOWN;
        raise(&peak, unknown ? (double)NAN : way * load->T, load->T, c);
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
    ts_peak peak = nothing;
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_mesh_load *load = ts_load_of(check, mesh, c);
        if ((load->flow == TS_FLOW_INWARD) == start)
            raise(&peak, fabs(load->T[1]), load->T[1], c);
    }
    return peak;
}
