/* base/number_round.c: how does a double read when it is cut to so many decimals or digits?
 *
 * Correctly rounded from the exact binary value, ties to even.  In 128 bits where both sides of the
 * quotient fit, which is so for everything an engineer writes; in long whole numbers elsewhere.
 */
#include "base/assert.h"
#include "base/big.h"
#include "base/number.h"

#include <math.h>
#include <string.h>

__extension__ typedef unsigned __int128 wide;

#define GROUP UINT64_C(10000000000000000000) /* 10^19, the largest power of ten in 64 bits */

/* |value| = whole * 2^exponent, whole < 2^53. */
static void split(double value, uint64_t *whole, int *exponent)
{
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    const int biased = (int)(bits >> 52 & 0x7FF);
    *whole           = bits & ((UINT64_C(1) << 52) - 1);
    *exponent        = -1074;
    if (biased > 0) {
        *whole |= UINT64_C(1) << 52;
        *exponent = biased - 1075;
    }
}

static int least(int a, int b)
{
    return a < b ? a : b;
}

static int most(int a, int b)
{
    return a > b ? a : b;
}

static wide ten_to(int exponent)
{
    wide power = 1;
    for (int i = 0; i < exponent; i++)
        power *= 10;
    return power;
}

static wide round_quotient(wide over, wide under)
{
    const wide whole = over / under, rest = over % under;
    const wide other = under - rest; /* rest > under/2, said without overflow */
    return whole + (rest > other || (rest == other && (whole & 1) != 0) ? 1 : 0);
}

/* over / under to the nearest whole number; the caller knows that it is below 2^63. */
static uint64_t divide_big(ts_big *over, const ts_big *under)
{
    uint64_t quotient = 0;
    for (int bit = most(ts_big_bits(over) - ts_big_bits(under), 0); bit >= 0; bit--) {
        ts_big part = *under;
        ts_big_shift_left(&part, bit);
        if (ts_big_compare(over, &part) >= 0) {
            ts_big_subtract(over, &part);
            quotient |= UINT64_C(1) << bit;
        }
    }
    ts_big_shift_left(over, 1);
    const int side = ts_big_compare(over, under);
    return quotient + (side > 0 || (side == 0 && (quotient & 1) != 0) ? 1 : 0);
}

/* whole * 2^binary * 10^ten to the nearest whole number, below 2^63. */
static uint64_t scale_and_round(uint64_t whole, int binary, int ten)
{
    const int up = most(binary, 0), down = most(-binary, 0);
    /* 10^22 < 2^74 and whole < 2^53; 10^15 < 2^50 leaves 77 bits for the other factor */
    if (ten >= 0 && ten <= 22 && up == 0 && down <= 126)
        return (uint64_t)round_quotient(whole * ten_to(ten), (wide)1 << down);
    if (ten < 0 && ten >= -15 && up <= 73 && down <= 76)
        return (uint64_t)round_quotient((wide)whole << up, ten_to(-ten) << down);
    ts_big over, under;
    ts_big_set(&over, whole);
    ts_big_set(&under, 1);
    ts_big_times_five_power(&over, most(ten, 0));
    ts_big_times_five_power(&under, most(-ten, 0));
    const int shift = binary + ten;
    ts_big_shift_left(&over, most(shift, 0));
    ts_big_shift_left(&under, most(-shift, 0));
    return divide_big(&over, &under);
}

/* Decimal digits, at least `least_count` of them, the highest first. */
static size_t write_group(char *out, uint64_t value, size_t least_count)
{
    char   reversed[20];
    size_t count = 0;
    while (value > 0 || count < least_count) {
        reversed[count++] = (char)('0' + value % 10);
        value /= 10;
    }
    for (size_t i = 0; i < count; i++)
        out[i] = reversed[count - 1 - i];
    return count;
}

static size_t write_big(char *out, ts_big *big, size_t least_count)
{
    uint64_t groups[20];
    int      count = 0;
    while (big->count > 0)
        groups[count++] = ts_big_divide(big, GROUP);
    if (count == 0)
        return write_group(out, 0, least_count);
    size_t length = write_group(out, groups[count - 1], count == 1 ? least_count : 1);
    for (int i = count - 2; i >= 0; i--)
        length += write_group(out + length, groups[i], 19);
    return length;
}

/* The digits of round(|value| * 10^decimals), at least decimals + 1 of them. */
static size_t fixed_digits(char *out, double value, int decimals)
{
    uint64_t whole;
    int      binary;
    ts_big   big;
    split(value, &whole, &binary);
    if (binary < 0) {
        /* Below 2^-74 even twelve decimals show nothing, and the shift stays in range. */
        const wide scaled =
            binary < -127 ? 0 : round_quotient(whole * ten_to(decimals), (wide)1 << -binary);
        ts_big_set(&big, (uint64_t)(scaled / GROUP));
        ts_big_times_plus(&big, GROUP, (uint64_t)(scaled % GROUP));
    } else {
        ts_big_set(&big, whole);
        ts_big_times_plus(&big, (uint64_t)ten_to(decimals), 0);
        ts_big_shift_left(&big, binary);
    }
    return write_big(out, &big, (size_t)decimals + 1);
}

size_t ts_number_fixed(char out[TS_NUMBER_FIXED_ROOM], double value, int decimals)
{
    TS_ASSERT(isfinite(value) && decimals >= 0 && decimals <= 12);
    decimals = least(most(decimals, 0), 12);
    char   digits[TS_NUMBER_FIXED_ROOM];
    size_t count = fixed_digits(digits, value, decimals);
    char  *at    = out;

    digits[count] = '\0'; /* all noughts end here, and the search for another digit with them */
    if (signbit(value) && strspn(digits, "0") < count)
        *at++ = '-';
    const size_t before = count - (size_t)decimals;
    memcpy(at, digits, before);
    at += before;
    if (decimals > 0) {
        *at++ = '.';
        memcpy(at, digits + before, (size_t)decimals);
        at += decimals;
    }
    *at = '\0';
    return (size_t)(at - out);
}

/* round(whole * 2^binary * 10^(count - 1 - *exponent)), with *exponent moved until it has `count`
 * digits after rounding. */
static uint64_t significant_digits(double value, int count, int *exponent)
{
    uint64_t whole;
    int      binary;
    split(value, &whole, &binary);
    /* Next below a power of ten the logarithm may be rounded up to its exponent; the digits that
     * one place more would give then tell. */
    const uint64_t first = (uint64_t)ten_to(count - 1);
    *exponent            = (int)floor(log10(fabs(value)));
    uint64_t digits      = scale_and_round(whole, binary, count - 1 - *exponent);
    if (digits <= first) {
        const uint64_t longer = scale_and_round(whole, binary, count - *exponent);
        if (longer < 10 * first) {
            *exponent -= 1;
            return longer;
        }
    }
    if (digits >= 10 * first) {
        *exponent += 1;
        digits = scale_and_round(whole, binary, count - 1 - *exponent);
    }
    return digits;
}

size_t ts_number_significant(char out[TS_NUMBER_ROOM], double value, int digits)
{
    TS_ASSERT(isfinite(value) && digits >= 1 && digits <= 17);
    digits   = least(most(digits, 1), 17);
    char *at = out;
    if (fabs(value) > 0.0) {
        int            exponent;
        char           text[24];
        const uint64_t kept   = significant_digits(value, digits, &exponent);
        const size_t   length = write_group(text, kept, 1);
        if (signbit(value))
            *at++ = '-';
        at += ts_number_layout(at, (ts_text){text, length}, exponent, -4, 9);
    } else {
        *at++ = '0';
    }
    *at = '\0';
    return (size_t)(at - out);
}
