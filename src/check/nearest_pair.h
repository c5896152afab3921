/* check/nearest_pair.h: which shift, addendum or tooth number would mend a pair that cannot run? */
#ifndef TS_CHECK_NEAREST_PAIR_H
#define TS_CHECK_NEAREST_PAIR_H

#include "check/rule.h"
#include "element/pair_flaw.h"

#include <stdint.h>

/* In normal modules.  Case-hardened teeth harden through at a thinner tip, and it chips. */
#define TS_TIP_LEAST 0.2

/* "use a shift of breather of at least 0.13, an addendum of at most 0.93, or at least 33 teeth for
 * breather": each by itself, and nearest to what it is, takes the flaws in `mend` (bits of
 * ts_pair_flaw) from a cylindrical mesh without bringing one that was not there to any mesh of the
 * gears that change.  Of gear 0 (the driver) or 1; -1: of the one that has less to change.  NULL
 * when none of them can. */
const char *ts_pair_remedy(ts_check *check, uint32_t mesh, int gear, unsigned mend);

#endif
