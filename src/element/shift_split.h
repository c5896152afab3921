/* element/shift_split.h: how a sum of profile shifts is shared between two gears. */
#ifndef TS_ELEMENT_SHIFT_SPLIT_H
#define TS_ELEMENT_SHIFT_SPLIT_H

#include "element/cylindrical_pair.h"

/* x_1 at which the greatest specific sliding of gear 1 (at A) equals that of gear 2 (at E), with
 * x_1 + x_2 = pair->sum_x and the tip rule of the input.
 * pair      inputs, frame, centre distance and sum of shifts are solved; external gears.  With
 *           given tip diameters sliding does not depend on the split, and there is no answer.
 * returns   x_1 to 1e-12, or NaN when no split between undercut and base circles balances */
double ts_shift_split_equal_sliding(const ts_cylindrical_pair *pair, ts_workings *workings);

#endif
