/* base/power_of_ten.c: what are the leading 128 bits of a power of ten? */
#include "base/power_of_ten.h"

#include "base/assert.h"

#define POWER_COUNT (TS_POWER_OF_TEN_LAST - TS_POWER_OF_TEN_FIRST + 1)

static const ts_power_of_ten table[] = {
#include "power_of_ten.inc"
};

_Static_assert(sizeof table / sizeof table[0] == POWER_COUNT, "the tool and the header agree");

ts_power_of_ten ts_power_of_ten_at(int exponent)
{
    TS_ASSERT(exponent >= TS_POWER_OF_TEN_FIRST && exponent <= TS_POWER_OF_TEN_LAST);
    return table[exponent - TS_POWER_OF_TEN_FIRST];
}
