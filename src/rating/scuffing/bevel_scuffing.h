/* rating/scuffing/bevel_scuffing.h: will the flanks of a bevel pair weld and tear?  The integral
 * temperature of ISO/TS 6336-21:2017, of the virtual cylindrical gears of ISO 10300-1, annex A.
 *
 * Shapes    What depends on the mesh alone is prepared once; then every load case is rated by
 *           itself, for one driver.
 * Range     Pairs without offset.  Crowning counts as no tip relief (X_Ca = 1), on the safe side.
 * Units     SI, rad; temperatures in K.
 * Missing   What cannot be computed is NaN and never passes; `missing` says what it lacked.
 * Workings  Inputs are noted by the caller under the names below and those of the virtual gears.
 * Sources   docs/method/scuffing.md; all recalled.
 */
#ifndef TS_RATING_BEVEL_SCUFFING_H
#define TS_RATING_BEVEL_SCUFFING_H

#include "base/workings.h"
#include "element/bevel_pair.h"
#include "element/bevel_virtual.h"
#include "rating/scuffing/integral_temperature.h"
#include "rating/scuffing/scuffing.h"

/* The gears as in cylindrical pairs; C_a, mates and grade are not asked for. */
typedef struct ts_bevel_scuffing_prepared {
    ts_scuffing_mesh mesh;
    ts_bevel_virtual virt;
    ts_integral_ends ends;
    double           rho_redC, K_Bgamma, X_W, X_alphabeta, X_E;
    double           eps_1, eps_2;
    double           theta_intS; /* K, NaN: not known                 */
    unsigned         remarks;    /* set of ts_scuffing_remark         */
    const char      *missing;
} ts_bevel_scuffing_prepared;

typedef struct ts_bevel_scuffing_load {
    double F_mt, v_mt; /* N, m/s  at the mean pitch diameter, >= 0                            */
    double K_A, K_v, K_Hbeta, K_Halpha;
    double theta_oil, eta_oil; /* K, Pa.s                                                     */
    double theta_M; /* K  from a loss model; NaN: by the method itself                         */
} ts_bevel_scuffing_load;

typedef struct ts_bevel_scuffing {
    double      w_Bt, mu_mC, theta_flaint;     /* N/m, 1, K   */
    double      theta_Mint, theta_int, S_intS; /* K, K, 1     */
    unsigned    remarks;
    const char *missing;
} ts_bevel_scuffing;

bool ts_bevel_scuffing_prepare(const ts_bevel_virtual *virt, double alpha_n, double beta_m,
                               const ts_scuffing_mesh *mesh, ts_bevel_scuffing_prepared *prepared,
                               ts_workings *workings);

/* Without force or speed nothing gets hotter than the oil. */
bool ts_bevel_scuffing_rate(const ts_bevel_scuffing_prepared *prepared,
                            const ts_bevel_scuffing_load *load, ts_bevel_scuffing *rating,
                            ts_workings *workings);

#endif
