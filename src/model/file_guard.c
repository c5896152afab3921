/* model/file_guard.c: may these bytes be shown to the YAML parser at all? */
#include "model/file_guard.h"

#include "model/byte_guard.h"
#include "model/guard_walk.h"

/* ---- messages ------------------------------------------------------------------------------- */

/* Columns are counted on from the message before, for a line may be long and hold many. */
static uint32_t column_of(ts_guard_walk *g, ts_guard_place place)
{
    if (g->columns == 0 || g->counted_to < place.line_start || g->counted_to > place.at) {
        g->counted_to = place.line_start;
        g->columns    = 1;
    }
    for (; g->counted_to < place.at; g->counted_to++)
        g->columns += (g->at[g->counted_to] & 0xC0) != 0x80 ? 1 : 0;
    return g->columns;
}

void ts_guard_complain(ts_guard_walk *g, ts_guard_place place, const ts_diagnostic *what)
{
    ts_diagnostic placed = *what;
    placed.line          = place.line;
    placed.column        = column_of(g, place);
    placed.columns       = 1;
    ts_diagnose(g->list, &placed);
    g->found++;
    g->fatal = g->fatal || g->found >= TS_DIAGNOSTICS_MOST; /* no further one would be kept */
}

/* At a byte of the line in which the walk stands. */
static void complain(ts_guard_walk *g, size_t at, const char *code, const char *says,
                     const char *expected)
{
    ts_guard_complain(g, (ts_guard_place){at, g->line_start, g->line},
                      &(ts_diagnostic){.code = code, .says = says, .expected = expected});
}

/* ---- lines ---------------------------------------------------------------------------------- */

void ts_guard_skip_line(ts_guard_walk *g)
{
    const char *end = memchr(g->at + g->i, '\n', g->length - g->i);
    g->i            = end != NULL ? (size_t)(end - g->at) : g->length;
}

/* What version control leaves behind when it could not merge: seven of one sign. */
static bool is_conflict_marker(const ts_guard_walk *g)
{
    const size_t left = g->length - g->i;
    if (left < 7 || strchr("<=>|", g->at[g->i]) == NULL)
        return false;
    for (size_t k = 1; k < 7; k++) {
        if (g->at[g->i + k] != g->at[g->i])
            return false;
    }
    return ts_guard_is_gap(g, g->i + 7);
}

static bool is_document_marker(const ts_guard_walk *g, const char *marker)
{
    return g->length - g->i >= 3 && memcmp(g->at + g->i, marker, 3) == 0 &&
           ts_guard_is_gap(g, g->i + 3);
}

/* At the first byte of a line. */
static void look_at_line_start(ts_guard_walk *g)
{
    if (g->i >= g->length)
        return;
    const char first = g->at[g->i];
    if (is_conflict_marker(g)) {
        complain(g, g->i, "conflict-marker", "this line is a conflict marker of version control",
                 "a file whose conflicts are resolved");
        ts_guard_skip_line(g);
    } else if (first == '%') {
        complain(g, g->i, "directive", "a YAML directive stands here",
                 "no directives in a drive file");
        ts_guard_skip_line(g);
    } else if (is_document_marker(g, "---") || is_document_marker(g, "...")) {
        if (first == '-' && g->content) {
            complain(g, g->i, "second-document", "a second document begins here",
                     "one document a file");
            g->fatal = true;
        }
        g->ended  = g->ended || first == '.';
        g->plain  = false;
        g->parent = -1;
        g->i += 3;
    }
}

void ts_guard_line_end(ts_guard_walk *g)
{
    if (g->at[g->i] == '\r' && g->i + 1 < g->length && g->at[g->i + 1] == '\n')
        g->i++;
    g->i++;
    g->line++;
    g->line_start = g->i;
    look_at_line_start(g);
}

/* ---- marks ---------------------------------------------------------------------------------- */

/* Anchors, aliases and tags: what they are called, or NULL when `byte` begins none. */
static const char *mark_name(char byte)
{
    switch (byte) {
    case '&':
        return "an anchor stands here";
    case '*':
        return "an alias stands here";
    case '!':
        return "a tag stands here";
    default:
        return NULL;
    }
}

/* Over an anchor, alias or tag, with a message. */
static bool take_mark(ts_guard_walk *g)
{
    const char *says = mark_name(g->at[g->i]);
    if (says == NULL)
        return false;
    complain(g, g->i, "yaml-mark", says, "every value written out where it stands");
    while (!ts_guard_is_gap(g, g->i) && (g->depth == 0 || !ts_guard_is_sign(g->at[g->i])))
        g->i++;
    return true;
}

static bool take_complex_key(ts_guard_walk *g)
{
    if (g->at[g->i] != '?' || !ts_guard_is_gap(g, g->i + 1))
        return false;
    complain(g, g->i, "complex-key", "a key is written with a question mark here",
             "a key and a colon, such as teeth: 61");
    g->i++;
    return true;
}

bool ts_guard_take_mark(ts_guard_walk *g)
{
    return take_mark(g) || take_complex_key(g);
}

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
    complain(g, g->i, "block-scalar", "a block of text begins here",
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
        complain(g, g->i, "second-document", "a second document begins here",
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
        complain(g, g->line_start, "tab", "a tab indents this line", "blanks");
    while (!g->fatal && take_token(g)) {
        skip_blanks(g);
        if (ts_guard_is_end(g, g->i) || g->at[g->i] == '#')
            return;
    }
}

static void walk(ts_guard_walk *g)
{
    look_at_line_start(g);
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
        complain(&g, g.line_start, "too-many-nodes",
                 "the file has more than 200000 keys, values and items", "a file of some hundreds");
    *nodes = g.nodes;
    return g.found == 0;
}
