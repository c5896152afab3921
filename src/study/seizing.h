/* study/seizing.h: what happens when an accessory of an open study seizes. */
#ifndef TS_STUDY_SEIZING_H
#define TS_STUDY_SEIZING_H

#include "report/page.h"
#include "study/study.h"

/* At once, in the condition in which its pad turns fastest, its own neck in place; takes up to a
 * second. */
ts_status ts_study_tell_seizure(ts_study *study, const char *accessory, ts_arena *arena,
                                ts_page *page);

#endif
