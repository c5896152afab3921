/* towershaft/oil.h: where does the drive turn power into heat, and what oil carries it away?
 *
 * Losses of every mesh, bearing, seal and spline in every condition by two published methods, the
 * balance of power with them, the oil that every place needs, its jets and its temperature.
 */
#ifndef TOWERSHAFT_OIL_H
#define TOWERSHAFT_OIL_H

#include "towershaft/study.h"

/* For a terminal or, of all conditions, by docs/schema/oil.schema.json.  condition: NULL: the one
 * with the most heat; places are shown in it.  *computed: is everything known that it asks for?
 * TS_NOT_UNDERSTOOD: no drive was read, or it knows no such condition; the messages say which is
 * nearest. */
TS_API ts_status ts_oil_write(ts_study *study, const char *condition, bool json,
                              const ts_page_options *page, bool *computed, const ts_sink *sink);

#endif
