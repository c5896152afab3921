/* power/power.h: who drives whom, with what torque, and which flank carries it?
 *
 * Torque balance over the tree, from the pads inwards, per condition, in both directions of power.
 * A share `loss` of the power that enters a mesh is lost in it, whichever way the power flows.
 * At rest the direction of power is that of the torque.
 */
#ifndef TS_POWER_POWER_H
#define TS_POWER_POWER_H

#include "motion/motion.h"

typedef enum ts_flow { TS_FLOW_INWARD = -1, TS_FLOW_NONE = 0, TS_FLOW_OUTWARD = 1 } ts_flow;
typedef enum ts_flank { TS_FLANK_NONE, TS_FLANK_LEADING, TS_FLANK_TRAILING } ts_flank;

typedef struct ts_mesh_load {
    ts_flow  flow;
    ts_flank flank[2];  /* of driver and driven: the flank that faces the rotation is leading      */
    double   T[2];      /* N.m at driver and driven, + when power flows outward                    */
    double   P[2];      /* W at driver and driven, + outward                                       */
    double   loss;      /* W, >= 0                                                                 */
    double   F_t;       /* N, >= 0, at r_1, r_2 of the mesh (losses apart: of the side with the higher torque) */
    double   F_r[2];    /* N, + towards the gear's own axis                                        */
    double   F_a[2];    /* N; cylindrical: + rearward; bevel: + away from its apex                 */
    double   force[3];  /* N, on the driven gear in x, y, z; the driver feels the opposite         */
} ts_mesh_load;

typedef struct ts_pad_load {
    double      T;        /* N.m absorbed; negative when the accessory drives                      */
    double      P;        /* W                                                                     */
    ts_standing standing; /* TS_ABSENT or TS_UNKNOWN: taken as 0 here, and said in a finding       */
} ts_pad_load;

typedef struct ts_spool_load {
    double T;         /* N.m taken from the spool; negative: the spool is driven */
    double P;         /* W                                                       */
    double P_pads;    /* W absorbed at pads less W driven at pads                */
    double P_driving; /* W that accessories put in                               */
    double P_lost;    /* W lost in meshes                                        */
    double imbalance; /* |P - P_pads - P_lost| over the largest power met, 1     */
} ts_spool_load;

typedef struct ts_power {
    const ts_motion *motion;
    ts_mesh_load    *mesh;  /* [condition * mesh_count + mesh]   */
    ts_pad_load     *pad;   /* [condition * pad_count + pad]     */
    ts_spool_load   *spool; /* [condition * spool_count + spool] */
    double          *shaft_imbalance; /* [condition * shaft_count + shaft] torque residual, relative */
} ts_power;

ts_status ts_power_prepare(const ts_drive *drive, const ts_motion *motion, ts_arena *arena,
                           ts_power *out);
ts_status ts_power_solve(const ts_drive *drive, ts_power *power, ts_workings *workings);

#endif
