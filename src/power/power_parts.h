/* power/power_parts.h: the steps of ts_power_solve, in their order, for one condition. */
#ifndef TS_POWER_POWER_PARTS_H
#define TS_POWER_POWER_PARTS_H

#include "power/power.h"

/* Who hangs on whom, in the order of the train; TS_NOWHERE ends a list. */
struct ts_power_order {
    uint32_t *first_mesh; /* [shaft] that takes power from it */
    uint32_t *next_mesh;  /* [mesh]                           */
    ts_input *terms;      /* room for the largest sum         */
};

/* What one condition of the drive is solved in. */
typedef struct ts_power_case {
    const ts_drive  *drive;
    const ts_motion *motion;
    const ts_train  *train;
    const ts_power  *power;
    ts_workings     *workings;
    uint32_t         condition;
    const double    *speed; /* [shaft], rad/s */
    ts_mesh_load    *mesh;  /* [mesh]         */
    ts_pad_load     *pad;   /* [pad]          */
    ts_spool_load   *spool; /* [spool]        */
    double          *T;     /* [shaft]        */
    double          *shaft_imbalance;
} ts_power_case;

/* What accessory and clutch ask of every pad. */
void ts_power_pads(const ts_power_case *c);
/* Torque of every shaft and mesh, from the free ends inwards. */
void ts_power_torques(const ts_power_case *c);
/* Forces and flanks of one mesh whose torques are known. */
void ts_power_forces(const ts_power_case *c, uint32_t mesh);
/* What each spool gives, and whether it all adds up. */
void ts_power_balances(const ts_power_case *c);

/* The record as a subject in this condition, and in all of them. */
static inline ts_subject ts_in_condition(const ts_power_case *c, ts_node node)
{
    return (ts_subject){node, (int32_t)c->condition};
}

static inline ts_subject ts_in_all_conditions(ts_node node)
{
    return (ts_subject){node, TS_EVERY_CONDITION};
}

#endif
