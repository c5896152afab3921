/* sample/variance_share.h: which share of the variance does each value cause?
 *
 * Sobol's indices from the blocks of TS_DESIGN_SHARES.  Alone (first order) by the estimator (b)
 * and with all others (total) by the estimator (f) of table 2 of A. Saltelli and others, Variance
 * based sensitivity analysis of model output, Computer Physics Communications 181 (2010) 259; the
 * latter is M. J. W. Jansen's of 1999 (both from memory, held to functions whose shares are known
 * exactly).
 */
#ifndef TS_SAMPLE_VARIANCE_SHARE_H
#define TS_SAMPLE_VARIANCE_SHARE_H

#include <stddef.h>

#define TS_SHARE_BATCHES 20 /* from whose scatter the errors come */

typedef struct ts_variance_share {
    double alone, alone_error; /* errors: standard errors; NaN with fewer than 20 complete lots */
    double whole, whole_error;
} ts_variance_share;

/* `values` are those of complete lots, one lot (A, B, then A with each of `inputs` columns of B)
 * behind the other.  A lot with a NaN in it takes no part; returns how many do.  All NaN where the
 * number does not vary. */
size_t ts_variance_shares(const double *values, size_t lots, size_t inputs, ts_variance_share *out);

#endif
