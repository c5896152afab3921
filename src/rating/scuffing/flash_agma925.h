/* rating/scuffing/flash_agma925.h: what does AGMA 925-A03 say about the same flanks?  A second
 * opinion beside ISO/TS 6336-20, with friction, bulk temperature and limits of its own.
 */
#ifndef TS_RATING_FLASH_AGMA925_H
#define TS_RATING_FLASH_AGMA925_H

#include "base/workings.h"
#include "rating/scuffing/scuffing.h"

/* Mean scuffing temperatures of oils on carburised aerospace steels. */
typedef enum ts_aerospace_oil {
    TS_AEROSPACE_MIL_6081, /* grade 1005 */
    TS_AEROSPACE_MIL_7808,
    TS_AEROSPACE_MIL_23699,
    TS_AEROSPACE_DERD_2487,
    TS_AEROSPACE_DERD_2497,
    TS_AEROSPACE_DOD_85734,
    TS_AEROSPACE_PAO_32,
    TS_AEROSPACE_DEXRON_2,
    TS_AEROSPACE_COUNT
} ts_aerospace_oil;
double      ts_aerospace_limit(ts_aerospace_oil oil); /* K                     */
const char *ts_aerospace_name(ts_aerospace_oil oil);  /* "MIL-PRF-23699"       */

/* The same of mineral oils by their viscosity (m2/s) at 40 degrees Celsius, K. */
double ts_mineral_limit(double nu_40, bool antiscuff, ts_workings *workings);

typedef struct ts_agma925 {
    double mu_m;                             /* 1                                        */
    double theta_flmax, theta_M, theta_Bmax; /* K                                        */
    double theta_S;                          /* K  as given                              */
    double risk;                             /* 1  probability of scuffing, 0 .. 1       */
    int    hot;                              /*    the hottest point of the path         */
} ts_agma925;

/* `rating` is that of `load` on `prepared`, without anything missing; theta_S in K; k_sump 1.2
 * for oil jets, 1.0 otherwise.  A case at rest has no risk. */
void ts_agma925_rate(const ts_scuffing_prepared *prepared, const ts_scuffing_load *load,
                     const ts_scuffing *rating, double theta_S, double k_sump, ts_agma925 *out,
                     ts_workings *workings);

#endif
