/* element/bevel_toe.h: how much is left of bevel teeth at their inner end, the toe?
 *
 * Units     m.
 * Range     Generated teeth; spiral teeth whose cutter is not given count with their mean spiral
 *           angle at the toe too.
 */
#ifndef TS_ELEMENT_BEVEL_TOE_H
#define TS_ELEMENT_BEVEL_TOE_H

#include "base/workings.h"
#include "element/bevel_pair.h"
#include "element/bevel_spiral.h"
#include "element/bevel_teeth.h"

typedef struct ts_bevel_toe { /* [0] gear 1, [1] gear 2 */
    double m_ni;              /* m    normal module there                                       */
    double s_ni[2];           /* m    normal circular thickness at the pitch cone               */
    double s_ai[2];           /* m    normal thickness at the tip; <= 0: pointed below its tip  */
} ts_bevel_toe;

/* All of them are solved. */
void ts_bevel_toe_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                        const ts_bevel_spiral *spiral, ts_bevel_toe *toe, ts_workings *workings);

#endif
