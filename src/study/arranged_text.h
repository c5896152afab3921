/* study/arranged_text.h: how does an arrangement stand in the text of its drive file? */
#ifndef TS_STUDY_ARRANGED_TEXT_H
#define TS_STUDY_ARRANGED_TEXT_H

#include "search/drive_problem.h"
#include "study/study.h"

/* The bytes of the study's file with the shafts of `found` in its boxes, in `arena`.  What else
 * stands in the file stays as it is: other keys of an input shaft too, but for its steps and
 * branches.  Messages, if any, go to `list`. */
ts_status ts_arranged_text(const ts_study *study, const ts_drive_problem *problem,
                           const ts_arrangement *found, ts_arena *arena, ts_diagnostics *list,
                           ts_text *bytes);

#endif
