/* search/drive_problem.h: which question does a drive file put to the search of arrangements?
 *
 * Powers      As the file gives them.  A torque with which an accessory drives becomes power at the
 *             highest speed that its pad may have.  Where others absorb in the same mesh that is
 *             not strictly the most; the check from scratch has the true torques.
 * Speeds      Bands with the reserve that `limits` asks for.
 * Spools      What the engine needs to run, and the starter, stay on the spool that is cranked.
 * Left out    Losses of meshes, the cowl and keep-outs, whatever else a rule asks: an answer is
 *             checked from scratch.
 */
#ifndef TS_SEARCH_DRIVE_PROBLEM_H
#define TS_SEARCH_DRIVE_PROBLEM_H

#include "base/diagnostic.h"
#include "motion/motion.h"
#include "search/arrange_problem.h"
#include "search/drive_take_off.h"

/* Further demands of one question, beyond those of the file. */
typedef struct ts_extra_demand {
    int32_t        accessory;
    int32_t        spool; /* -1: any */
    ts_face_choice face;
    ts_side_choice side;
    double         ratio; /* pad speed over spool speed that it must keep; 0: any */
} ts_extra_demand;

typedef struct ts_drive_question {
    const ts_drive        *drive;
    const ts_motion       *motion; /* solved: for the boxes' inputs */
    const ts_extra_demand *extra;
    size_t                 extra_count;
    const double *power_factor; /* NULL, or of each accessory; robustness asks with others */
} ts_drive_question;

typedef struct ts_drive_problem {
    ts_arrange_problem problem;  /* without its model */
    size_t            *tapped;   /* [box] index into drive->drive                      */
    int32_t           *spool_of; /* [box]                                              */
    double            *m_n;      /* [module] m, normal                                 */
    double             density;  /* kg/m3 of the pitch cylinder: fill times density    */
    size_t             accessory_of[TS_ARRANGE_ACCESSORIES]; /* index in the file     */
    ts_take_off_list  *take_offs; /* [box] by `take_off` of a choice; none: what stands stays  */
    const double     **speed;     /* [box] of the input as it stands, rad/s per condition       */
} ts_drive_problem;

/* TS_NOT_UNDERSTOOD, with messages at their places, when the file lacks what the search needs, or
 * contradicts itself before any search. */
ts_status ts_drive_problem_make(const ts_drive_question *question, ts_arena *arena,
                                ts_diagnostics *list, ts_drive_problem *out);

#endif
