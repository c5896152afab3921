/* study/whirling.h: the critical speeds of an open study. */
#ifndef TS_STUDY_WHIRLING_H
#define TS_STUDY_WHIRLING_H

#include "report/whirl_report.h"
#include "study/study.h"

/* Every shaft over its speed, in `arena`. */
ts_status ts_study_whirl(const ts_study *study, ts_arena *arena, ts_whirl_answer *out);

#endif
