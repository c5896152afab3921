/* base/complex_pair.h: a complex number from its two parts.
 *
 * CMPLX of C11 is missing where clang compiles with the headers of glibc, and `re + im * I` spoils
 * signs of zero and infinities.  C17 6.2.5: a complex number is stored as an array of both parts.
 */
#ifndef TS_BASE_COMPLEX_PAIR_H
#define TS_BASE_COMPLEX_PAIR_H

#include <complex.h>
#include <string.h>

static inline double complex ts_complex(double re, double im)
{
    const double   parts[2] = {re, im};
    double complex z;

    memcpy(&z, parts, sizeof z);
    return z;
}

#endif
