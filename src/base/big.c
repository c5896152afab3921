/* base/big.c: how are whole numbers of some thousand bits multiplied, compared and divided? */
#include "base/big.h"

#include "base/assert.h"

#include <string.h>

__extension__ typedef unsigned __int128 wide;

#define FIVE_TO_27 UINT64_C(7450580596923828125)

void ts_big_set(ts_big *big, uint64_t value)
{
    big->limb[0] = value;
    big->count   = value != 0 ? 1 : 0;
}

static void push(ts_big *big, uint64_t limb)
{
    if (limb == 0)
        return;
    TS_ASSERT(big->count < TS_BIG_LIMBS);
    if (big->count < TS_BIG_LIMBS)
        big->limb[big->count++] = limb;
}

void ts_big_times_plus(ts_big *big, uint64_t factor, uint64_t addend)
{
    uint64_t carry = addend;
    for (int i = 0; i < big->count; i++) {
        const wide product = (wide)big->limb[i] * factor + carry;

        big->limb[i] = (uint64_t)product;
        carry        = (uint64_t)(product >> 64);
    }
    push(big, carry);
}

void ts_big_times_five_power(ts_big *big, int exponent)
{
    for (; exponent >= 27; exponent -= 27)
        ts_big_times_plus(big, FIVE_TO_27, 0);
    uint64_t rest = 1;
    for (; exponent > 0; exponent--)
        rest *= 5;
    ts_big_times_plus(big, rest, 0);
}

void ts_big_shift_left(ts_big *big, int bits)
{
    const int whole = bits / 64, part = bits % 64;
    if (big->count == 0)
        return;
    if (part > 0)
        ts_big_times_plus(big, UINT64_C(1) << part, 0);
    TS_ASSERT(big->count + whole <= TS_BIG_LIMBS);
    memmove(big->limb + whole, big->limb, (size_t)big->count * sizeof big->limb[0]);
    memset(big->limb, 0, (size_t)whole * sizeof big->limb[0]);
    big->count += whole;
}

int ts_big_compare(const ts_big *a, const ts_big *b)
{
    if (a->count != b->count)
        return a->count < b->count ? -1 : 1;
    for (int i = a->count - 1; i >= 0; i--) {
        if (a->limb[i] != b->limb[i])
            return a->limb[i] < b->limb[i] ? -1 : 1;
    }
    return 0;
}

void ts_big_subtract(ts_big *a, const ts_big *b)
{
    uint64_t borrow = 0;
    for (int i = 0; i < a->count; i++) {
        const wide taken = (wide)(i < b->count ? b->limb[i] : 0) + borrow;

        borrow = a->limb[i] < taken ? 1 : 0;
        a->limb[i] -= (uint64_t)taken;
    }
    TS_ASSERT(borrow == 0);
    while (a->count > 0 && a->limb[a->count - 1] == 0)
        a->count--;
}

uint64_t ts_big_divide(ts_big *big, uint64_t divisor)
{
    uint64_t rest = 0;
    for (int i = big->count - 1; i >= 0; i--) {
        const wide part = (wide)rest << 64 | big->limb[i];

        big->limb[i] = (uint64_t)(part / divisor);
        rest         = (uint64_t)(part % divisor);
    }
    while (big->count > 0 && big->limb[big->count - 1] == 0)
        big->count--;
    return rest;
}

int ts_big_bits(const ts_big *big)
{
    if (big->count == 0)
        return 0;
    return 64 * big->count - __builtin_clzll(big->limb[big->count - 1]);
}
