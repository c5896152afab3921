/* support/sequence.h: numbers without a pattern that are the same in every run.
 *
 * Marsaglia's xorshift with 64 bits (Journal of Statistical Software 8, 2003; from memory).
 */
#ifndef TS_SUPPORT_SEQUENCE_H
#define TS_SUPPORT_SEQUENCE_H

#include <math.h>
#include <stdint.h>
#include <string.h>

typedef struct sequence {
    uint64_t state; /* not 0 */
} sequence;

static inline uint64_t sequence_next(sequence *s)
{
    s->state ^= s->state << 13;
    s->state ^= s->state >> 7;
    s->state ^= s->state << 17;
    return s->state;
}

/* 0 <= number < limit */
static inline uint64_t sequence_below(sequence *s, uint64_t limit)
{
    return sequence_next(s) % limit;
}

/* Any finite double, every exponent as likely as the next. */
static inline double sequence_double(sequence *s)
{
    for (;;) {
        const uint64_t bits = sequence_next(s);
        double         value;
        memcpy(&value, &bits, sizeof value);
        if (isfinite(value))
            return value;
    }
}

#endif
