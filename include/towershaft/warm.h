/* towershaft/warm.h: how does play between teeth change as the drive grows hot?
 *
 * Gears, casing and oil of every drive are followed through conditions of the file, one after
 * another, from an engine that is cold all through.
 */
#ifndef TOWERSHAFT_WARM_H
#define TOWERSHAFT_WARM_H

#include "towershaft/study.h"

typedef struct ts_warm_options {
    const char *through; /* "ground idle 5 min, take-off 120 s"; NULL: every condition of the file
                            in its order, 10 min where hours are spent in it and 1 min elsewhere */
    const char *soak;    /* of everything at the beginning, "-40 degC"; NULL: the coldest that the
                            file has for gears */
    const char *ambient; /* of the air round the casing; NULL: it gives off no heat */
    bool        json;    /* by docs/schema/warm.schema.json, else for a terminal */
} ts_warm_options;

/* Of a study that was read.  *verdict: is play left between all gears at every moment, and are
 * gears and casing never warmer, colder or further apart than the file has them?
 * TS_NOT_UNDERSTOOD: no
 * drive was read, or an option is none; the messages say what was expected. */
TS_API ts_status ts_warm_write(ts_study *study, const ts_warm_options *options,
                               const ts_page_options *page, ts_verdict *verdict,
                               const ts_sink *sink);

#endif
