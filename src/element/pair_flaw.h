/* element/pair_flaw.h: what keeps two cylindrical gears from running together?
 *
 * The same limits that rules of a drive and `rate` judge one by one, as bits, so that a search can
 * ask whether another shift, addendum or tooth number would mend one without spoiling another.
 */
#ifndef TS_ELEMENT_PAIR_FLAW_H
#define TS_ELEMENT_PAIR_FLAW_H

#include "element/cylindrical_pair.h"

typedef enum ts_pair_flaw {
    TS_FLAW_TIP_1     = 1 << 0, /* gear 1 is thinner at its tip than allowed                    */
    TS_FLAW_TIP_2     = 1 << 1,
    TS_FLAW_ROOT_1    = 1 << 2, /* the tip of gear 2 reaches where gear 1 has no involute       */
    TS_FLAW_ROOT_2    = 1 << 3,
    TS_FLAW_TOUCH     = 1 << 4, /* a tip touches the mate's root circle                         */
    TS_FLAW_LETS_GO   = 1 << 5, /* the transverse contact ratio is less than allowed            */
    TS_FLAW_UNSOLVED  = 1 << 6, /* there is no such pair                                        */
    TS_PAIR_FLAWS_ALL = (1 << 7) - 1
} ts_pair_flaw;

typedef struct ts_pair_bounds {
    double s_an_least;      /* 1, least tip thickness over the normal module */
    double eps_alpha_least; /* 1 */
} ts_pair_bounds;

/* Of a solved pair. */
unsigned ts_pair_flaws(const ts_cylindrical_pair *pair, const ts_pair_bounds *bounds);
/* Of one that is not: all flaws when it cannot be solved. */
unsigned ts_pair_flaws_of(const ts_cylindrical_pair_input *in, const ts_pair_bounds *bounds);

/* Bound of the sum of profile shifts that leaves a centre distance: it must lie above this for an
 * external pair, below it for an internal one.  The angles of `in` are in their ranges. */
double ts_shift_sum_bound(const ts_cylindrical_pair_input *in);

#endif
