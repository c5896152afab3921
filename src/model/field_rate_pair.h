/* model/field_rate_pair.h: what the fields of a gear pair of a rate file ask of each other. */
#ifndef TS_MODEL_FIELD_RATE_PAIR_H
#define TS_MODEL_FIELD_RATE_PAIR_H

#include "model/field_rate_parts.h"

/* Sources that depend on the rack. */
#define TS_RATE_ISO_53 "ISO 53:1998, table A.1, of the `rack` (from memory)"
#define TS_RATE_ISO_53_ROUND                                                                       \
    "ISO 53:1998, table A.1, of the `rack`, or the full root round where that is smaller (from "   \
    "memory)"

/* Does it stand in the file? */
static inline bool ts_rate_is_stated(ts_measure measure)
{
    return measure.standing == TS_GIVEN;
}

/* Defaults that depend on what is there (ts_field.preset_of); `record` is a ts_rate_pair. */
ts_preset ts_rate_dedendum_preset(const void *record);
ts_preset ts_rate_fillet_preset(const void *record);
ts_preset ts_rate_shift_2_preset(const void *record);
ts_preset ts_rate_shift_1_preset(const void *record);
ts_preset ts_rate_shift_preset(const void *record);
ts_preset ts_rate_tip_preset(const void *record);

/* What the fields cannot see one by one (ts_record_table.judge). */
const char *ts_rate_pair_judge(const void *record, const char **key, const char **expected);

#endif
