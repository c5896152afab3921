/* report/check_page.h: the page that `check` prints. */
#ifndef TS_REPORT_CHECK_PAGE_H
#define TS_REPORT_CHECK_PAGE_H

#include "report/answer.h"
#include "report/page.h"

void ts_check_page(const ts_answer *answer, ts_page *page);

/* Parts of the page, each in its own file. */
void ts_answer_title(const ts_answer *answer, ts_page *page);
/* The same where the answer, and so the SHA-256, is of the text that `size` would write. */
void ts_sized_title(const ts_answer *answer, ts_page *page);
void ts_speed_table(const ts_answer *answer, ts_page *page);
void ts_power_table(const ts_answer *answer, ts_page *page);
void ts_mesh_table(const ts_answer *answer, ts_page *page);
void ts_strength_table(const ts_answer *answer, ts_page *page);
void ts_rubbing_table(const ts_answer *answer, ts_page *page);
void ts_mass_table(const ts_answer *answer, ts_page *page);
void ts_line_table(const ts_answer *answer, ts_page *page);
void ts_spline_table(const ts_answer *answer, ts_page *page);
void ts_float_table(const ts_answer *answer, ts_page *page);
void ts_selectivity_table(const ts_answer *answer, ts_page *page);
void ts_finding_list(const ts_answer *answer, ts_page *page);
void ts_assumption_list(const ts_answer *answer, ts_page *page);
/* "rise = 35 K at oil: why", where it stands; of the same default in many records the first place,
 * unless `all` are told one by one. */
void ts_assumption_words(const ts_answer *answer, size_t index, bool all, ts_units units,
                         ts_buffer *out);

#endif
