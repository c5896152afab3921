/* catalog/hardness.c: how hard is the same steel in another scale? */
#include "catalog/hardness.h"

#include "base/number.h"

#include <math.h>
#include <stddef.h>

typedef struct hardness_row {
    const char *in[3]; /* in the order of ts_hardness_scale; "-" where the scale ends */
} hardness_row;

static const struct {
    const char *HRC, *HV, *HBW;
} rows[] = {
#include "hardness.inc"
};

#define ROW_COUNT (sizeof rows / sizeof rows[0])

static double cell(size_t row, ts_hardness_scale scale)
{
    const hardness_row cells = {{rows[row].HRC, rows[row].HV, rows[row].HBW}};
    double             value = 0.0;
    size_t             taken = 0;

    if (ts_number_parse(ts_text_of(cells.in[scale]), &value, &taken) != TS_NUMBER_FINE)
        return NAN;
    return value;
}

double ts_hardness_in(ts_hardness_scale to, double hardness, ts_hardness_scale from)
{
    for (size_t i = 0; i + 1 < ROW_COUNT; i++) {
        const double low = cell(i, from), high = cell(i + 1, from);

        if (!(hardness >= low && hardness <= high))
            continue;
        const double part = (hardness - low) / (high - low);
        return cell(i, to) + part * (cell(i + 1, to) - cell(i, to));
    }
    return NAN;
}
