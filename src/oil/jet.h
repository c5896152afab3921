/* oil/jet.h: how fast, how much, how deep does a jet of oil go?
 *
 * Units     SI; dp is what drops over the hole.
 * Sources   docs/method/oil.md.
 */
#ifndef TS_OIL_JET_H
#define TS_OIL_JET_H

#include "base/workings.h"

#include <stdbool.h>

/* ---- the orifice ----------------------------------------------------------------------------- */

double ts_jet_speed(double dp, double rho_oil, ts_workings *workings);
double ts_jet_flow(double C_d, double d_jet, double v_jet, ts_workings *workings); /* m3/s */
double ts_jet_diameter(double Q, double C_d, double v_jet, ts_workings *workings);
/* dp over a hole that passes Q. */
double ts_jet_pressure(double Q, double C_d, double d_jet, double rho_oil, ts_workings *workings);
/* What a relief valve that is set against the atmosphere leaves for a jet in a chamber. */
double ts_jet_drop(double p_set, double p_chamber, ts_workings *workings);

/* ---- the teeth ------------------------------------------------------------------------------- */

/* How deep a radial jet comes into a tooth space before the next flank is there: rack model. */
double ts_jet_depth(double m_n, double alpha, double v_t, double v_jet, ts_workings *workings);
/* How far the wind of the teeth (u) carries a jet aside over a gap. */
double ts_jet_drift(double gap, double v_jet, double d_jet, double u, double rho_oil,
                    ts_workings *workings);

/* Where the jet is aimed at. */
typedef enum ts_jet_side {
    TS_JET_ENTERING, /* where the teeth come together                  */
    TS_JET_LEAVING,  /* where they part: the oil cools, and nothing is squeezed */
    TS_JET_BOTH
} ts_jet_side;
ts_jet_side ts_jet_side_at(double v_t);
const char *ts_jet_side_says(ts_jet_side side);

/* ---- heat in oil ----------------------------------------------------------------------------- */

/* Density and heat capacity at a temperature. */
double ts_oil_density(double rho_15, double theta, ts_workings *workings);
double ts_oil_heat_capacity(double c_100, double theta, ts_workings *workings);
double ts_oil_rise(double P, double rho_oil, double Q, double c_oil, ts_workings *workings);
/* The flow that takes P away at a rise of dtheta, where the oil is thrown off at v_t besides; NaN
 * when speeding it up alone would heat it as much. */
double ts_oil_flow(double P, double rho_oil, double c_oil, double dtheta, double v_t,
                   ts_workings *workings);

#endif
