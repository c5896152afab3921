/* sample/sample_answer.h: what all samples of a study tell, for every outlet. */
#ifndef TS_SAMPLE_SAMPLE_ANSWER_H
#define TS_SAMPLE_SAMPLE_ANSWER_H

#include "sample/design.h"
#include "sample/estimate.h"
#include "sample/variance_share.h"

#include <stdbool.h>

#define TS_SAMPLE_BARS 24 /* of a distribution */

typedef struct ts_sampled_column {
    const char *name, *unit; /* SI */
    bool        margin;      /* below 0 it does not hold */
    ts_estimate estimate;
    ts_chance   below;                /* of a margin: to be below 0 */
    uint64_t    bars[TS_SAMPLE_BARS]; /* samples in even steps from least to most */
} ts_sampled_column;

typedef struct ts_sampled_chance {
    const char *rule, *level, *address;
    uint64_t    hits;
    ts_chance   chance;
} ts_sampled_chance;

/* One watched number when one value moves alone. */
typedef struct ts_sampled_travel {
    double least, most; /* of the number; NaN: it was never computed */
    double from, to;    /* the value at the least and at the most    */
} ts_sampled_travel;

/* Some samples of one number over the value that moves it most. */
#define TS_SAMPLE_POINTS 400
typedef struct ts_sampled_points {
    size_t input; /* SIZE_MAX: nothing moves it */
    size_t count;
    double x[TS_SAMPLE_POINTS], y[TS_SAMPLE_POINTS];
} ts_sampled_points;

typedef struct ts_sample_answer {
    const char              *title, *method;
    ts_design_method         design;
    uint64_t                 seed, due, count; /* samples in all, and those that there are */
    uint64_t                 holds, fails, unknown, refused;
    ts_chance                hold; /* what cannot be computed or is refused does not hold */
    const ts_sampled_column *inputs, *outputs;
    const ts_sample_law     *laws;
    const double            *asis;
    size_t                   input_count, output_count;
    /* [output_count][input_count]; NULL where the method does not tell it */
    const double            *ranks;
    const ts_variance_share *shares;
    size_t                  *share_lots; /* [output_count] complete lots */
    const ts_sampled_travel *travels;
    const double            *nominal;  /* [output_count] as it stands; of travels */
    const ts_sampled_points *points;   /* [output_count]                          */
    const ts_sampled_chance *findings; /* likeliest first */
    size_t                   finding_count;
} ts_sample_answer;

#endif
