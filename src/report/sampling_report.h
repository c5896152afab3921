/* report/sampling_report.h: what becomes of a drive whose values vary. */
#ifndef TS_REPORT_SAMPLING_REPORT_H
#define TS_REPORT_SAMPLING_REPORT_H

#include "base/json_writer.h"
#include "model/drive.h"
#include "report/page.h"
#include "sample/sample_answer.h"

/* The files of a study, and what it takes for granted. */
typedef struct ts_sampling_head {
    const char          *version, *caution;
    const char          *study, *study_hash, *drive, *drive_hash;
    const ts_assumption *assumed;
    size_t               assumed_count;
} ts_sampling_head;

void ts_sampling_page(const ts_sampling_head *head, const ts_sample_answer *answer, ts_page *page);
/* docs/schema/study.schema.json */
void ts_sampling_json(const ts_sampling_head *head, const ts_sample_answer *answer, ts_buffer *out);

#endif
