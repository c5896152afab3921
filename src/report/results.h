/* report/results.h: every number of the answer as a row of a table, for spreadsheets.
 *
 * Numbers are numbers in their shortest form, and empty where nothing could be computed.
 */
#ifndef TS_REPORT_RESULTS_H
#define TS_REPORT_RESULTS_H

#include "report/answer.h"

/* UTF-8: results, and below them judgements. */
void ts_results_csv(const ts_answer *answer, ts_units units, ts_buffer *out);
/* A workbook of ECMA-376 with three sheets: results, judgements, and what they are of. */
void ts_results_workbook(const ts_answer *answer, ts_units units, ts_buffer *out);

#endif
