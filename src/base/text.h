/* base/text.h: a piece of somebody else's bytes. */
#ifndef TS_BASE_TEXT_H
#define TS_BASE_TEXT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct ts_text {
    const char *at; /* not zero-terminated in general */
    size_t      length;
} ts_text;

#define TS_TEXT(literal) ((ts_text){(literal), sizeof(literal) - 1})

ts_text ts_text_of(const char *zero_terminated); /* NULL gives the empty text */
bool    ts_text_equal(ts_text a, ts_text b);

/* Is it this word?  Words of a table are tried one after the other, and nearly all differ in their
 * first byte. */
static inline bool ts_text_is(ts_text a, const char *zero_terminated)
{
    if (a.length > 0 && zero_terminated != NULL && a.at[0] != zero_terminated[0])
        return false;
    return ts_text_equal(a, ts_text_of(zero_terminated));
}

ts_text ts_text_trim(ts_text text); /* without blanks and tabs at both ends */

/* Bytes of the first ill-formed UTF-8 sequence, or text.length when all of it is well formed
 * (Unicode 15, table 3-7: no surrogates, no overlong forms). */
size_t ts_text_utf8_length(ts_text text);

/* The code point that starts at byte `at` < text.length, and how many bytes it takes; 0 bytes when
 * the sequence there is ill formed. */
size_t ts_text_code_point(ts_text text, size_t at, uint32_t *code_point);

/* Columns that the text takes on a terminal: one a code point, none a combining mark, one a byte
 * that is not UTF-8. */
size_t ts_text_columns(ts_text text);

/* The candidate nearest to `word` by edit distance (adjacent swaps count as one), or NULL when
 * none is near enough to be worth saying: distance <= 1 + length/4, case ignored.  Among equally
 * near ones the one nearer in case wins, then the earlier.  Where none is, the shortest one that
 * holds the word (4 bytes at least, one mistake in five).  NULL candidates are skipped; words over
 * 64 bytes are too long to guess at. */
const char *ts_text_nearest(ts_text word, const char *const *candidates, size_t count);

#endif
