/* motion/motion.h: how fast and which way does everything turn, and where does it stand?
 *
 * Ratios are exact.  Speeds are magnitudes; the sense is apart, since no condition reverses it.
 */
#ifndef TS_MOTION_MOTION_H
#define TS_MOTION_MOTION_H

#include "base/arena.h"
#include "base/diagnostic.h"
#include "base/rational.h"
#include "base/workings.h"
#include "element/backlash_bounds.h"
#include "element/bevel_pair.h"
#include "element/bevel_spiral.h"
#include "element/bevel_teeth.h"
#include "element/bevel_toe.h"
#include "element/bevel_virtual.h"
#include "element/cylindrical_pair.h"
#include "element/hunting.h"
#include "model/train.h"

typedef struct ts_shaft_motion {
    ts_rational ratio; /* speed of the shaft over speed of its spool, exact                      */
    int         sense; /* +1 or -1 about its positive axis (model/train.h); 0: the sense of the
                          spool is not known                                                     */
    double x, y;       /* m, axis position from behind; for a tower shaft its outer end          */
    double radius;     /* m, of that position from the engine axis                               */
    double clock;      /* rad clockwise from 12:00 seen from behind, of the axis position.  It
                          counts on from the box input, below 0 and past 2 pi, so that the
                          difference of two clocks of a box is the arc between them              */
    bool placed;       /* position known (arc or toward reaches it); else x, y and radius are NaN
                          and `fault` says why, in one sentence; of a tower shaft whose length is
                          not known the clock is there all the same, else it is NaN too          */
    const char *fault;
} ts_shaft_motion;

typedef struct ts_mesh_motion {
    bool        solved;           /* geometry could be computed; false: it is NaN                */
    const char *fault;            /* why not; or, when solved, what is wrong with it all the same
                                     (a pointed tooth); NULL: nothing                            */
    ts_cylindrical_pair pair;     /* TS_MESH_CYLINDRICAL; gear 1 is the mesh's driver            */
    ts_backlash         backlash; /* ... what its makers may leave of play; NaN: not known      */
    const char         *backlash_missing; /* NULL, or what the file lacks for it: a noun          */
    ts_bevel_pair       bevel; /* TS_MESH_BEVEL; gear 1 is the mesh's driver                  */
    const char         *teeth_fault; /* bevels: why there are no teeth on these cones; NULL: here
                                        they are                                                 */
    ts_bevel_teeth   teeth;    /* ... from the outer to the inner end                         */
    ts_bevel_virtual virt;     /* ... as the virtual gears of the mean section                */
    ts_bevel_spiral  ends;     /* ... spiral and undercut at both ends                        */
    ts_bevel_toe     toe;      /* ... thickness at the inner end                              */
    double           a_w;      /* m, working centre distance; 0 for bevels                    */
    double           r_1, r_2; /* m, radius at which the tangential force acts: r_w or r_m    */
    double           alpha_wn; /* rad, normal pressure angle at r_1; bevels: alpha_n          */
    double           beta_w;   /* rad, helix angle at r_1; bevels: beta_m                     */
    double           e[2];     /* unit vector in x, y: cylindrical: from the driver's axis to
                                  the driven axis; bevels: outwards along the radial shaft    */
    double tau[2];             /* unit vector in x, y: the way both flanks move where they
                                  touch; NaN as `e` when an axis is not placed                */
    int64_t    gcd;            /* of the two tooth numbers                                    */
    ts_hunting hunting;        /* which teeth meet, after how many turns                      */
} ts_mesh_motion;

typedef struct ts_motion {
    const ts_train  *train;
    uint32_t         condition_count;
    ts_shaft_motion *shafts;    /* [shaft]                                    */
    ts_mesh_motion  *meshes;    /* [mesh]                                     */
    double          *speed;     /* [condition * shaft_count + shaft], rad/s   */
    double          *velocity;  /* [condition * mesh_count + mesh], m/s at r_1 */
    double          *frequency; /* [condition * mesh_count + mesh], Hz, of tooth engagement */
} ts_motion;

/* Memory for one drive, so that the solve itself allocates nothing. */
ts_status ts_motion_prepare(const ts_drive *drive, const ts_train *train, ts_arena *arena,
                            ts_motion *out);

/* Computes ratios, senses, positions, mesh geometry and speeds.  Diagnoses a ratio that overflows
 * 64 bits (ratio-overflow) and a stated `turns` that the train contradicts (contradictory-senses,
 * naming the chain of shafts that makes it so). */
ts_status ts_motion_solve(const ts_drive *drive, ts_motion *motion, ts_diagnostics *list,
                          ts_workings *workings);

/* The geometry of one bevel mesh with z teeth by itself, also of one that is only tried; false, and
 * why in `fault`, when there are no such cones. */
bool ts_motion_bevel(const ts_drive *drive, const ts_bevel_gears *bevels, const int z[2],
                     ts_mesh_motion *mesh, ts_workings *workings);

/* NULL, or what the file lacks for the play of a cylindrical mesh: a noun. */
const char *ts_motion_backlash_lacks(const ts_train *train, const ts_motion *motion, uint32_t mesh);
/* What the makers of a mesh that lacks nothing may leave of play, as built and with that warmth. */
void ts_motion_backlash_at(const ts_train *train, const ts_motion *motion, uint32_t mesh,
                           const ts_backlash_warmth *warmth, ts_backlash *out);

/* +1: ccw, -1: cw for somebody who faces the pad (front pad: looking rearward; rear: forward). */
int ts_pad_sense(const ts_motion *motion, const ts_pad *pad);

#endif
