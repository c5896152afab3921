/* base/symbol_typeset.c: how does a symbol look to people? */
#include "base/symbol_typeset.h"

#include <string.h>

#define PRIME "\u2032"

static const struct {
    const char *name;
    const char *letter;
} greek[] = {
    {"alpha", "\u03B1"}, {"beta", "\u03B2"},  {"gamma", "\u03B3"},   {"delta", "\u03B4"},
    {"eps", "\u03B5"},   {"zeta", "\u03B6"},  {"eta", "\u03B7"},     {"theta", "\u03B8"},
    {"iota", "\u03B9"},  {"kappa", "\u03BA"}, {"lambda", "\u03BB"},  {"mu", "\u03BC"},
    {"nu", "\u03BD"},    {"xi", "\u03BE"},    {"pi", "\u03C0"},      {"rho", "\u03C1"},
    {"sigma", "\u03C3"}, {"tau", "\u03C4"},   {"upsilon", "\u03C5"}, {"phi", "\u03C6"},
    {"chi", "\u03C7"},   {"psi", "\u03C8"},   {"omega", "\u03C9"},   {"Gamma", "\u0393"},
    {"Delta", "\u0394"}, {"Theta", "\u0398"}, {"Lambda", "\u039B"},  {"Xi", "\u039E"},
    {"Pi", "\u03A0"},    {"Sigma", "\u03A3"}, {"Phi", "\u03A6"},     {"Psi", "\u03A8"},
    {"Omega", "\u03A9"},
};
#define GREEK_COUNT (sizeof greek / sizeof greek[0])

static bool is_small(char c)
{
    return c >= 'a' && c <= 'z';
}

static bool is_capital_or_digit(char c)
{
    return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

/* The Greek name that begins the piece, or GREEK_COUNT.  No name begins another one. */
static size_t name_at(ts_text piece)
{
    size_t i = 0;
    while (i < GREEK_COUNT && (strlen(greek[i].name) > piece.length ||
                               memcmp(piece.at, greek[i].name, strlen(greek[i].name)) != 0))
        i++;
    return i;
}

static ts_text without(ts_text piece, size_t bytes)
{
    return (ts_text){piece.at + bytes, piece.length - bytes};
}

/* Is the name at the start of `piece` a letter, or the beginning of a word?  Below the line names
 * that are hardly the start of a word may be followed by two small letters, as in F_betax. */
static bool stands_alone(ts_text piece, size_t name, bool below)
{
    const size_t  length = strlen(greek[name].name);
    const ts_text rest   = without(piece, length);
    size_t        small  = 0;
    while (small < rest.length && is_small(rest.at[small]))
        small++;
    if (small == 0)
        return true;
    const size_t next = name_at(rest);
    if (next < GREEK_COUNT)
        return stands_alone(rest, next, below);
    return below && small <= 2 && (length >= 4 || strcmp(greek[name].name, "eps") == 0);
}

static void typeset_piece(ts_buffer *out, ts_text piece, bool below)
{
    bool may_begin = true;
    while (piece.length > 0) {
        const size_t name = may_begin ? name_at(piece) : GREEK_COUNT;
        if (name < GREEK_COUNT && stands_alone(piece, name, below)) {
            ts_buffer_add(out, greek[name].letter);
            piece = without(piece, strlen(greek[name].name));
            continue;
        }
        ts_buffer_bytes(out, piece.at, 1);
        may_begin = is_capital_or_digit(piece.at[0]) || piece.at[0] == '_';
        piece     = without(piece, 1);
    }
}

void ts_symbol_base(ts_buffer *out, ts_text base)
{
    typeset_piece(out, base, false);
}

void ts_symbol_below(ts_buffer *out, ts_text below)
{
    typeset_piece(out, below, true);
}

static bool ends_with_name(ts_text piece)
{
    for (size_t i = 0; i < GREEK_COUNT; i++) {
        const size_t length = strlen(greek[i].name);
        if (length > piece.length)
            continue;
        const char *at = piece.at + piece.length - length;
        if (memcmp(at, greek[i].name, length) == 0 && (at == piece.at || !is_small(at[-1])))
            return true;
    }
    return false;
}

ts_symbol_pieces ts_symbol_split(ts_text symbol)
{
    ts_symbol_pieces pieces = {.base = symbol};
    const char      *line   = symbol.length > 0 ? memchr(symbol.at, '_', symbol.length) : NULL;
    if (line != NULL && line != symbol.at && line != symbol.at + symbol.length - 1) {
        pieces.base.length = (size_t)(line - symbol.at);
        pieces.below       = without(symbol, pieces.base.length + 1);
    }
    ts_text *last = pieces.below.length > 0 ? &pieces.below : &pieces.base;
    if (last->length < 2)
        return pieces;
    const char    end  = last->at[last->length - 1];
    const ts_text kept = {last->at, last->length - 1};
    const bool    ends = is_capital_or_digit(kept.at[kept.length - 1]) || ends_with_name(kept) ||
                      (last == &pieces.base && kept.length == 1);
    if ((end == 'p' || end == 's') && ends) {
        *last       = kept;
        pieces.mark = end == 'p' ? '\'' : '*';
    }
    return pieces;
}

void ts_symbol_typeset(ts_buffer *out, ts_text symbol)
{
    const ts_symbol_pieces pieces = ts_symbol_split(symbol);
    ts_symbol_base(out, pieces.base);
    if (pieces.mark != '\0')
        ts_buffer_add(out, pieces.mark == '*' ? "*" : PRIME);
    if (pieces.below.length == 0)
        return;
    ts_buffer_add(out, "_");
    ts_symbol_below(out, pieces.below);
}
