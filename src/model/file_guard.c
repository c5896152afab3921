/* model/file_guard.c: may these bytes be shown to the YAML parser at all? */
#include "model/file_guard.h"

#include "model/byte_guard.h"
#include "model/guard_walk.h"

/* ---- outside of brackets -------------------------------------------------------------------- */

static void skip_blanks(ts_guard_walk *g)
{
    while (ts_guard_is_blank(g, g->i))
        g->i++;
}

/* After what may be a key that began at `column`: over its colon, when there is one. */
static bool take_colon(ts_guard_walk *g, long column)
{
    skip_blanks(g);
    if (g->i >= g->length || g->at[g->i] != ':' || !ts_guard_is_gap(g, g->i + 1))
        return false;
    g->i++;
    g->nodes++;
    g->parent = column;
    return true;
}

/* A plain scalar outside of brackets, to a colon, a comment or the end of its line. */
static void take_plain(ts_guard_walk *g)
{
    bool after_gap = false;
    while (!ts_guard_is_end(g, g->i)) {
        if (g->at[g->i] == '#' && after_gap)
            return;
        if (g->at[g->i] == ':' && ts_guard_is_gap(g, g->i + 1))
            return;
        after_gap = ts_guard_is_blank(g, g->i);
        g->i++;
    }
    g->plain = true;
}

static bool is_block_scalar(const ts_guard_walk *g)
{
    return g->at[g->i] == '|' || g->at[g->i] == '>';
}

/* The lines of a block scalar are text, whatever stands in them. */
static void take_block_scalar(ts_guard_walk *g)
{
    ts_guard_complain_at(g, g->i, "block-scalar", "a block of text begins here",
                         "the text in quotes, or plain on lines that are indented further");
    ts_guard_skip_line(g);
    g->plain = true;
}

/* At the first sign of a value or key outside of brackets.  False: to the end of the line. */
static bool take_token(ts_guard_walk *g)
{
    const long column = (long)(g->i - g->line_start);
    const char byte   = g->at[g->i];
    g->content        = true;
    if (byte == '-' && ts_guard_is_gap(g, g->i + 1)) {
        g->i++;
        g->nodes++;
        g->parent = column;
        return true;
    }
    if (ts_guard_take_mark(g))
        return true;
    if (is_block_scalar(g)) {
        take_block_scalar(g);
        return false;
    }
    if (byte == '"' || byte == '\'')
        ts_guard_take_quoted(g);
    else if (byte == '[' || byte == '{')
        ts_guard_take_brackets(g);
    else
        take_plain(g);
    if (g->fatal || !take_colon(g, column))
        return false;
    g->plain = false;
    return true;
}

static void take_block_line(ts_guard_walk *g)
{
    bool tab = false;
    while (ts_guard_is_blank(g, g->i)) {
        tab = tab || g->at[g->i] == '\t';
        g->i++;
    }
    if (ts_guard_is_end(g, g->i) || g->at[g->i] == '#')
        return;
    if (g->ended) {
        ts_guard_complain_at(g, g->i, "second-document", "a second document begins here",
                             "one document a file");
        g->fatal = true;
        return;
    }
    if (g->plain && (long)(g->i - g->line_start) > g->parent) {
        g->plain = false;
        take_plain(g);
        return;
    }
    g->plain = false;
    if (tab)
        ts_guard_complain_at(g, g->line_start, "tab", "a tab indents this line", "blanks");
    while (!g->fatal && take_token(g)) {
        skip_blanks(g);
        if (ts_guard_is_end(g, g->i) || g->at[g->i] == '#')
            return;
    }
}

static void walk(ts_guard_walk *g)
{
    ts_guard_line_start(g);
    while (g->i < g->length && !g->fatal && g->nodes <= TS_FILE_NODES_MOST) {
        take_block_line(g);
        if (g->fatal)
            return;
        ts_guard_skip_line(g);
        if (g->i < g->length)
            ts_guard_line_end(g);
    }
}

bool ts_guard_file(ts_text bytes, ts_diagnostics *list, size_t *nodes)
{
    ts_guard_walk g = {
        .at = bytes.at, .length = bytes.length, .line = 1, .list = list, .parent = -1};
    *nodes = 0;
    if (!ts_guard_bytes(bytes, list))
        return false;
    g.nodes = 1; /* the root */
    walk(&g);
    if (g.nodes > TS_FILE_NODES_MOST)
        ts_guard_complain_at(&g, g.line_start, "too-many-nodes",
                             "the file has more than 200000 keys, values and items",
                             "a file of some hundreds");
    *nodes = g.nodes;
    return g.found == 0;
}
