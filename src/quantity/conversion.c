/* quantity/conversion.c: how does a value get from its unit to SI and back without losing a bit? */
#include "quantity/conversion.h"

#include "base/power_of_ten.h"

#include <math.h>
#include <string.h>

static double power_of_two(int exponent)
{
    const uint64_t bits = (uint64_t)(exponent + 1023) << 52;
    double         power;
    memcpy(&power, &bits, sizeof power);
    return power;
}

/* 10^exponent to 106 of the 128 bits that the table holds. */
static twofold power_of_ten(int exponent)
{
    const ts_power_of_ten power = ts_power_of_ten_at(exponent);
    const double          scale = power_of_two(ts_power_of_ten_log2(exponent) - 52);
    const double          high  = (double)(power.high >> 11);
    const double          low   = (double)((power.high & 0x7FF) << 42 | power.low >> 22);
    return twofold_of_sum(high * scale, low * (scale * 0x1p-53));
}

twofold ts_twofold_of_decimal(uint64_t digits, int exponent)
{
    const twofold whole =
        twofold_of_sum((double)(digits >> 32) * 0x1p32, (double)(digits & 0xFFFFFFFFU));
    if (exponent == 0)
        return whole;
    return twofold_times(whole, power_of_ten(exponent));
}

static twofold factor_of(const ts_unit *unit)
{
    return (twofold){unit->factor, unit->factor_rest};
}

static twofold offset_of(const ts_unit *unit)
{
    return (twofold){unit->offset, unit->offset_rest};
}

static bool has_offset(const ts_unit *unit)
{
    return unit->offset > 0.0;
}

static twofold twofold_to_si(twofold value, const ts_unit *unit)
{
    const twofold scaled = twofold_times(value, factor_of(unit));
    return has_offset(unit) ? twofold_plus(scaled, offset_of(unit)) : scaled;
}

twofold ts_twofold_from_si(double si, const ts_unit *unit)
{
    const twofold value = {si, 0.0};
    return twofold_over(has_offset(unit) ? twofold_minus(value, offset_of(unit)) : value,
                        factor_of(unit));
}

double ts_decimal_to_si(ts_decimal decimal, const ts_unit *unit)
{
    if (decimal.digits == 0)
        return unit->offset;
    twofold value = ts_twofold_of_decimal(decimal.digits, (int)decimal.exponent);
    if (decimal.negative)
        value = (twofold){-value.high, -value.low};
    return twofold_to_si(value, unit).high;
}

/* Outside this range error terms of the long arithmetic would overflow or vanish. */
static bool in_range(double value)
{
    return fabs(value) >= TS_QUANTITY_LEAST && fabs(value) <= TS_QUANTITY_MOST;
}

double ts_to_si(double value, const ts_unit *unit)
{
    if (!in_range(value))
        return value * unit->factor + unit->offset;
    return twofold_to_si((twofold){value, 0.0}, unit).high;
}

double ts_from_si(double value, const ts_unit *unit)
{
    if (!in_range(value))
        return (value - unit->offset) / unit->factor;
    return ts_twofold_from_si(value, unit).high;
}
