/* report/necks_report.h: bands, samples and chances of necks for people and as JSON. */
#ifndef TS_REPORT_NECKS_REPORT_H
#define TS_REPORT_NECKS_REPORT_H

#include "rating/seizure_peak.h"
#include "report/answer.h"
#include "report/page.h"
#include "search/neck_sample.h"

typedef struct ts_necks_answer {
    const ts_neck_survey  *items;
    size_t                 count;
    uint64_t               seed;
    const ts_seizure_peak *peaks; /* [guard of `guards`]; NULL: unasked */
    const ts_guard        *guards;
} ts_necks_answer;

/* What a seizure at its pad brings; NULL: unasked, or none was followed. */
const ts_seizure_peak *ts_necks_peak(const ts_necks_answer *necks, size_t item);

void ts_necks_page(const ts_necks_answer *necks, const ts_answer *answer, ts_page *page);
void ts_necks_json(const ts_necks_answer *necks, const ts_answer *answer, ts_buffer *out);

#endif
