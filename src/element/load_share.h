/* element/load_share.h: which part of the load does one pair of teeth carry at each point of the
 * path of contact?  ISO/TS 6336-20 (X_Gamma) and -22 (X_Y), method B.
 *
 * Shapes    X = X_bare + r_1*X_tip1 + r_2*X_tip2, where r_1 and r_2 say how far the tip relief of
 *           each gear takes up the deflection: min(1, C_a/C_eff) of tip_relief.h.  The three parts
 *           depend on geometry alone.
 * Ranges    A spur pair with a transverse contact ratio of 2 and more is outside the clause; see
 *           ts_load_share_high_ratio.
 */
#ifndef TS_ELEMENT_LOAD_SHARE_H
#define TS_ELEMENT_LOAD_SHARE_H

#include "base/workings.h"
#include "element/cylindrical_pair.h"
#include "element/flank_path.h"

#include <stdbool.h>

typedef struct ts_load_share {
    double bare[TS_FLANK_POINTS];
    double tip_1[TS_FLANK_POINTS], tip_2[TS_FLANK_POINTS];
} ts_load_share;

/* `grade` is the coarser tolerance class of the two gears; above 7 a pair of teeth may carry more
 * than a third of the load when it enters. */
void ts_load_share_lay(const ts_cylindrical_pair *pair, const ts_flank_path *path, int grade,
                       ts_load_share *share);

/* Notes the share of one point and how it comes about.  `X` is what was computed for it. */
void ts_load_share_note(const ts_cylindrical_pair *pair, const ts_flank_path *path, int grade,
                        int point, ts_workings *workings);

/* Is the pair of the kind for which the clause has no share?  The share is then that of equal
 * teeth of which as many carry as always do. */
bool ts_load_share_high_ratio(const ts_cylindrical_pair *pair);

#endif
