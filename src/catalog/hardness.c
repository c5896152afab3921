/* catalog/hardness.c: how hard is the same steel in another scale? */
#include "catalog/hardness.h"

#include <math.h>
#include <stddef.h>

/* In the order of ts_hardness_scale; NAN where the scale ends. */
static const double rows[][3] = {
#include "hardness.inc"
};

#define ROW_COUNT (sizeof rows / sizeof rows[0])

double ts_hardness_in(ts_hardness_scale to, double hardness, ts_hardness_scale from)
{
    for (size_t i = 0; i + 1 < ROW_COUNT; i++) {
        const double low = rows[i][from], high = rows[i + 1][from];

        if (!(hardness >= low && hardness <= high))
            continue;
        const double part = (hardness - low) / (high - low);
        return rows[i][to] + part * (rows[i + 1][to] - rows[i][to]);
    }
    return NAN;
}
