/* report/results_csv.h: every number of the answer as a row of a table, for spreadsheets.
 *
 * RFC 4180, UTF-8.  Numbers are numbers in their shortest form, and empty where nothing could be
 * computed.  A text that a spreadsheet would take for a formula begins with an apostrophe.
 */
#ifndef TS_REPORT_RESULTS_CSV_H
#define TS_REPORT_RESULTS_CSV_H

#include "report/answer.h"

void ts_results_csv(const ts_answer *answer, ts_units units, ts_buffer *out);

#endif
