/* rating/agma2101/agma_step.h: how the sources of ANSI/AGMA 2101 and AGMA 908 are spelt. */
#ifndef TS_RATING_AGMA_STEP_H
#define TS_RATING_AGMA_STEP_H

#include "element/both_gears_step.h"

#define AGMA_2101 "ANSI/AGMA 2101-D04, clause "
#define AGMA_908  "AGMA 908-B89, clause "
#define RECALLED  " (formula and clause from memory)"

#endif
