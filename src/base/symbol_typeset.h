/* base/symbol_typeset.h: the standards' symbols, spelled in ASCII inside, in Greek for people. */
#ifndef TS_BASE_SYMBOL_TYPESET_H
#define TS_BASE_SYMBOL_TYPESET_H

#include "base/buffer.h"
#include "base/text.h"

/* "d_b1p" is d with a prime and b1 below it.
 *
 * base    before the first underscore, without the mark
 * below   after it, without the mark; empty when there is none
 * mark    '\'' for a final p, '*' for a final s, '\0' for neither.  A final p or s is a mark only
 *         after a digit, a capital, a Greek name or a base of one letter: the s of h_as and of
 *         d_shafts are letters, that of h_aPs and of xs is a star. */
typedef struct ts_symbol_pieces {
    ts_text base;
    ts_text below;
    char    mark;
} ts_symbol_pieces;

ts_symbol_pieces ts_symbol_split(ts_text symbol);

/* Writes a piece in UTF-8 with its Greek names as letters: "eps" of eps_alpha, "Hbeta" of K_Hbeta.
 * A name counts at the start and after a capital, a digit or another Greek letter, and only where
 * what follows shows that it is no part of a word ("pi" of "pinion" stays as it is). */
void ts_symbol_base(ts_buffer *out, ts_text base);
void ts_symbol_below(ts_buffer *out, ts_text below);

/* The whole symbol on one line: base, mark, underscore, what stands below. */
void ts_symbol_typeset(ts_buffer *out, ts_text symbol);

#endif
