/* rate/element_load.h: what loads a pair of a rate file, and how often? */
#ifndef TS_RATE_ELEMENT_LOAD_H
#define TS_RATE_ELEMENT_LOAD_H

#include "rate/rate_desk.h"

/* Where the force of the file acts. */
typedef struct ts_load_arm {
    const char       *force; /* key: "F_t"                                     */
    const char       *d;     /* symbol of the diameter: "d_1"                  */
    double            d_value, u;
    const ts_formula *T_1; /* torque from force and diameter            */
} ts_load_arm;

/* NaN: not known. */
typedef struct ts_rated_load {
    double T_1, omega_1; /* N.m, rad/s */
    double N_L[2];
    double q[2]; /* mates that load the same flank of each gear in a turn */
    double K_A, S_Hmin, S_Fmin;
} ts_rated_load;

/* Does the element ask for its load capacity? */
bool ts_rate_is_loaded(const ts_rate_desk *desk, const ts_load_arm *arm);

/* A section of its own, which lacks nothing by itself: each method names what it lacks. */
void ts_rate_load_section(ts_rate_desk *desk, const ts_load_arm *arm, ts_rated_load *load);
/* Names what the open section lacks of it. */
void ts_rate_need_load(ts_rate_desk *desk, const ts_rated_load *load);

#endif
