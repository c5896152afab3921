/* base/counter_random.h: the random number that belongs to a place.
 *
 * A number is computed from its seed and its place alone, so that any share of the work on any
 * number of threads sees the same ones.  Philox 4x32 with ten rounds: J. Salmon and others,
 * Parallel random numbers: as easy as 1, 2, 3, SC11 (2011) (from memory, held to its known
 * answers).
 */
#ifndef TS_BASE_COUNTER_RANDOM_H
#define TS_BASE_COUNTER_RANDOM_H

#include <stdint.h>

/* Four words of 32 bits of the counter (four words) and the key (two words). */
void ts_random_words(const uint32_t counter[4], const uint32_t key[2], uint32_t words[4]);

/* Two numbers above 0 and below 1, of sample `place`, draw `draw`. */
void ts_random_pair(uint64_t seed, uint64_t place, uint32_t draw, double pair[2]);

#endif
