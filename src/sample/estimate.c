/* What do the samples of one number tell? */
#include "sample/estimate.h"

#include "base/normal_law.h"

#include <math.h>
#include <stdlib.h>

const double ts_estimate_shares[TS_ESTIMATE_QUANTILES] = {0.01, 0.05, 0.5, 0.95, 0.99};

static int by_size(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* Moves the numbers to the front in their order; returns how many there are. */
static size_t sift(double *values, size_t count)
{
    size_t kept = 0;

    for (size_t i = 0; i < count; i++)
        if (!isnan(values[i]))
            values[kept++] = values[i];
    return kept;
}

static double mean_of(const double *values, size_t count)
{
    double sum = 0.0, lost = 0.0;

    for (size_t i = 0; i < count; i++) {
        const double next = values[i] - lost, all = sum + next;
        lost = all - sum - next;
        sum  = all;
    }
    return count > 0 ? sum / (double)count : (double)NAN;
}

static double deviation_of(const double *values, size_t count, double mean)
{
    double sum = 0.0;

    for (size_t i = 0; i < count; i++)
        sum += (values[i] - mean) * (values[i] - mean);
    return count > 1 ? sqrt(sum / (double)(count - 1)) : (double)NAN;
}

/* Of values in order. */
static double quantile_of(const double *values, size_t count, double share)
{
    const double place = share * (double)(count - 1), whole = floor(place);
    const size_t at = (size_t)whole;

    return at + 1 < count ? values[at] + (place - whole) * (values[at + 1] - values[at])
                          : values[count - 1];
}

void ts_estimate_of(double *values, size_t count, ts_estimate *out)
{
    const double nan  = (double)NAN;
    const size_t kept = sift(values, count);

    *out         = (ts_estimate){.count = kept, .missing = count - kept, .least = nan, .most = nan};
    out->half[0] = mean_of(values, kept / 2);
    out->half[1] = mean_of(values + kept / 2, kept - kept / 2);
    out->mean    = mean_of(values, kept);
    out->deviation = deviation_of(values, kept, out->mean);
    out->error     = out->deviation / sqrt((double)kept);
    qsort(values, kept, sizeof values[0], by_size);
    for (size_t i = 0; i < kept && values[i] < 0.0; i++)
        out->below++;
    for (int q = 0; q < TS_ESTIMATE_QUANTILES; q++)
        out->quantile[q] = kept > 0 ? quantile_of(values, kept, ts_estimate_shares[q]) : nan;
    if (kept > 0) {
        out->least = values[0];
        out->most  = values[kept - 1];
    }
}

ts_chance ts_chance_of(uint64_t hits, uint64_t count)
{
    if (count == 0)
        return (ts_chance){(double)NAN, 0.0, 1.0};
    const double n = (double)count, p = (double)hits / n;
    const double z = ts_normal_place(0.975), z2 = z * z / n;
    const double middle = (p + 0.5 * z2) / (1.0 + z2);
    const double reach  = z / (1.0 + z2) * sqrt(p * (1.0 - p) / n + 0.25 * z2 / n);

    return (ts_chance){p, hits == 0 ? 0.0 : fmax(0.0, middle - reach),
                       hits == count ? 1.0 : fmin(1.0, middle + reach)};
}

double ts_coin_tail(uint64_t hits, uint64_t count)
{
    const double n    = (double)count;
    double       term = -n * log(2.0), sum = 0.0;

    /* the logarithm of the chance of exactly k, from 0 up */
    for (uint64_t k = 0; k <= count; k++) {
        if (k >= hits)
            sum += exp(term);
        term += log((n - (double)k) / ((double)k + 1.0));
    }
    return hits == 0 ? 1.0 : fmin(1.0, sum);
}

/* ---- ranks ---------------------------------------------------------------------------------- */

typedef struct ranked {
    double value, place; /* place: which of the samples, kept exactly in a double */
} ranked;

static int by_value(const void *a, const void *b)
{
    return by_size(&((const ranked *)a)->value, &((const ranked *)b)->value);
}

void ts_rank(double *values, size_t count, double *order)
{
    ranked *in_order = (ranked *)(void *)order;

    for (size_t i = 0; i < count; i++)
        in_order[i] = (ranked){values[i], (double)i};
    qsort(in_order, count, sizeof in_order[0], by_value);
    for (size_t i = 0, end; i < count; i = end) {
        for (end = i + 1; end < count && in_order[end].value <= in_order[i].value;)
            end++;
        for (size_t k = i; k < end; k++)
            values[(size_t)in_order[k].place] = 0.5 * (double)(i + end - 1);
    }
}

double ts_correlation_of_ranks(const double *x, const double *y, size_t count)
{
    const double middle = 0.5 * ((double)count - 1.0);
    double       xx = 0.0, yy = 0.0, xy = 0.0;

    for (size_t i = 0; i < count; i++) {
        xx += (x[i] - middle) * (x[i] - middle);
        yy += (y[i] - middle) * (y[i] - middle);
        xy += (x[i] - middle) * (y[i] - middle);
    }
    return xx > 0.0 && yy > 0.0 ? xy / sqrt(xx * yy) : (double)NAN;
}

double ts_rank_correlation(const double *a, const double *b, size_t count, double *ranks)
{
    double *x = ranks, *y = ranks + count;
    size_t  kept = 0;

    for (size_t i = 0; i < count; i++)
        if (!isnan(a[i]) && !isnan(b[i])) {
            x[kept]   = a[i];
            y[kept++] = b[i];
        }
    ts_rank(x, kept, ranks + 2 * count);
    ts_rank(y, kept, ranks + 2 * count);
    return ts_correlation_of_ranks(x, y, kept);
}
