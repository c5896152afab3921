/* base/rational.h: exact ratios of tooth numbers, with overflow reported and never wrapped. */
#ifndef TS_BASE_RATIONAL_H
#define TS_BASE_RATIONAL_H

#include <stdbool.h>
#include <stdint.h>

/* over/under in lowest terms, under > 0.  under == 0 means: overflowed or undefined. */
typedef struct ts_rational {
    int64_t over;
    int64_t under;
} ts_rational;

uint64_t    ts_gcd(uint64_t a, uint64_t b); /* gcd(0, b) = b */
ts_rational ts_rational_of(int64_t over, int64_t under);
ts_rational ts_rational_times(ts_rational a,
                              ts_rational b); /* cross-cancels before it multiplies */
ts_rational ts_rational_over(ts_rational a, ts_rational b);
bool        ts_rational_valid(ts_rational a);
bool        ts_rational_equal(ts_rational a, ts_rational b);
/* Correctly rounded to nearest for |over|, under < 2^63. */
double ts_rational_value(ts_rational a);

#endif
