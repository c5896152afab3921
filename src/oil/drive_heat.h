/* oil/drive_heat.h: where does a drive turn power into heat, what carries the heat away, and how
 * warm does the oil become?
 *
 * Methods   Two published ones a place, each with a flow of power and a temperature of its own;
 * what lies between them is the spread.  Oil is sized for the larger. first   ISO/TR 14179-2
 * (teeth, dipping, seals), Anderson and Loewenthal (windage), Palmgren (bearings) second  Anderson
 * and Loewenthal (teeth), Dawson (windage), ISO/TR 14179-1 (bearings, seals), momentum (dipping)
 *           Oil that is thrown off and splines askew have one.
 * Balance   Power of the spool = power at the pads + heat, in every condition.  Losses follow from
 *           the loads, and loads carry the losses: both are repeated until they agree.
 * Oil       As warm as half way between feed and return; its rise follows from heat and flow. Where
 *           the file tells no flow, each place is given what keeps its rise at the one allowed in
 *           every condition that lasts; holes are never smaller than `least jet`.
 * Left out  Heat that the casing gives off, breakaway at rest, splines of the radial shaft,
 *           bearings of the spool.  Loads of bearings are those of the rated flow of power.
 * Workings  Under addresses of their own, `heat` and `heat by the second method` below the mesh,
 *           bearing or pad.
 * Sources   docs/method/oil.md
 */
#ifndef TS_OIL_DRIVE_HEAT_H
#define TS_OIL_DRIVE_HEAT_H

#include "element/shaft_drag.h"
#include "oil/jet.h"
#include "oil/mesh_loss.h"
#include "rating/drive_rubbing.h"
#include "rating/drive_splines.h"

#include <math.h>

#define TS_HEAT_METHODS 2

typedef enum ts_heat_kind {
    TS_HEAT_TEETH,
    TS_HEAT_WINDAGE,
    TS_HEAT_OIL, /* that teeth dip into, or throw off */
    TS_HEAT_BEARING_OIL,
    TS_HEAT_BEARING_LOAD,
    TS_HEAT_SEAL,
    TS_HEAT_SPLINE,
    TS_HEAT_KINDS
} ts_heat_kind;
/* "teeth", "windage" */
const char *ts_heat_kind_says(ts_heat_kind kind);

typedef enum ts_heat_site { TS_HEAT_AT_MESH, TS_HEAT_AT_BEARING, TS_HEAT_AT_PAD } ts_heat_site;

/* A gear that turns in the mist, counted with one mesh. */
typedef struct ts_heat_gear {
    uint32_t shaft;
    double   R, F, d_f, m_n; /* m  pitch radius, face width, root diameter, module */
} ts_heat_gear;

typedef struct ts_heat_place {
    ts_heat_site site;
    uint32_t     drive;                 /* whose oil                                              */
    uint32_t     shaft;                 /* on which its drag acts; of a mesh the driver's         */
    uint32_t     mesh, line, pad;       /* the one of its site                                    */
    int          seat;                  /* of a bearing: its number on the line                   */
    uint32_t     fed;                   /* place whose jets take its heat away                    */
    ts_node      node[TS_HEAT_METHODS]; /* of the workings                                        */
    const char  *name;                  /* "hp box input to idler 1", "fuel pump, bearing front" */
    const char  *missing; /* NULL, or what is not known or not there: nothing is lost here */

    /* A mesh; gear 1 is the smaller. */
    bool         dips;
    ts_loss_mesh teeth;
    double       H_v, eps_alpha;
    double       b;          /* m  common face width           */
    double       alpha_n, m; /* of the teeth, for jets         */
    ts_heat_gear gears[2];
    int          gear_count;

    /* A bearing. */
    double d, d_m, alpha;   /* m, m, rad                                       */
    double f_0, f_1z, f_1y; /* f_1y 0: f_1 is f_1z                             */
    double C_0r, mu;
    bool   rolls; /* rollers: axial load does not rub */

    /* A pad. */
    double d_sh;  /* m  of its seal; 0: none      */
    double slope; /* 1  of its spline; 0: none    */
} ts_heat_place;

typedef struct ts_heat_case {
    double P[TS_HEAT_KINDS]; /* W                                                        */
    double windage[2];       /* W  of each gear of the mesh                              */
    double sum;              /* W                                                        */
    bool   law_ended; /* the second method has no friction for this load and speed: that of the
                         first stands in */
} ts_heat_case;

/* The oil of one drive in one condition by one method. */
typedef struct ts_heat_state {
    double theta_in, rise, theta; /* K; theta: half way                                 */
    double eta, nu, rho, c;       /* of the oil at theta                                */
    double rho_in;                /* kg/m3, of the feed: Q is told as it comes           */
    double Q;                     /* m3/s                                               */
    double heat;                  /* W                                                  */
    double P_spool, P_pads;       /* W  taken from the spool, taken at the pads         */
    double imbalance;             /* 1  |P_spool - P_pads - heat| over the largest power */
    bool   dry;                   /* heat arises, and no oil comes                      */
    bool   settled;
} ts_heat_state;

/* The jets of a place at the condition that lasts in which its teeth are fastest. */
typedef struct ts_heat_jet {
    int         count;
    double      need;     /* m3/s  that the heat asks for; INFINITY: no flow would do          */
    double      Q, d;     /* m3/s, m  of all holes; of one hole                                */
    double      dp;       /* Pa that drops over the holes there                                */
    double      v, v_t;   /* m/s                                                               */
    double      u;        /* m/s  of the wind across it, of teeth or cage                      */
    double      depth, h; /* m  that it comes into the tooth space; of the tooth               */
    double      drift;    /* m  that the wind of teeth or cage carries it aside across its gap */
    ts_jet_side side;
    int32_t     at; /* condition */
} ts_heat_jet;

/* Where a drive is warmest, and what would help. */
typedef struct ts_heat_worst {
    int     method;
    int32_t condition; /* -1: none */
    double  value;     /* K */
    double  flow;      /* m3/s  full flow of all boxes that keeps it and every other condition
                          within the limit, by both methods; NaN: it is kept;
                          INFINITY: none would */
} ts_heat_worst;

typedef struct ts_heat_scratch ts_heat_scratch;

typedef struct ts_heat {
    const ts_drive       *drive;
    const ts_motion      *motion;
    const ts_power       *power;
    const ts_lines       *lines;
    const ts_splines     *splines;
    const ts_rubbing_oil *oil;
    const char           *missing;  /* NULL, or what the file lacks for any of it: a noun         */
    bool                  no_teeth; /* missing: a mesh has no shape, which other rules tell */
    ts_heat_place        *places;   /* meshes in their order, then bearings, then pads            */
    uint32_t              place_count, bearing_begin, pad_begin;
    uint32_t              skipped; /* bearings that are not known                               */
    ts_heat_case         *cases;   /* [ts_heat_at]                                              */
    double (*P)[2];          /* W  [method, condition, mesh] at driver and driven, + outward      */
    ts_heat_state *states;   /* [method, condition, drive]                                        */
    ts_heat_jet   *jets;     /* [place]; pads: none                                               */
    ts_heat_worst *rises;    /* [drive] rise, of conditions that last     */
    ts_heat_worst *leavings; /* [drive] temperature of the return, of all */
    ts_node (*nodes)[TS_HEAT_METHODS]; /* [drive] of the workings                               */
    double *share;       /* [condition * pads + pad] of the power at the spool that comes to
                            the pad, or of that at a pad that comes to the spool; first method;
                            NaN: no path that carries power one way                           */
    double  *feed_share; /* [condition] of the full flow                                      */
    double   n_full;     /* rad/s  of the cranked spool, from which on the flow is full       */
    uint32_t full_at;    /* condition in which it turns so fast */
    double   c_100;      /* J/(kg.K)                                                          */
    double   Q;          /* m3/s  of all places, full flow                                    */
    ts_heat_scratch *scratch;
} ts_heat;

/* Memory and addresses; `source` may be NULL.  What is handed in need only be prepared. */
typedef struct ts_heat_from {
    const ts_drive   *drive;
    const ts_power   *power;
    const ts_lines   *lines;
    const ts_splines *splines;
    const ts_rubbing *rubbing;
} ts_heat_from;
ts_status ts_heat_prepare(const ts_heat_from *from, ts_source *source, ts_arena *arena,
                          ts_heat *out);

/* Everything behind solved lines, splines and oil.  Allocates nothing. */
void ts_heat_solve(ts_heat *heat, ts_workings *workings);

/* The same temperatures with a feed that is warmer by `more` K, at the same holes: of one drive in
 * one condition by the first method.  Disturbs nothing that was solved. */
ts_heat_state ts_heat_with_feed(ts_heat *heat, uint32_t drive, uint32_t condition, double more);

/* What its seals, its gears in the air and the oil at the teeth that drive it ask of one shaft
 * while oil of theta (K) is in the boxes, by the first method; seal NaN: not known. */
ts_shaft_drag ts_heat_shaft_drag(const ts_heat *heat, uint32_t shaft, double theta);

/* N.m, >= 0: what air, oil, bearings and seals without load ask of a spool that turns at n > 0
 * (rad/s) while oil of theta (K) is in the boxes, by the first method; at n = 0 what it is just
 * above.  Friction by load (teeth, splines, loaded bearings) comes on top.  NaN: not known. */
double ts_heat_drag_at(const ts_heat *heat, uint32_t spool, double n, double theta);

static inline const ts_heat_case *ts_heat_at(const ts_heat *heat, int method, uint32_t condition,
                                             uint32_t place)
{
    const size_t row = (size_t)method * heat->motion->condition_count + condition;

    return &heat->cases[row * heat->place_count + place];
}

static inline const ts_heat_state *ts_heat_state_at(const ts_heat *heat, int method,
                                                    uint32_t condition, uint32_t drive)
{
    const size_t row = (size_t)method * heat->motion->condition_count + condition;

    return &heat->states[row * heat->drive->drive_count + drive];
}

/* Power at driver and driven gear of a mesh with its losses. */
static inline const double *ts_heat_power_at(const ts_heat *heat, int method, uint32_t condition,
                                             uint32_t mesh)
{
    const size_t row = (size_t)method * heat->motion->condition_count + condition;

    return heat->P[row * heat->motion->train->mesh_count + mesh];
}

/* 1  share of the power that enters a mesh which is lost there and on the shaft that it drives
 * (bearings, windage, seals and splines): the `loss` with which the rated flow carries as much.
 * NaN: no power goes on, or it flows towards the shaft from both sides. */
double ts_heat_share_lost(const ts_heat *heat, int method, uint32_t condition, uint32_t mesh);

/* The larger of that by both methods: the `loss` with which the rated flow is nowhere less than
 * that of either, where power flows outward. */
static inline double ts_heat_share_to_state(const ts_heat *heat, uint32_t condition, uint32_t mesh)
{
    return fmax(ts_heat_share_lost(heat, 0, condition, mesh),
                ts_heat_share_lost(heat, 1, condition, mesh));
}

/* Does the drive spend hours in it, so that its temperatures settle? */
bool ts_heat_lasts(const ts_drive *drive, uint32_t condition);

#endif
