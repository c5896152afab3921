/* rating/iso6336/root_strength.h: how much stress may the root of this tooth carry, against that of
 * the test gear?  ISO 6336-3, clauses 13 (Y_deltarelT), 14 (Y_RrelT), 15 (Y_X), annex B (Y_M).
 *
 * Each influence has one value for long life and one for static strength.  gear: 0 or 1.
 */
#ifndef TS_RATING_ROOT_STRENGTH_H
#define TS_RATING_ROOT_STRENGTH_H

#include "base/workings.h"
#include "catalog/gear_material.h"

#include <stdbool.h>

/* rho', m, the depth to which a notch is felt.  yield: Pa, asked of through-hardened (0.2 %) and
 * normalised steels only; between the rows of the standard straight, outside the nearest row. */
double ts_slip_layer(ts_gear_class class, double yield, int gear, ts_workings *workings);
double ts_notch_sensitivity(double rho_p, double q_s, int gear, ts_workings *workings);
double ts_notch_sensitivity_static(ts_gear_class class, double yield, double Y_S, int gear,
                                   ts_workings *workings);

/* Y_RrelT of the roughness R_z (m) of the fillet; used up to 40 um.  1 at static strength. */
double ts_root_surface(ts_gear_class class, double R_z, int gear, ts_workings *workings);

/* Y_X of the module (m).  1 at static strength. */
double ts_root_size(ts_gear_class class, double m_n, int gear, ts_workings *workings);

/* M, how little mean stress matters, for long life and for static strength. */
typedef struct ts_mean_stress_ratio {
    double M, M_stat;
} ts_mean_stress_ratio;
ts_mean_stress_ratio ts_mean_stress_of(ts_gear_class class, bool shot_peened, double Y_S, int gear,
                                       ts_workings *workings);

/* Y_M for the ratio R of least to greatest stress: 0 pulsating, -1.2 an idler with equal loads. */
double ts_mean_stress_factor(double R, double M, int gear, ts_workings *workings);
double ts_mean_stress_factor_static(double R, double M_stat, int gear, ts_workings *workings);

/* R of a tooth that is loaded on both flanks, each per unit of its face width (N/m); the larger
 * first.  1.2 because the far side of a fillet feels more than the mirror image. */
double ts_stress_ratio(double w_more, double w_less, ts_workings *workings);

#endif
