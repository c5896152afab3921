/* sample/design.h: which values has sample number i?
 *
 * A sample is computed from its number alone, so that any share of the work, by any number of
 * threads or processes and after any interruption, sees the same ones.
 */
#ifndef TS_SAMPLE_DESIGN_H
#define TS_SAMPLE_DESIGN_H

#include "sample/law.h"

#include <stddef.h>
#include <stdint.h>

#define TS_SAMPLE_INPUTS_MOST 64

typedef enum ts_design_method {
    TS_DESIGN_RANDOM,
    TS_DESIGN_ONE_AT_A_TIME,
    TS_DESIGN_SWEEP,
    TS_DESIGN_SHARES /* of the variance: blocks A, B, and A with each column of B, in turn:
                        A. Saltelli and others, Computer Physics Communications 181 (2010) */
} ts_design_method;

typedef struct ts_design {
    ts_design_method     method;
    uint64_t             samples, seed;
    const ts_sample_law *laws; /* [count] */
    const double        *asis; /* [count] as the drive has them              */
    const unsigned      *steps;
    const double        *root; /* ts_correlation_root; NULL: independent     */
    size_t               count;
} ts_design;

/* How many samples there are in all; UINT64_MAX when it is beyond 2^53. */
uint64_t ts_design_rows(const ts_design *design);

/* The values of sample `row`, from 0. */
void ts_design_row(const ts_design *design, uint64_t row, double *values);

/* One at a time: which value `row` moves, and its step; SIZE_MAX in the row as it stands. */
size_t ts_design_moves(const ts_design *design, uint64_t row, unsigned *step);

#endif
