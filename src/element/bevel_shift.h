/* element/bevel_shift.h: what happens to two bevels when one of them moves off its place?
 *
 * Moves     c, normal to the pitch cones where they touch, + into mesh; along the face, + outwards.
 *           A move across both leaves the play as it is.
 * Limits    To first order in c; the contact ratio exactly, on the virtual cylindrical gears of the
 *           mean section, whose centre distance is a_v - c.
 * Source    derived: projections; contact ratio of ISO 10300-1:2014, annex A, at that distance.
 * Units     m, rad.
 */
#ifndef TS_ELEMENT_BEVEL_SHIFT_H
#define TS_ELEMENT_BEVEL_SHIFT_H

#include "base/workings.h"
#include "element/bevel_virtual.h"

/* What of the virtual gears stands in the formulas; tip and base radii, centre distance, pitch. */
typedef struct ts_bevel_seat {
    double r_a1, r_a2, r_b1, r_b2, a_v, p_vet;
} ts_bevel_seat;
ts_bevel_seat ts_bevel_seat_of(const ts_bevel_virtual *v);

/* Moved by s along its axis and r square to it, gear 1 of pitch angle delta_1 closes by this. */
double ts_bevel_closing(double s, double r, double delta_1);
/* ... and its teeth move by this along the face. */
double ts_bevel_along(double s, double r, double delta_1);

/* Normal backlash that a closing c takes. */
double ts_bevel_play_taken(double c, double alpha_n);
/* ... and the closing that takes a normal backlash j. */
double ts_bevel_closing_of_play(double j, double alpha_n);

/* Transverse contact ratio of the moved gears; 0 once the teeth no longer reach each other. */
double ts_bevel_moved_ratio(const ts_bevel_seat *seat, double c);
/* c (< 0) at which one pair of teeth hands over to the next without a moment together. */
double ts_bevel_closing_of_one_pair(const ts_bevel_seat *seat);
/* c (< 0) at which nothing touches any more. */
double ts_bevel_closing_apart(const ts_bevel_seat *seat);

#endif
