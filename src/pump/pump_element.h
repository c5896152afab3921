/* pump/pump_element.h: how large is a pump element that brings or takes away so much oil?
 *
 * Units     SI; speeds n in rad/s, displacement V_g in m3 a turn.
 */
#ifndef TS_PUMP_PUMP_ELEMENT_H
#define TS_PUMP_PUMP_ELEMENT_H

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

/* ---- by gears --------------------------------------------------------------------------------
 */

/* m2 that two equal external gears of reference profile sweep a radian and width: V_g = 2 pi area
 * width.  Exact where the line of contact runs over one base pitch about the pitch point. */
double ts_pump_gear_area(double z, double m, double alpha, ts_workings *workings);
double ts_pump_gear_width(double V_g, double area, ts_workings *workings);
double ts_pump_gear_displacement(double b, double area, ts_workings *workings);

/* ---- by Wilson -------------------------------------------------------------------------------
 */

/* Volumetric efficiency: what fills the spaces less what slips back; eta in Pa.s.  May be < 0. */
double ts_pump_volumetric(double filling, double C_s, double dp, double eta, double n,
                          ts_workings *workings);

typedef struct ts_pump_drag {
    double V_g, dp, eta, n, C_d, C_f;
} ts_pump_drag;

/* N.m, of one element. */
double ts_pump_torque(const ts_pump_drag *of, ts_workings *workings);

#endif
