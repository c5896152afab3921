/* response/symmetric_modes.h: which ways of its own does a symmetric linear system go? */
#ifndef TS_RESPONSE_SYMMETRIC_MODES_H
#define TS_RESPONSE_SYMMETRIC_MODES_H

#include <stdbool.h>
#include <stddef.h>

/* Room for `work` of a system of n. */
#define TS_SYMMETRIC_WORK(n) (34 * (n))

/* A x = w x for the symmetric A[n * n], column by column, whose place is taken by the modes x, each
 * of length 1; w[n] ascending.  False: LAPACK found none. */
bool ts_symmetric_modes(size_t n, double *A, double *w, double *work);

#endif
