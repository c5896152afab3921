/* base/number_print.c: what is the shortest decimal text that reads back to the same double?
 *
 * The digits are found by the method of R. Giulietti, "The Schubfach way to render doubles" (2021;
 * from memory): the interval of reals that round to the value is scaled by one power of ten, with
 * 126 exact bits, so that at most two decimals of the wanted length lie near the value.
 */
#include "base/assert.h"
#include "base/number.h"
#include "base/power_of_ten.h"

#include <math.h>
#include <string.h>

__extension__ typedef unsigned __int128 wide;

#define HIDDEN_BIT (UINT64_C(1) << 52)

typedef struct decimal {
    uint64_t digits;
    int      exponent; /* value = digits * 10^exponent */
} decimal;

/* floor(power * scaled / 2^128), its last bit set when anything was cut off. */
static uint64_t scale_to_odd(ts_power_of_ten power, uint64_t scaled)
{
    const wide     low  = (wide)power.low * scaled;
    const wide     high = (wide)power.high * scaled + (uint64_t)(low >> 64);
    const uint64_t rest = (uint64_t)high;
    return (uint64_t)(high >> 64) | (rest > 1 ? 1U : 0U);
}

static ts_power_of_ten rounded_up(int exponent)
{
    ts_power_of_ten power = ts_power_of_ten_at(exponent);
    if (!ts_power_of_ten_exact(exponent)) {
        power.low++;
        power.high += power.low == 0 ? 1 : 0;
    }
    return power;
}

/* value = c * 2^q; `uneven` when the next smaller double is half as far as the next larger one. */
static decimal shortest(uint64_t c, int q, bool uneven)
{
    /* floor(log10(2^q)), or floor(log10(3/4 * 2^q)) where the interval is shorter. */
    const int             k     = (q * 1262611 - (uneven ? 524031 : 0)) >> 22;
    const int             h     = q + ts_power_of_ten_log2(-k) + 1;
    const ts_power_of_ten power = rounded_up(-k);
    const uint64_t        left  = scale_to_odd(power, (4 * c - (uneven ? 1 : 2)) << h);
    const uint64_t        here  = scale_to_odd(power, (4 * c) << h);
    const uint64_t        right = scale_to_odd(power, (4 * c + 2) << h);
    /* The ends of the interval round to an even c, and away from an odd one. */
    const uint64_t odd = c & 1, lower = left + odd, upper = right - odd;
    const uint64_t s = here / 4;

    if (s >= 10) {
        const uint64_t tens       = s / 10;
        const bool     under_fits = lower <= 40 * tens, above_fits = 40 * tens + 40 <= upper;
        if (under_fits != above_fits)
            return (decimal){tens + (above_fits ? 1 : 0), k + 1};
    }
    const bool under_fits = lower <= 4 * s, above_fits = 4 * s + 4 <= upper;
    if (under_fits != above_fits)
        return (decimal){s + (above_fits ? 1 : 0), k};
    const uint64_t middle = 4 * s + 2;
    const bool     up     = here > middle || (here == middle && (s & 1) != 0);
    return (decimal){s + (up ? 1 : 0), k};
}

static decimal without_zeros(decimal d)
{
    while (d.digits % 10 == 0) {
        d.digits /= 10;
        d.exponent++;
    }
    return d;
}

static decimal decimal_of(uint64_t bits)
{
    const uint64_t fraction = bits & (HIDDEN_BIT - 1);
    const int      biased   = (int)(bits >> 52 & 0x7FF);
    if (biased == 0)
        return without_zeros(shortest(fraction, -1074, false));
    const uint64_t c = fraction | HIDDEN_BIT;
    const int      q = biased - 1075;
    /* A whole number below 2^53 is its own shortest text: its neighbours are nearer than 1. */
    if (q <= 0 && q > -53 && (c & ((UINT64_C(1) << -q) - 1)) == 0)
        return without_zeros((decimal){c >> -q, 0});
    return without_zeros(shortest(c, q, fraction == 0 && biased > 1));
}

static size_t write_digits(char *out, uint64_t digits)
{
    char   reversed[24];
    size_t count = 0;
    do {
        reversed[count++] = (char)('0' + digits % 10);
        digits /= 10;
    } while (digits > 0);
    for (size_t i = 0; i < count; i++)
        out[i] = reversed[count - 1 - i];
    return count;
}

static size_t write_plain(char *out, const char *digits, int count, int point)
{
    char *at = out;
    if (point <= 0) {
        *at++ = '0';
        *at++ = '.';
        memset(at, '0', (size_t)-point);
        at += -point;
        memcpy(at, digits, (size_t)count);
        return (size_t)(at - out) + (size_t)count;
    }
    if (point >= count) {
        memcpy(at, digits, (size_t)count);
        memset(at + count, '0', (size_t)(point - count));
        return (size_t)point;
    }
    memcpy(at, digits, (size_t)point);
    at[point] = '.';
    memcpy(at + point + 1, digits + point, (size_t)(count - point));
    return (size_t)count + 1;
}

static size_t write_exponent(char *out, const char *digits, int count, int exponent)
{
    char *at = out;
    *at++    = digits[0];
    if (count > 1) {
        *at++ = '.';
        memcpy(at, digits + 1, (size_t)(count - 1));
        at += count - 1;
    }
    *at++ = 'e';
    if (exponent < 0)
        *at++ = '-';
    at += write_digits(at, (uint64_t)(exponent < 0 ? -exponent : exponent));
    return (size_t)(at - out);
}

size_t ts_number_layout(char *out, ts_text digits, int exponent, int plain_from, int plain_to)
{
    const int count = (int)digits.length;
    if (exponent >= plain_from && exponent < plain_to)
        return write_plain(out, digits.at, count, exponent + 1);
    return write_exponent(out, digits.at, count, exponent);
}

size_t ts_number_print(char out[TS_NUMBER_ROOM], double value)
{
    TS_ASSERT(isfinite(value));
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    char *at = out;
    if (bits >> 63 != 0)
        *at++ = '-';
    bits &= ~(UINT64_C(1) << 63);
    if (bits == 0) {
        *at++ = '0';
    } else {
        const decimal d = decimal_of(bits);
        char          digits[24];
        const ts_text text = {digits, write_digits(digits, d.digits)};
        at += ts_number_layout(at, text, d.exponent + (int)text.length - 1, -5, 16);
    }
    *at = '\0';
    return (size_t)(at - out);
}
