/* response/drive_start.h: how is the engine of a drive started?
 *
 * Model     The shafts of the drive with what turns on them (mass/mass.h), rigid (rigid_start.h).
 * Loads     What an accessory takes at the conditions up to idle, torque against the speed of its
 *           pad, joined by lines; below the slowest it keeps that torque;
 *           beyond the fastest its last line goes on, and never below 0.  Where the start goes on
 *           to a faster condition, what it takes there is the last point.
 * Starter   Its `curve`; else the points of its `drives` joined by lines that go on at both ends.
 * Other     Spools that nothing cranks follow by `air torque` alone, else they stand.
 * Oil       Of the bearings of the boxes and radial shafts by Palmgren, given by who knows them;
 *           of the spool's own by `oil drag`, which goes with (nu n)^(2/3) as theirs.  Seals, air
 *           and the oil at the teeth by the laws of the losses, given by who knows them.
 * Sources   docs/method/start.md
 */
#ifndef TS_RESPONSE_DRIVE_START_H
#define TS_RESPONSE_DRIVE_START_H

#include "mass/mass.h"
#include "response/rigid_start.h"

typedef struct ts_start_question {
    const ts_drive      *drive;
    const ts_mass       *mass;     /* solved */
    const double        *oil_slow; /* [shaft] N.m                     */
    const double        *oil_fast; /* [shaft] N.m/(rad/s)^(2/3)       */
    const ts_shaft_drag *drag;     /* [shaft] of seals, air and teeth; NULL: left out */
    double               ambient;  /* K */
    double               nu_ratio; /* viscosity of the oil over that at 100 degC; NaN: not known */
    uint32_t             beyond;   /* condition to which it goes on from idle; TS_NOWHERE: none */
    size_t               samples;  /* of the trace */
} ts_start_question;

typedef struct ts_drive_start {
    const char    *missing;     /* NULL, or what a part lacks: a noun ...        */
    const char    *lacks;       /* ... and which part that is; NULL: the file    */
    uint32_t       spool;       /* that is cranked                               */
    uint32_t      *pad_of;      /* [pad of the start] of the train               */
    bool           oil_left;    /* the spool's own oil drag is not told          */
    size_t         rotors_left; /* accessories whose inertia is not known     */
    size_t         loads_left;  /* accessories whose power is not known       */
    ts_rigid_start start;
    ts_start_run   run;
} ts_drive_start;

/* TS_NO_MEMORY, or TS_OK with whatever outcome in out->run; nothing runs where anything is missing.
 */
ts_status ts_drive_start_run(const ts_start_question *question, ts_arena *arena,
                             ts_drive_start *out);

#endif
