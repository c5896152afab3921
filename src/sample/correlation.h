/* sample/correlation.h: values that go together, whatever their laws.
 *
 * A normal copula: shares are the shares of normal values whose correlations are given.  The laws
 * themselves stay as they are.  R. B. Nelsen, An Introduction to Copulas (from memory).
 */
#ifndef TS_SAMPLE_CORRELATION_H
#define TS_SAMPLE_CORRELATION_H

#include <stdbool.h>
#include <stddef.h>

/* The lower triangle L with L L' = r, both [count][count] row by row; r is symmetric with ones in
 * its diagonal.  False when r is not positive definite: no values can go together so. */
bool ts_correlation_root(const double *r, size_t count, double *root);

/* Independent shares become those that go together; `scores` holds `count` numbers meanwhile. */
void ts_correlate(const double *root, size_t count, double *shares, double *scores);

#endif
