/* rating/iso6336/prepare_parts.h: the parts of ts_iso6336_prepare, each in a file of its own. */
#ifndef TS_RATING_PREPARE_PARTS_H
#define TS_RATING_PREPARE_PARTS_H

#include "rating/iso6336/iso6336.h"

/* mesh_fit.c: NULL, or what is missing or outside its range. */
const char *ts_iso6336_unfit(const ts_cylindrical_pair *pair, const ts_iso6336_mesh *mesh);

/* mesh_prepare.c: 0 or 1.  Fewer teeth; of equals the one with more profile shift, so that the
 * names 1 and 2 are free. */
int ts_iso6336_pinion(const ts_cylindrical_pair *pair);

/* root_prepare.c: form, notch, width and strength of both roots, and what the pair shares there.
 * False, with `missing` set, when a formula does not exist for them. */
bool ts_iso6336_prepare_root(ts_iso6336_prepared *p, ts_workings *workings);

/* swing_prepare.c: stiffness, mass, deviations.  After the root, whose virtual teeth it needs. */
void ts_iso6336_prepare_swing(ts_iso6336_prepared *p, ts_workings *workings);

static inline ts_remarks ts_remark_when(bool holds, ts_remark_kind kind)
{
    return holds ? TS_REMARK(kind) : 0;
}

#endif
