/* report/necks_report.h: bands, samples and chances of necks for people and as JSON. */
#ifndef TS_REPORT_NECKS_REPORT_H
#define TS_REPORT_NECKS_REPORT_H

#include "report/answer.h"
#include "report/page.h"
#include "search/neck_sample.h"

typedef struct ts_necks_answer {
    const ts_neck_survey *items;
    size_t                count;
    uint64_t              seed;
} ts_necks_answer;

void ts_necks_page(const ts_necks_answer *necks, const ts_answer *answer, ts_page *page);
void ts_necks_json(const ts_necks_answer *necks, const ts_answer *answer, ts_buffer *out);

#endif
