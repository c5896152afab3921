/* base/number_parse.c: which double is nearest to a decimal text?
 *
 * Three routes, each right by itself.  Few digits and a small exponent: one exact operation.  Else
 * the value is enclosed between two products with a power of ten cut to 128 bits; when both round
 * to one double, that is it.  Else the text is compared, in whole numbers, with the midpoint of the
 * two doubles in question.
 */
#include "base/big.h"
#include "base/number.h"
#include "base/power_of_ten.h"

#include <math.h>
#include <string.h>

__extension__ typedef unsigned __int128 wide;

#define DIGITS_KEPT   19  /* 10^19 < 2^64                                                         */
#define DIGITS_EXACT  800 /* a midpoint of two doubles has at most 767 significant digits        */
#define EXPONENT_MOST INT64_C(1000000000000000) /* longer than any text that fits into memory */
#define INFINITE_BITS (UINT64_C(0x7FF) << 52)

typedef struct scan {
    ts_text  text;
    size_t   at;
    bool     negative;
    size_t   first;    /* where the digits begin                                    */
    size_t   last;     /* where digits and point end                                */
    uint64_t kept;     /* the first 19 significant digits                           */
    int64_t  exponent; /* value = kept * 10^exponent, but for what was dropped      */
    int64_t  written;  /* the exponent as written                                   */
    bool     dropped;  /* digits other than 0 stand after the 19th                  */
} scan;

static bool is_digit(char byte)
{
    return byte >= '0' && byte <= '9';
}

static char peek(const scan *s, size_t ahead)
{
    return s->at + ahead < s->text.length ? s->text.at[s->at + ahead] : '\0';
}

static void scan_digits(scan *s, bool after_point)
{
    const uint64_t full =
        UINT64_C(1000000000000000000); /* a kept value from here on has 19 digits */
    for (; is_digit(peek(s, 0)); s->at++) {
        const unsigned digit = (unsigned)(peek(s, 0) - '0');
        if (s->kept < full) {
            s->kept = s->kept * 10 + digit;
            s->exponent -= after_point ? 1 : 0;
        } else {
            s->dropped = s->dropped || digit != 0;
            s->exponent += after_point ? 0 : 1;
        }
    }
}

static void scan_exponent(scan *s)
{
    if (peek(s, 0) != 'e' && peek(s, 0) != 'E')
        return;
    const bool   sign   = peek(s, 1) == '+' || peek(s, 1) == '-';
    const size_t digits = sign ? 2 : 1;
    if (!is_digit(peek(s, digits)))
        return;
    const bool negative = peek(s, 1) == '-';
    int64_t    exponent = 0;
    for (s->at += digits; is_digit(peek(s, 0)); s->at++) {
        if (exponent < EXPONENT_MOST)
            exponent = exponent * 10 + (peek(s, 0) - '0');
    }
    s->written = negative ? -exponent : exponent;
    s->exponent += s->written;
}

static ts_number_fault scan_number(scan *s)
{
    if (s->text.length == 0)
        return TS_NUMBER_EMPTY;
    s->negative = peek(s, 0) == '-';
    if (peek(s, 0) == '-' || peek(s, 0) == '+')
        s->at++;
    if (!is_digit(peek(s, 0)))
        return TS_NUMBER_NOT_A_NUMBER;
    s->first = s->at;
    scan_digits(s, false);
    const bool hexadecimal = s->at == s->first + 1 && s->text.at[s->first] == '0' &&
                             (peek(s, 0) == 'x' || peek(s, 0) == 'X');
    if (hexadecimal)
        return TS_NUMBER_NOT_A_NUMBER;
    if (peek(s, 0) == '.' && is_digit(peek(s, 1))) {
        s->at++;
        scan_digits(s, true);
        if (peek(s, 0) == '.' && is_digit(peek(s, 1)))
            return TS_NUMBER_NOT_A_NUMBER;
    }
    if (peek(s, 0) == ',' && is_digit(peek(s, 1)))
        return TS_NUMBER_DECIMAL_COMMA;
    s->last = s->at;
    scan_exponent(s);
    return TS_NUMBER_FINE;
}

/* top * 2^exponent, with something left over when `more`, as the bits of the nearest double; top
 * has its highest bit set. */
static uint64_t round_to_bits(uint64_t top, bool more, int exponent)
{
    const int leading = exponent + 63; /* 2^leading <= value < 2^(leading + 1) */
    if (leading > 1023)
        return INFINITE_BITS;
    const bool normal = leading >= -1022;
    const int  drop   = normal ? 11 : 11 + (-1022 - leading);
    if (drop > 64)
        return 0;
    uint64_t       kept = drop == 64 ? 0 : top >> drop;
    const uint64_t rest = drop == 64 ? top : top & ((UINT64_C(1) << drop) - 1);
    const uint64_t half = UINT64_C(1) << (drop - 1);
    if (rest > half || (rest == half && (more || (kept & 1) != 0)))
        kept++;
    /* `kept` carries into the exponent by itself, from subnormal to normal and on to infinity. */
    return normal ? ((uint64_t)(leading + 1022) << 52) + kept : kept;
}

/* digits * (power as given) rounded to a double; exponent is that of ten. */
static uint64_t round_product(uint64_t digits, ts_power_of_ten power, int exponent)
{
    const int      zeros  = __builtin_clzll(digits);
    const uint64_t scaled = digits << zeros;
    const wide     low    = (wide)power.low * scaled;
    const wide     high   = (wide)power.high * scaled + (uint64_t)(low >> 64);
    uint64_t       top = (uint64_t)(high >> 64), next = (uint64_t)high;
    int            binary = ts_power_of_ten_log2(exponent) + 1 - zeros;
    if (top >> 63 == 0) {
        top = top << 1 | next >> 63;
        next <<= 1;
        binary--;
    }
    return round_to_bits(top, (next | (uint64_t)low) != 0, binary);
}

static ts_power_of_ten next_above(ts_power_of_ten power)
{
    power.low++;
    power.high += power.low == 0 ? 1 : 0;
    return power;
}

/* All digits of the text as a whole number, and the power of ten that goes with it.  What stands
 * after the 800th digit only matters by being there. */
static void read_exactly(const scan *s, ts_big *big, int64_t *exponent)
{
    int  count = 0;
    bool point = false, more = false;

    ts_big_set(big, 0);
    *exponent = s->written;
    for (size_t i = s->first; i < s->last; i++) {
        const char byte = s->text.at[i];
        if (byte == '.') {
            point = true;
            continue;
        }
        if (count < DIGITS_EXACT) {
            ts_big_times_plus(big, 10, (uint64_t)(byte - '0'));
            count += big->count > 0 ? 1 : 0;
            *exponent -= point ? 1 : 0;
        } else {
            more = more || byte != '0';
            *exponent += point ? 0 : 1;
        }
    }
    if (more) {
        ts_big_times_plus(big, 10, 1);
        *exponent -= 1;
    }
}

/* -1, 0 or 1 as the text is below, on or above the midpoint of the double `bits` and the next. */
static int compare_with_midpoint(const scan *s, uint64_t bits)
{
    ts_big  text, middle;
    int64_t ten;
    read_exactly(s, &text, &ten);

    const uint64_t fraction = bits & ((UINT64_C(1) << 52) - 1);
    const int      biased   = (int)(bits >> 52);
    const uint64_t whole    = biased == 0 ? fraction : fraction | UINT64_C(1) << 52;
    const int      binary   = (biased == 0 ? -1074 : biased - 1075) - 1;
    ts_big_set(&middle, 2 * whole + 1);

    /* text * 10^ten against middle * 2^binary, every factor brought to the side where it is whole
     */
    const int power = (int)ten;
    if (power >= 0)
        ts_big_times_five_power(&text, power);
    else
        ts_big_times_five_power(&middle, -power);
    const int shift = power - binary;
    if (shift >= 0)
        ts_big_shift_left(&text, shift);
    else
        ts_big_shift_left(&middle, -shift);
    return ts_big_compare(&text, &middle);
}

static uint64_t nearest_bits(const scan *s)
{
    if (s->kept == 0)
        return 0;
    if (s->exponent < TS_POWER_OF_TEN_FIRST) /* below 10^19 * 10^-343, under half of 2^-1074 */
        return 0;
    if (s->exponent > 308)
        return INFINITE_BITS;
    const int             exponent = (int)s->exponent;
    const ts_power_of_ten under    = ts_power_of_ten_at(exponent);
    const bool            exact    = ts_power_of_ten_exact(exponent);
    const uint64_t        low      = round_product(s->kept, under, exponent);
    if (exact && !s->dropped)
        return low;
    const uint64_t high =
        round_product(s->kept + (s->dropped ? 1 : 0), exact ? under : next_above(under), exponent);
    if (low == high)
        return low;
    const int side = compare_with_midpoint(s, low);
    return low + (side > 0 || (side == 0 && (low & 1) != 0) ? 1 : 0);
}

/* Both operands and the power of ten are exact, so the one operation rounds correctly. */
static bool by_one_operation(const scan *s, double *value)
{
    static const double tens[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                  1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                                  1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    if (s->dropped || s->kept > UINT64_C(1) << 53 || s->exponent < -22 || s->exponent > 22)
        return false;
    const double whole = (double)s->kept;
    *value             = s->exponent < 0 ? whole / tens[-s->exponent] : whole * tens[s->exponent];
    return true;
}

ts_number_fault ts_number_parse_decimal(ts_text text, ts_decimal *decimal, size_t *taken)
{
    scan                  s     = {.text = text};
    const ts_number_fault fault = scan_number(&s);

    *taken   = s.at;
    *decimal = (ts_decimal){s.kept, s.exponent, s.negative, s.dropped};
    return fault;
}

ts_number_fault ts_number_parse(ts_text text, double *value, size_t *taken)
{
    scan                  s     = {.text = text};
    const ts_number_fault fault = scan_number(&s);

    *taken = s.at;
    *value = 0.0;
    if (fault != TS_NUMBER_FINE)
        return fault;
    double magnitude;
    if (!by_one_operation(&s, &magnitude)) {
        const uint64_t bits = nearest_bits(&s);
        if (bits >= INFINITE_BITS)
            return TS_NUMBER_TOO_LARGE;
        memcpy(&magnitude, &bits, sizeof magnitude);
    }
    *value = s.negative ? -magnitude : magnitude;
    return TS_NUMBER_FINE;
}
