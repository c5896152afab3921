/* rating/bearing/bearing_rate.h: does a bearing hold its loads for as long as it must?
 * ISO 281:2007 and ISO 76:2006, one bearing or a duplex pair that is rated as one.
 *
 * Units     SI; loads without sign; lives in s.
 * Shapes    What depends on the bearing alone is prepared once; each duty is then a few operations.
 * Missing   NaN.  A life without end (no load) is infinite.
 * Sources   docs/method/bearings.md
 */
#ifndef TS_RATING_BEARING_RATE_H
#define TS_RATING_BEARING_RATE_H

#include "catalog/bearing_size.h"
#include "rating/bearing/equivalent_load.h"
#include "rating/bearing/life_modification.h"
#include "rating/bearing/static_capacity.h"

typedef struct ts_bearing {
    ts_bearing_form form;
    int             rows; /* 1, or 2: a pair back to back or face to face, or two rows of rollers */
    double alpha;         /* rad   contact angle; 0 but for angular contact                       */
    double d, D;          /* m                                                                    */
    ts_bearing_inside inside;
    double C_r, C_0r; /* N     of the set, where a maker says so; NaN: from the inside         */
} ts_bearing;

/* What the inside gives. */
typedef struct ts_bearing_ability {
    double d_m, gamma;
    double f_c, f_0;       /* f_0 NaN for rollers */
    double C_r, C_0r, C_u; /* N */
    double p;              /* exponent of life    */
    /* What every duty asks again, and none changes. */
    ts_static_factors still;
    ts_load_factors   factors; /* e NaN: they depend on the axial load */
    ts_dirt_room      room;
} ts_bearing_ability;

typedef enum ts_bearing_fault {
    TS_BEARING_FINE,
    TS_BEARING_BAD_SIZE,  /* bore, outside, elements or angle make no bearing       */
    TS_BEARING_BAD_ANGLE, /* an angular contact bearing of an angle without factors */
    TS_BEARING_BAD_FORM   /* an angle on a form that has none                       */
} ts_bearing_fault;
const char *ts_bearing_fault_says(ts_bearing_fault fault);

ts_bearing_fault ts_bearing_prepare(const ts_bearing *bearing, ts_bearing_ability *ability,
                                    ts_workings *workings);

/* X_0 and Y_0 of its form and angle. */
ts_static_factors ts_bearing_static_factors(const ts_bearing *bearing);

typedef struct ts_bearing_duty {
    double F_r, F_a; /* N                                                          */
    double n;        /* rad/s   0: stands still, counts for dents alone            */
    double t;        /* s       0: counts for dents and least load alone           */
    double nu;       /* m2/s    oil at the bearing's temperature; NaN: not known   */
} ts_bearing_duty;

typedef struct ts_bearing_want {
    double       S;   /* reliability, 0.9 to below 1                                         */
    double       e_C; /* contamination factor; NaN: by cleanness                             */
    ts_cleanness cleanness;
} ts_bearing_want;

typedef struct ts_duty_rating {
    double P, P_0;            /* N                                                      */
    double kappa, e_C, a_ISO; /* NaN where nu is NaN                                    */
    double L_10h, L_nmh;      /* s   L_nmh NaN where nu is NaN                          */
    double S_0;               /* C_0r/P_0                                               */
    double n_dm;              /* mm times rpm                                           */
    double F_rmin;            /* N   least load against slipping                        */
    bool   within;            /* was the axial load inside the factors' table?          */
    bool   outside_life_law;  /* P above C_r/2: the law of life ends (ISO 281, clause 1) */
} ts_duty_rating;

/* The most and the least that ISO 281 grants as a_ISO. */
#define TS_A_ISO_MOST  50.0
#define TS_A_ISO_LEAST 0.1

/* P of one duty alone, N, and its L_10h, s. */
double ts_bearing_duty_load(const ts_bearing *bearing, const ts_bearing_ability *ability,
                            const ts_bearing_duty *duty);
double ts_bearing_basic_life(const ts_bearing *bearing, const ts_bearing_ability *ability,
                             const ts_bearing_duty *duty);

/* One duty; bearing and ability from ts_bearing_prepare. */
ts_duty_rating ts_bearing_duty_rate(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                    const ts_bearing_duty *duty, const ts_bearing_want *want,
                                    ts_workings *workings);

typedef struct ts_bearing_rating {
    double L_10h, L_nmh; /* s   of the whole spectrum: 1/L = sum (t_j/t)/L_j     */
    double S_0;          /*     the least, over all duties                       */
    double n_dm;         /*     the greatest                                     */
    double slip;         /*     least P over the least load; below 1: it may slip */
    int    worst_life, worst_static, worst_slip; /* indices of duties, -1: none   */
} ts_bearing_rating;

/* All duties; ratings[count] is filled where it is not NULL. */
ts_bearing_rating ts_bearing_rate(const ts_bearing *bearing, const ts_bearing_ability *ability,
                                  const ts_bearing_duty *duties, int count,
                                  const ts_bearing_want *want, ts_duty_rating *ratings);

#endif
