/* quantity/twofold.h: a number as the sum of two doubles, good for about 100 bits.
 *
 * Sources of the steps: D. E. Knuth, The Art of Computer Programming 2, 4.2.2 (exact sum); T. J.
 * Dekker, Numerische Mathematik 18 (1971) 224 (exact product).  From memory.  Right for magnitudes
 * between 1e-250 and 1e250, where nothing overflows and no error term is lost.
 */
#ifndef TS_QUANTITY_TWOFOLD_H
#define TS_QUANTITY_TWOFOLD_H

#include "base/number.h"

typedef struct twofold {
    double high; /* the nearest double to the sum */
    double low;
} twofold;

static inline twofold twofold_of_sum(double a, double b)
{
    const double sum = a + b, b_part = sum - a;
    return (twofold){sum, (a - (sum - b_part)) + (b - b_part)};
}

static inline twofold twofold_of_product(double a, double b)
{
    const double splitter = 134217729.0; /* 2^27 + 1 */
    const double a_wide = splitter * a, b_wide = splitter * b;
    const double a_high = a_wide - (a_wide - a), b_high = b_wide - (b_wide - b);
    const double a_low = a - a_high, b_low = b - b_high, product = a * b;
    const double low =
        ((a_high * b_high - product) + a_high * b_low + a_low * b_high) + a_low * b_low;
    return (twofold){product, low};
}

static inline twofold twofold_plus(twofold a, twofold b)
{
    const twofold high = twofold_of_sum(a.high, b.high), low = twofold_of_sum(a.low, b.low);
    const twofold part = twofold_of_sum(high.high, high.low + low.high);
    return twofold_of_sum(part.high, part.low + low.low);
}

static inline twofold twofold_times(twofold a, twofold b)
{
    const twofold product = twofold_of_product(a.high, b.high);
    return twofold_of_sum(product.high, product.low + (a.high * b.low + a.low * b.high));
}

static inline twofold twofold_minus(twofold a, twofold b)
{
    return twofold_plus(a, (twofold){-b.high, -b.low});
}

/* a / b; the second digit of the quotient comes from the exact rest that the first one leaves. */
static inline twofold twofold_over(twofold a, twofold b)
{
    const double  first  = a.high / b.high;
    const twofold rest   = twofold_minus(a, twofold_times(b, (twofold){first, 0.0}));
    const double  second = rest.high / b.high;
    return twofold_of_sum(first, second);
}

/* digits * 10^exponent for |exponent| <= 230. */
twofold ts_twofold_of_decimal(uint64_t digits, int exponent);

#endif
