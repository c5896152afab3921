/* model/bracket_guard.c: is everything closed that is opened, and how much stands inside? */
#include "model/guard_walk.h"

#include <stdio.h>

/* ---- quotes --------------------------------------------------------------------------------- */

/* To the byte after the closing quote; false at the end of the file.  *fallen becomes the first
 * line of the text that is indented no further than its key. */
static bool find_closing_quote(ts_guard_walk *g, uint32_t *fallen)
{
    const char quote = g->at[g->i];
    g->i++;
    while (g->i < g->length && !g->fatal) {
        const char byte = g->at[g->i];
        /* A sign that stands for another, or for a quote inside of the text. */
        const bool pair = quote == '"'
                              ? byte == '\\' && !ts_guard_is_end(g, g->i + 1)
                              : byte == quote && g->i + 1 < g->length && g->at[g->i + 1] == quote;
        if (byte == '\n' || byte == '\r') {
            ts_guard_line_end(g);
            if (*fallen == 0 && g->fallen == 0 && ts_guard_has_fallen(g))
                *fallen = g->line;
        } else if (pair) {
            g->i += 2;
        } else if (byte != quote) {
            g->i++;
        } else {
            g->i++;
            return true;
        }
    }
    return false;
}

/* May what stands behind a quoted text stand there? */
static bool ends_here(const ts_guard_walk *g)
{
    size_t i = g->i;
    while (ts_guard_is_blank(g, i))
        i++;
    if (ts_guard_is_end(g, i) || g->at[i] == ':')
        return true;
    if (g->at[i] == '#')
        return i > g->i;
    return g->depth > 0 && ts_guard_is_sign(g->at[i]);
}

static void complain_quote(ts_guard_walk *g, ts_guard_place opened, const char *says)
{
    ts_guard_complain(g, opened,
                      &(ts_diagnostic){.code     = "open-quote",
                                       .says     = says,
                                       .expected = "its closing quote on the same line"});
    g->fatal = true;
}

/* A text over several lines is sound when all of them are indented further than its key and
 * nothing follows its end.  Otherwise a quote was forgotten, and the next one met was taken. */
void ts_guard_take_quoted(ts_guard_walk *g)
{
    const ts_guard_place opened = ts_guard_here(g);
    uint32_t             fallen = 0;
    const bool           closed = find_closing_quote(g, &fallen);
    if (g->fatal || (closed && g->line == opened.line))
        return;
    if (!closed || (fallen > 0 && !ends_here(g)))
        complain_quote(g, opened, "the quote opened here is not closed");
    else if (!ends_here(g))
        complain_quote(g, opened,
                       "the quote opened here closes on another line, and text follows there");
    else if (fallen > 0)
        ts_guard_complain(
            g, opened,
            &(ts_diagnostic){
                .code     = "indentation",
                .says     = "the text of this quote goes on at the margin of its key",
                .expected = "the text on one line, or further in than the key it stands with"});
}

/* ---- brackets ------------------------------------------------------------------------------- */

static void complain_open(ts_guard_walk *g)
{
    const bool told  = g->fallen > 0 && g->fallen_depth < g->depth;
    const int  depth = told ? g->fallen_depth : g->depth;
    const bool curly = (g->curly >> depth & 1) != 0;
    char       says[80];
    /* Ten digits at most, so it always fits. */
    if (g->fallen > 0)
        (void)snprintf(says, sizeof says, "the %s opened here is not closed before line %u",
                       curly ? "brace" : "bracket", g->fallen);
    else
        (void)snprintf(says, sizeof says, "the %s opened here is not closed",
                       curly ? "brace" : "bracket");
    ts_guard_complain(
        g, g->opened[depth],
        &(ts_diagnostic){.code     = "open-bracket",
                         .says     = says,
                         .expected = curly ? "its closing brace, }" : "its closing bracket, ]"});
    g->fatal = true;
}

/* Over one end of line inside of brackets. */
static void take_line_end(ts_guard_walk *g)
{
    ts_guard_line_end(g);
    if (g->fallen > 0 || !ts_guard_has_fallen(g))
        return;
    g->fallen       = g->line;
    g->fallen_depth = g->depth;
}

static void begin_entry(ts_guard_walk *g)
{
    g->content = true;
    if (g->depth == 0 || (g->begun >> g->depth & 1) != 0)
        return;
    g->begun |= (uint64_t)1 << g->depth;
    g->nodes++;
    g->entries++;
    if (g->entries <= TS_FILE_BRACKET_MOST || g->fatal)
        return;
    if (g->fallen > 0) {
        complain_open(g);
        return;
    }
    ts_guard_complain(
        g, ts_guard_here(g),
        &(ts_diagnostic){.code     = "too-many-entries",
                         .says     = "one pair of brackets holds more than 20000 entries here",
                         .expected = "long lists line by line, without brackets"});
    g->fatal = true;
}

/* Most bytes of a plain scalar are of words and numbers and mean nothing by themselves. */
static bool is_of_a_word(char byte)
{
    return (byte >= 'a' && byte <= 'z') || (byte >= '.' && byte <= '9') ||
           (byte >= 'A' && byte <= 'Z');
}

/* A plain scalar inside brackets may go on over lines, so it ends at a sign only. */
static void take_plain(ts_guard_walk *g)
{
    begin_entry(g);
    bool after_gap = false;
    while (g->i < g->length && !g->fatal) {
        size_t i = g->i;
        while (i < g->length && is_of_a_word(g->at[i]))
            i++;
        if (i > g->i) {
            after_gap = false;
            g->i      = i;
            continue;
        }
        const char byte = g->at[i];
        if (ts_guard_is_sign(byte) || (byte == '#' && after_gap))
            return;
        if (byte == ':' && (ts_guard_is_gap(g, g->i + 1) || ts_guard_is_sign(g->at[g->i + 1])))
            return;
        after_gap = ts_guard_is_gap(g, g->i);
        if (byte == '\n' || byte == '\r')
            take_line_end(g);
        else
            g->i++;
    }
}

static void open_bracket(ts_guard_walk *g)
{
    begin_entry(g);
    if (g->depth == TS_FILE_DEPTH_MOST) {
        ts_guard_complain(g, ts_guard_here(g),
                          &(ts_diagnostic){.code     = "too-deep",
                                           .says     = "brackets are nested more than 32 deep here",
                                           .expected = "at most 32 levels"});
        g->fatal = true;
        return;
    }
    if (g->depth == 0) {
        g->entries = 0;
        g->fallen  = 0;
    }
    g->depth++;
    g->begun &= ~((uint64_t)1 << g->depth);
    g->curly &= ~((uint64_t)1 << g->depth);
    g->curly |= (uint64_t)(g->at[g->i] == '{' ? 1 : 0) << g->depth;
    g->opened[g->depth] = ts_guard_here(g);
    g->i++;
}

static void close_bracket(ts_guard_walk *g)
{
    const bool curly = (g->curly >> g->depth & 1) != 0;
    if (curly == (g->at[g->i] == '}')) {
        g->depth--;
        g->i++;
        return;
    }
    if (g->fallen > 0) {
        complain_open(g);
        return;
    }
    ts_guard_complain(g, ts_guard_here(g),
                      &(ts_diagnostic){.code     = "stray-bracket",
                                       .says     = curly
                                                       ? "a bracket closes here where a brace is open"
                                                       : "a brace closes here where a bracket is open",
                                       .expected = curly ? "}" : "]"});
    g->fatal = true;
}

static void take_sign(ts_guard_walk *g)
{
    const char byte = g->at[g->i];
    if (byte == '[' || byte == '{') {
        open_bracket(g);
    } else if (byte == ']' || byte == '}') {
        close_bracket(g);
    } else if (byte == ',') {
        g->begun &= ~((uint64_t)1 << g->depth);
        g->i++;
    } else if (byte == '"' || byte == '\'') {
        begin_entry(g);
        ts_guard_take_quoted(g);
    } else if (!ts_guard_take_mark(g)) {
        if (byte == ':')
            g->i++;
        else
            take_plain(g);
    }
}

void ts_guard_take_brackets(ts_guard_walk *g)
{
    open_bracket(g);
    while (g->depth > 0 && g->i < g->length && !g->fatal) {
        const char byte = g->at[g->i];
        if (byte == '\n' || byte == '\r')
            take_line_end(g);
        else if (byte == ' ' || byte == '\t')
            g->i++;
        else if (byte == '#' && (g->i == g->line_start || ts_guard_is_gap(g, g->i - 1)))
            ts_guard_skip_line(g);
        else
            take_sign(g);
    }
    if (g->depth > 0 && !g->fatal)
        complain_open(g);
}
