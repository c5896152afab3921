/* study/oiling.h: what is told of the oil and the heat of an open study. */
#ifndef TS_STUDY_OILING_H
#define TS_STUDY_OILING_H

#include "report/oil_report.h"
#include "study/study.h"

/* `condition` < 0: the one with the most heat. */
ts_status ts_study_ask_oil(ts_study *study, int32_t condition, ts_arena *arena, ts_oil_answer *out);

#endif
