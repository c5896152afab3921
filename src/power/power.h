/* power/power.h: who drives whom, with what torque, and which flank carries it?
 *
 * Torque balance over the tree, from the pads inwards, per condition, in both directions of power.
 * A share `loss` of the power that enters a mesh is lost in it, whichever way the power flows.
 * At rest the direction of power is that of the torque, so a starter that only begins to turn the
 * engine has its torques, flanks and forces too.
 *
 * A spool that nothing cranks follows by air: what its pads take comes from its own shaft, at no
 * speed they take nothing, and no torque of the starter reaches it, since trees of two spools share
 * no mesh.  Starters that stand on a spool which is not cranked are a matter of the checks.
 */
#ifndef TS_POWER_POWER_H
#define TS_POWER_POWER_H

#include "motion/motion.h"
#include "pump/drive_pumps.h"

typedef enum ts_flow { TS_FLOW_INWARD = -1, TS_FLOW_NONE = 0, TS_FLOW_OUTWARD = 1 } ts_flow;
/* The flank that faces the rotation is leading. */
typedef enum ts_flank { TS_FLANK_NONE, TS_FLANK_LEADING, TS_FLANK_TRAILING } ts_flank;

typedef struct ts_mesh_load {
    ts_flow  flow;
    ts_flank flank[2]; /* of driver and driven                                                   */
    double   T[2];     /* N.m at driver and driven, + when power flows outward                   */
    double   P[2];     /* W at driver and driven, + outward                                      */
    double   loss;     /* W, >= 0                                                                */
    double   F_t;      /* N, >= 0, at r_1, r_2 of the mesh, of the side that power enters: the
                          larger of the two, since losses weaken the torque on its way           */
    double F_r[2];     /* N, + towards the gear's own axis                                       */
    double F_a[2];     /* N; cylindrical: + rearward; bevel: + away from its apex                */
    double force[3];   /* N, on the driven gear in x, y, z; the driver feels the opposite        */
} ts_mesh_load;        /* forces are NaN where geometry or position of the mesh is not known     */

typedef enum ts_clutch_state {
    TS_CLUTCH_STATE_NONE,    /* the accessory has no clutch                                      */
    TS_CLUTCH_STATE_ENGAGED, /* it drives the pad through its overrunning clutch                 */
    TS_CLUTCH_STATE_OVERRUNNING /* the pad runs ahead of it and its rotor stands still; a power
                                   that the file gives for the condition is the clutch's drag    */
} ts_clutch_state;

typedef struct ts_pad_load {
    double T; /* N.m absorbed; negative when the accessory drives                                */
    double P; /* W                                                                               */
    ts_standing standing; /* of the demand.  TS_ABSENT or TS_UNKNOWN, which is also a power wanted
                             at a pad that stands still: taken as 0 here, and said in a finding  */
    ts_clutch_state clutch_state;
} ts_pad_load;

typedef struct ts_spool_load {
    double T;         /* N.m taken from the spool; negative: the spool is driven (cranked)       */
    double P;         /* W                                                                       */
    double P_pads;    /* W absorbed at pads less W driven at pads                                */
    double P_driving; /* W that accessories put in, >= 0                                         */
    double P_lost;    /* W lost in meshes                                                        */
    double imbalance; /* |P - P_pads - P_lost| over the largest power met, 1                     */
} ts_spool_load;

typedef struct ts_power_order ts_power_order; /* who hangs on whom; made by ts_power_prepare */

typedef struct ts_power {
    const ts_motion *motion;
    uint32_t         spool_count;
    ts_mesh_load    *mesh;   /* [condition * mesh_count + mesh]   */
    ts_pad_load     *pad;    /* [condition * pad_count + pad]     */
    ts_spool_load   *spool;  /* [condition * spool_count + spool] */
    double          *T;      /* [condition * shaft_count + shaft], N.m that the shaft takes from the
                                mesh that drives it; of a spool: what its shafts take from it */
    double *shaft_imbalance; /* [condition * shaft_count + shaft] torque residual, relative: torque
                                in from the driving mesh less torque out at pads and meshes,
                                summed again from the loads above in the opposite order */
    const ts_power_order *order;
    ts_oil_units          units; /* whose torque is the load of pads that tell none */
} ts_power;

/* Memory for one drive; motion need only be prepared. */
ts_status ts_power_prepare(const ts_drive *drive, const ts_motion *motion, ts_arena *arena,
                           ts_power *out);

/* Computes every load of a solved motion.  Allocates nothing; always TS_OK. */
ts_status ts_power_solve(const ts_drive *drive, ts_power *power, ts_workings *workings);

/* What a mesh bears when T_2 (N.m, + outward) stands at its driven gear, whatever the conditions
 * ask: torques, forces and flanks; powers stay 0.  Needs a solved motion alone. */
ts_mesh_load ts_power_load_of(const ts_power *power, uint32_t mesh, double T_2);

#endif
