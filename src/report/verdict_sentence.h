/* report/verdict_sentence.h: the verdict in one sentence, the same on page, picture and in JSON. */
#ifndef TS_REPORT_VERDICT_SENTENCE_H
#define TS_REPORT_VERDICT_SENTENCE_H

#include "base/buffer.h"
#include "check/outcome.h"

/* "The drive does not hold: 2 refusals open, 1 warning, 0 notes; 0 waived, 0 not computable." */
void ts_verdict_sentence(const ts_check_outcome *outcome, ts_buffer *out);

#endif
