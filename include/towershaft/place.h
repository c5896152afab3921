/* towershaft/place.h: on which pad of this train could an accessory stand?
 *
 * Tries every face of every shaft of every box, with the train as it is: alone where the pad is
 * free, in exchange where another accessory stands there.  Each trial is the drive file with those
 * few values changed, read anew and judged by all rules.  Whether another train would be better is
 * a question for towershaft/arrange.h.
 */
#ifndef TOWERSHAFT_PLACE_H
#define TOWERSHAFT_PLACE_H

#include "towershaft/study.h"

/* JSON by docs/schema/places.schema.json: the trials, best first: what holds, then the fewest
 * refusals, questions without an answer, warnings, then the order of the shafts.  Each names the
 * edits that make it so (ts_study_set_bytes, in that order).
 * TS_NOT_UNDERSTOOD: the study holds no solved drive, or no such accessory; see ts_study_message.
 */
TS_API ts_status ts_places_write(ts_study *study, const char *accessory, const ts_sink *sink);

#endif
