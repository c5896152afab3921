/* model/field_where_told.h: defaults of a record that hold only where the record is told at all.
 *
 * For field tables: the file that includes this has a `where_told(record, preset)` that gives the
 * preset back, or none.
 */
#ifndef TS_MODEL_FIELD_WHERE_TOLD_H
#define TS_MODEL_FIELD_WHERE_TOLD_H

#include "model/field.h"

/* The manual shows the default, the reader asks the function. */
#define PRESET(name, ...)                                                                          \
    static const ts_preset name##_preset = {__VA_ARGS__};                                          \
    static ts_preset       name##_of(const void *record)                                           \
    {                                                                                              \
        return where_told(record, name##_preset);                                                  \
    }
#define DEFAULT(name, ...) .preset = {__VA_ARGS__}, .preset_of = name##_of
#define OF_KIND(of)        .form = TS_FORM_MEASURE, .kind = TS_KIND_##of

#endif
