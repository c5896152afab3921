/* rate/pair_spectrum.h: the loads of a pair one after the other, and what is asked of them. */
#ifndef TS_RATE_PAIR_SPECTRUM_H
#define TS_RATE_PAIR_SPECTRUM_H

#include "rate/pair_parts.h"
#include "rating/iso6336/spectrum_life.h"

typedef struct ts_rated_spectrum {
    ts_rate_desk    *desk;
    ts_rated_pair   *rated;
    ts_rated_teeth   teeth;
    ts_iso6336_case *cases; /* one a bin, rated; its load is as in the file */
    size_t           count;
    double           L_h;       /* s    all bins together                                */
    double           T_Amost;   /* N.m  greatest T_1*K_A                                 */
    bool             f_sh_goes; /* does f_sh of the pair go with the load of each bin?   */
} ts_rated_spectrum;

/* spectrum_inverse.c: what `inverse` asks of it. */
void ts_rate_spectrum_inverse(ts_rated_spectrum *spectrum);

#endif
