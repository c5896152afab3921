/* sample/law.h: how is one value distributed?
 *
 * Every law is told by its inverse: the value below which a share of it lies.  A sample is the
 * value at a share that is drawn evenly between 0 and 1, so that one stream of random numbers, or a
 * grid, serves every law.
 */
#ifndef TS_SAMPLE_LAW_H
#define TS_SAMPLE_LAW_H

typedef enum ts_law {
    TS_LAW_NORMAL,     /* mean, deviation; cut at least and most, the rest scaled up      */
    TS_LAW_LOG_NORMAL, /* the same, of the value itself; mean > 0                         */
    TS_LAW_UNIFORM,    /* least, most                                                     */
    TS_LAW_TRIANGLE,   /* least, mode, most                                               */
    TS_LAW_WHOLE,      /* whole numbers from least to most, both counted, all as likely   */
    TS_LAW_COUNT
} ts_law;

typedef struct ts_sample_law {
    ts_law law;
    double mean, deviation; /* of the law before it is cut                          */
    double least, most;     /* -INFINITY and INFINITY: not cut                      */
    double mode;
} ts_sample_law;

/* NULL when the law can be drawn from; else what is wrong with it, as "the deviation is not above
 * 0". */
const char *ts_law_fault(const ts_sample_law *law);

/* The value below which `share` (0 <= share <= 1) of the law lies; at the ends its ends, which are
 * infinite where it has none. */
double ts_law_place(const ts_sample_law *law, double share);

/* The share of step `step` of `steps` (at least 2): evenly from one end to the other, and of a law
 * without two ends from 5 % to 95 % (common practice, no source). */
double ts_law_step_share(const ts_sample_law *law, unsigned step, unsigned steps);

#endif
