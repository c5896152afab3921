/* rating/iso10300/bevel_strength.h: what do bevel teeth bear?  ISO 10300-2:2014, clauses 6.5 and 8
 * (contact), ISO 10300-3:2014, clauses 6.5 and 8 (bending).
 *
 * Units     Pa, m, m2/s, m/s.
 */
#ifndef TS_RATING_BEVEL_STRENGTH_H
#define TS_RATING_BEVEL_STRENGTH_H

#include "base/workings.h"
#include "catalog/gear_material.h"

/* ---- the flank ------------------------------------------------------------------------------- */

/* sigma_Hlim of the softer gear; nu_40: viscosity at 40 degrees Celsius. */
double ts_bevel_soft_limit(double sigma_Hlim1, double sigma_Hlim2, ts_workings *workings);
double ts_bevel_lubricant(double sigma_Hlim, double nu_40, ts_workings *workings); /* Z_L     */
double ts_bevel_speed_constant(double sigma_Hlim, ts_workings *workings);          /* C_Zv    */
double ts_bevel_film_speed(double C_Zv, double v_mt, ts_workings *workings);       /* Z_v     */
double ts_bevel_smoothness(double sigma_Hlim, const double R_z[2], double rho_rel, /* Z_R     */
                           ts_workings *workings);

typedef struct ts_bevel_flank_strength {
    double sigma_Hlim, Z_NT, Z_X, Z_L, Z_v, Z_R, Z_W, Z_Hyp;
} ts_bevel_flank_strength;
double ts_bevel_flank_permitted(const ts_bevel_flank_strength *s, int gear, ts_workings *workings);

/* ---- the root -------------------------------------------------------------------------------- */

#define TS_BEVEL_Y_ST 2.0 /* stress correction factor of the test gear */

/* rho', m: thickness of the slip layer.  yield: through-hardened and normalised steel alone; NaN
 * where it is needed and not above 0. */
double ts_bevel_slip_layer(ts_gear_class class, double yield, int gear, ts_workings *workings);
double ts_bevel_notch(double rho_p, double q_s, int gear, ts_workings *workings); /* Y_deltarelT */
double ts_bevel_root_surface(ts_gear_class class, double R_zF, int gear,          /* Y_RrelT     */
                             ts_workings *workings);
double ts_bevel_root_size(ts_gear_class class, double m_mn, int gear, /* Y_X         */
                          ts_workings *workings);

typedef struct ts_bevel_root_strength {
    double sigma_Flim, Y_NT, Y_deltarelT, Y_RrelT, Y_X, Y_M;
} ts_bevel_root_strength;
double ts_bevel_root_permitted(const ts_bevel_root_strength *s, int gear, ts_workings *workings);

#endif
