/* rating/spline_capacity.h: which torque does the spline of a pad bear once?
 *
 * Bears     The least of what shears its roots, shears its teeth and bursts its sleeve: the
 * formulas of drive_splines.h turned round for the torque, with the factor of the fewest cycles
 *           that the handbook prints, without shock, the sleeve spinning as fast as it ever does.
 * Left out  Pressure on the flanks: it wears, and breaks nothing once.
 */
#ifndef TS_RATING_SPLINE_CAPACITY_H
#define TS_RATING_SPLINE_CAPACITY_H

#include "rating/drive_splines.h"
#include "rating/part_capacity.h"

/* N.m of one spline, the stress that ends it and its symbol in the workings. */
typedef struct ts_spline_bears {
    double           T; /* NaN: not known */
    ts_spline_stress by;
    const char      *symbol;
} ts_spline_bears;
ts_spline_bears ts_spline_bears_once(const ts_drive_spline *item, uint32_t conditions,
                                     ts_workings *workings);

/* Adds one part for each spline: at most splines->count.  Allocates nothing. */
void ts_splines_capacities(const ts_drive *drive, const ts_splines *splines,
                           ts_part_capacities *list, ts_workings *workings);

#endif
