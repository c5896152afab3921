/* base/power_of_ten.h: powers of ten to 128 bits, for numbers to text and back. */
#ifndef TS_BASE_POWER_OF_TEN_H
#define TS_BASE_POWER_OF_TEN_H

#include <stdbool.h>
#include <stdint.h>

#define TS_POWER_OF_TEN_FIRST (-342)
#define TS_POWER_OF_TEN_LAST  342

/* 10^k = (high * 2^64 + low + cut) * 2^(floor(log2(10^k)) - 127) with 0 <= cut < 1; the highest bit
 * of `high` is set. */
typedef struct ts_power_of_ten {
    uint64_t high;
    uint64_t low;
} ts_power_of_ten;

ts_power_of_ten ts_power_of_ten_at(int exponent);

/* Is nothing cut off?  5^55 is the last power of five below 2^128. */
static inline bool ts_power_of_ten_exact(int exponent)
{
    return exponent >= 0 && exponent <= 55;
}

/* floor(log2(10^exponent)); right for |exponent| <= 1233, and a test tries the table's range. */
static inline int ts_power_of_ten_log2(int exponent)
{
    return (exponent * 1741647) >> 19;
}

#endif
