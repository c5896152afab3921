/* check/nearest_teeth.h: which tooth number of one gear would bring every pad into its band? */
#ifndef TS_CHECK_NEAREST_TEETH_H
#define TS_CHECK_NEAREST_TEETH_H

#include "check/rule.h"

#include <stdint.h>

/* The tooth number nearest to the present one of the main gear of `shaft` with which every pad that
 * it speeds or slows is inside its band in every condition; 0 when there is none between a third
 * and three times the present number, or when that gear speeds no pad (a box input). */
int ts_nearest_teeth(const ts_check *check, uint32_t shaft);

#endif
