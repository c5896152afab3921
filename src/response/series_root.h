/* response/series_root.h: where in a step does a power series fall below 0?  For src/response
 * alone.
 *
 * Method    f = c_0 + c_1 x + ... on 0 <= x <= 1.  Halves of the interval are thrown away where the
 *           values at their middle and a bound of f'' on the whole of it leave no room for a root;
 *           where f' cannot change its sign the root is closed in by Newton's steps between bounds.
 *           So no fall is passed over but one that comes back within 1e-12 of the step.
 */
#ifndef TS_RESPONSE_SERIES_ROOT_H
#define TS_RESPONSE_SERIES_ROOT_H

#include <stddef.h>

#define TS_NO_FALL 2.0 /* beyond every step */

/* f, and f' where asked for, at x; coefficients 0 ... degree, each `stride` after the last. */
double ts_series_at(const double *c, size_t degree, size_t stride, double x, double *slope);

/* The least x at which sense f + shift goes from above 0 to below it; 0 where it is below and falls
 * from the beginning; TS_NO_FALL: nowhere. */
double ts_series_fall(const double *c, size_t degree, size_t stride, double sense, double shift);

/* x between a and b at which f' vanishes, whose signs there differ. */
double ts_series_turn(const double *c, size_t degree, size_t stride, double a, double b);

#endif
