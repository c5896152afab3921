/* towershaft/view.h: one drive as a page that moves wants it: where everything stands, what it
 * carries in every condition, how much is in reserve, and what was found.
 *
 * Geometry is in metres about the engine axis, x to the right and y up as seen from behind; angles
 * in radians, anticlockwise as seen from behind.  A gear's outline is half a tooth: its mirror
 * image in x is the other half, and every tooth is a turn of it.  Speeds, powers and torques are in
 * the units that `units` names.  A list over the conditions has one value for each of `conditions`,
 * null where nothing is known.
 */
#ifndef TOWERSHAFT_VIEW_H
#define TOWERSHAFT_VIEW_H

#include "towershaft/study.h"

typedef struct ts_view_options {
    bool us; /* customary units for speeds, powers and torques, and in the words of limits */
} ts_view_options;

/* JSON by docs/schema/view.schema.json.  TS_NOT_UNDERSTOOD: the study holds no solved drive. */
TS_API ts_status ts_study_write_view(ts_study *study, const ts_view_options *options,
                                     const ts_sink *sink);

#endif
