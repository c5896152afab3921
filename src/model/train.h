/* model/train.h: the same drive as flat lists of shafts, gears, meshes and pads.
 *
 * A shaft stands after the shaft that drives it, so one pass forwards visits the tree from the
 * spools outwards and one pass backwards from the free ends inwards.  Shaft k of a spool's tree is
 * driven by exactly one mesh; spools are driven by none.
 *
 * Axes.  Origin on the engine axis, x to the right and y up as seen from behind (looking forward),
 * z rearward, towards the viewer.  Engine-parallel shafts turn positively about +z: ccw seen from
 * behind.  A radial shaft turns positively about its own outward direction: ccw seen from outside,
 * looking to the engine axis.
 */
#ifndef TS_MODEL_TRAIN_H
#define TS_MODEL_TRAIN_H

#include "base/arena.h"
#include "base/diagnostic.h"
#include "model/drive.h"
#include "towershaft/status.h"

#include <stdint.h>

#define TS_NOWHERE UINT32_MAX

typedef enum ts_shaft_kind { TS_SHAFT_SPOOL, TS_SHAFT_TOWER, TS_SHAFT_BOX } ts_shaft_kind;
/* Which way along the arc a branch grows, as seen from behind. */
typedef enum ts_way { TS_WAY_NONE, TS_WAY_CLOCKWISE, TS_WAY_ANTICLOCKWISE } ts_way;
typedef enum ts_gear_role { TS_GEAR_BEVEL, TS_GEAR_MAIN, TS_GEAR_STEP } ts_gear_role;
typedef enum ts_mesh_kind { TS_MESH_BEVEL, TS_MESH_CYLINDRICAL } ts_mesh_kind;

typedef struct ts_shaft {
    ts_shaft_kind kind;
    ts_node       node;   /* its record: the spool's, tower shaft's or box shaft's */
    const char   *name;   /* "hp spool", "hp tower shaft", "hp box input", "idler 3", "fuel pump" */
    uint32_t      spool;  /* index into drive->spools: the root of its tree */
    uint32_t      drive;  /* index into drive->drive; TS_NOWHERE for an untapped spool */
    uint32_t      mesh;   /* the mesh that drives it; TS_NOWHERE for a spool */
    uint32_t      number; /* box shafts: 1, 2, 3 ... along the arc from one end to the other,
                             boxes in file order; 0 for others.  What pictures show. */
    ts_way   way;         /* box shafts beyond the input */
    bool     side;        /* of a side branch, not of the box's clockwise or anticlockwise chain */
    uint32_t pad[2];      /* [TS_FRONT], [TS_REAR]: index or TS_NOWHERE */
    const ts_box_shaft *record; /* TS_SHAFT_BOX only */
} ts_shaft;

typedef struct ts_gear {
    ts_gear_role           role;
    uint32_t               shaft;
    uint32_t               step; /* 0 main, 1.. steps */
    ts_node                node; /* shaft record, step record, or bevels record */
    ts_tally               teeth;
    ts_measure             m_n; /* cylindrical: normal module; bevel: outer transverse m_et */
    ts_measure             alpha_n;
    ts_measure             beta; /* helix angle, >= 0; bevel: mean spiral angle */
    int                    hand; /* +1 right, -1 left, 0 straight */
    ts_measure             face;
    ts_measure             x;
    ts_pick                material; /* row of catalog/gear_material.h */
    ts_measure             rim, web; /* cylindrical; absent: solid */
    const ts_tooth_system *system;   /* NULL for bevels */
} ts_gear;

typedef struct ts_mesh {
    ts_mesh_kind          kind;
    uint32_t              driver; /* gears; "driver" is the one nearer to the spool, whichever */
    uint32_t              driven; /* way the power flows */
    uint32_t              driver_shaft;
    uint32_t              driven_shaft;
    ts_node               node;   /* cylindrical: the driven shaft's record; bevel: the bevels' */
    ts_measure            loss;   /* share of transmitted power lost, 1 */
    const ts_bevel_gears *bevels; /* TS_MESH_BEVEL only */
} ts_mesh;

typedef struct ts_pad {
    uint32_t     shaft;
    ts_face_side face;
    ts_pad_use   use;
    int32_t      accessory; /* index or -1 */
    ts_node      node;
    const char  *name; /* accessory name, "cover", "hand turning", "open" */
} ts_pad;

typedef struct ts_train {
    ts_shaft *shafts;
    ts_gear  *gears;
    ts_mesh  *meshes; /* in the order of the shafts they drive */
    ts_pad   *pads;   /* in the order of shaft number, front before rear */
    uint32_t  shaft_count, gear_count, mesh_count, pad_count;
} ts_train;

/* Does the drive spend hours in it? */
static inline bool ts_condition_lasts(const ts_condition *condition)
{
    return condition->hours.standing == TS_GIVEN && condition->hours.value > 0.0;
}

/* The pad of an accessory; TS_NOWHERE: it stands on none. */
static inline uint32_t ts_train_pad_of(const ts_train *train, int32_t accessory)
{
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory == accessory)
            return p;
    return TS_NOWHERE;
}

/* Lays the drive out flat.  Shafts: the spools, then for each drive its tower shaft, its box input,
 * and what the input drives, clockwise first.  A branch of the input grows clockwise in the file's
 * sight.  A step gear has the hand of its shaft's main gear.
 *
 * Diagnoses, without a place, what ts_read_drive has refused with one and a drive that was made in
 * memory may hold: an accessory on two pads (pad-used-twice), a spool that is not described
 * (unknown-spool), a `from` that names a step which is not there (missing-step). */
ts_status ts_train_build(const ts_drive *drive, ts_arena *arena, ts_diagnostics *list,
                         ts_train *out);

#endif
