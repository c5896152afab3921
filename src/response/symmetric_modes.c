/* response/symmetric_modes.c: which ways of its own does a symmetric linear system go? */
#include "response/symmetric_modes.h"

#include <lapacke.h>

bool ts_symmetric_modes(size_t n, double *A, double *w, double *work)
{
    const lapack_int order = (lapack_int)n;

    return LAPACKE_dsyev_work(LAPACK_COL_MAJOR, 'V', 'U', order, A, order, w, work,
                              (lapack_int)TS_SYMMETRIC_WORK(n)) == 0;
}
