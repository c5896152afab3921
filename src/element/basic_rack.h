/* element/basic_rack.h: the rack that defines a tooth, ISO 53:1998. */
#ifndef TS_ELEMENT_BASIC_RACK_H
#define TS_ELEMENT_BASIC_RACK_H

#include <stdbool.h>

/* Heights and radii in multiples of the normal module; the pressure angle stands with the gear. */
typedef struct ts_basic_rack {
    double h_aPs;   /* addendum                     */
    double h_fPs;   /* dedendum                     */
    double rho_fPs; /* fillet radius at the root    */
} ts_basic_rack;

/* ISO 53:1998, table A.1: A for high torques, B and C for usual service, D for precision gears
 * that transmit high torque, ground, with a deep full root.  (Values from memory.) */
extern const ts_basic_rack ts_basic_rack_A; /* 1, 1.25, 0.38 */
extern const ts_basic_rack ts_basic_rack_B; /* 1, 1.25, 0.30 */
extern const ts_basic_rack ts_basic_rack_C; /* 1, 1.25, 0.25 */
extern const ts_basic_rack ts_basic_rack_D; /* 1, 1.40, 0.39 */

/* The largest rho_fPs that fits between two flanks of the rack: the full root round.
 * alpha_n   rad, 0 < alpha_n < pi/2
 * returns   in modules; negative when the flanks meet before the root line (no rack at all) */
double ts_basic_rack_rho_most(const ts_basic_rack *rack, double alpha_n);

/* The same rack with its fillet reduced to the full root round where it would not fit: at 25
 * degrees rack A takes 0.318 in place of 0.38.  Whoever calls it says so as an assumption. */
ts_basic_rack ts_basic_rack_fitted(const ts_basic_rack *rack, double alpha_n);

/* Can a rack of these proportions exist at this pressure angle? */
bool ts_basic_rack_possible(const ts_basic_rack *rack, double alpha_n);

#endif
