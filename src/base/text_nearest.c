/* base/text_nearest.c: which known word did somebody probably mean? */
#include "base/text.h"

#define WORD_MOST ((size_t)64)

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

/* Optimal string alignment: insertions, deletions, substitutions and swaps of neighbours, no part
 * edited twice.  Three rows of the table are enough. */
static size_t distance(ts_text a, ts_text b, bool fold)
{
    size_t  rows[3][WORD_MOST + 1];
    size_t *before = rows[0], *last = rows[1], *row = rows[2];

    for (size_t j = 0; j <= b.length; j++)
        last[j] = j;
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
    return last[b.length];
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
        const size_t folded = distance(word, candidate, true);
        if (folded > best || folded > limit)
            continue;
        const size_t in_case = distance(word, candidate, false);
        if (folded == best && in_case >= best_in_case)
            continue;
        nearest      = candidates[i];
        best         = folded;
        best_in_case = in_case;
    }
    return nearest;
}
