/* towershaft/necks.h: between which torques do the necks break, and how likely too early or too
 * late?
 *
 * Of every neck of a drive the guaranteed band, which no combination of its inputs leaves; of a
 * designed one (docs/method/necks.md) also how a million drawn necks break, how likely it breaks in
 * service or holds when it should break, by the laws and by the samples, and the diameter at which
 * both are as likely.
 */
#ifndef TOWERSHAFT_NECKS_H
#define TOWERSHAFT_NECKS_H

#include "towershaft/study.h"

typedef struct ts_necks_options {
    size_t   samples;  /* 1 to 20000000; 0: 1000000                                            */
    size_t   threads;  /* 1 to 64; 0: 2.  The answer is the same for any                       */
    uint64_t seed;     /* of the random numbers                                                */
    bool     json;     /* by docs/schema/necks.schema.json, else for a terminal                */
    bool     seizures; /* also what a seizure in time brings, up to a second                    */
} ts_necks_options;

/* Of a study that was read.  *computed: is every band known, with both chances of every designed
 * neck?  TS_NOT_UNDERSTOOD: no drive was read, or a number is out of its range. */
TS_API ts_status ts_necks_write(ts_study *study, const ts_necks_options *options,
                                const ts_page_options *page, bool *computed, const ts_sink *sink);

/* One neck, in SI; NaN where a number is not known. */
typedef struct ts_neck_view {
    const char *of;       /* accessory or tower shaft; NULL: there is no such neck              */
    bool        designed; /* the band is computed, not stated                                   */
    double      diameter; /* m, of a designed one                                               */
    double      breaks_least, breaks_most; /* N.m, guaranteed                                   */
    double      must_pass;                 /* N.m, the highest legitimate torque                */
    double      way_bears;   /* N.m, the least that breaks something between it and its spool     */
    double      early, late; /* 0 to 1, chances in its whole life                               */
    double      balance;     /* m, diameter at which both are equal                             */
} ts_neck_view;

/* Neck number `index` of a solved drive, from 0.  The name lives until the next read. */
TS_API ts_neck_view ts_study_neck(const ts_study *study, size_t index);

#endif
