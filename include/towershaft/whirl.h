/* towershaft/whirl.h: at which speeds do the shafts of a drive whirl?
 *
 * Critical speeds of every shaft in its bearings, how they go with speed, what the unbalance that
 * its grade allows does to it, and how long and thick a radial shaft may be.
 */
#ifndef TOWERSHAFT_WHIRL_H
#define TOWERSHAFT_WHIRL_H

#include "towershaft/study.h"

/* For a terminal or by docs/schema/whirl.schema.json.  *computed: could all shafts be computed?
 * TS_NOT_UNDERSTOOD: no drive was read. */
TS_API ts_status ts_whirl_write(ts_study *study, bool json, const ts_page_options *page,
                                bool *computed, const ts_sink *sink);

#endif
