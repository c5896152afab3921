/* check/shaft_visit.h: what the rules about the safety of a shaft ask alike. */
#ifndef TS_CHECK_SHAFT_VISIT_H
#define TS_CHECK_SHAFT_VISIT_H

#include "check/rule.h"

/* Judges every shaft that could be computed against the least safety of the file, which is asked
 * for under `name` where it is not known; skips where no shaft is loaded. */
void ts_each_safety(ts_check *check, const ts_measure *limit, const char *name, const char *symbol,
                    void (*judge)(ts_check *check, const ts_line *line, double least));

/* How thick the section would have to be: its stress falls with the cube of its diameter. */
void ts_thicken(ts_check *check, ts_finding *finding, const ts_line_notch *notch, double S,
                double least);

#endif
