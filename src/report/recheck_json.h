/* report/recheck_json.h: every step behind an answer as data that another program can redo. */
#ifndef TS_REPORT_RECHECK_JSON_H
#define TS_REPORT_RECHECK_JSON_H

#include "report/answer.h"

/* The answer must have kept its workings.  docs/method/recheck.md has the format. */
void ts_recheck_json(const ts_answer *answer, ts_buffer *out);

#endif
