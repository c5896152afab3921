/* search/drive_cowl.h: can a body stand on a box anywhere without meeting the cowl?
 *
 * Which clock angle a shaft has is known only when the whole branch is, so the cowl as such is left
 * to the rules (docs/method/arrange.md).  What is in its way at every angle that the box may reach
 * is known beforehand.
 */
#ifndef TS_SEARCH_DRIVE_COWL_H
#define TS_SEARCH_DRIVE_COWL_H

#include "model/drive.h"

/* side: rad, how far the box may reach from its input to either side; body: m, its radius.  True
 * only where rule D2-cowl-line refuses the body at every angle, and no waiver names that rule. */
bool ts_drive_cowl_bars(const ts_drive *drive, size_t tapped, double side, double body);

/* Does a gear on the arc reach into the engine casing, or nearer than bodies may come?  m_t, m_n:
 * m, its transverse and normal module.  Its tip circle has the addendum of the box's rack, without
 * shift.  Where the casing is not known, no. */
bool ts_drive_gear_meets_casing(const ts_drive *drive, size_t tapped, double m_t, double m_n,
                                uint32_t z);

#endif
