/* check/oil_told.h: which values of the oil does a rule wait for?
 *
 * One value told `unknown` leaves dozens of objects without an answer.  Rules ask for it once, at
 * the line of the file where it stands, and leave out what waits for it.
 */
#ifndef TS_CHECK_OIL_TOLD_H
#define TS_CHECK_OIL_TOLD_H

#include "check/rule.h"

typedef enum ts_oil_need {
    TS_NEEDS_FEED         = 1, /* `feed`, and `feed at`                    */
    TS_NEEDS_VISCOSITY    = 2, /* both                                     */
    TS_NEEDS_BEARING_RISE = 4, /* `bearing rise`                           */
    TS_NEEDS_DENSITY      = 8,
    TS_NEEDS_RISE         = 16 /* `rise`                                   */
} ts_oil_need;

/* Puts the question about each of them (a sum of ts_oil_need) that is told `unknown`; of the feed
 * only in conditions that are `asked` (NULL: all).  True: they are all known. */
bool ts_oil_is_told(ts_check *check, unsigned needs,
                    bool (*asked)(const ts_check *check, uint32_t condition));

/* The same without any question. */
bool ts_oil_lacks(const ts_check *check, unsigned needs);

#endif
