/* study/neck_seizures.h: the peaks of seizures behind every neck of a study. */
#ifndef TS_STUDY_NECK_SEIZURES_H
#define TS_STUDY_NECK_SEIZURES_H

#include "rating/seizure_peak.h"
#include "study/study.h"

/* [guard of study->select], kept in `arena`: every accessory with a neck seizes at once in every
 * condition in which its pad turns, some 5 ms each.  TS_NO_MEMORY. */
ts_status ts_study_neck_seizures(ts_study *study, ts_arena *arena, const ts_seizure_peak **out);

#endif
