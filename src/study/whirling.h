/* study/whirling.h: the critical speeds of an open study. */
#ifndef TS_STUDY_WHIRLING_H
#define TS_STUDY_WHIRLING_H

#include "report/whirl_report.h"
#include "study/study.h"

/* Every shaft over its speed, in `arena`. */
ts_status ts_study_whirl(const ts_study *study, ts_arena *arena, ts_whirl_answer *out);

/* [whirl of the study] courses of which only that of the shaft that is nearest to whirling is
 * computed, as pictures want it; `wanted` as ts_whirl_course_of. */
ts_status ts_study_course(const ts_study *study, unsigned wanted, ts_arena *arena,
                          const ts_whirl_course **out);

#endif
