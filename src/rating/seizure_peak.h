/* rating/seizure_peak.h: how near does a seizure bring a way to what it bears, though the neck of
 * its pad breaks?  Computed in time (docs/method/seize.md) by who asks for it. */
#ifndef TS_RATING_SEIZURE_PEAK_H
#define TS_RATING_SEIZURE_PEAK_H

/* Of one guard; of all conditions in which its pad turns, that with the largest share. */
typedef struct ts_seizure_peak {
    double      share;    /* of what the part bears once; NaN: the pad has no neck, or no run */
    double      T, bears; /* N.m at the outer side of that part                               */
    const char *part;     /* "mesh idler 6 > generator 2"                                     */
    const char *condition;
} ts_seizure_peak;

#endif
