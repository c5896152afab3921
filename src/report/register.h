/* report/register.h: a register of defaults of which only some commands read: `start`, `seizure`.
 */
#ifndef TS_REPORT_REGISTER_H
#define TS_REPORT_REGISTER_H

#include "base/json_writer.h"
#include "model/drive.h"
#include "report/report_chapter.h"

/* "35 K", as one would write it, and in customary units what that is: "35 K (63 degF)". */
void ts_register_value(const ts_assumption *one, ts_units units, ts_buffer *out);
/* "cut-out = 5450 rpm: half of the highest speed ...", a sentence each. */
void ts_register_page(ts_page *page, const ts_assumption *items, size_t count);
/* The same as a table of a chapter. */
void ts_register_cells(ts_chapter *chapter, const ts_assumption *items, size_t count);
/* "assumptions": [{"key", "value", "reason"}] */
void ts_register_json(ts_json *json, const ts_assumption *items, size_t count);
void ts_register_json_at(ts_json *json, const char *key, const ts_assumption *items, size_t count);

#endif
