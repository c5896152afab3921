/* rating/iso6336/transverse_load.h: how unevenly do the pairs of teeth in mesh share the load?
 * ISO 6336-1, clause 8.3, method B.
 */
#ifndef TS_RATING_TRANSVERSE_LOAD_H
#define TS_RATING_TRANSVERSE_LOAD_H

#include "base/workings.h"

#include <stdbool.h>

typedef struct ts_transverse_load_input {
    double eps_alpha, eps_gamma;
    double Z_eps;         /* contact ratio factor: sets the upper limit for contact             */
    double c_gamma_alpha; /* Pa  mesh stiffness                                                 */
    double f_pbeff;       /* m   base pitch deviation after running in                          */
    double F_tHb;         /* N/m F_t K_A K_gamma K_v K_Hbeta/b                                  */
} ts_transverse_load_input;

typedef struct ts_transverse_load {
    double q_alpha;  /* 1 deviation over the deflection under load                             */
    double K_Halpha; /* 1 */
    double K_Falpha; /* 1 */
    bool   H_limited, F_limited; /* does one pair carry everything already?                   */
} ts_transverse_load;

ts_transverse_load ts_transverse_load_of(const ts_transverse_load_input *in, ts_workings *workings);

#endif
