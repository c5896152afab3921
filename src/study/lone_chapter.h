/* study/lone_chapter.h: a chapter of the report by itself, on a terminal. */
#ifndef TS_STUDY_LONE_CHAPTER_H
#define TS_STUDY_LONE_CHAPTER_H

#include "report/report_chapter.h"
#include "study/study.h"

/* Below title and cautions of the study; what `write` makes of `about` lives in `arena`. */
ts_status ts_study_lone_chapter(const ts_study *study, ts_arena *arena,
                                void (*write)(ts_chapter *chapter, const void *about),
                                const void *about, ts_page *page);

#endif
