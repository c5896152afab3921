/* element/tooth_force.h: from power and speed to the force on a tooth. */
#ifndef TS_ELEMENT_TOOTH_FORCE_H
#define TS_ELEMENT_TOOTH_FORCE_H

#include "base/workings.h"

/* P in W, omega in rad/s (not 0), T in N.m, d in m (> 0), v in m/s, F_t in N. */
double ts_torque_of_power(double P, double omega, ts_workings *workings);
double ts_tangential_force(double T, double d, ts_workings *workings);
double ts_pitch_line_velocity(double omega, double d, ts_workings *workings);

#endif
