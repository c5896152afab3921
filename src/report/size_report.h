/* report/size_report.h: what sizing did to the face widths, for people and as JSON. */
#ifndef TS_REPORT_SIZE_REPORT_H
#define TS_REPORT_SIZE_REPORT_H

#include "report/answer.h"
#include "report/page.h"
#include "search/tooth_width.h"

/* `answer` is that of the sized drive, whose train is the one that was sized. */
void ts_size_page(const ts_width_plan *plan, double step, const ts_answer *answer, ts_page *page);
void ts_size_json(const ts_width_plan *plan, double step, const ts_answer *answer, ts_buffer *out);

#endif
