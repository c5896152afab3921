/* response/rigid_parts.h: the equations of a start.  For src/response alone. */
#ifndef TS_RESPONSE_RIGID_PARTS_H
#define TS_RESPONSE_RIGID_PARTS_H

#include "response/rigid_start.h"

enum {
    TS_START_BY_STARTERS,
    TS_START_BY_GASES,
    TS_START_IN_PADS,
    TS_START_IN_OIL,
    TS_START_IN_MESHES,
    TS_START_ENERGIES
};

/* Up to idle the curves of the spool rule, then its control does. */
typedef enum ts_start_phase { TS_PHASE_STARTS, TS_PHASE_GAINS, TS_PHASE_HOLDS } ts_start_phase;

/* The state y: speed of every spool, speed of every pad's rotor (those of starters alone move by
 * themselves), then five energies. */
typedef struct ts_cranking {
    const ts_rigid_start *start;
    uint32_t              cranked; /* which spool */
    bool                  lit, cut;
    ts_start_phase        phase;
    bool                 *engaged; /* [pad] of starters   */
    bool                 *stands;  /* [spool]             */
    double               *drag;    /* [spool] N.m of another spool's own air at its idle speed */
    /* what the last ts_cranking_solve left */
    double *fixed, *mass; /* [shaft] N.m without what its acceleration asks, kg.m2 */
    double *T, *slope;    /* [shaft] N.m from its driver, and by rad/s2 of the spool */
    double *alpha;        /* [spool] rad/s2 */
    double *gas;          /* [spool] N.m */
    double *moves;        /* [spool] N.m of it beyond what keeps a standing spool at rest */
    double *pad;          /* [pad] N.m taken from the shaft; of a free starter 0 */
    double *drive;        /* [pad] N.m of a starter on its own rotor */
} ts_cranking;

static inline bool ts_start_has_clutch(const ts_start_pad *pad)
{
    return pad->starter && !pad->coupled;
}

/* Are all numbers within their ranges?  *cranked: which spool is; *at: the shaft, pad or spool that
 * is not sound, counted on in this order. */
bool ts_rigid_start_is_sound(const ts_rigid_start *start, uint32_t *cranked, uint32_t *at);

/* Finds all accelerations and torques at y; false where they are not finite. */
bool ts_cranking_solve(ts_cranking *c, const double *y);
/* dy of y, after a solve by itself. */
bool ts_cranking_slope(ts_cranking *c, const double *y, double *dy);
/* N.m that a spool's shafts take from it at a speed, without acceleration. */
double ts_cranking_resists(ts_cranking *c, uint32_t spool, double w, const double *y);
/* rad/s that another spool tends to, as the cranked one turns at w. */
double ts_cranking_follows(const ts_cranking *c, uint32_t spool, double w);
double ts_cranking_kinetic(const ts_cranking *c, const double *y);

#endif
