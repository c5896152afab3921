/* response/drive_torsion.h: which bodies and springs is a drive in torsion, and how do they swing?
 *
 * Bodies    The spool with the bevel on it; both ends of the radial shaft, each with its bevel and
 *           half of the tube; every box shaft with its gears and bearings; every accessory.
 * Springs   Radial shafts, meshes, and from each box shaft to the rotor of an accessory the half of
 *           the shaft that lies between.  Gears of one shaft turn together.
 * Angles    Each in the sense in which its shaft runs, so that no sense need be known.
 * States    Running: what an overrunning clutch lets go is not there.  Cranked: it is.
 */
#ifndef TS_RESPONSE_DRIVE_TORSION_H
#define TS_RESPONSE_DRIVE_TORSION_H

#include "mass/mass.h"
#include "response/torsion.h"

typedef struct ts_twist_part {
    const char *name; /* "hp spool", "hp tower shaft, inner end", "generator" */
    uint32_t    shaft;
    int32_t     accessory; /* index, or -1: no accessory */
    double      ratio;     /* of its shaft to the spool  */
} ts_twist_part;

typedef enum ts_twist_link { TS_LINK_SHAFT, TS_LINK_MESH, TS_LINK_PAD } ts_twist_link;

typedef struct ts_twist_joint {
    ts_twist_link link;
    uint32_t      from, to; /* bodies                                                          */
    uint32_t      mesh;     /* TS_NOWHERE: it is none                                          */
    double        k_spool;  /* N.m/rad, seen from the spool                                    */
    bool          assumed;  /* the stiffness rests on a shape or a mean value that is assumed  */
} ts_twist_joint;

/* One tree, from one spool, in one state. */
typedef struct ts_drive_twist {
    uint32_t        drive;
    bool            cranked;
    bool            clutch; /* has it another state too? */
    ts_twist_part  *parts;  /* [body]   */
    ts_twist_joint *joints; /* [spring] */
    ts_twist_model  model;
    ts_twist_modes  modes;
    const char     *missing;  /* NULL, or what a part lacks: a noun ...      */
    const char     *lacks;    /* ... and which part that is                  */
    size_t          left_out; /* accessories whose inertia is not known      */
    ts_twist_fault  fault;
} ts_drive_twist;

/* What is asked of others: stiffness of each mesh along its line of action at full contact. */
typedef struct ts_twist_question {
    const ts_drive *drive;
    const ts_mass  *mass;   /* solved */
    const double   *mesh_k; /* [mesh] N/m; NaN: not known, then the mean value of ISO 6336-1 */
    uint32_t        tapped; /* which drive */
    bool            cranked;
} ts_twist_question;

ts_status ts_drive_twist_solve(const ts_twist_question *question, ts_arena *arena,
                               ts_drive_twist *out);

/* Has the drive anything that a clutch lets go, so that both states differ? */
bool ts_drive_twist_has_clutch(const ts_mass *mass, uint32_t tapped);

/* Does a starter of the tree drive through its clutch in the condition? */
bool ts_drive_is_cranked(const ts_power *power, uint32_t drive, uint32_t condition);

/* The nearest excitation of a mode: a turn of a shaft, once or twice, or the teeth of a mesh. Where
 * a clutch lets something go, only in conditions of that state. */
typedef struct ts_twist_meeting {
    int32_t  condition; /* -1: none */
    uint32_t shaft;     /* whose turns; TS_NOWHERE: teeth of ... */
    uint32_t mesh;
    int      order; /* 1 or 2    */
    double   off;   /* excitation over the mode's frequency - 1 */
} ts_twist_meeting;
ts_twist_meeting ts_twist_meeting_of(const ts_drive_twist *twist, const ts_power *power,
                                     size_t mode);

#endif
