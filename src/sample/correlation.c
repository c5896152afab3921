/* How do values with laws of their own go together? */
#include "sample/correlation.h"

#include "base/normal_law.h"

#include <math.h>

#define LEAST_PIVOT 1e-12 /* of ones: below it the rest is rounding */

bool ts_correlation_root(const double *r, size_t count, double *root)
{
    for (size_t i = 0; i < count; i++) {
        for (size_t j = 0; j < count; j++) {
            double rest = j <= i ? r[i * count + j] : 0.0;
            for (size_t k = 0; k < j && j <= i; k++)
                rest -= root[i * count + k] * root[j * count + k];
            if (i == j && !(rest > LEAST_PIVOT))
                return false;
            root[i * count + j] = i == j ? sqrt(rest) : j < i ? rest / root[j * count + j] : 0.0;
        }
    }
    return true;
}

void ts_correlate(const double *root, size_t count, double *shares, double *scores)
{
    for (size_t i = 0; i < count; i++)
        scores[i] = ts_normal_place(shares[i]);
    for (size_t i = 0; i < count; i++) {
        double z = 0.0;
        for (size_t k = 0; k <= i; k++)
            z += root[i * count + k] * scores[k];
        shares[i] = ts_normal_share(z);
    }
}
