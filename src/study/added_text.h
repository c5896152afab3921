/* study/added_text.h: how do further accessories enter the text of a drive file? */
#ifndef TS_STUDY_ADDED_TEXT_H
#define TS_STUDY_ADDED_TEXT_H

#include "study/study.h"

/* The bytes of the study's file with the accessories of another file behind its own, in `arena`;
 * every other byte stays.  `added` holds `accessories:` in block form, as a drive file does.
 * TS_NOT_UNDERSTOOD, with a message of the study, when either has none in that form. */
ts_status ts_added_text(ts_study *study, ts_text added, const char *added_name, ts_arena *arena,
                        ts_text *bytes);

#endif
