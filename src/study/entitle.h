/* study/entitle.h: title, revision and cautions of a manuscript about a study. */
#ifndef TS_STUDY_ENTITLE_H
#define TS_STUDY_ENTITLE_H

#include "base/manuscript.h"
#include "study/study.h"

/* An empty one with title, revision, file, hash, version and caution of the study. */
void ts_study_manuscript(const ts_study *study, ts_arena *arena, ts_manuscript *manuscript);

/* Its title becomes "title: what". */
void ts_study_entitle(ts_manuscript *manuscript, const char *what);

#endif
