/* rating/iso6336/edition.h: what did an edition change?  The chain takes these functions from the
 * row of its year; no formula asks for the year.
 */
#ifndef TS_RATING_EDITION_H
#define TS_RATING_EDITION_H

#include "rating/iso6336/iso6336.h"

typedef struct ts_iso6336_edition {
    const char *name; /* "ISO 6336:2019" */
    ts_single_contact (*ends)(const ts_cylindrical_pair *pair, double f_ZCa, ts_workings *workings);
    double (*load_share)(double eps_alphan, double eps_beta, ts_workings *workings);
    double (*helix_bending)(double beta, double eps_beta, ts_workings *workings);
    double (*deep_tooth)(double eps_alphan, int accuracy, ts_workings *workings);
    bool rates_helix_ends;     /* does f_ZCa count?                       */
    bool has_mesh_load_factor; /* does K_gamma stand in its formulas?     */
} ts_iso6336_edition;

const ts_iso6336_edition *ts_iso6336_edition_of(ts_iso6336_year year);

#endif
