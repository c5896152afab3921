/* response/elastic_train.h: how does a train of bodies, shafts, teeth with play, clutches and necks
 * move in time, and when does something touch, part, break or stop?
 *
 * Model     Bodies turn at a steady speed each; what is followed is how far and how fast they are
 *           off it: q in rad, v in rad/s.  A bond stretches by s = g_a q_a - g_b q_b: a shaft has
 *           g = 1, a mesh its base radii.  Stiffness k and viscous damping c act along it.
 * Play      A mesh touches with its leading flanks where s > 0, with its trailing ones where
 *           s < -gap, and with none between.
 * Clutch    Drives inwards alone: engaged while b is ahead of a, free while a runs ahead of b.
 * Torque    Of a bond is what strains it, k s; what damps acts in its joints and in the oil.
 * Breaking  A bond whose torque at b reaches `breaks` in either sense is no more; what strain it
 *           held is lost.
 * Stop      A body stops at once, or by a friction that grows evenly from nothing and would bring
 *           it to rest in `ramp` seconds if it were alone; it sticks when it stands and slips again
 *           when it is torn loose.
 *
 * Pulses    Torques from outside that begin with the run: A e^(-d t) cos(w t + p); a step has d = w
 * = p = 0.  One that rises grows evenly from nothing until then: times t/rise.
 *
 * Method    Between two of these events all is linear, and the motion is its own Taylor series,
 *           summed until the tail is below the tolerance; each event is a root of the series, and
 *           the run begins anew there: nothing is smoothed.
 *
 * Energy    Heat of damping, heat of the stop and work of the torques from outside are integrated
 *           beside the motion; balance = what does not add up over the largest that was strained,
 *           dissipated or broken.
 *
 * Units     SI, of the body b for torques of a bond.
 */
#ifndef TS_RESPONSE_ELASTIC_TRAIN_H
#define TS_RESPONSE_ELASTIC_TRAIN_H

#include "base/arena.h"

#include <stdbool.h>
#include <stdint.h>

#define TS_NO_BODY UINT32_MAX

typedef enum ts_bond_kind { TS_BOND_SHAFT, TS_BOND_MESH, TS_BOND_CLUTCH } ts_bond_kind;

typedef struct ts_bond {
    ts_bond_kind kind;
    uint32_t     a, b;     /* bodies, the one nearer to the spool first */
    double       g_a, g_b; /* 1 and 1, or m and m                       */
    double       k;        /* N.m/rad, or N/m                           */
    double       c;        /* N.m.s/rad, or N.s/m; >= 0                 */
    double       gap;      /* m, >= 0; of a mesh                        */
    double       breaks;   /* N.m at b; INFINITY: it holds              */
} ts_bond;

typedef struct ts_turning_body {
    double J;      /* kg.m2, > 0                                                       */
    double speed;  /* rad/s, >= 0, of the steady state                                 */
    double torque; /* N.m from outside at that speed, + where it drives                */
    double slope;  /* N.m.s/rad, <= 0: what that torque gains with a rad/s more        */
    double q, v;   /* rad and rad/s off the steady state, at the beginning             */
} ts_turning_body;

typedef struct ts_torque_pulse {
    uint32_t body;
    double   A;     /* N.m, + where it drives */
    double   decay; /* 1/s, >= 0              */
    double   omega; /* rad/s, >= 0            */
    double   phase; /* rad                    */
    double   rise;  /* s, >= 0; 0: it is there at once */
} ts_torque_pulse;

typedef struct ts_elastic_train {
    const ts_turning_body *bodies;
    uint32_t               body_count;
    const ts_bond         *bonds;
    uint32_t               bond_count;
    const ts_torque_pulse *pulses;
    size_t                 pulse_count;
    uint32_t               stops;     /* body, or TS_NO_BODY                              */
    double                 ramp;      /* s; 0: at once                                    */
    double                 until;     /* s, > 0                                           */
    double                 tolerance; /* of what moves within a step                     */
    size_t                 samples;   /* of the trace; 0: none is kept                    */
} ts_elastic_train;

typedef enum ts_happening {
    TS_HAPPENS_TOUCH_LEADING, /* of a bond: its leading flanks meet, or a clutch engages */
    TS_HAPPENS_TOUCH_TRAILING,
    TS_HAPPENS_PART,  /* its flanks part, or a clutch lets go    */
    TS_HAPPENS_BREAK, /* it breaks                               */
    TS_HAPPENS_STAND, /* the body that stops stands              */
    TS_HAPPENS_SLIP   /* it is torn loose                        */
} ts_happening;

typedef struct ts_train_event {
    double       t; /* s */
    ts_happening what;
    uint32_t     bond; /* TS_NO_BODY of a stop */
    double       T;    /* N.m, torque of the bond at b; of a break the torque that broke it */
    double       q;    /* rad, of the body that stops, or of bond's a: off its steady state */
} ts_train_event;

/* Largest torques of a bond at b, with their signs; + outwards. */
typedef struct ts_bond_peak {
    double start;         /* N.m, when the run begins                */
    double before, after; /* N.m, until the first break, and from it */
    double t_before, t_after;
    bool   broken;
    bool   free; /* a clutch that has let go, when the run ends */
} ts_bond_peak;

typedef struct ts_energy_account { /* J, from the beginning to the end */
    double kinetic;                /* gained                                    */
    double strain;                 /* gained                                    */
    double damped;                 /* heat in shafts and teeth                  */
    double stopped;                /* heat in what stops, and its own turning   */
    double broken;                 /* strain that was in what broke             */
    double work;                   /* from outside                              */
    double scale;                  /* largest of strain + heat + broken         */
    double balance;                /* largest imbalance over scale              */
} ts_energy_account;

typedef struct ts_train_trace {
    size_t  count;
    double *t; /* [sample] s                                     */
    double *T; /* [sample * bond_count + bond] N.m at b          */
    double *w; /* [sample * body_count + body] rad/s             */
} ts_train_trace;

typedef enum ts_run_fault {
    TS_RUN_FINE,
    TS_RUN_BAD_NUMBER, /* of body, bond or pulse `at`                            */
    TS_RUN_NOT_FINITE, /* the equations gave no number, at body `at`             */
    TS_RUN_STUCK,      /* too many steps are needed; body `at` swings fastest     */
    TS_RUN_TOO_LIVELY, /* more events than anybody would believe                 */
    TS_RUN_UNBALANCED, /* the energies do not add up                             */
    TS_RUN_NO_MEMORY
} ts_run_fault;
const char *ts_run_fault_says(ts_run_fault fault);

#define TS_EVENTS_KEPT   256
#define TS_BALANCE_LEAST 1e-6 /* an imbalance above this is refused */

typedef struct ts_train_run {
    ts_run_fault      fault;
    uint32_t          at;     /* which body or bond, where one is to blame */
    double            t;      /* s, how far it came                        */
    ts_train_event   *events; /* the first of them; breaks and stops always */
    size_t            event_count;
    size_t            happened; /* how many there were, kept or not */
    size_t            touches;  /* how often flanks met, all of them        */
    ts_bond_peak     *peaks;    /* [bond]                                   */
    double           *q, *v;    /* [body] at the end                        */
    bool              stands;   /* the body that stops, at the end          */
    ts_energy_account energy;
    ts_train_trace    trace;
    size_t            steps;
} ts_train_run;

/* Runs it; what was reached stands in `run` whatever the fault. */
void ts_elastic_train_run(const ts_elastic_train *train, ts_arena *arena, ts_train_run *run);

#endif
