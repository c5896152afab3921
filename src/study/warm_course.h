/* study/warm_course.h: an open study as it grows hot. */
#ifndef TS_STUDY_WARM_COURSE_H
#define TS_STUDY_WARM_COURSE_H

#include "report/warm_report.h"
#include "study/study.h"

enum { TS_WARM_SAMPLES = 60 };

/* Every drive through legs that are told or taken for granted: `legs` NULL, `soak` and `air` NaN.
 */
typedef struct ts_warm_wish {
    const ts_warm_leg *legs;
    size_t             leg_count;
    double             soak, air; /* K */
    size_t             samples;   /* of every leg, >= 1 */
} ts_warm_wish;

ts_status ts_study_warm(const ts_study *study, const ts_warm_wish *wish, ts_arena *arena,
                        ts_warm_answer *out);

#endif
