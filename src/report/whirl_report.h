/* report/whirl_report.h: critical speeds for people and as JSON. */
#ifndef TS_REPORT_WHIRL_REPORT_H
#define TS_REPORT_WHIRL_REPORT_H

#include "rating/whirl_course.h"
#include "report/report_chapter.h"

typedef struct ts_whirl_answer {
    const ts_whirls       *whirls;
    const ts_whirl_course *courses; /* [item] */
} ts_whirl_answer;

void ts_whirl_page(const ts_whirl_answer *whirl, const ts_answer *answer, ts_page *page);
void ts_whirl_json(const ts_whirl_answer *whirl, const ts_answer *answer, ts_buffer *out);
void ts_chapter_whirl(ts_chapter *chapter, const ts_whirl_answer *whirl);

#endif
