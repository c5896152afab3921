/* base/rational.c: what is the exact ratio of a chain of tooth numbers? */
#include "base/rational.h"

#include <math.h>

__extension__ typedef unsigned __int128 wide;

static const ts_rational undefined = {0, 0};

uint64_t ts_gcd(uint64_t a, uint64_t b)
{
    while (b != 0) {
        const uint64_t rest = a % b;

        a = b;
        b = rest;
    }
    return a;
}

static uint64_t magnitude(int64_t value)
{
    return value < 0 ? 0 - (uint64_t)value : (uint64_t)value;
}

/* The magnitudes are in lowest terms already; only their size is in question. */
static ts_rational from_magnitudes(bool negative, uint64_t over, uint64_t under)
{
    if (over > (uint64_t)INT64_MAX || under > (uint64_t)INT64_MAX || under == 0)
        return undefined;
    return (ts_rational){negative ? -(int64_t)over : (int64_t)over, (int64_t)under};
}

ts_rational ts_rational_of(int64_t over, int64_t under)
{
    if (under == 0)
        return undefined;
    const uint64_t a = magnitude(over), b = magnitude(under);
    const uint64_t shared = ts_gcd(a, b);
    return from_magnitudes((over < 0) != (under < 0), a / shared, b / shared);
}

ts_rational ts_rational_times(ts_rational a, ts_rational b)
{
    if (!ts_rational_valid(a) || !ts_rational_valid(b))
        return undefined;
    const uint64_t a_over = magnitude(a.over), a_under = magnitude(a.under);
    const uint64_t b_over = magnitude(b.over), b_under = magnitude(b.under);
    const uint64_t ab = ts_gcd(a_over, b_under), ba = ts_gcd(b_over, a_under);
    uint64_t       over, under;
    if (__builtin_mul_overflow(a_over / ab, b_over / ba, &over) ||
        __builtin_mul_overflow(a_under / ba, b_under / ab, &under))
        return undefined;
    return from_magnitudes((a.over < 0) != (b.over < 0), over, under);
}

ts_rational ts_rational_over(ts_rational a, ts_rational b)
{
    if (!ts_rational_valid(b) || b.over == 0)
        return undefined;
    const ts_rational upside_down = {b.over < 0 ? -b.under : b.under,
                                     b.over < 0 ? -b.over : b.over};
    return ts_rational_times(a, upside_down);
}

/* Made by the calls above, a rational with a positive `under` is in lowest terms; -2^63, whose
 * magnitude has no int64_t, never stands in one. */
bool ts_rational_valid(ts_rational a)
{
    return a.under > 0 && a.over != INT64_MIN;
}

bool ts_rational_equal(ts_rational a, ts_rational b)
{
    return ts_rational_valid(a) && ts_rational_valid(b) && a.over == b.over && a.under == b.under;
}

/* The quotient is formed with at least 64 bits, and a remainder is noted in the lowest of them,
 * which is far below the bits that a double keeps; so the one conversion rounds correctly. */
double ts_rational_value(ts_rational a)
{
    if (!ts_rational_valid(a))
        return (double)NAN;
    if (a.over == 0)
        return 0.0;
    const uint64_t over  = magnitude(a.over);
    const int      shift = 63 + __builtin_clzll(over);
    const wide     top   = (wide)over << shift;
    const wide     under = (wide)a.under;
    const wide     ratio = (top / under) | (top % under != 0 ? 1U : 0U);
    const double   value = ldexp((double)ratio, -shift);
    return a.over < 0 ? -value : value;
}
