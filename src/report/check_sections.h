/* report/check_sections.h: what `check` tells in a few lines of what other commands tell in full.
 */
#ifndef TS_REPORT_CHECK_SECTIONS_H
#define TS_REPORT_CHECK_SECTIONS_H

#include "base/json_writer.h"
#include "report/answer.h"
#include "report/page.h"

/* Losses and temperatures of every drive where they are worst, and the rules that do not hold. */
void ts_check_oil(const ts_answer *answer, ts_page *page);
void ts_json_check_oil(ts_json *json, const ts_answer *answer);
/* How many single failures bring each effect about. */
void ts_check_effects(const ts_answer *answer, ts_page *page);
void ts_json_check_effects(ts_json *json, const ts_answer *answer);

#endif
