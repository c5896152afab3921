/* towershaft/seize.h: what happens when an accessory seizes, or is jolted?
 *
 * One accessory stops at once or by a friction that grows, or it or the spool is jolted, in one
 * condition.  The torsion of its tree is followed in time with play, necks and teeth as events: a
 * seizure with the neck at either end of its band and without it, a jolt with all necks at their
 * weakest and with none.
 */
#ifndef TOWERSHAFT_SEIZE_H
#define TOWERSHAFT_SEIZE_H

#include "towershaft/study.h"

typedef struct ts_seize_options {
    const char *accessory; /* its name; of a slam or chop NULL: the tree of the first pad */
    const char *jolt; /* "short", "step", "slam", "chop" or "engage"; NULL: it seizes         */
    const char *condition; /* NULL: the one in which its pad turns fastest; of an engagement the
                              slowest in which it does not drive */
    const char *ramp; /* a time such as "20 ms", 0.001 ms to 1 s: its rotor stops by a friction that
                         grows, a step, slam or chop comes evenly in that time; NULL: at once */
    const char *neck_of; /* the accessory whose neck stands in its place; NULL: its own          */
    bool        json;    /* by docs/schema/seize.schema.json, else for a terminal                */
    /* About how many moments of every run the JSON tells, close together at its beginning; 0: none.
     * At most TS_SEIZE_SAMPLES_MOST. */
    size_t samples;
} ts_seize_options;

#define TS_SEIZE_SAMPLES_MOST 5000

/* Of a study that was read.  *verdict: TS_VERDICT_NOT_COMPUTABLE when a run did not reach its end
 * with its energies balanced; TS_DOES_NOT_HOLD when something breaks under a jolt, which must be
 * borne; what breaks for a seizure is told, not judged.
 * TS_NOT_UNDERSTOOD: no drive was read, or it knows no such accessory, jolt or condition, or the
 * ramp is no time; the messages say which is nearest. */
TS_API ts_status ts_seize_write(ts_study *study, const ts_seize_options *options,
                                const ts_page_options *page, ts_verdict *verdict,
                                const ts_sink *sink);

#endif
