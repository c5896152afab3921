/* rate/bevel_parts.h: the parts of a bevel pair's answer, each in a file of its own. */
#ifndef TS_RATE_BEVEL_PARTS_H
#define TS_RATE_BEVEL_PARTS_H

#include "element/bevel_pair.h"
#include "element/bevel_teeth.h"
#include "rate/element_load.h"
#include "rate/gear_steel.h"
#include "rate/rate_desk.h"

/* A bevel pair on its way through its sections. */
typedef struct ts_rated_bevels {
    ts_bevel_pair  pair;
    ts_bevel_teeth teeth;
    double         r_c0; /* m  NaN: not given */

    /* When its load capacity is asked for. */
    ts_rated_load  load;
    ts_rated_steel steel[2];
    double         f_pt[2]; /* m  NaN: not known */
    bool           overhung[2];
} ts_rated_bevels;

/* bevel_make.c: steels and pitch deviations of both gears. */
void ts_rate_bevel_make(ts_rate_desk *desk, ts_rated_bevels *rated);

/* bevel_iso10300.c, bevel_agma2003.c */
void ts_rate_bevel_iso10300(ts_rate_desk *desk, const ts_rated_bevels *rated);
void ts_rate_bevel_agma2003(ts_rate_desk *desk, const ts_rated_bevels *rated);

#endif
