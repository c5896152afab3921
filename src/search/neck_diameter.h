/* search/neck_diameter.h: which diameters, in steps, balance the chances of designed necks?
 *
 * Choice    The diameter at which a neck is as likely to break too early as too late
 *           (rating/neck_life.h), to a step; of both neighbours the one whose greater chance is the
 *           smaller.  Where that breaks a hard rule, least break torque above `neck factor` times
 *           what it must pass and greatest below what its way bears over `neck factor`, the nearest
 *           step that keeps both.
 * Method    Rated anew at every step with everything else as the file has it; necks in tower shafts
 *           first, which stand in the way of the others.
 * Proof     Early falls and late rises with the diameter, so where one step is too early and the
 *           next too late no other is better.
 */
#ifndef TS_SEARCH_NECK_DIAMETER_H
#define TS_SEARCH_NECK_DIAMETER_H

#include "rating/drive_lines.h"
#include "rating/neck_life.h"
#include "rating/spline_capacity.h"

typedef struct ts_neck_rig {
    const ts_drive   *drive;
    const ts_lines   *lines;
    const ts_splines *splines;
    ts_necks         *necks; /* those of the selectivity */
    ts_select        *select;
} ts_neck_rig;

#define TS_NECK_STEP_USUAL 0.05e-3 /* m */

typedef enum ts_neck_need {
    TS_NECK_KEPT,     /* not designed, or something is missing: `why`                         */
    TS_NECK_BALANCED, /* by its chances                                                       */
    TS_NECK_BY_LOAD,  /* by what it must pass: the balance is thinner                         */
    TS_NECK_BY_WAY,   /* by what its way bears: the balance is thicker                        */
    TS_NECK_BY_SHAPE, /* as near to the balance as bore, shaft beside it and notch let it be  */
    TS_NECK_NONE      /* no diameter keeps both hard rules, or the chance that is allowed     */
} ts_neck_need;

typedef struct ts_neck_at {
    double         d;    /* m                        */
    ts_neck_limits band; /* N.m                      */
    ts_neck_chance chance;
} ts_neck_at;

typedef struct ts_neck_choice {
    uint32_t     guard; /* of the selectivity                                                */
    ts_neck_need need;
    const char  *why;     /* TS_NECK_KEPT: what is missing, or that its band is stated       */
    double       T_least; /* N.m, what its least break torque must reach; NaN: not known     */
    double       T_most;  /* N.m, what its greatest must not exceed; NaN likewise            */
    double       balance; /* m, where both chances are equal; NaN: nowhere                   */
    ts_neck_at   before, after; /* not of TS_NECK_KEPT; of TS_NECK_NONE the nearest          */
} ts_neck_choice;

typedef struct ts_neck_plan {
    ts_neck_choice *choices; /* one a guard with a neck, in the order of the guards           */
    size_t          count;
    size_t          trials; /* necks that were rated                                          */
    size_t          sized;  /* how many are designed and could be rated                       */
    bool            fits;   /* is there a diameter for each of those?                         */
} ts_neck_plan;

/* step: m, > 0.  The rig ends with the new diameters, rated. */
ts_status ts_find_neck_diameters(const ts_neck_rig *rig, double step, ts_arena *arena,
                                 ts_neck_plan *plan);

#endif
