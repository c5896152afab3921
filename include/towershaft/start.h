/* towershaft/start.h: how is the engine started?
 *
 * The starter of the drive cranks the spool from rest over light-off and its cut-out to idle, or
 * the start hangs: with the torque of every mesh and what of it the necks let pass.  Where asked,
 * the run goes on from idle to a faster condition, such as take-off.
 */
#ifndef TOWERSHAFT_START_H
#define TOWERSHAFT_START_H

#include "towershaft/study.h"

typedef struct ts_start_options {
    const char *ambient; /* a temperature such as "-20 degC"; NULL: as the file has it   */
    const char *oil;     /* of the oil in the bearings; NULL: as the file has it         */
    bool        grid;    /* also over the temperatures of air and oil that the file tells */
    bool        json;    /* by docs/schema/start.schema.json, else for a terminal        */
    const char *to;      /* name of a condition to which it goes on from idle; NULL: none */
} ts_start_options;

/* Of a study that was read.  *verdict: TS_HOLDS when the engine comes to idle, and on to the
 * condition `to`, and no neck sees the least torque that may break it; TS_VERDICT_NOT_COMPUTABLE
 * when the file lacks something or the run is refused, as where its energies do not balance.
 * TS_NOT_UNDERSTOOD: no drive was read, a temperature is none, or the condition is not there or not
 * faster than idle; the messages say what was expected. */
TS_API ts_status ts_start_write(ts_study *study, const ts_start_options *options,
                                const ts_page_options *page, ts_verdict *verdict,
                                const ts_sink *sink);

/* The start as the file has it, for programs: outcome 0 idle, 1 does not turn, 2 no light-off,
 * 3 hung, 4 too slow, 5 not computed; times in s, NaN where it did not come so far. */
typedef struct ts_start_view {
    int    outcome;
    double idle, light_off, cut_out;
    double balance; /* energies that do not add up, over what was put in */
    size_t steps;
} ts_start_view;
TS_API ts_start_view ts_study_start_view(ts_study *study);

#endif
