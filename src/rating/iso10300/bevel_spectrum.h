/* rating/iso10300/bevel_spectrum.h: how long does a bevel pair last in all its conditions together?
 * Damage adds up after Palmgren and Miner, flank by flank, as ISO 6336-6 has it for cylindrical
 * gears; ISO 10300 points there.
 *
 * What starting loads on one flank does not wear the other.  (That a root is bent both ways is Y_M
 * of the load case.)
 */
#ifndef TS_RATING_BEVEL_SPECTRUM_H
#define TS_RATING_BEVEL_SPECTRUM_H

#include "rating/iso10300/iso10300.h"

#include <stddef.h>

/* One condition: load.N_L are the cycles that it brings to each gear over the life. */
typedef struct ts_iso10300_case {
    ts_iso10300_load   load;
    int                flank; /* 0 or 1: which flank it loads */
    ts_iso10300_rating rating;
} ts_iso10300_case;

/* Rates every case by itself; false when one of them cannot be rated. */
bool ts_iso10300_rate_cases(const ts_iso10300_prepared *prepared, ts_iso10300_case *cases,
                            size_t count);

/* What is asked about: one flank of one gear, pitting or breakage. */
typedef struct ts_iso10300_place {
    int             flank, gear; /* 0 or 1 */
    ts_bevel_stress stress;
} ts_iso10300_place;

typedef struct ts_iso10300_life {
    double U; /* damage at the stresses as they are                                           */
    double S; /* all stresses times S use up the life exactly; INFINITY when unloaded          */
    size_t worst; /* the case that does most of the damage there                                  */
    double share; /* of the damage at S, 0 to 1 */
} ts_iso10300_life;

/* Damage of rated cases when all stresses are multiplied by S (> 0): INFINITY above static
 * strength, NaN where a rating is missing. */
double ts_iso10300_damage(const ts_iso10300_prepared *prepared, const ts_iso10300_case *cases,
                          size_t count, ts_iso10300_place place, double S);

ts_iso10300_life ts_iso10300_life_of(const ts_iso10300_prepared *prepared,
                                     const ts_iso10300_case *cases, size_t count,
                                     ts_iso10300_place place, ts_workings *workings);

/* The least safety over both flanks of both gears, each over its own minimum, less 1; *where (may
 * be NULL) is the place.  NaN where a rating is missing. */
double ts_iso10300_spectrum_reserve(const ts_iso10300_prepared *prepared,
                                    const ts_iso10300_case *cases, size_t count,
                                    const double S_min[2], ts_iso10300_place *where);

/* By which factor may all torques be multiplied so that the reserve is 0?  S_min: contact, bending.
 * `cases` are rated anew and end at that load.  NaN when a case cannot be rated or nothing is
 * loaded. */
double ts_iso10300_load_factor(const ts_iso10300_prepared *prepared, ts_iso10300_case *cases,
                               size_t count, const double S_min[2]);

#endif
