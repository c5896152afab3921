/* rate/pair_oil.h: what do the flanks of a gear pair rub on, and in what oil? */
#ifndef TS_RATE_PAIR_OIL_H
#define TS_RATE_PAIR_OIL_H

#include "element/oil_viscosity.h"
#include "rate/pair_parts.h"

/* What scuffing and micropitting share.  NaN: not known. */
typedef struct ts_rated_oil {
    ts_film_oil oil;
    bool        has_law;   /* is the oil's viscosity known at every temperature?               */
    double      theta_oil; /* K                                                               */
    double      eta_oil;   /* Pa.s  there                                                     */
    double      X_L, X_S;  /* 1                                                               */
    double      Ra[2];     /* m                                                               */
    double      B_M;       /* J/(m2.K.s^0.5)                                                  */
    int         driver;    /* 1 or 2                                                          */
} ts_rated_oil;

/* Is the oil's temperature given, which asks for both methods? */
bool ts_rate_has_oil(const ts_rate_desk *desk);

/* A section of its own, which lacks nothing by itself. */
void ts_rate_pair_oil(ts_rate_desk *desk, ts_rated_pair *rated, ts_rated_oil *oil);

/* Names what the open section lacks of it: oil, roughness, load factors. */
void ts_rate_need_oil(ts_rate_desk *desk, const ts_rated_pair *rated, const ts_rated_oil *oil);

/* The coarser tolerance class of both gears. */
static inline int ts_rate_coarser(const ts_rated_pair *rated)
{
    const int first = rated->make[0].accuracy, second = rated->make[1].accuracy;
    return first > second ? first : second;
}

/* Lends the load factors of ISO 6336 to the open section. */
void ts_rate_lend_factors(ts_rate_desk *desk, const ts_rated_pair *rated);

/* pair_scuffing.c, pair_micropitting.c */
void ts_rate_pair_scuffing(ts_rate_desk *desk, const ts_rated_pair *rated, const ts_rated_oil *oil);
void ts_rate_pair_micropitting(ts_rate_desk *desk, const ts_rated_pair *rated,
                               const ts_rated_oil *oil);

#endif
