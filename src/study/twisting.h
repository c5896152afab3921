/* study/twisting.h: the torsional modes of an open study. */
#ifndef TS_STUDY_TWISTING_H
#define TS_STUDY_TWISTING_H

#include "report/twist_report.h"
#include "study/study.h"

/* Every tree in its states, in `arena`. */
ts_status ts_study_twist(const ts_study *study, ts_arena *arena, ts_twist_answer *out);

#endif
