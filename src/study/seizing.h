/* study/seizing.h: what happens when an accessory of an open study seizes, or is jolted. */
#ifndef TS_STUDY_SEIZING_H
#define TS_STUDY_SEIZING_H

#include "report/seize_report.h"
#include "report/twist_report.h"
#include "study/study.h"
#include "towershaft/seize.h"

/* `twist` of the study, or NULL: it is computed.  What stands in `out` lives in `arena` and with
 * `twist`.  TS_NOT_UNDERSTOOD as ts_seize_write; several threads may ask at once with arenas of
 * their own, as long as none asks for what is not there. */
ts_status ts_study_seize(ts_study *study, const ts_seize_options *options,
                         const ts_twist_answer *twist, ts_arena *arena, ts_seize_answer *out);

/* At once, in the condition in which its pad turns fastest, its own neck in place. */
ts_status ts_study_tell_seizure(ts_study *study, const char *accessory, ts_arena *arena,
                                ts_chapter *chapter);

#endif
