/* rating/iso6336/running_in.h: which part of a deviation do the flanks wear off by themselves?
 * ISO 6336-1, clauses 7.4.2 (y_beta), 8.3.5 (y_alpha) and 6.5.4 (C_ay).
 */
#ifndef TS_RATING_RUNNING_IN_H
#define TS_RATING_RUNNING_IN_H

#include "base/workings.h"
#include "catalog/gear_material.h"

typedef struct ts_running_in_flank {
    ts_gear_class class;
    double sigma_Hlim; /* Pa, > 0 */
} ts_running_in_flank;

/* The allowance of a pair, m: the mean of both gears.  v: m/s at the reference circle.
 *
 * ts_running_in_pitch     y_alpha from the base pitch deviation f_pb
 * ts_running_in_profile   y_f from the profile form deviation f_falpha, by the same rule
 * ts_running_in_lead      y_beta from the misalignment F_betax */
double ts_running_in_pitch(const ts_running_in_flank flank[2], double v, double f_pb,
                           ts_workings *workings);
double ts_running_in_profile(const ts_running_in_flank flank[2], double v, double f_falpha,
                             ts_workings *workings);
double ts_running_in_lead(const ts_running_in_flank flank[2], double v, double F_betax,
                          ts_workings *workings);

/* C_ay, m: the tip relief that running in makes; the mean of both gears. */
double ts_running_in_relief(const ts_running_in_flank flank[2], ts_workings *workings);

#endif
