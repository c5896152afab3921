/* report/check_page.h: the page that `check` prints. */
#ifndef TS_REPORT_CHECK_PAGE_H
#define TS_REPORT_CHECK_PAGE_H

#include "report/answer.h"
#include "report/page.h"

void ts_check_page(const ts_answer *answer, ts_page *page);

/* "Does not hold: 2 refusals open." and what was checked, waived and skipped. */
void ts_verdict_sentence(const ts_check_outcome *outcome, ts_buffer *out);

/* Parts of the page, each in its own file. */
void ts_speed_table(const ts_answer *answer, ts_page *page);
void ts_power_table(const ts_answer *answer, ts_page *page);
void ts_mesh_table(const ts_answer *answer, ts_page *page);
void ts_finding_list(const ts_answer *answer, ts_page *page);
void ts_assumption_list(const ts_answer *answer, ts_page *page);

#endif
