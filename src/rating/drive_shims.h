/* rating/drive_shims.h: where must every bevel gear stand, which shims bring it there, and what
 * backlash is to be found then?
 *
 * Shim      Between the bearing that locates a gear and its seat in the casing: a thicker one moves
 *           the gear along its axis by as much.
 * Stack     What a shim must make good is the sum of what its three neighbours may be off: the seat
 *           in the casing, the width of the bearing, the gear from its seat to its crown.
 * Step      The thickest of the usual ones with which half a step of both shims together changes
 * the backlash by no more than the tolerance that the file allows. Assumed   Tolerances, thickness
 * of the nominal shim and the steps are common practice without a source; the drive file does not
 * tell them. Units     m.
 */
#ifndef TS_RATING_DRIVE_SHIMS_H
#define TS_RATING_DRIVE_SHIMS_H

#include "rating/drive_float.h"

/* m, either way; common practice, no source */
#define TS_SHIM_SEAT    50e-6 /* of the seat in the casing from the crossing of the axes */
#define TS_SHIM_BEARING 60e-6 /* of the width of a bearing about its middle */
#define TS_SHIM_CROWN   25e-6 /* of the crown of the gear from its seat */
#define TS_SHIM_NOMINAL 1e-3  /* m, thickness of the shim that is designed for */

typedef struct ts_shim {
    uint32_t gear;
    double   t_xo;     /* pitch apex to the outer crown: where the gear must stand             */
    double   t_xi;     /* ... to the inner crown                                               */
    double   k_j;      /* 1, normal backlash that a move of the gear along its axis adds       */
    double   stack;    /* what its neighbours may be off together, either way, at the worst    */
    double   likely;   /* ... as the root of the squares                                       */
    double   range[2]; /* thinnest and thickest shim, whole steps                              */
} ts_shim;

typedef struct ts_bevel_shims {
    uint32_t    mesh;
    const char *missing;  /* NULL, or why there is nothing: a noun                              */
    double      step;     /* of the shims                                                       */
    bool        chosen;   /* by the tolerance of the file; false: it tells none, step as usual  */
    double      j_step;   /* normal backlash that half a step of both shims leaves              */
    double      j_bn[2];  /* as built and cold, least and greatest; NaN: not told               */
    double      j_all[2]; /* over all travel and warmth; NaN: not known                         */
    ts_shim     shims[2];
} ts_bevel_shims;

typedef struct ts_shim_plan {
    ts_bevel_shims *items; /* in the order of the meshes */
    uint32_t        count;
} ts_shim_plan;

/* `floats` NULL: backlash over travel and warmth is not known.  TS_OK or TS_NO_MEMORY. */
ts_status ts_shims_solve(const ts_drive *drive, const ts_motion *motion, const ts_floats *floats,
                         ts_arena *arena, ts_shim_plan *out);

#endif
