/* element/pad_joint.h: what do the bolts and the flange of an accessory's pad carry?
 *
 * Units     SI; angles rad, n rad/s.
 * Sources   T. H. Wentzell, Machine Design, examples 6.1 and 6.2; statics.
 */
#ifndef TS_ELEMENT_PAD_JOINT_H
#define TS_ELEMENT_PAD_JOINT_H

#include "base/workings.h"

/* Preload of a bolt at the share of its proof strength, and the torque and turn that give it. */
double ts_bolt_preload(double share, double A_s, double S_p, ts_workings *workings);
double ts_bolt_torque(double K, double D, double F_i, ts_workings *workings);
double ts_bolt_turn(double F_i, double L, double A_s, double E, double pitch,
                    ts_workings *workings);

/* Moment of a body of weight W with its centre x off the pad, under n_g times gravity. */
double ts_overhang_moment(double W, double x, double n_g, ts_workings *workings);
/* Greatest pull of N_b equal bolts on the circle BC (m) under that moment, when the joint turns
 * about its middle; N_b >= 3. */
double ts_overhang_bolt_load(double M, double N_b, double BC, ts_workings *workings);

/* Speed of a pad by its ratio, and its power. */
double ts_pad_speed(double n, double ratio, ts_workings *workings);
double ts_pad_power(double T, double n_pad, ts_workings *workings);

#endif
