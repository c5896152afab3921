/* rating/iso6336/spectrum_life.h: how long does a pair last in all its conditions together?
 * ISO 6336-6: damage adds up after Palmgren and Miner, n/N of every condition, flank by flank.
 *
 * A tooth has two flanks and two fillets: what starting loads on one does not wear the other.  (The
 * mean stress of a root that is loaded from both sides is R of the load case.)
 *
 * Monotone  More stress never lasts longer, so safety, life and load each follow from one search.
 */
#ifndef TS_RATING_SPECTRUM_LIFE_H
#define TS_RATING_SPECTRUM_LIFE_H

#include "rating/iso6336/iso6336.h"

#include <stddef.h>

/* One condition: load.N_L are the cycles that it brings to each gear over the life. */
typedef struct ts_iso6336_case {
    ts_iso6336_load   load;
    int               flank; /* 0 or 1 */
    ts_iso6336_rating rating;
} ts_iso6336_case;

/* Rates every case by itself; false when one of them cannot be rated. */
bool ts_iso6336_rate_cases(const ts_iso6336_prepared *prepared, ts_iso6336_case *cases,
                           size_t count);

/* What is asked about: one flank of one gear, pitting or breakage. */
typedef struct ts_iso6336_place {
    int             flank, gear; /* 0 or 1 */
    ts_rated_stress stress;
} ts_iso6336_place;

typedef struct ts_iso6336_life {
    double U;     /* damage at the stresses as they are                                          */
    double S;     /* all stresses times S use up the life exactly; INFINITY when unloaded         */
    size_t worst; /* the case that does most of the damage there                                 */
    double share; /* of the damage at S, 0 to 1                                                   */
} ts_iso6336_life;

/* Damage of rated cases when all stresses are multiplied by S (> 0): INFINITY above static
 * strength, NaN where a rating is missing. */
double ts_iso6336_damage(const ts_iso6336_case *cases, size_t count, ts_iso6336_place place,
                         double S);

/* Damage, safety and what does it.  `workings` may be NULL. */
ts_iso6336_life ts_iso6336_life_of(const ts_iso6336_case *cases, size_t count,
                                   ts_iso6336_place place, ts_workings *workings);

/* The same of a flank that several meshes load, as that of an idler or of the first gear of a box:
 * its wears are gathered by whoever knows the train.  A sigma of 0 does not wear; `curve` may not
 * be NULL where sigma is above 0 or NaN. */
typedef struct ts_wear {
    double               sigma;  /* Pa                                */
    double               cycles; /* that it is borne                  */
    const ts_life_curve *curve;  /* what the tooth stands under it    */
    ts_life_depth        depth;  /* of sigma below the lines of curve */
} ts_wear;
ts_wear         ts_wear_of(double sigma, double cycles, const ts_life_curve *curve);
double          ts_wear_damage(const ts_wear *wears, size_t count, double S);
ts_iso6336_life ts_wear_life(const ts_wear *wears, size_t count, ts_workings *workings);

/* How many times over the spectrum is borne with the safety S_min: 1/U(S_min). */
double ts_iso6336_times(const ts_iso6336_case *cases, size_t count, ts_iso6336_place place,
                        double S_min);

/* The least safety over all places, each over its own minimum, less 1; *where (may be NULL) is the
 * place.  S_Hmin, S_Fmin: of the whole spectrum. */
double ts_iso6336_spectrum_reserve(const ts_iso6336_case *cases, size_t count, double S_Hmin,
                                   double S_Fmin, ts_iso6336_place *where);

/* By which factor may all torques be multiplied so that the reserve is 0?  The deflection f_sh goes
 * with the torque; F_betax and K_Hbeta stay as given.  `cases` are rated anew and end at that load.
 * NaN when a case cannot be rated or nothing is loaded. */
double ts_iso6336_load_factor(const ts_iso6336_prepared *prepared, ts_iso6336_case *cases,
                              size_t count, double S_Hmin, double S_Fmin, ts_workings *workings);

/* The constant load that does the same damage in all cycles together, for a slope p (stress or
 * torque): (sum n T^p / sum n)^(1/p); ISO 6336-6, annex A, without the limit at the knee. */
typedef struct ts_load_bin {
    double T, n; /* load in any unit, cycles */
} ts_load_bin;
double ts_equivalent_load(const ts_load_bin *bins, size_t count, double p);

/* Load cycles of a gear that turns at omega (rad/s) for `seconds` in `meshes` equal meshes that
 * load the same flank. */
double ts_load_cycles(double omega, double seconds, double meshes, ts_workings *workings);

#endif
