/* base/counter_random.c: the random number that belongs to a place. */
#include "base/counter_random.h"

#include <string.h>

static void one_round(uint32_t c[4], const uint32_t k[2])
{
    const uint64_t p_0 = (uint64_t)0xD2511F53u * c[0], p_1 = (uint64_t)0xCD9E8D57u * c[2];
    const uint32_t next[4] = {
        (uint32_t)(p_1 >> 32) ^ c[1] ^ k[0],
        (uint32_t)p_1,
        (uint32_t)(p_0 >> 32) ^ c[3] ^ k[1],
        (uint32_t)p_0,
    };

    memcpy(c, next, sizeof next);
}

void ts_random_words(const uint32_t counter[4], const uint32_t key[2], uint32_t words[4])
{
    uint32_t k[2] = {key[0], key[1]};

    memcpy(words, counter, 4 * sizeof words[0]);
    for (int i = 0; i < 10; i++) {
        one_round(words, k);
        k[0] += 0x9E3779B9u;
        k[1] += 0xBB67AE85u;
    }
}

/* The middle of one of 2^52 equal pieces: never 0, never 1. */
static double inside(uint32_t high, uint32_t low)
{
    const uint64_t bits = (((uint64_t)high << 32) | low) >> 12;

    return ((double)bits + 0.5) * 0x1p-52;
}

void ts_random_pair(uint64_t seed, uint64_t place, uint32_t draw, double pair[2])
{
    const uint32_t counter[4] = {(uint32_t)place, (uint32_t)(place >> 32), draw, 0};
    const uint32_t key[2]     = {(uint32_t)seed, (uint32_t)(seed >> 32)};
    uint32_t       words[4];

    ts_random_words(counter, key, words);
    pair[0] = inside(words[0], words[1]);
    pair[1] = inside(words[2], words[3]);
}
