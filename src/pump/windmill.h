/* pump/windmill.h: down to which speed of its spool does an oil pump pack still feed?
 *
 * Jets let pass a flow that goes with the root of the pressure; slip goes with the pressure.  So
 * the speed at which a share of the pressure is left stands in closed form:
 * n = (2 pi Q_full sqrt(share)/((1 - air) V_g) + C_s share dp/eta)/filling, oil as it is fed.
 */
#ifndef TS_PUMP_WINDMILL_H
#define TS_PUMP_WINDMILL_H

#include "pump/drive_pumps.h"

/* rad/s of the spool that drives it, at which `share` (0..1] of its pressure is left; NaN: the pack
 * could not be sized.  docs/method/pumps.md */
double ts_pack_spool_speed(const ts_oil_units *units, const ts_pack *pack, double share);

#endif
