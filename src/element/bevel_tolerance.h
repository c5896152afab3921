/* element/bevel_tolerance.h: how far may bevel teeth miss their place?  ISO 17485:2006.
 *
 * Units     m; B: accuracy grade 2 .. 11 (as ISO counts: small is fine).
 * Range     1 <= m_mn <= 50 mm, 5 .. 400 teeth, 5 <= d_T <= 2500 mm; elsewhere the formulas are
 *           carried on and ts_bevel_tolerance_within says false.
 */
#ifndef TS_ELEMENT_BEVEL_TOLERANCE_H
#define TS_ELEMENT_BEVEL_TOLERANCE_H

#include "base/workings.h"

#include <stdbool.h>

/* f_ptT of one gear: tolerance on the single pitch, at the tolerance diameter d_T (the mean pitch
 * diameter is taken).  Not rounded: the rating asks for the size, not for a printed class.
 * gear: 0 or 1, for the names in the workings.  NaN when B is no grade. */
double ts_bevel_pitch_tolerance(double d_T, double m_mn, double B, int gear, ts_workings *workings);
/* F_pT: tolerance on the total cumulative pitch. */
double ts_bevel_cumulative_tolerance(double d_T, double m_mn, double B, int gear,
                                     ts_workings *workings);
bool   ts_bevel_tolerance_within(double d_T, double m_mn, double z);

#endif
