/* quantity/quantity_print.c: how is a value written in its unit so that it reads back the same? */
#include "base/assert.h"
#include "base/power_of_ten.h"
#include "quantity/conversion.h"

#include <math.h>
#include <string.h>

#define DIGITS_MOST  18 /* 17 always suffice to come within half a unit in the last place */
#define WRITTEN_MOST 15 /* what a person wrote seldom has more                            */

static const uint64_t tens[DIGITS_MOST + 1] = {
    UINT64_C(1),
    UINT64_C(10),
    UINT64_C(100),
    UINT64_C(1000),
    UINT64_C(10000),
    UINT64_C(100000),
    UINT64_C(1000000),
    UINT64_C(10000000),
    UINT64_C(100000000),
    UINT64_C(1000000000),
    UINT64_C(10000000000),
    UINT64_C(100000000000),
    UINT64_C(1000000000000),
    UINT64_C(10000000000000),
    UINT64_C(100000000000000),
    UINT64_C(1000000000000000),
    UINT64_C(10000000000000000),
    UINT64_C(100000000000000000),
    UINT64_C(1000000000000000000),
};

/* floor(log10(value)) or one less, for a normal positive value. */
static int decimal_exponent(double value)
{
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    return (((int)(bits >> 52) - 1023) * 1262611) >> 22;
}

/* The first 18 digits of a positive value: digits * 10^exponent is the value cut off, but for an
 * error of some 10^-30 of it. */
static ts_decimal first_digits(twofold value)
{
    int exponent = decimal_exponent(value.high) - (DIGITS_MOST - 1);
    for (;;) {
        const twofold  scaled = twofold_times(value, ts_twofold_of_decimal(1, -exponent));
        const double   whole  = floor(scaled.high);
        const double   rest   = floor((scaled.high - whole) + scaled.low);
        const uint64_t digits = (uint64_t)whole + (uint64_t)(int64_t)rest;
        if (digits >= tens[DIGITS_MOST])
            exponent++;
        else if (digits < tens[DIGITS_MOST - 1])
            exponent--;
        else
            return (ts_decimal){.digits = digits, .exponent = exponent};
    }
}

/* The decimals of `count` digits next to the value, below or above: the nearer one that reads back.
 * What reads back is an interval round the value, so if neither does, none of so few digits does.
 */
static bool reads_back(ts_decimal whole, int count, double si, const ts_unit *unit,
                       ts_decimal *found)
{
    const uint64_t step  = tens[DIGITS_MOST - count];
    ts_decimal     below = whole, above = whole;
    below.digits = whole.digits / step;
    below.exponent += DIGITS_MOST - count;
    above.digits   = below.digits + 1;
    above.exponent = below.exponent;

    const bool       up     = whole.digits % step >= step - whole.digits % step;
    const ts_decimal first  = up ? above : below;
    const ts_decimal second = up ? below : above;
    /* Exactly equal is what reading back means. */
    *found = first;
    if (ts_decimal_to_si(first, unit) == si)
        return true;
    *found = second;
    return ts_decimal_to_si(second, unit) == si;
}

static int digits_in(ts_decimal decimal)
{
    int count = 0;
    for (uint64_t left = decimal.digits; left > 0 && count < DIGITS_MOST; left /= 10)
        count++;
    for (uint64_t left = decimal.digits; count > 1 && left % 10 == 0; left /= 10)
        count--;
    return count;
}

/* The fewest digits that read back, false when 18 are too few.  More digits never read back worse,
 * so one step down from a number of digits that does is proof enough. */
static bool fewest_digits(double si, const ts_unit *unit, ts_decimal *found)
{
    twofold value = ts_twofold_from_si(si, unit);
    /* Near the zero of a temperature many values read back, and 0 is the shortest. */
    *found = (ts_decimal){.digits = 0};
    if (ts_decimal_to_si(*found, unit) == si)
        return true;
    const bool negative = value.high < 0.0;
    if (negative)
        value = (twofold){-value.high, -value.low};
    ts_decimal whole = first_digits(value), fewer;
    whole.negative   = negative;

    if (!reads_back(whole, WRITTEN_MOST, si, unit, found)) {
        for (int count = WRITTEN_MOST + 1; count <= DIGITS_MOST; count++) {
            if (reads_back(whole, count, si, unit, found))
                return true;
        }
        return false;
    }
    for (int count = digits_in(*found); count > 1; count = digits_in(*found)) {
        if (!reads_back(whole, count - 1, si, unit, &fewer))
            break;
        *found = fewer;
    }
    return true;
}

static void print_decimal(ts_buffer *out, ts_decimal d)
{
    char   reversed[24], digits[24], text[TS_NUMBER_ROOM];
    size_t count = 0;
    if (d.digits == 0) {
        ts_buffer_add(out, "0");
        return;
    }
    for (; d.digits % 10 == 0; d.exponent++)
        d.digits /= 10;
    for (; d.digits > 0; d.digits /= 10)
        reversed[count++] = (char)('0' + d.digits % 10);
    for (size_t i = 0; i < count; i++)
        digits[i] = reversed[count - 1 - i];
    if (d.negative)
        ts_buffer_add(out, "-");
    const int    exponent = (int)d.exponent + (int)count - 1;
    const size_t length   = ts_number_layout(text, (ts_text){digits, count}, exponent, -5, 16);
    ts_buffer_bytes(out, text, length);
}

static bool is_si(const ts_unit *unit)
{
    return unit == ts_kind_si(unit->kind);
}

static void print_value(ts_buffer *out, double si, const ts_unit *unit)
{
    ts_decimal decimal;
    const bool in_range = fabs(si) >= TS_QUANTITY_LEAST && fabs(si) <= TS_QUANTITY_MOST;
    if (!is_si(unit) && in_range && fewest_digits(si, unit, &decimal))
        print_decimal(out, decimal);
    else
        ts_buffer_number(out, ts_from_si(si, unit) + 0.0); /* -0 becomes 0 */
}

/* A few kelvin from absolute zero, degC would take more digits than are read; K says it exactly. */
static const ts_unit *sayable(double si, const ts_unit *unit)
{
    const bool cancels = unit->offset > 0.0 && fabs(si) < unit->offset * 0x1p-4;
    return cancels ? ts_kind_si(unit->kind) : unit;
}

static void print_unit(ts_buffer *out, const ts_unit *unit)
{
    if (unit->kind == TS_KIND_NUMBER && is_si(unit))
        return;
    ts_buffer_add(out, " ");
    ts_buffer_add(out, unit->name);
}

void ts_quantity_print(ts_buffer *out, double si, const ts_unit *unit)
{
    unit = sayable(si, unit);
    print_value(out, si, unit);
    print_unit(out, unit);
}

void ts_quantity_print_range(ts_buffer *out, double low, double high, const ts_unit *unit)
{
    TS_ASSERT(low <= high && (isfinite(low) || isfinite(high)));
    unit = isfinite(low) ? sayable(low, unit) : unit;
    unit = isfinite(high) ? sayable(high, unit) : unit;
    if (isfinite(low))
        print_value(out, low, unit);
    ts_buffer_add(out, "..");
    if (isfinite(high))
        print_value(out, high, unit);
    print_unit(out, unit);
}

void ts_quantity_show(ts_buffer *out, double si, const ts_unit *unit, int digits)
{
    ts_buffer_significant(out, ts_from_si(si, unit), digits);
    print_unit(out, unit);
}
