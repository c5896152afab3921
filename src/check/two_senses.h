/* check/two_senses.h: do both ends of one shaft demand what one shaft cannot give? */
#ifndef TS_CHECK_TWO_SENSES_H
#define TS_CHECK_TWO_SENSES_H

#include "check/rule.h"

#include <stdbool.h>
#include <stdint.h>

/* Has the shaft an accessory on its front face and one on its rear? */
bool ts_carries_two(const ts_check *check, uint32_t shaft);

/* Do those two demand the same sense facing their pads?  Each sees the shaft from its own side. */
bool ts_wants_two_senses(const ts_check *check, uint32_t shaft);

#endif
