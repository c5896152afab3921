/* rating/tooth_capacity.h: which torque do the teeth of a mesh bear once, as when an accessory
 * seizes, and which for a short while?
 *
 * Once      At rest, for one load cycle, without a safety: the static strengths of ISO 6336 and
 *           ISO 10300.  A seizure is no shock that K_A knows: the torque is the peak itself.
 * A while   Turning: against the life factors of the cycles that the while brings, with the dynamic
 *           factor of that speed and load.
 * Roots     Of a gear that passes its torque on to another mesh are bent to both sides.
 * Torque    At the driven gear, while power flows outwards: less than the driver's by what the mesh
 *           loses.  The other flank bears the same: such teeth are symmetric.
 * Sources   docs/method/selectivity.md
 */
#ifndef TS_RATING_TOOTH_CAPACITY_H
#define TS_RATING_TOOTH_CAPACITY_H

#include "rating/drive_teeth.h"

/* [TS_RATED_CONTACT], [TS_RATED_BENDING] */
typedef struct ts_tooth_capacity {
    const char     *missing; /* NULL, or why there is no number: a noun or a sentence          */
    double          T[2];    /* N.m at the driven gear, the weaker gear; NaN: none             */
    int             gear[2]; /* which one is weaker: 0 the driver, 1 the driven gear           */
    ts_iso6336_load load[2]; /* at which each was rated: T_1 and R                             */
} ts_tooth_capacity;

/* What the mesh bears once.  Noted about the subject of its strength, in every condition: T_flank,
 * T_root. */
ts_tooth_capacity ts_tooth_capacity_of(const ts_teeth *teeth, uint32_t mesh, ts_workings *workings);

/* The same torques for so many seconds (> 0) at the speed omega of the driven gear. */
void ts_tooth_capacity_for(const ts_teeth *teeth, uint32_t mesh, const ts_tooth_capacity *once,
                           double seconds, double omega, double T[2]);

#endif
