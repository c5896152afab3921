/* report/whirl_report.h: critical speeds for people and as JSON. */
#ifndef TS_REPORT_WHIRL_REPORT_H
#define TS_REPORT_WHIRL_REPORT_H

#include "base/json_writer.h"
#include "rating/drive_webs.h"
#include "rating/whirl_course.h"
#include "report/report_chapter.h"

typedef struct ts_whirl_answer {
    const ts_whirls       *whirls;
    const ts_whirl_course *courses; /* [item] */
    const ts_webs         *webs;
} ts_whirl_answer;

void ts_whirl_page(const ts_whirl_answer *whirl, const ts_answer *answer, ts_page *page);
void ts_whirl_json(const ts_whirl_answer *whirl, const ts_answer *answer, ts_buffer *out);
void ts_chapter_whirl(ts_chapter *chapter, const ts_whirl_answer *whirl);

/* The part of these about gears that swing across their planes. */
void ts_web_page(const ts_webs *webs, ts_page *page);
void ts_web_json(const ts_webs *webs, const ts_answer *answer, ts_json *json);
void ts_web_cells(ts_chapter *chapter, const ts_webs *webs);

#endif
