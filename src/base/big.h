/* base/big.h: whole numbers of some thousand bits, for the few conversions that need exactness. */
#ifndef TS_BASE_BIG_H
#define TS_BASE_BIG_H

#include <stddef.h>
#include <stdint.h>

/* 4096 bits: the longest number met is 801 decimal digits or 5^1143 * 2^54, both below 2^2720, and
 * a fixed form of 2^1024 * 10^12. */
#define TS_BIG_LIMBS 64

typedef struct ts_big {
    uint64_t limb[TS_BIG_LIMBS]; /* the least one first; those from `count` on hold nothing */
    int      count;              /* 0 for zero; the highest counted limb is not 0           */
} ts_big;

void ts_big_set(ts_big *big, uint64_t value);
void ts_big_times_plus(ts_big *big, uint64_t factor, uint64_t addend);
void ts_big_times_five_power(ts_big *big, int exponent); /* exponent >= 0 */
void ts_big_shift_left(ts_big *big, int bits);           /* bits >= 0     */
int  ts_big_compare(const ts_big *a, const ts_big *b);   /* -1, 0 or 1    */
void ts_big_subtract(ts_big *a, const ts_big *b);        /* a >= b        */
/* Divides by a small number and returns the rest. */
uint64_t ts_big_divide(ts_big *big, uint64_t divisor);
/* The bit length, 0 for zero. */
int ts_big_bits(const ts_big *big);

#endif
