/* study/starting.h: the start of an open study. */
#ifndef TS_STUDY_STARTING_H
#define TS_STUDY_STARTING_H

#include "report/start_report.h"
#include "study/study.h"

#define TS_START_SAMPLES 800 /* that a picture wants */

typedef struct ts_start_wish {
    double   ambient, oil; /* K; NaN: as the file has it */
    size_t   samples;      /* of the trace               */
    bool     grid;
    uint32_t beyond; /* condition to which it goes on from idle; TS_NOWHERE: it ends there */
} ts_start_wish;

/* Does the spool that is cranked turn faster in a condition than at idle? */
bool ts_start_is_beyond(const ts_study *study, uint32_t condition);

/* What stands in `out` lives in `arena`; TS_OK with whatever outcome. */
ts_status ts_study_start(const ts_study *study, const ts_start_wish *wish, ts_arena *arena,
                         ts_start_answer *out);

#endif
