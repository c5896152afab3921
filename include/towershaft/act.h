/* towershaft/act.h: small answers that are not about one drive: what was done, is all well? */
#ifndef TOWERSHAFT_ACT_H
#define TOWERSHAFT_ACT_H

#include "towershaft/status.h"

#include <stdbool.h>

typedef struct ts_act_field {
    const char *key;
    const char *value; /* NULL is written as null */
} ts_act_field;

/* {"tool": ..., "version": ..., "command": ..., fields...} for commands that write or list. */
TS_API ts_status ts_act_write(const char *command, const ts_act_field *fields, size_t count,
                              const ts_sink *sink);

/* Rules as JSON or for a terminal of `columns`: all of them (`only` NULL), those of one capability
 * ("B2"), or the page of one rule. */
TS_API ts_status ts_rules_write(const char *only, bool json, int columns, const ts_sink *sink);

/* Runs every built-in published case and looks at libraries, locale and font, as JSON or for a
 * terminal of `columns` (0: 100).  *well is false when any line fails. */
TS_API ts_status ts_doctor_write(bool json, int columns, bool *well, const ts_sink *sink);

#endif
