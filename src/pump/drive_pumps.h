/* pump/drive_pumps.h: how large are the oil pumps and the breather of a drive, what do they do in
 * every condition, and what torque do they ask of their pads?
 *
 * Pack      Every element is two equal external gears on one shaft.  The pressure element is as
 *           large as the slowest condition that lasts asks for with its air, filling and slip; a
 *           scavenge element takes its part of the oil of its sump and the air with it.  A width
 *           that the file tells is taken instead.
 * Full flow The relief valve holds the pressure where more than the full flow could be given; below
 *           the jets let pass what the element gives, by the law of the orifice.
 * Oil       The pressure element has that of the feed, scavenge elements and breather one that is
 *           warmer by the `rise` that is allowed.
 * Load      Where an accessory tells no power, power/pad_demand.c takes the torque from here.
 * Sources   docs/method/pumps.md
 */
#ifndef TS_PUMP_DRIVE_PUMPS_H
#define TS_PUMP_DRIVE_PUMPS_H

#include "element/oil_viscosity.h"
#include "motion/motion.h"
#include "pump/sump_level.h"

#define TS_PACK_ELEMENTS (1 + TS_SCAVENGE_MOST)

typedef struct ts_pack_element {
    const char        *name; /* "pressure", or that of the scavenge element */
    ts_node            node; /* of its workings                             */
    const ts_sump     *sump; /* NULL: the pressure element                  */
    const ts_scavenge *told; /* NULL: the pressure element                  */
    ts_measure         filling;
    double             dp;       /* Pa */
    double             V_g, b;   /* m3 a turn, m; NaN: no size would do                           */
    bool               given;    /* the file tells the width                                      */
    int32_t            sized_at; /* condition that asks for most                                  */
} ts_pack_element;

typedef struct ts_pack_case {
    double eta_v;      /* 1                                                               */
    double able, need; /* m3/s: oil (pressure), or oil and air (scavenge)                 */
    double T, P;       /* N.m, W                                                          */
} ts_pack_case;

typedef struct ts_pack_state {
    double n, theta; /* rad/s, K of the feed       */
    double p;        /* Pa behind the pressure element */
    double Q, spare; /* m3/s: fed, and what could be given on top and goes over the valve */
    double T, P;     /* N.m, W of all elements     */
} ts_pack_state;

typedef struct ts_pack_dip {
    double cover;   /* m of oil over the pick-up, negative: dry */
    bool   covered; /* by as much as is asked for               */
} ts_pack_dip;

typedef struct ts_pack {
    const ts_pumps *told;
    int32_t         accessory;
    uint32_t        pad;
    const char     *missing;                    /* NULL, or what is not known: a noun */
    ts_pack_element elements[TS_PACK_ELEMENTS]; /* pressure, then by sump */
    uint32_t        element_count;
    uint32_t        rows;   /* conditions, and the windmill behind them where it is told */
    ts_pack_case   *cases;  /* [row * TS_PACK_ELEMENTS + element] */
    ts_pack_state  *states; /* [row] */
    ts_pack_dip    *dips;   /* [attitude * TS_PACK_ELEMENTS + element], level first */
    double         *taken;  /* [attitude * sumps + sump] what covered elements take over the oil
                               that comes to the sump, least of all conditions that last */
    double  d_a;            /* m   tip diameter of the gears         */
    double  v_a;            /* m/s of the tips, where fastest        */
    int32_t fastest;        /* condition                             */
    double  length;         /* m   of all elements and plates        */
} ts_pack;

typedef struct ts_breather_case {
    double Q, n, theta;         /* m3/s, rad/s, K                                   */
    double d_cut, Re, dp, T, P; /* m; INFINITY where it stands still                */
} ts_breather_case;

typedef struct ts_breather {
    const ts_separator *told;
    int32_t             accessory;
    uint32_t            pad;
    const char         *missing;
    ts_breather_case   *cases; /* [condition] */
} ts_breather;

typedef struct ts_oil_units {
    const ts_drive  *drive;
    const ts_motion *motion;
    ts_pack         *packs;
    ts_breather     *breathers;
    uint32_t         pack_count, breather_count;
} ts_oil_units;

/* Memory; the motion need only be prepared. */
ts_status ts_oil_units_prepare(const ts_drive *drive, const ts_motion *motion, ts_arena *arena,
                               ts_oil_units *out);
/* Everything behind a solved motion.  Allocates nothing. */
void ts_oil_units_solve(ts_oil_units *units, ts_workings *workings);

/* NULL: the accessory is none. */
const ts_pack     *ts_pack_of(const ts_oil_units *units, int32_t accessory);
const ts_breather *ts_breather_of(const ts_oil_units *units, int32_t accessory);

/* The rows of ts_pack.dips: level, and the attitudes of the file. */
static inline uint32_t ts_pack_attitudes(const ts_pack *pack)
{
    return 1 + (uint32_t)pack->told->attitude_count;
}

#endif
