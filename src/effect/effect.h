/* effect/effect.h: what stops when a part fails, and what may have stopped it?
 *
 * Tree      A drive is a tree from its spool outwards.  A shaft turns when every mesh and shaft
 *           between it and its spool passes torque on; a pad turns its accessory when its shaft
 *           turns and its own spline and neck pass torque on.  Ratios do not change: what goes on
 *           turns as fast and the same way as before.
 * Jam       What seizes holds its shaft while the spool turns: something between the two breaks.
 *           At rest and without the others' loads every part there carries the same power, so the
 *           torque at each follows from the speeds alone, and the part breaks first whose torque
 *           is the least, told at one shaft.  Yielding flanks and dented bearings do not let go.
 *           A neck breaks for sure where the most it may bear is less than the least of the rest.
 * Doubt     Where a tooth, spline or shaft breaks that is not made for it, its pieces are in the
 *           gearbox: whatever still hangs on that drive is in doubt.  So is what hangs behind a
 *           mesh that has lost its oil.  Who asks for causes gets a doubt counted as a stop.
 * Start     Possible when a starter reaches its spool and nothing that the engine needs has
 *           stopped.
 * Sources   docs/method/effects.md
 */
#ifndef TS_EFFECT_EFFECT_H
#define TS_EFFECT_EFFECT_H

#include "effect/minimal_cause.h"
#include "rating/selectivity.h"

typedef enum ts_failure_mode {
    TS_FAILS_TEETH,        /* of a mesh: its teeth are gone                                 */
    TS_FAILS_JET,          /* of a mesh: its oil jet is blocked                             */
    TS_FAILS_SHEAR,        /* of a shaft: it breaks where it is driven                      */
    TS_FAILS_BEARING,      /* of a shaft: it leaves its meshes                              */
    TS_FAILS_SHAFT_JAM,    /* of a shaft: it seizes                                         */
    TS_FAILS_TUBE_SPLINE,  /* of a radial shaft: its spline is worn through                 */
    TS_FAILS_TUBE_NECK,    /* of a radial shaft: its neck breaks without need               */
    TS_FAILS_TUBE_HOLDS,   /* of a radial shaft: its neck would not break                   */
    TS_FAILS_SEIZURE,      /* of a pad: its accessory seizes                                */
    TS_FAILS_NECK,         /* of a pad: the neck breaks without need                        */
    TS_FAILS_NECK_HOLDS,   /* of a pad: the neck would not break                            */
    TS_FAILS_SPLINE,       /* of a pad: the drive spline is worn through                    */
    TS_FAILS_DISCONNECT,   /* of a pad: its accessory is let go                             */
    TS_FAILS_CLUTCH_IN,    /* of a pad: the overrunning clutch does not let go              */
    TS_FAILS_CLUTCH_SLIPS, /* of a pad: the overrunning clutch does not take hold          */
    TS_FAILS_LEAK,         /* of a pad: its seal leaks                                      */
    TS_FAILS_COVER,        /* of a pad: its cover is missing                                */
    TS_FAILURE_MODES
} ts_failure_mode;

/* Of what a mode is: `at` counts meshes, shafts or pads. */
typedef enum ts_failing { TS_FAILING_MESH, TS_FAILING_SHAFT, TS_FAILING_PAD } ts_failing;

typedef struct ts_failure {
    ts_failure_mode mode;
    uint32_t        at;
} ts_failure;

ts_failing ts_failing_of(ts_failure_mode mode);

typedef enum ts_goes { TS_GOES_ON, TS_IN_DOUBT, TS_STOPS } ts_goes;

/* How one part goes on, and why not. */
typedef struct ts_part_goes {
    ts_goes  goes;
    uint32_t broken; /* index of the failure or breakage below that did it; TS_NOWHERE: nothing */
} ts_part_goes;

/* What broke because something had seized. */
typedef struct ts_breakage {
    uint32_t cause; /* which failure                                                           */
    uint32_t pad;   /* whose neck broke; TS_NOWHERE: another part                              */
    uint32_t part;  /* number in the list of capacities; TS_NOWHERE: not known which           */
    uint32_t shaft; /* beyond which, that one included, nothing is driven any more             */
    bool     meant; /* a neck, and nothing else could have been it                             */
    double   T, T_next; /* N.m at the shaft that seized: what broke it at most, and what the next
                           would have borne at least; NaN: not known                             */
} ts_breakage;

#define TS_FAILURES_AT_ONCE 3

typedef struct ts_outcome {
    ts_part_goes *shafts; /* [shaft]; broken: below TS_FAILURES_AT_ONCE a failure, then breakages */
    ts_part_goes *pads;   /* [pad], with accessory or without                                  */
    ts_breakage   breakages[TS_FAILURES_AT_ONCE];
    uint32_t      breakage_count;
    bool     stuck_in;  /* a starter's clutch: the engine carries it round                       */
    uint32_t stuck_pad; /* ... on this pad                                                       */
    bool     oil_lost, chips;
    bool     start_possible; /* with what it leaves                                              */
} ts_outcome;

/* Named effects: what may be asked for causes. */
typedef enum ts_effect_kind {
    TS_EFFECT_ENGINE,  /* something the engine cannot run without stops        */
    TS_EFFECT_START,   /* the engine cannot be started                         */
    TS_EFFECT_SERVICE, /* all that serve the same for the aircraft stop        */
    TS_EFFECT_OIL,     /* the box loses its oil                                */
    TS_EFFECT_STARTER, /* the engine carries a starter round                   */
    TS_EFFECT_KINDS
} ts_effect_kind;

typedef struct ts_effect {
    ts_effect_kind kind;
    const char    *service; /* TS_EFFECT_SERVICE: what is served; else NULL */
} ts_effect;

/* What breaks when a shaft is held, necks apart, of all parts between it and its spool. */
typedef struct ts_weakest {
    uint32_t part; /* number in the list of capacities; TS_NOWHERE: none, or not known */
    double   T;    /* N.m, told at the spool; NaN: not known, INFINITY: nothing        */
} ts_weakest;

typedef struct ts_effects {
    const ts_drive  *drive;
    const ts_motion *motion;
    const ts_select *select;
    ts_failure *failures; /* of meshes, then shafts, then pads, each in the order of the train */
    uint32_t    failure_count;
    ts_outcome *outcomes; /* [failure], of each alone */
    ts_effect  *effects;
    uint32_t    effect_count;
    ts_causes  *causes;  /* [effect]                 */
    ts_weakest *weakest; /* [shaft] */
} ts_effects;

/* The failures, the effects and what breaks first; no outcome and no cause.  The select must be
 * solved.  TS_OK or TS_NO_MEMORY. */
ts_status ts_effects_prepare(const ts_drive *drive, const ts_motion *motion,
                             const ts_select *select, ts_arena *arena, ts_effects *out);
/* The outcome of each failure alone. */
ts_status ts_effects_each(ts_effects *effects, ts_arena *arena);
/* Everything above. */
ts_status ts_effects_solve(const ts_drive *drive, const ts_motion *motion, const ts_select *select,
                           ts_arena *arena, ts_effects *out);

/* ---- by itself ------------------------------------------------------------------------------- */

ts_status ts_outcome_take(const ts_train *train, ts_arena *arena, ts_outcome *out);
/* What up to TS_FAILURES_AT_ONCE failures at once leave.  Allocates nothing. */
void ts_outcome_solve(const ts_effects *effects, const ts_failure *failures, size_t count,
                      ts_outcome *out);
/* Does an effect come about: TS_GOES_ON not, TS_IN_DOUBT perhaps, TS_STOPS for sure? */
ts_goes ts_effect_of(const ts_effects *effects, const ts_effect *effect, const ts_outcome *outcome);
/* Why a part, which is of the kind that a mode is of, cannot fail in it; NULL: it can.  A sentence
 * without a full stop. */
const char *ts_failure_lacking(const ts_drive *drive, const ts_train *train, const ts_necks *necks,
                               ts_failure failure);

/* Which plug catches the metal of a failed part.  It runs with the oil of the take-off, of the
 * bevels on a spool and the spool's side of them, else with that of the box: to a plug of its own,
 * or to the sump that it drains to, out of which each scavenge line takes its part. */
typedef enum ts_plug { TS_PLUG_NOT_TOLD, TS_PLUG_NONE, TS_PLUG_SOME, TS_PLUG_THERE } ts_plug;
typedef struct ts_chip_way {
    ts_plug        plug;
    bool           take_off; /* else the box */
    uint32_t       drive;    /* whose        */
    const ts_sump *sump;     /* out of whose lines it is taken; NULL: a plug of its own, or none */
} ts_chip_way;
ts_chip_way ts_chip_way_of(const ts_drive *drive, const ts_train *train, ts_failure failure);
/* The same of all that drains with a take-off or a box. */
ts_chip_way ts_chip_way_from(const ts_drive *drive, uint32_t number, bool take_off);
/* The word for a mode in addresses, options and JSON: "teeth lost", "seized". */
const char *ts_failure_name(ts_failure_mode mode);

#endif
