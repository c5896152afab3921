/* search/neck_sample.h: how do a million necks of one design break?
 *
 * Method    Each sample is a neck of its own: break torque by element/shear_neck.h, fatigue
 *           strength lognormal as in rating/neck_life.h, both from random numbers that belong to
 *           the number of the sample.  Counts and sums are taken chunk by chunk and added in the
 *           order of the chunks, so that any number of threads gives the same result to the bit.
 * Quantiles Of the samples themselves: the one of rank ceil(share * count).
 */
#ifndef TS_SEARCH_NECK_SAMPLE_H
#define TS_SEARCH_NECK_SAMPLE_H

#include "rating/neck_life.h"

#define TS_NECK_SAMPLES_USUAL 1000000
#define TS_NECK_SAMPLES_MOST  20000000 /* 160 MB while they are sorted */
#define TS_NECK_QUANTILES     7
extern const double ts_neck_shares[TS_NECK_QUANTILES]; /* 0.1 % to 99.9 % */

typedef struct ts_neck_sampled {
    size_t count;
    size_t outside; /* of the guaranteed band: none, unless something is wrong               */
    double least, most, mean, deviation; /* N.m, of the samples                              */
    double quantile[TS_NECK_QUANTILES];  /* N.m                                              */
    size_t static_early, fatigue_early;  /* break under the highest legitimate torque; tire  */
    size_t early, late;                  /* either of those; above what the way bears        */
} ts_neck_sampled;

typedef struct ts_neck_survey {
    const ts_guard      *guard;
    const ts_drive_neck *neck;
    ts_neck_life         life;    /* its `missing`: why there are no chances            */
    double               balance; /* m, where both are equal; NaN: nowhere              */
    bool                 sampled; /* is it designed, with a band?                       */
    ts_neck_sampled      samples; /* chances counted only where life.missing is NULL    */
} ts_neck_survey;

typedef struct ts_neck_wish {
    size_t   count;   /* 1 .. TS_NECK_SAMPLES_MOST */
    size_t   threads; /* >= 1 */
    uint64_t seed;
} ts_neck_wish;

/* One survey for every guard with a neck, in their order. */
ts_status ts_survey_necks(const ts_select *select, const ts_neck_wish *wish, ts_arena *arena,
                          ts_neck_survey **surveys, size_t *count);

#endif
