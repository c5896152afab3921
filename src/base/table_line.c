/* base/table_line.c: what stands between two entries of a printed table? */
#include "base/table_line.h"

#include <math.h>

double ts_table_between(const double *x, const double *y, size_t count, double at)
{
    if (isnan(at))
        return NAN;
    if (at <= x[0])
        return y[0];
    for (size_t i = 1; i < count; i++)
        if (at <= x[i])
            return y[i - 1] + (y[i] - y[i - 1]) * ((at - x[i - 1]) / (x[i] - x[i - 1]));
    return y[count - 1];
}
