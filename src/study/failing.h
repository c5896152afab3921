/* study/failing.h: parts of a drive by the names under which their failures are told. */
#ifndef TS_STUDY_FAILING_H
#define TS_STUDY_FAILING_H

#include "effect/effect.h"
#include "study/study.h"

typedef struct ts_found_part {
    ts_failing of;
    uint32_t   at;
    bool       there;
} ts_found_part;

/* By its name or address.  TS_NOT_UNDERSTOOD with the nearest, TS_NO_MEMORY. */
ts_status ts_study_choose_part(ts_study *study, const ts_effects *effects, const char *part,
                               ts_arena *arena, ts_found_part *found);

#endif
