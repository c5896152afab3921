/* base/text_nearest.c: which known word did somebody probably mean? */
#include "base/text.h"

#define WORD_MOST   ((size_t)64)
#define PIECE_LEAST ((size_t)4) /* shorter pieces stand in too many words */

static char lower(char byte)
{
    return byte >= 'A' && byte <= 'Z' ? (char)(byte - 'A' + 'a') : byte;
}

static size_t least(size_t a, size_t b)
{
    return a < b ? a : b;
}

static bool same(char a, char b, bool fold)
{
    return a == b || (fold && lower(a) == lower(b));
}

static size_t smallest(const size_t *row, size_t length)
{
    size_t best = row[0];

    for (size_t j = 1; j <= length; j++)
        best = least(best, row[j]);
    return best;
}

/* Optimal string alignment: insertions, deletions, substitutions and swaps of neighbours, no part
 * edited twice.  Three rows of the table are enough.  `within`: to the piece of b that is nearest,
 * for what stands before and behind it costs nothing. */
static size_t distance(ts_text a, ts_text b, bool fold, bool within)
{
    size_t  rows[3][WORD_MOST + 1];
    size_t *before = rows[0], *last = rows[1], *row = rows[2];

    for (size_t j = 0; j <= b.length; j++)
        last[j] = within ? 0 : j;
    for (size_t i = 1; i <= a.length; i++) {
        row[0] = i;
        for (size_t j = 1; j <= b.length; j++) {
            const size_t cost = same(a.at[i - 1], b.at[j - 1], fold) ? 0 : 1;
            row[j]            = least(least(last[j], row[j - 1]) + 1, last[j - 1] + cost);
            if (i > 1 && j > 1 && same(a.at[i - 1], b.at[j - 2], fold) &&
                same(a.at[i - 2], b.at[j - 1], fold))
                row[j] = least(row[j], before[j - 2] + 1);
        }
        size_t *oldest = before;

        before = last;
        last   = row;
        row    = oldest;
    }
    return within ? smallest(last, b.length) : last[b.length];
}

/* What the word is but a piece of, at one mistake in five letters; of several the shortest. */
static const char *whole_of(ts_text word, const char *const *candidates, size_t count)
{
    const size_t limit   = word.length / 5;
    const char  *nearest = NULL;
    size_t       best = limit + 1, length = WORD_MOST + 1;

    if (word.length < PIECE_LEAST)
        return NULL;
    for (size_t i = 0; i < count; i++) {
        const ts_text candidate = ts_text_of(candidates[i]);
        if (candidate.length <= word.length + 1 + word.length / 4 || candidate.length > WORD_MOST)
            continue;
        const size_t cost = distance(word, candidate, true, true);
        if (cost > limit || cost > best || (cost == best && candidate.length >= length))
            continue;
        nearest = candidates[i];
        best    = cost;
        length  = candidate.length;
    }
    return nearest;
}

const char *ts_text_nearest(ts_text word, const char *const *candidates, size_t count)
{
    if (word.length == 0 || word.length > WORD_MOST)
        return NULL;
    const char  *nearest = NULL;
    const size_t limit   = 1 + word.length / 4;
    size_t       best = limit + 1, best_in_case = 0;
    for (size_t i = 0; i < count; i++) {
        const ts_text candidate = ts_text_of(candidates[i]);
        if (candidate.length == 0 || candidate.length > WORD_MOST ||
            candidate.length + limit < word.length || word.length + limit < candidate.length)
            continue;
        const size_t folded = distance(word, candidate, true, false);
        if (folded > best || folded > limit)
            continue;
        const size_t in_case = distance(word, candidate, false, false);
        if (folded == best && in_case >= best_in_case)
            continue;
        nearest      = candidates[i];
        best         = folded;
        best_in_case = in_case;
    }
    return nearest != NULL ? nearest : whole_of(word, candidates, count);
}
