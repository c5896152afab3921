/* report/twist_report.h: torsional modes for people and as JSON. */
#ifndef TS_REPORT_TWIST_REPORT_H
#define TS_REPORT_TWIST_REPORT_H

#include "report/answer.h"
#include "report/page.h"
#include "response/drive_forced.h"

typedef struct ts_twist_answer {
    const ts_drive_twist  *items;  /* trees, each in its states */
    const ts_drive_forced *forced; /* [item], in every condition of that state */
    size_t                 count;
} ts_twist_answer;

void ts_twist_page(const ts_twist_answer *twist, const ts_answer *answer, ts_page *page);
void ts_twist_json(const ts_twist_answer *twist, const ts_answer *answer, ts_buffer *out);

#endif
