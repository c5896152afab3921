/* oil/pump.h: how large is a pump element that brings or takes away so much oil?
 *
 * Units     SI; speeds n in rad/s, displacement V_g in m3 a turn.
 */
#ifndef TS_OIL_PUMP_H
#define TS_OIL_PUMP_H

#include "base/workings.h"

double ts_pump_displacement(double Q, double n, double eta_v, ts_workings *workings);
double ts_pump_flow(double V_g, double n, double eta_v, ts_workings *workings);
/* A scavenge element takes `ratio` times the oil that is fed; what is not oil is air. */
double ts_scavenge_flow(double Q, double ratio, ts_workings *workings);
double ts_scavenge_air(double ratio, ts_workings *workings);
/* Flow times pressure: what the oil gets. */
double ts_pump_hydraulic_power(double Q, double dp, ts_workings *workings);
/* What the shaft of the pump takes for it. */
double ts_pump_power(double Q, double dp, double eta_t, ts_workings *workings);

#endif
