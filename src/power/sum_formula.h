/* power/sum_formula.h: sums of as many torques or powers as a drive happens to have.
 *
 * Every term has a name of its own, so that two pads which ask for the same power keep each their
 * own origin.  Beyond TS_TORQUES_NAMED and TS_POWERS_NAMED terms all are called T_i or P_i.
 */
#ifndef TS_POWER_SUM_FORMULA_H
#define TS_POWER_SUM_FORMULA_H

#include "base/workings.h"

#define TS_TORQUES_NAMED 12
#define TS_POWERS_NAMED  48

/* count >= 1 everywhere; index from 0. */
const char *ts_torque_term(size_t index, size_t count);
const char *ts_power_term(size_t index, size_t count);

const ts_formula *ts_torque_sum(size_t count);        /* T: of a shaft             */
const ts_formula *ts_pad_power_sum(size_t count);     /* P_pads                    */
const ts_formula *ts_lost_power_sum(size_t count);    /* P_lost                    */
const ts_formula *ts_driving_power_sum(size_t count); /* P_driving: minus the sum */

#endif
