/* element/cylindrical_contact.h: the path of contact of a cylindrical pair, ISO 21771:2007. */
#ifndef TS_ELEMENT_CYLINDRICAL_CONTACT_H
#define TS_ELEMENT_CYLINDRICAL_CONTACT_H

#include "element/cylindrical_pair.h"

/* Second half of ts_cylindrical_pair_solve: fills rho_T to clear_Ff2.  rho_E1 stands in the pair
 * already; rho_a2 is the curvature of gear 2 at its tip (negative for an internal gear). */
void ts_cylindrical_contact_solve(ts_cylindrical_pair *pair, double rho_a2, ts_workings *workings);

/* Specific sliding of both flanks where gear 1 has the curvature rho_1 (m, on the path of
 * contact): the share of its rolling by which each slides.  NaN past a base circle. */
double ts_specific_sliding_1(const ts_cylindrical_pair *pair, double rho_1);
double ts_specific_sliding_2(const ts_cylindrical_pair *pair, double rho_1);

/* Sliding speed, m/s, at the distance g (m) from the pitch point along the path of contact when
 * gear 1 turns at omega_1 (rad/s); u as in the pair, negative for an internal gear. */
double ts_sliding_speed(double omega_1, double u, double g, ts_workings *workings);

/* How far gear 1 (gear 2) turns, rad, while one pair of teeth is in transverse contact. */
double ts_turn_in_contact_1(const ts_cylindrical_pair *pair, ts_workings *workings);
double ts_turn_in_contact_2(const ts_cylindrical_pair *pair, ts_workings *workings);

/* Length, m, of the arc of contact on the working pitch circles. */
double ts_arc_of_contact(const ts_cylindrical_pair *pair, ts_workings *workings);

/* Circumferential backlash, m, that a small growth of the centre distance delta_a (m) opens, to
 * first order: a quick check of the exact j_wt of a pair solved at the grown distance. */
double ts_backlash_opened(double delta_a, double alpha_wt, ts_workings *workings);

#endif
