/* element/bevel_blank.h: the two blanks on which bevel teeth stand, ISO 23509:2016, clause 7.
 *
 * Units     m; lengths along the axis count from the apex of the pitch cone towards the gear.
 */
#ifndef TS_ELEMENT_BEVEL_BLANK_H
#define TS_ELEMENT_BEVEL_BLANK_H

#include "base/workings.h"
#include "element/bevel_pair.h"
#include "element/bevel_teeth.h"

typedef struct ts_bevel_blank { /* [0] gear 1, [1] gear 2 */
    double d_i[2];              /* m    inner pitch diameter                               */
    double d_ae[2], d_fe[2];    /* m    outer tip and root diameter                        */
    double d_ai[2], d_fi[2];    /* m    inner tip and root diameter                        */
    double t_xo[2], t_xi[2];    /* m    pitch apex to outer and inner crown                */
    double t_zF[2], t_zR[2];    /* m    pitch apex to the apex of face and root cone; > 0 lies
                                        on the gear's side, < 0 beyond the pitch apex       */
} ts_bevel_blank;

/* `pair` and `teeth` are solved. */
void ts_bevel_blank_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                          ts_bevel_blank *blank, ts_workings *workings);

#endif
