/* response/rigid_start.h: how does a geared train that a starter cranks come from rest to idle, or
 * where does it hang?
 *
 * Model     Meshes are rigid, so that one speed a spool tells all; the torque of every mesh follows
 *           by d'Alembert from the free ends inwards: what the pads take, what the oil takes, what
 *           the inertias ask for.  A share of the power that enters a mesh is lost in it, whichever
 *           way it flows.  Meant for seconds: the first milliseconds, in which shafts wind up and
 *           play closes, are left to response/elastic_train.h.
 * Starter   Drives through an overrunning clutch that locks without slip: engaged while it puts
 *           torque in, let go when its torque would turn negative, engaged again when its rotor
 *           catches up.  Its torque is shut off at the cut-out speed.  One without a clutch stays
 *           coupled, and is a load from the cut-out on.
 * Spools    The cranked one is braked by `unlit` until light-off; from then on `lit` is what the
 *           gases put on it, their own losses taken off.  Both belong to a day of theta = 1; on
 *           another one the torque at w is that of the table at w/sqrt(theta), times delta (the
 *           usual corrected parameters).
 *           Another spool is turned by the air of the cranked one alone: air (w_c/idle_c)^2 less
 *           a square of its own speed, such that it turns at its idle speed when the cranked one
 *           does.  It stands until that moves it.
 * Beyond    Where asked, the run goes on from idle: the control gives the cranked spool the fuel
 *           for an even acceleration up to a further speed and holds that; what the gases then put
 *           on it is what this takes, inertias and all loads together.  The air that turns another
 *           spool goes on along the straight line between its speeds at both ends, with the drag of
 *           its own that lets it turn at that speed; the run ends when each is within 1 % of its
 *           own.
 * Oil       Of bearings by Palmgren: the larger of a slow torque and fast times n^(2/3); beside it
 *           what seals, air and the oil at the teeth ask (element/shaft_drag.h).
 * Events    Light-off, cut-out, clutch, other spools, idle and an acceleration that falls to the
 *           least: roots that SUNDIALS CVODE finds, where the run begins anew.
 * Energy    Work of starters and gases, what pads, oil and meshes take are integrated beside the
 *           motion; balance = what does not add up with the kinetic energies, over what was put in.
 *
 * Units     SI.
 */
#ifndef TS_RESPONSE_RIGID_START_H
#define TS_RESPONSE_RIGID_START_H

#include "base/arena.h"
#include "element/shaft_drag.h"

#include <stdbool.h>
#include <stdint.h>

#define TS_NO_DRIVER UINT32_MAX

/* Lines between points of rising w; beyond both ends the last line goes on. */
typedef struct ts_torque_curve {
    const double *w, *T; /* rad/s, N.m */
    size_t        count; /* 0: no torque; 1: the same everywhere */
} ts_torque_curve;
double ts_torque_curve_at(const ts_torque_curve *curve, double w);

typedef struct ts_start_shaft {
    uint32_t spool;
    uint32_t driver;    /* shaft that drives it, an earlier one; TS_NO_DRIVER: the spool itself */
    double   ratio;     /* of its speed to the spool's, > 0                                     */
    double   J;         /* kg.m2 of all that turns with it, rotors at pads apart                */
    double   loss;      /* share of the power that enters the mesh which drives it, 0 ..< 1     */
    double   oil_slow;  /* N.m, of the oil in its bearings, >= 0                                */
    double   oil_fast;  /* N.m/(rad/s)^(2/3) of its own speed, >= 0                             */
    ts_shaft_drag drag; /* of its seals, gears and teeth; none below 0                         */
} ts_start_shaft;

typedef struct ts_start_pad {
    uint32_t        shaft;
    bool            starter; /* it drives until the cut-out                        */
    bool            coupled; /* ... and stays coupled: it has no overrunning clutch */
    ts_torque_curve drive;   /* of a starter, against its own speed; never below 0  */
    ts_torque_curve load;    /* what it takes, never below 0; of a starter that stays, from the
                                cut-out on                                                  */
    double J;                /* kg.m2 of its rotor, >= 0; of a starter with a clutch > 0    */
} ts_start_pad;

typedef struct ts_start_spool {
    bool            cranked;    /* one of them is */
    ts_torque_curve unlit, lit; /* of the cranked one; unlit brakes, never below 0 */
    double          idle;       /* rad/s, > 0 */
    double          air;        /* N.m, of another one; 0: it stays at rest */
    double          beyond; /* rad/s, when the cranked one has its further speed; > 0 with air */
} ts_start_spool;

typedef struct ts_rigid_start {
    const ts_start_shaft *shafts; /* drivers before what they drive */
    uint32_t              shaft_count;
    const ts_start_pad   *pads;
    uint32_t              pad_count;
    const ts_start_spool *spools;
    uint32_t              spool_count;
    double                theta, delta; /* ambient temperature and pressure over the tables' */
    double                light_off, cut_out; /* rad/s of the cranked spool */
    double                least;  /* rad/s2, of the cranked spool: below that it hangs */
    double                until;  /* s to idle, and as long again beyond */
    double                beyond; /* rad/s of the cranked spool, above idle; 0: it ends at idle */
    double                rate;   /* rad/s2 from idle to there, > 0 */
    double                tolerance; /* relative, of CVODE */
    size_t                samples;   /* of the trace, 0 or at least 2 */
} ts_rigid_start;

typedef enum ts_start_outcome {
    TS_START_IDLE,     /* it came to idle                                  */
    TS_START_NO_TURN,  /* the starter does not turn it                     */
    TS_START_NO_LIGHT, /* it hangs, or time is up, before it lights        */
    TS_START_HUNG,     /* it hangs after light-off                         */
    TS_START_TIME_UP,  /* lit, still gaining, and not there in time        */
    TS_START_FAULT,    /* no answer: see the fault                         */
    TS_START_BEYOND    /* it came to idle and on to its further speed      */
} ts_start_outcome;

typedef enum ts_start_fault {
    TS_START_FINE,
    TS_START_BAD_NUMBER, /* an inertia, ratio, curve or limit out of its range */
    TS_START_NOT_FINITE, /* the equations gave no finite number                */
    TS_START_STUCK,      /* steps too small or too many                        */
    TS_START_UNBALANCED, /* the energies do not add up                         */
    TS_START_NO_MEMORY
} ts_start_fault;
const char *ts_start_fault_says(ts_start_fault fault);

typedef enum ts_start_happening {
    TS_STARTS_LIGHT_OFF,
    TS_STARTS_CUT_OUT,
    TS_STARTS_LET_GO, /* of a pad: its clutch lets go   */
    TS_STARTS_ENGAGE, /* ... or engages again           */
    TS_STARTS_FOLLOW, /* of a spool: the air turns it   */
    TS_STARTS_STAND,  /* ... or it comes to rest again  */
    TS_STARTS_IDLE,
    TS_STARTS_HANG,
    TS_STARTS_BEYOND, /* of the cranked spool: it has its further speed         */
    TS_STARTS_WITH    /* of another spool: it is within 1 % of the speed of its */
} ts_start_happening;

typedef struct ts_start_event {
    double             t; /* s */
    ts_start_happening what;
    uint32_t           of; /* pad or spool */
    double             w;  /* rad/s, of the cranked spool */
} ts_start_event;

/* Of the largest size met, with its sign: + where power goes outwards. */
typedef struct ts_start_peak {
    double T; /* N.m */
    double t; /* s   */
    double w; /* rad/s, of the spool of its tree */
} ts_start_peak;

typedef struct ts_start_energy { /* J */
    double starters, gases;      /* put in; gases may be negative */
    double pads, oil, meshes;    /* taken; oil: with seals and air */
    double kinetic;              /* gained                        */
    double scale, balance;       /* as above                      */
} ts_start_energy;

typedef struct ts_start_trace {
    size_t  count;
    double *t;     /* [sample] s                                          */
    double *w;     /* [sample * spool_count + spool] rad/s                */
    double *alpha; /* [sample] rad/s2, of the cranked spool               */
    double *gas;   /* [sample] N.m, on the cranked spool                  */
    double *T;     /* [sample * shaft_count + shaft] N.m, from its driver */
    double *pad;   /* [sample * pad_count + pad] N.m taken; negative: put in */
} ts_start_trace;

#define TS_START_EVENTS       64
#define TS_START_BALANCE_MOST 1e-6 /* an imbalance above this is refused */

typedef struct ts_start_run {
    ts_start_outcome outcome;
    ts_start_fault   fault;
    uint32_t         at;    /* shaft, pad or spool to blame, in that order of counting */
    double           t;     /* s, how far it came                   */
    double          *w;     /* [spool] at the end                   */
    double           alpha; /* rad/s2, of the cranked spool at the end */
    bool             lit;
    ts_start_event  *events;
    size_t           event_count;
    ts_start_peak   *shafts; /* [shaft] torque that it takes from its driver */
    ts_start_peak   *pads;   /* [pad] at the pad; of a starter what its clutch passes, < 0 */
    ts_start_energy  energy;
    ts_start_trace   trace;
    size_t           steps, evaluations;
} ts_start_run;

/* Runs it; what was reached stands in `run` whatever the outcome. */
void ts_rigid_start_run(const ts_rigid_start *start, ts_arena *arena, ts_start_run *run);

/* N.m that the oil in the bearings of a spool's shafts, and that their seals, gears and teeth, ask
 * of it at w (rad/s), without what is lost on the way. */
double ts_start_bearing_drag(const ts_rigid_start *start, uint32_t spool, double w);
double ts_start_drag(const ts_rigid_start *start, uint32_t spool, ts_drag_kind kind, double w);

/* Time of the first event of that kind; NaN: it did not happen. */
double ts_start_time_of(const ts_start_run *run, ts_start_happening what);

#endif
