/* response/forced_torsion.h: how far does a branched train swing when something shakes it?
 *
 * Model     Bodies and springs of response/torsion.h that form a tree: every body but the first is
 *           the outer end (b) of just one spring, and has a coordinate of its own, factor 1.
 * Damping   Viscous, beside each spring, along its stretch.
 * Shaken    By a torque on a body, or by an error of a spring: its stretch is then g_a q_a - g_b
 * q_b
 *           + e.  Both swing as cos(omega t).
 * Method    (K + i omega C - omega^2 M) q = f, by elimination from the outermost bodies inwards:
 *           exact for a tree, and as long as the tree.
 * Units     SI; amplitudes, not from peak to peak.
 */
#ifndef TS_RESPONSE_FORCED_TORSION_H
#define TS_RESPONSE_FORCED_TORSION_H

#include "response/torsion.h"

/* So many shakes are computed abreast: the same arithmetic on each, lane by lane, so that what one
 * comes to does not depend on its neighbours. */
#define TS_SHAKES_ABREAST 8

typedef struct ts_forced_lanes {
    double at[TS_SHAKES_ABREAST];
} ts_forced_lanes;

/* Made once for a tree; it takes its memory then and none later. */
typedef struct ts_forced_tree {
    const ts_twist_model *model;
    const double         *c;      /* [spring] N.m.s/rad, or N.s/m, >= 0              */
    uint32_t             *order;  /* [spring] from the first body outwards           */
    ts_forced_lanes      *work;   /* [4 body] real and imaginary parts               */
    ts_forced_lanes      *forces; /* [spring] what the last shakes came to: N or N.m */
} ts_forced_tree;

typedef struct ts_torsion_shake {
    double   omega;  /* rad/s, > 0                                        */
    uint32_t spring; /* in which the error is; TS_HELD: none              */
    double   e;      /* m or rad                                          */
    uint32_t body;   /* on which the torque acts; TS_HELD: none           */
    double   T;      /* N.m                                               */
} ts_torsion_shake;

/* TS_TWIST_BAD_LINK: it is no tree. */
ts_twist_fault ts_forced_tree_make(const ts_twist_model *model, const double *c, ts_arena *arena,
                                   ts_forced_tree *out);

/* Each shake by itself, 1 to TS_SHAKES_ABREAST of them: the amplitudes of the force (N), or torque
 * (N.m), in every spring and damper together go to tree->forces, a lane for a shake.
 * computed[lane], false: something is no number, as it is at an undamped resonance. */
void ts_forced_tree_shake_abreast(const ts_forced_tree *tree, const ts_torsion_shake *shakes,
                                  size_t count, bool *computed);

/* One shake: force[spring]; angle[body], may be NULL. */
bool ts_forced_tree_shake(const ts_forced_tree *tree, const ts_torsion_shake *shake, double *force,
                          double *angle);

#endif
