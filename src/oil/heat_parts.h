/* oil/heat_parts.h: the steps of ts_heat_solve. */
#ifndef TS_OIL_HEAT_PARTS_H
#define TS_OIL_HEAT_PARTS_H

#include "oil/drive_heat.h"

#define TS_HEAT_C_D        0.7  /* 1  of a small round hole                       */
#define TS_HEAT_JET_FACE   0.04 /* m  of the face width that one jet wets at most */
#define TS_HEAT_MU_SPLINE  0.1
#define TS_HEAT_TILT       1e-3 /* of two shafts in one pad */
#define TS_HEAT_ALPHA_D    (3.14159265358979323846 / 6.0)
#define TS_HEAT_NODES_MOST 3 /* made addresses a place   */

/* What one place loses as powers of load and viscosity, each taken from its law at one point: what
 * the rounds of ts_heat_settle run on.  The last round is run on the laws themselves, and the
 * balance tells if both do not agree. */
typedef struct ts_heat_quick {
    ts_heat_site site; /* of the place, beside what is read in every round      */
    uint32_t     drive, shaft, gear_shaft[2];
    int          gear_count;
    double       load;  /* 1/m.s  load over face width for a watt that enters the mesh           */
    double       mu;    /* 1      friction of ISO/TR 14179-2 at its least load and eta_0         */
    double       slide; /* 1      heat for a friction of 1 over the power that enters            */
    double argument;    /*        of the logarithm of Benedict and Kelley for w = 1, eta = 1     */
    double rolling;     /* W      at w = 1 and eta_0                                             */
    double windage[2];  /* W  at eta_0                                                  */
    double thrown, churned; /* W  for a density of 1; whatever the density                   */
    double fast, slow;      /* W  oil in the bearing for nu = 1, and where speed no longer counts */
    double still;           /* W  that changes with nothing                                  */
    double seal, seal_slope; /* W, W/K  at theta_0                                            */
    double torque_seal;      /* W  by the torque of ISO/TR 14179-1                            */
    /* Where a law ends is told once, at the rated load and the allowed rise: a balance that steps
     * to and fro over the end would never settle. */
    bool teeth_ended, seal_ended;
} ts_heat_quick;

struct ts_heat_scratch {
    double *in;            /* [shaft]  W that enter the shaft                             */
    double *on;            /* [shaft]  W that the shaft passes on                       */
    double *x, *g;         /* [drive]  last rise and what was left over of it           */
    double *change, *most; /* [drive]  W  by how much powers changed in a round; the largest */
    double *heat;          /* [drive]                                                   */
    double *need;          /* [place]  m3/s                                             */
    double *Q;             /* [place]  m3/s, full flow                                  */
    double (*P)[2];        /* [mesh]                                                    */
    ts_heat_case  *cases;  /* [place] */
    ts_heat_state *states; /* [drive] */
    ts_heat_quick *quick;  /* [method, condition, place] */
};

/* What is settled at once: one condition by one method. */
typedef struct ts_heat_desk {
    ts_heat      *heat;
    int           method;
    uint32_t      condition;
    double        warmer;  /* K, of the feed                       */
    bool          sizing;  /* the rise is the allowed one, no oil is thrown yet */
    const double *speed;   /* [shaft] rad/s */
    double (*P)[2];        /* [mesh]  */
    ts_heat_case  *cases;  /* [place] */
    ts_heat_state *states; /* [drive] */
    ts_heat_quick *quick;  /* [place] */
    ts_workings   *workings;
} ts_heat_desk;

ts_heat_desk ts_heat_open(ts_heat *heat, int method, uint32_t condition, ts_workings *workings);

/* The places of a drive, and which of them are known; lines are solved. */
void ts_heat_gather(ts_heat *heat);
/* Sets the oil of a drive for a rise of x. */
void ts_heat_oil_at(const ts_heat_desk *desk, uint32_t drive, double x);
/* Takes the quick laws of one condition by one method from the laws themselves, at a point. */
void ts_heat_quicken(const ts_heat_desk *desk);
/* ... and runs on them: sums and what ts_heat_carry asks for. */
void ts_heat_lose_quickly(const ts_heat_desk *desk);
/* What every place loses with the loads in P and the oil of the states. */
void ts_heat_lose(const ts_heat_desk *desk);
/* Loads from the losses, pads inwards; returns the largest change of a power over the
 * largest power of its drive. */
double ts_heat_carry(const ts_heat_desk *desk);
/* Loads, losses and temperatures until they agree. */
void ts_heat_settle(const ts_heat_desk *desk);
/* How much oil every place needs, gets, and through which jets. */
void ts_heat_size(ts_heat *heat);
void ts_heat_jets(ts_heat *heat, ts_workings *workings);
/* Where every drive is warmest, and the flow that would keep it within its limits. */
void ts_heat_find_worst(ts_heat *heat);
/* Which share of the power comes through. */
void ts_heat_paths(ts_heat *heat);

#endif
