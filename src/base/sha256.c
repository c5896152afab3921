/* base/sha256.c: which file was it, exactly?
 *
 * The secure hash of FIPS 180-4, sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2.2; constants from
 * memory, held by the published examples in the test.
 */
#include "base/sha256.h"

#include <stdint.h>
#include <string.h>

#define BLOCK 64

static const uint32_t constants[64] = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
};

static uint32_t turned(uint32_t word, int bits)
{
    return word >> bits | word << (32 - bits);
}

/* The 64 words of the message schedule (6.2.2, step 1). */
static void spread(const unsigned char block[BLOCK], uint32_t words[64])
{
    for (int t = 0; t < 16; t++)
        words[t] = (uint32_t)block[4 * t] << 24 | (uint32_t)block[4 * t + 1] << 16 |
                   (uint32_t)block[4 * t + 2] << 8 | (uint32_t)block[4 * t + 3];
    for (int t = 16; t < 64; t++) {
        const uint32_t a = words[t - 15], b = words[t - 2];
        const uint32_t sigma_0 = turned(a, 7) ^ turned(a, 18) ^ a >> 3;
        const uint32_t sigma_1 = turned(b, 17) ^ turned(b, 19) ^ b >> 10;
        words[t]               = sigma_1 + words[t - 7] + sigma_0 + words[t - 16];
    }
}

/* One round (6.2.2, step 3): what becomes of d and h; the other six only move one place on, which
 * the caller does by naming them anew. */
static inline void turn(uint32_t a, uint32_t b, uint32_t c, uint32_t *d, uint32_t e, uint32_t f,
                        uint32_t g, uint32_t *h, uint32_t word)
{
    const uint32_t sum_1  = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const uint32_t choice = g ^ (e & (f ^ g));
    const uint32_t first  = *h + sum_1 + choice + word;
    const uint32_t sum_0  = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const uint32_t most   = (a & b) | (c & (a | b));
    *d += first;
    *h = first + sum_0 + most;
}

static void take_block(uint32_t hash[8], const unsigned char block[BLOCK])
{
    uint32_t words[64];
    spread(block, words);
    uint32_t a = hash[0], b = hash[1], c = hash[2], d = hash[3];
    uint32_t e = hash[4], f = hash[5], g = hash[6], h = hash[7];
    for (int t = 0; t < 64; t += 8) {
        turn(a, b, c, &d, e, f, g, &h, constants[t] + words[t]);
        turn(h, a, b, &c, d, e, f, &g, constants[t + 1] + words[t + 1]);
        turn(g, h, a, &b, c, d, e, &f, constants[t + 2] + words[t + 2]);
        turn(f, g, h, &a, b, c, d, &e, constants[t + 3] + words[t + 3]);
        turn(e, f, g, &h, a, b, c, &d, constants[t + 4] + words[t + 4]);
        turn(d, e, f, &g, h, a, b, &c, constants[t + 5] + words[t + 5]);
        turn(c, d, e, &f, g, h, a, &b, constants[t + 6] + words[t + 6]);
        turn(b, c, d, &e, f, g, h, &a, constants[t + 7] + words[t + 7]);
    }
    hash[0] += a, hash[1] += b, hash[2] += c, hash[3] += d;
    hash[4] += e, hash[5] += f, hash[6] += g, hash[7] += h;
}

/* What is left of the message, the bit 1, zeros, and the length in bits (5.1.1). */
static void take_end(uint32_t hash[8], const char *rest, size_t count, size_t length)
{
    unsigned char tail[2 * BLOCK] = {0};
    if (count > 0)
        memcpy(tail, rest, count);
    tail[count]                   = 0x80;
    const size_t   whole          = count < BLOCK - 8 ? BLOCK : 2 * BLOCK;
    const uint64_t length_in_bits = (uint64_t)length * 8;
    for (size_t i = 0; i < 8; i++)
        tail[whole - 1 - i] = (unsigned char)(length_in_bits >> (8 * i));
    for (size_t at = 0; at < whole; at += BLOCK)
        take_block(hash, tail + at);
}

void ts_sha256(ts_text bytes, char out[65])
{
    static const char digits[] = "0123456789abcdef";

    uint32_t hash[8] = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                        0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
    size_t   at      = 0;
    for (; bytes.length - at >= BLOCK; at += BLOCK)
        take_block(hash, (const unsigned char *)bytes.at + at);
    take_end(hash, bytes.at + at, bytes.length - at, bytes.length);
    for (size_t i = 0; i < 64; i++)
        out[i] = digits[hash[i / 8] >> (28 - 4 * (i % 8)) & 15];
    out[64] = '\0';
}
