/* element/undercut_reach.h: does undercut take away flank that contact needs?
 *
 * Where the rack undercuts a tooth, its trochoid crosses the involute and cuts off what lies below.
 * That harms nothing as long as the tip of the mate meets the flank above the crossing.
 */
#ifndef TS_ELEMENT_UNDERCUT_REACH_H
#define TS_ELEMENT_UNDERCUT_REACH_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"

/* Room, m along the path of contact, from that crossing to where contact with the mate begins, of
 * gear 0 (gear 1) or 1 of a solved pair; below 0 contact is cut short.  NaN where the gear is not
 * undercut, is internal, or no crossing is found.  Noted as clear_u1 or clear_u2; the workings ask
 * the caller for rho_A1, or for rho_T and rho_E1. */
double ts_undercut_room(const ts_cylindrical_pair *pair, int gear, ts_workings *workings);

/* The tip diameter of the mate, m and signed like it, at which that room is 0; NaN likewise. */
double ts_undercut_tip_of_mate(const ts_cylindrical_pair *pair, int gear);

#endif
