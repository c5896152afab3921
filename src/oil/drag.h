/* oil/drag.h: what do air, oil, bearings, seals and splines take, load or no load?
 *
 * Units     SI; speeds n in rad/s.  The formulas turn into the units of their source by themselves.
 * Sources   docs/method/oil.md, with what is doubted.
 */
#ifndef TS_OIL_DRAG_H
#define TS_OIL_DRAG_H

#include "base/workings.h"

/* ---- a gear that turns in a mist of oil: without a shroud --------------------------------------
 */

/* Anderson and Loewenthal: R pitch radius, F face width, eta_oil of the oil.  W. */
double ts_windage_by_loewenthal(double R, double F, double n, double eta_oil,
                                ts_workings *workings);
/* Dawson: d_f root diameter, F face width, m_n module. */
double ts_windage_by_dawson(double d_f, double F, double m_n, double n, ts_workings *workings);

/* A gear that dips into oil, by the hydraulic loss of ISO/TR 14179-2: b face width, dip depth and
 * v_t speed at the pitch circle.  N.m */
double ts_churning_torque(double b, double dip, double v_t, ts_workings *workings);
/* The same by conservation: oil that is carried round at the depth of the teeth and thrown off.
 * m_n module.  N.m */
double ts_carried_oil_torque(double b, double m_n, double r_a, double n, double rho_oil, double dip,
                             ts_workings *workings);

/* Oil of volume flow Q that a gear takes up at rest and throws off at v_t.  W */
double ts_thrown_oil_power(double Q, double rho_oil, double v_t, ts_workings *workings);

/* ---- rolling bearings ------------------------------------------------------------------------ */

/* Palmgren: M_0 of the oil that is displaced, M_1 of the load.  N.m */
double ts_bearing_drag_0(double f_0, double nu, double n, double d_m, ts_workings *workings);
double ts_bearing_friction_load(double F_r, double F_a, double alpha,
                                ts_workings *workings); /* P_1, N */
double ts_bearing_drag_1(double f_1, double P_1, double d_m, ts_workings *workings);
/* f_1 of balls falls with the load over the static capacity. */
double ts_bearing_f_1(double z, double y, double P_0, double C_0r, ts_workings *workings);
/* By a constant coefficient of friction at the bore. */
double ts_bearing_drag_by_friction(double mu, double P_1, double d, ts_workings *workings);
double ts_bearing_power(double M_0, double M_1, double n, ts_workings *workings);
double ts_bearing_power_by_friction(double M_mu, double n, ts_workings *workings);

/* ---- seals and splines ----------------------------------------------------------------------- */

/* A lip seal on a shaft of diameter d: ISO/TR 14179-2 (theta of the oil, nu_40; NaN beyond its
 * oils, where it would give none), ISO/TR 14179-1. */
double ts_seal_power(double d_sh, double n, double theta, double nu_40, ts_workings *workings);
double ts_seal_torque(double d_sh, ts_workings *workings);
double ts_seal_power_by_torque(double M_seal, double n, ts_workings *workings);

/* A spline of pressure angle alpha_D whose halves stand askew by phi rubs twice a turn: share of
 * the power that passes. */
double ts_spline_share(double mu_spline, double phi, double alpha_D, ts_workings *workings);

#endif
