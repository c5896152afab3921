/* rating/iso6336/gear_step.h: how the sources of ISO 6336 are spelt, and what steps note in every
 * load case. */
#ifndef TS_RATING_GEAR_STEP_H
#define TS_RATING_GEAR_STEP_H

#include "element/both_gears_step.h"

/* Most formulas of the family stand in both editions; what an edition changed names its year. */
#define ISO_6336_1 "ISO 6336-1:2019 (as in 2006), clause "
#define ISO_6336_2 "ISO 6336-2:2019 (as in 2006), clause "
#define ISO_6336_3 "ISO 6336-3:2019 (as in 2006), clause "
#define RECALLED   " (formula and clause from memory)"

/* As ts_workings_row, without the call where nobody listens: for what every load case passes. */
#define TS_ROW(workings, ...)                                                                      \
    do {                                                                                           \
        if (TS_STEP_IS_NOTED(workings))                                                            \
            ts_workings_row((workings), __VA_ARGS__);                                              \
    } while (0)

#endif
