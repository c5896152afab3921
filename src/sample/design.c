/* Which values has sample number i? */
#include "sample/design.h"

#include "base/counter_random.h"
#include "sample/correlation.h"

#include <string.h>

#define ROWS_MOST 9007199254740992.0 /* 2^53 */

uint64_t ts_design_rows(const ts_design *design)
{
    double rows = 1.0;

    switch (design->method) {
    case TS_DESIGN_RANDOM:
        rows = (double)design->samples;
        break;
    case TS_DESIGN_SHARES:
        rows = (double)design->samples * (double)(design->count + 2);
        break;
    case TS_DESIGN_ONE_AT_A_TIME:
        for (size_t k = 0; k < design->count; k++)
            rows += (double)design->steps[k];
        break;
    case TS_DESIGN_SWEEP:
        for (size_t k = 0; k < design->count; k++)
            rows *= (double)design->steps[k];
        break;
    }
    return rows < ROWS_MOST ? (uint64_t)rows : UINT64_MAX;
}

/* Even shares of sample `place`; those of `lot` 0 and 1 are independent of each other. */
static void draw(const ts_design *design, uint64_t place, uint32_t lot, double *shares)
{
    const uint32_t lots = (uint32_t)(design->count + 1) / 2;

    for (uint32_t k = 0; k < design->count; k += 2) {
        double pair[2];
        ts_random_pair(design->seed, place, lot * lots + k / 2, pair);
        shares[k] = pair[0];
        if (k + 1 < design->count)
            shares[k + 1] = pair[1];
    }
}

static void place_all(const ts_design *design, const double *shares, double *values)
{
    for (size_t k = 0; k < design->count; k++)
        values[k] = ts_law_place(&design->laws[k], shares[k]);
}

static void random_row(const ts_design *design, uint64_t row, double *values)
{
    double shares[TS_SAMPLE_INPUTS_MOST], scores[TS_SAMPLE_INPUTS_MOST];

    draw(design, row, 0, shares);
    if (design->root != NULL)
        ts_correlate(design->root, design->count, shares, scores);
    place_all(design, shares, values);
}

static void shares_row(const ts_design *design, uint64_t row, double *values)
{
    const uint64_t blocks = design->count + 2, place = row / blocks;
    const size_t   block = (size_t)(row % blocks);
    double         a[TS_SAMPLE_INPUTS_MOST], b[TS_SAMPLE_INPUTS_MOST];

    draw(design, place, 0, a);
    draw(design, place, 1, b);
    if (block >= 2)
        a[block - 2] = b[block - 2];
    place_all(design, block == 1 ? b : a, values);
}

size_t ts_design_moves(const ts_design *design, uint64_t row, unsigned *step)
{
    uint64_t rest = row;

    *step = 0;
    if (rest-- == 0)
        return SIZE_MAX;
    for (size_t k = 0; k < design->count; k++) {
        *step = (unsigned)rest;
        if (rest < design->steps[k])
            return k;
        rest -= design->steps[k];
    }
    return SIZE_MAX;
}

static double step_place(const ts_design *design, size_t k, unsigned step)
{
    const ts_sample_law *law = &design->laws[k];

    return ts_law_place(law, ts_law_step_share(law, step, design->steps[k]));
}

void ts_design_row(const ts_design *design, uint64_t row, double *values)
{
    unsigned step;
    size_t   moved;

    switch (design->method) {
    case TS_DESIGN_RANDOM:
        random_row(design, row, values);
        return;
    case TS_DESIGN_SHARES:
        shares_row(design, row, values);
        return;
    case TS_DESIGN_ONE_AT_A_TIME:
        memcpy(values, design->asis, design->count * sizeof values[0]);
        moved = ts_design_moves(design, row, &step);
        if (moved != SIZE_MAX)
            values[moved] = step_place(design, moved, step);
        return;
    case TS_DESIGN_SWEEP:
        break;
    }
    for (size_t k = design->count; k-- > 0;) {
        values[k] = step_place(design, k, (unsigned)(row % design->steps[k]));
        row /= design->steps[k];
    }
}
