/* rating/iso6336/width_search.h: how wide must the teeth be?  The least face width at which the
 * spectrum of all conditions keeps its safeties.
 *
 * Least     A wider tooth is a safer one while the misalignment does not outgrow the width.  The
 *           least width is looked for on 48 rungs between the limits and then between two of them;
 *           it is rated: a reserve below 0 is never returned as a solution.
 * Kept      What of gear 1 or 2 is wider than its mate stays as it is; F_betax, f_sh, f_ma and
 *           K_Hbeta stay as given.  (Whoever knows the shafts computes them anew and asks again.)
 */
#ifndef TS_RATING_WIDTH_SEARCH_H
#define TS_RATING_WIDTH_SEARCH_H

#include "rating/iso6336/spectrum_life.h"

typedef struct ts_width_search {
    ts_cylindrical_pair_input pair;
    ts_iso6336_mesh           mesh;
    double                    S_Hmin, S_Fmin; /* of the spectrum                             */
    double                    least, most;    /* m  limits of the common face width          */
} ts_width_search;

typedef enum ts_width_fault {
    TS_WIDTH_FINE,
    TS_WIDTH_AT_LEAST,  /* the least width is more than enough already: it is returned        */
    TS_WIDTH_TOO_WIDE,  /* not even the greatest width is enough                              */
    TS_WIDTH_NOT_RATED, /* a case cannot be rated, or nothing is loaded                       */
    TS_WIDTH_NO_RANGE   /* the limits are no range of widths above 0                          */
} ts_width_fault;

const char *ts_width_fault_says(ts_width_fault fault);

typedef struct ts_width_found {
    double           b;       /* m  NaN unless FINE or AT_LEAST                               */
    double           reserve; /* 1  there, >= 0; TOO_WIDE: at the greatest width, < 0         */
    ts_iso6336_place where;   /*    what sets the width                                       */
} ts_width_found;

/* `cases` hold the loads; they are rated anew and end rated at the width found. */
ts_width_fault ts_width_for_safety(const ts_width_search *search, ts_iso6336_case *cases,
                                   size_t count, ts_width_found *found, ts_workings *workings);

#endif
