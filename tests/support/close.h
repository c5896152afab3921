/* support/close.h: is a computed double near enough to a published one?
 *
 * cmocka's own comparison of floats casts to float, and so would pass a double that is wrong in
 * the eighth digit.  A NaN never passes, on either side; an infinity passes only as itself.
 */
#ifndef TS_SUPPORT_CLOSE_H
#define TS_SUPPORT_CLOSE_H

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

/* Within tol_rel * |expected|.  An expected 0 admits 0 alone: say assert_close_abs there. */
#define assert_close(actual, expected, tol_rel)                                                    \
    close_or_fail((actual), (expected), fabs(expected) * (tol_rel), #actual, __FILE__, __LINE__)

/* Within tol_abs, in the unit of the value. */
#define assert_close_abs(actual, expected, tol_abs)                                                \
    close_or_fail((actual), (expected), (tol_abs), #actual, __FILE__, __LINE__)

/* The same double, bit for bit in value: for results that must not depend on the route. */
#define assert_same_double(actual, expected)                                                       \
    close_or_fail((actual), (expected), 0.0, #actual, __FILE__, __LINE__)

#define assert_nan(actual) nan_or_fail((actual), #actual, __FILE__, __LINE__)

/* Both infinite and equal, or both finite and no further apart than `allowed`, which must itself
 * be a number: every comparison with a NaN is false, and false fails. */
static inline bool close_enough(double actual, double expected, double allowed)
{
    if (isinf(actual) || isinf(expected))
        return isinf(actual) && isinf(expected) && signbit(actual) == signbit(expected);
    return fabs(actual - expected) <= allowed;
}

static inline void close_or_fail(double actual, double expected, double allowed, const char *what,
                                 const char *file, int line)
{
    if (close_enough(actual, expected, allowed))
        return;
    print_error("%s = %.17g, expected %.17g within %.3g; the difference is %.3g\n", what, actual,
                expected, allowed, actual - expected);
    _fail(file, line);
}

static inline void nan_or_fail(double actual, const char *what, const char *file, int line)
{
    if (isnan(actual))
        return;
    print_error("%s = %.17g, expected no number\n", what, actual);
    _fail(file, line);
}

#endif
