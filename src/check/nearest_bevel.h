/* check/nearest_bevel.h: which face, spiral, addendum or shift would mend bevels that cannot run?
 */
#ifndef TS_CHECK_NEAREST_BEVEL_H
#define TS_CHECK_NEAREST_BEVEL_H

#include "check/rule.h"

#include <stdint.h>

typedef enum ts_bevel_flaw {
    TS_BEVEL_FLAW_TOE_1   = 1 << 0, /* gear 1 is thinner than allowed at the tip of its inner end */
    TS_BEVEL_FLAW_TOE_2   = 1 << 1,
    TS_BEVEL_FLAW_LETS_GO = 1 << 2,  /* the modified contact ratio is less than allowed */
    TS_BEVEL_FLAW_UNSOLVED = 1 << 3, /* there are no such cones or no such teeth        */
    TS_BEVEL_FLAWS_ALL     = (1 << 4) - 1
} ts_bevel_flaw;

/* "use a face of at most 9.1 mm or an addendum of at most 0.93": each by itself, and nearest to
 * what it is, takes the flaws in `mend` (bits of ts_bevel_flaw) from a bevel pair without bringing
 * another one.  NULL when none of them can. */
const char *ts_bevel_remedy(ts_check *check, uint32_t mesh, unsigned mend);

#endif
