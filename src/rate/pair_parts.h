/* rate/pair_parts.h: the parts of a gear pair's answer, each in a file of its own. */
#ifndef TS_RATE_PAIR_PARTS_H
#define TS_RATE_PAIR_PARTS_H

#include "element/cylindrical_pair.h"
#include "rate/element_load.h"
#include "rate/gear_steel.h"
#include "rate/rate_desk.h"
#include "rating/iso6336/iso6336.h"

/* How exactly one gear is made. */
typedef struct ts_rated_make {
    int    accuracy;       /* class of ISO 1328-1:2013; 0: not known       */
    double f_pt, f_falpha; /* m    NaN: not known                          */
} ts_rated_make;

/* A pair on its way through its sections. */
typedef struct ts_rated_pair {
    const ts_rate_pair       *given;
    ts_cylindrical_pair_input in;
    ts_cylindrical_pair       pair;

    /* When its load capacity is asked for. */
    ts_rated_load       load;
    ts_rated_steel      steel[2];
    ts_rated_make       make[2];
    bool                by_iso6336; /* was it rated?  Then these two hold how */
    ts_iso6336_rating   iso6336;
    ts_iso6336_prepared iso6336_pair;
    ts_remarks          remarked; /* of ISO 6336, so far */
} ts_rated_pair;

/* pair_geometry.c: solves and judges the geometry; false, with a finding, when there is none. */
bool ts_rate_pair_geometry(ts_rate_desk *desk, ts_rated_pair *rated);

/* pair_fault.c: why a pair has no geometry, with the limit and the nearest value that has one. */
void ts_rate_pair_fault(ts_rate_desk *desk, const ts_rated_pair *rated, ts_pair_fault fault);

/* pair_limit.c: tips, roots, overlap and clearance of a pair that was solved. */
void ts_rate_pair_limits(ts_rate_desk *desk, const ts_rated_pair *rated);
/* The part of it that is about the contact ratio. */
void ts_rate_pair_overlap(ts_rate_desk *desk, const ts_cylindrical_pair *pair);

/* pair_measure.c: both gears on the inspector's table, with their allowances. */
void ts_rate_pair_measures(ts_rate_desk *desk, const ts_rated_pair *rated);

/* pair_backlash.c: the least and the greatest backlash, when allowances are given. */
void ts_rate_pair_backlash(ts_rate_desk *desk, const ts_rated_pair *rated);

/* The allowance of one end of the tooth thickness; what is not given at that end is as at the
 * other, and said. */
double ts_rate_allowance(ts_rate_desk *desk, const char *key, const char *other);

/* pair_make.c: steels of both gears, and their tolerances. */
void ts_rate_pair_make(ts_rate_desk *desk, ts_rated_pair *rated);

/* What ISO 6336 rates of a pair: without torque, cycles and least safeties in the load. */
typedef struct ts_rated_teeth {
    ts_iso6336_mesh     mesh;
    ts_iso6336_load     load;
    ts_iso6336_prepared prepared;
} ts_rated_teeth;

/* pair_teeth.c: inputs of ISO 6336; what they lack is named in the open section. */
void ts_rate_pair_take_teeth(ts_rate_desk *desk, const ts_rated_pair *rated, ts_rated_teeth *teeth);
/* What leaves no blank to rate. */
void ts_rate_pair_blanks(ts_rate_desk *desk, const ts_rated_pair *rated,
                         const ts_iso6336_mesh *mesh);
/* Prepares the mesh for `pair` in the open section. */
void ts_rate_pair_prepare(ts_rate_desk *desk, const ts_cylindrical_pair *pair,
                          ts_rated_teeth *teeth);
/* Ranges of the standard that are left, each once a pair. */
void ts_rate_pair_remarks(ts_rate_desk *desk, ts_rated_pair *rated, ts_remarks remarks);

/* pair_spectrum.c: the loads of `spectrum`, and what `inverse` asks of them. */
void ts_rate_pair_spectrum(ts_rate_desk *desk, ts_rated_pair *rated);

/* pair_inverse.c: load, life and width that have the safeties wanted, where `inverse` stands. */
void ts_rate_pair_inverse(ts_rate_desk *desk, ts_rated_pair *rated);

/* pair_iso6336.c, pair_agma2101.c: one method each. */
void ts_rate_pair_iso6336(ts_rate_desk *desk, ts_rated_pair *rated);
void ts_rate_pair_agma2101(ts_rate_desk *desk, ts_rated_pair *rated);

#endif
