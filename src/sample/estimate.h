/* sample/estimate.h: what do the samples of one number tell?
 *
 * NaN stands for what could not be computed in a sample: it is counted and takes no part.
 */
#ifndef TS_SAMPLE_ESTIMATE_H
#define TS_SAMPLE_ESTIMATE_H

#include <stddef.h>
#include <stdint.h>

#define TS_ESTIMATE_QUANTILES 5
extern const double ts_estimate_shares[TS_ESTIMATE_QUANTILES]; /* 1, 5, 50, 95, 99 % */

typedef struct ts_estimate {
    size_t count, missing;
    double mean, deviation; /* of the sample (count - 1)                               */
    double error;           /* standard error of the mean                              */
    double half[2];         /* means of the first and of the second half: do they agree?  */
    double least, most;
    double quantile[TS_ESTIMATE_QUANTILES]; /* between neighbours in proportion (type 7 of
                                               R. J. Hyndman and Y. Fan, 1996, from memory) */
    size_t below;                           /* how many lie below 0 */
} ts_estimate;

/* `values` is put in order on the way. */
void ts_estimate_of(double *values, size_t count, ts_estimate *out);

typedef struct ts_chance {
    double share, low, high; /* with its bounds, 95 % sure */
} ts_chance;

/* The chance behind `hits` of `count`: E. B. Wilson, JASA 22 (1927) 209 (from memory). */
ts_chance ts_chance_of(uint64_t hits, uint64_t count);

/* Chance that a fair coin falls on one side `hits` times or more of `count`, summed exactly. */
double ts_coin_tail(uint64_t hits, uint64_t count);

/* The ranks of values[count] in their place, ties with their mean rank; none of them is NaN.
 * `order` holds 2 * count numbers meanwhile. */
void ts_rank(double *values, size_t count, double *order);

/* Spearman's rank correlation of two numbers whose ranks are x and y; NaN when either does not
 * vary. */
double ts_correlation_of_ranks(const double *x, const double *y, size_t count);

/* Spearman's rank correlation of those samples that have both numbers, ties with their mean rank;
 * NaN when either does not vary.  `ranks` holds 4 * count numbers meanwhile. */
double ts_rank_correlation(const double *a, const double *b, size_t count, double *ranks);

#endif
