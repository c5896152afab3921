/* Which share of the variance does each value cause? */
#include "sample/variance_share.h"

#include <math.h>
#include <stdbool.h>

static bool is_whole(const double *lot, size_t inputs)
{
    for (size_t i = 0; i < inputs + 2; i++)
        if (isnan(lot[i]))
            return false;
    return true;
}

typedef struct moments {
    size_t lots;
    double mean, variance; /* of A and B together */
} moments;

static moments moments_of(const double *values, size_t lots, size_t inputs)
{
    moments of  = {0};
    double  sum = 0.0, square = 0.0;

    for (size_t j = 0; j < lots; j++) {
        const double *lot = values + j * (inputs + 2);
        if (!is_whole(lot, inputs))
            continue;
        of.lots++;
        sum += lot[0] + lot[1];
    }
    of.mean = sum / (2.0 * (double)of.lots);
    for (size_t j = 0; j < lots; j++) {
        const double *lot = values + j * (inputs + 2);
        if (is_whole(lot, inputs))
            square +=
                (lot[0] - of.mean) * (lot[0] - of.mean) + (lot[1] - of.mean) * (lot[1] - of.mean);
    }
    of.variance = square / (2.0 * (double)of.lots - 1.0);
    return of;
}

/* Sums of one input over all lots and over each batch of them. */
typedef struct sums {
    double alone, whole;
    double batch_alone[TS_SHARE_BATCHES], batch_whole[TS_SHARE_BATCHES];
    size_t batch_lots[TS_SHARE_BATCHES];
} sums;

static sums sums_of(const double *values, size_t lots, size_t inputs, size_t k, const moments *of)
{
    sums   s   = {0};
    size_t met = 0;

    for (size_t j = 0; j < lots; j++) {
        const double *lot = values + j * (inputs + 2);
        if (!is_whole(lot, inputs))
            continue;
        const double turn  = lot[k + 2] - lot[0];
        const double alone = (lot[1] - of->mean) * turn, whole = 0.5 * turn * turn;
        const size_t batch = met++ * TS_SHARE_BATCHES / of->lots;
        s.alone += alone;
        s.whole += whole;
        s.batch_alone[batch] += alone;
        s.batch_whole[batch] += whole;
        s.batch_lots[batch]++;
    }
    return s;
}

/* Standard error of a mean from the scatter of the means of its batches. */
static double error_of(const double *batch, const size_t *lots, double mean)
{
    double square = 0.0;

    for (int b = 0; b < TS_SHARE_BATCHES; b++) {
        const double off = batch[b] / (double)lots[b] - mean;
        square += off * off;
    }
    return sqrt(square / (TS_SHARE_BATCHES * (TS_SHARE_BATCHES - 1.0)));
}

size_t ts_variance_shares(const double *values, size_t lots, size_t inputs, ts_variance_share *out)
{
    const double  nan = (double)NAN;
    const moments of  = moments_of(values, lots, inputs);

    for (size_t k = 0; k < inputs; k++) {
        out[k] = (ts_variance_share){nan, nan, nan, nan};
        if (of.lots < 2 || !(of.variance > 0.0))
            continue;
        const sums   s = sums_of(values, lots, inputs, k, &of);
        const double n = (double)of.lots;
        out[k].alone   = s.alone / n / of.variance;
        out[k].whole   = s.whole / n / of.variance;
        if (of.lots < TS_SHARE_BATCHES)
            continue;
        out[k].alone_error = error_of(s.batch_alone, s.batch_lots, s.alone / n) / of.variance;
        out[k].whole_error = error_of(s.batch_whole, s.batch_lots, s.whole / n) / of.variance;
    }
    return of.lots;
}
