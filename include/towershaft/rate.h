/* towershaft/rate.h: stand-alone elements, computed by their standards.
 *
 * A rate file (docs/rate-file.md) describes gear pairs, bevel pairs, single gears, tolerances and
 * materials by the standards' symbols.  It is read by ts_study_read with options.file TS_WANT_RATE
 * or TS_WANT_EITHER; the study then holds it in place of a drive.
 *
 * Errors    What cannot be, or falls short of a limit, is a finding (ts_study_finding); what lacks
 *           an input is not computable and names it.  Neither is an error.
 * Numbers   ts_study_number, ts_study_write_why and ts_study_write_addresses work as for a drive:
 *           "gear pair/first mesh:eps_alpha", "gear pair/first mesh:S_F1@ISO 6336".
 */
#ifndef TOWERSHAFT_RATE_H
#define TOWERSHAFT_RATE_H

#include "towershaft/study.h"

/* Is what the study holds a rate file that was computed? */
TS_API bool ts_study_is_rate(const ts_study *study);

/* The answer for a terminal, or as JSON by docs/schema/rate.schema.json.  TS_NOT_UNDERSTOOD when
 * the study holds no rate file. */
TS_API ts_status ts_rate_write(ts_study *study, bool json, const ts_page_options *options,
                               const ts_sink *sink);

#endif
