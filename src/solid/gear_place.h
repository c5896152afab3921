/* solid/gear_place.h: in which plane of its box does a gear lie, and how far is it turned?
 *
 * A driven gear lies in the plane of its driver, a step one plane behind the gear before it.  The
 * file does not say where planes lie: they stand side by side, as wide as their widest face and
 * 4 mm apart, in the middle of the depth (common practice, no source).
 */
#ifndef TS_SOLID_GEAR_PLACE_H
#define TS_SOLID_GEAR_PLACE_H

#include "motion/motion.h"

#define TS_PLANES_MOST  16
#define TS_PLANES_APART 4e-3 /* m */

typedef struct ts_gear_place {
    double phase; /* rad, of the middle of tooth 0 from 12:00, ccw as seen from behind, so that
                     teeth of one gear stand in spaces of the other                          */
    int    plane; /* 0 that of the box input's gear                                         */
    double z;     /* m, middle of its plane, rearward of the middle of the depth            */
} ts_gear_place;

/* `out` has room for every gear of the train; bevels are left at 0. */
void ts_gear_places(const ts_motion *motion, ts_gear_place *out);

#endif
