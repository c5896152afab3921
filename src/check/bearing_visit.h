/* check/bearing_visit.h: the short questions that rules ask of shafts and their bearings. */
#ifndef TS_CHECK_BEARING_VISIT_H
#define TS_CHECK_BEARING_VISIT_H

#include "check/rule.h"

typedef struct ts_bearing_at {
    const ts_line         *line;
    const ts_line_bearing *bearing;
    uint32_t               number; /* of the line             */
    int                    k;      /* of the bearing on it    */
} ts_bearing_at;

/* Every bearing that could be rated, in order. */
void ts_each_bearing(ts_check *check, double limit,
                     void (*judge)(ts_check *check, const ts_bearing_at *at, double limit));

/* Could the line be computed? */
static inline bool ts_line_is_known(const ts_line *line)
{
    return line->fault == NULL && line->missing == NULL;
}

/* "the front bearing of hp box input (deep groove 10, 30 x 55 mm)" */
const char *ts_bearing_name(ts_check *check, const ts_bearing_at *at);

/* What the program chose by itself is no more than a warning: the file has not said it. */
ts_level ts_bearing_level(ts_level level, const ts_line_bearing *bearing);

/* " of the lightest that holds ..."; what to write where a bearing is too small. */
const char *ts_bearing_remedy(ts_check *check, const ts_bearing_at *at, double more);

#endif
