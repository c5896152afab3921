/* model/file_guard.c: may these bytes be shown to the YAML parser at all? */
#include "model/file_guard.h"

#include "model/byte_guard.h"

#include <string.h>

/* Where the walk through the bytes stands.  Columns count bytes from 0 here. */
typedef struct guard {
    const char     *at;
    size_t          length;
    size_t          i;
    size_t          line_start;
    uint32_t        line; /* from 1 */
    ts_diagnostics *list;
    size_t          found;
    size_t          counted_to; /* the byte whose column was told last */
    uint32_t        columns;    /* and that column                     */
    size_t          nodes;
    size_t          entries; /* inside the outermost pair of brackets   */
    int             depth;   /* of brackets                             */
    uint64_t        begun;   /* one bit a depth: has its entry begun?   */
    uint64_t        curly;   /* one bit a depth: was it opened with a brace? */
    bool            fatal;   /* no sense in going on                    */
    bool            content; /* anything but comments met               */
    bool            ended;   /* the document was closed with three dots */
    bool            plain;   /* a plain scalar may go on below          */
    long            parent;  /* column of the latest key or dash, or -1 */
} guard;

static bool is_end(const guard *g, size_t i)
{
    return i >= g->length || g->at[i] == '\n' || g->at[i] == '\r';
}

static bool is_blank(const guard *g, size_t i)
{
    return i < g->length && (g->at[i] == ' ' || g->at[i] == '\t');
}

static bool is_gap(const guard *g, size_t i)
{
    return is_end(g, i) || is_blank(g, i);
}

static bool is_bracket_or_comma(char byte)
{
    return byte == '[' || byte == ']' || byte == '{' || byte == '}' || byte == ',';
}

/* Columns are counted on from the message before, for a line may be long and hold many. */
static uint32_t column_of(guard *g, size_t at)
{
    if (g->columns == 0 || g->counted_to < g->line_start || g->counted_to > at) {
        g->counted_to = g->line_start;
        g->columns    = 1;
    }
    for (; g->counted_to < at; g->counted_to++)
        g->columns += (g->at[g->counted_to] & 0xC0) != 0x80 ? 1 : 0;
    return g->columns;
}

static void complain(guard *g, size_t at, const char *code, const char *says, const char *expected)
{
    const uint32_t column = column_of(g, at);
    ts_diagnose(g->list, &(ts_diagnostic){.code     = code,
                                          .line     = g->line,
                                          .column   = column,
                                          .columns  = 1,
                                          .says     = says,
                                          .expected = expected});
    g->found++;
    g->fatal = g->fatal || g->found >= TS_DIAGNOSTICS_MOST; /* no further one would be kept */
}

/* ---- lines ---------------------------------------------------------------------------------- */

static void skip_to_end_of_line(guard *g)
{
    const char *end = memchr(g->at + g->i, '\n', g->length - g->i);
    g->i            = end != NULL ? (size_t)(end - g->at) : g->length;
}

/* What version control leaves behind when it could not merge: seven of one sign. */
static bool is_conflict_marker(const guard *g)
{
    const size_t left = g->length - g->i;
    if (left < 7 || strchr("<=>|", g->at[g->i]) == NULL)
        return false;
    for (size_t k = 1; k < 7; k++) {
        if (g->at[g->i + k] != g->at[g->i])
            return false;
    }
    return is_gap(g, g->i + 7);
}

static bool is_document_marker(const guard *g, const char *marker)
{
    return g->length - g->i >= 3 && memcmp(g->at + g->i, marker, 3) == 0 && is_gap(g, g->i + 3);
}

/* At the first byte of a line. */
static void look_at_line_start(guard *g)
{
    if (g->i >= g->length)
        return;
    const char first = g->at[g->i];
    if (is_conflict_marker(g)) {
        complain(g, g->i, "conflict-marker", "this line is a conflict marker of version control",
                 "a file whose conflicts are resolved");
        skip_to_end_of_line(g);
    } else if (first == '%') {
        complain(g, g->i, "directive", "a YAML directive stands here",
                 "no directives in a drive file");
        skip_to_end_of_line(g);
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

/* Over one end of line. */
static void take_line_end(guard *g)
{
    if (g->at[g->i] == '\r' && g->i + 1 < g->length && g->at[g->i + 1] == '\n')
        g->i++;
    g->i++;
    g->line++;
    g->line_start = g->i;
    look_at_line_start(g);
}

/* ---- brackets and quotes -------------------------------------------------------------------- */

static void begin_entry(guard *g)
{
    g->content = true;
    if (g->depth == 0 || (g->begun >> g->depth & 1) != 0)
        return;
    g->begun |= (uint64_t)1 << g->depth;
    g->nodes++;
    g->entries++;
    if (g->entries > TS_FILE_BRACKET_MOST && !g->fatal) {
        complain(g, g->i, "too-many-entries",
                 "one pair of brackets holds more than 20000 entries here",
                 "long lists line by line, without brackets");
        g->fatal = true;
    }
}

/* At an opening quote, to the byte after the closing one. */
static void take_quoted(guard *g)
{
    const char quote = g->at[g->i];
    g->i++;
    while (g->i < g->length && !g->fatal) {
        const char byte = g->at[g->i];
        if (byte == '\n' || byte == '\r') {
            take_line_end(g);
        } else if (byte == '\\' && quote == '"' && !is_end(g, g->i + 1)) {
            g->i += 2;
        } else if (byte != quote) {
            g->i++;
        } else if (quote == '\'' && g->i + 1 < g->length && g->at[g->i + 1] == quote) {
            g->i += 2;
        } else {
            g->i++;
            return;
        }
    }
}

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
static bool take_mark(guard *g)
{
    const char *says = mark_name(g->at[g->i]);
    if (says == NULL)
        return false;
    complain(g, g->i, "yaml-mark", says, "every value written out where it stands");
    while (!is_gap(g, g->i) && (g->depth == 0 || !is_bracket_or_comma(g->at[g->i])))
        g->i++;
    return true;
}

static bool take_complex_key(guard *g)
{
    if (g->at[g->i] != '?' || !is_gap(g, g->i + 1))
        return false;
    complain(g, g->i, "complex-key", "a key is written with a question mark here",
             "a key and a colon, such as teeth: 61");
    g->i++;
    return true;
}

/* A plain scalar inside brackets may go on over lines, so it ends at a sign only. */
static void take_plain_in_brackets(guard *g)
{
    begin_entry(g);
    bool after_gap = false;
    while (g->i < g->length && !g->fatal) {
        const char byte = g->at[g->i];
        if (is_bracket_or_comma(byte) || (byte == '#' && after_gap))
            return;
        if (byte == ':' && (is_gap(g, g->i + 1) || is_bracket_or_comma(g->at[g->i + 1])))
            return;
        after_gap = is_gap(g, g->i);
        if (byte == '\n' || byte == '\r')
            take_line_end(g);
        else
            g->i++;
    }
}

static void open_bracket(guard *g)
{
    begin_entry(g);
    if (g->depth == TS_FILE_DEPTH_MOST) {
        complain(g, g->i, "too-deep", "brackets are nested more than 32 deep here",
                 "at most 32 levels");
        g->fatal = true;
        return;
    }
    if (g->depth == 0)
        g->entries = 0;
    g->depth++;
    g->begun &= ~((uint64_t)1 << g->depth);
    g->curly &= ~((uint64_t)1 << g->depth);
    g->curly |= (uint64_t)(g->at[g->i] == '{' ? 1 : 0) << g->depth;
    g->i++;
}

static void close_bracket(guard *g)
{
    const bool curly = (g->curly >> g->depth & 1) != 0;
    if (curly != (g->at[g->i] == '}')) {
        complain(g, g->i, "stray-bracket",
                 curly ? "a bracket closes here where a brace is open"
                       : "a brace closes here where a bracket is open",
                 curly ? "}" : "]");
        g->fatal = true;
        return;
    }
    g->depth--;
    g->i++;
}

static void take_sign_in_brackets(guard *g)
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
        take_quoted(g);
    } else if (!take_mark(g) && !take_complex_key(g)) {
        if (byte == ':')
            g->i++;
        else
            take_plain_in_brackets(g);
    }
}

/* At the outermost opening bracket, to the byte after its closing one. */
static void take_brackets(guard *g)
{
    open_bracket(g);
    while (g->depth > 0 && g->i < g->length && !g->fatal) {
        const char byte = g->at[g->i];
        if (byte == '\n' || byte == '\r')
            take_line_end(g);
        else if (byte == ' ' || byte == '\t')
            g->i++;
        else if (byte == '#' && (g->i == g->line_start || is_gap(g, g->i - 1)))
            skip_to_end_of_line(g);
        else
            take_sign_in_brackets(g);
    }
}

/* ---- outside of brackets -------------------------------------------------------------------- */

static void skip_blanks(guard *g)
{
    while (is_blank(g, g->i))
        g->i++;
}

/* After what may be a key that began at `column`: over its colon, when there is one. */
static bool take_colon(guard *g, long column)
{
    skip_blanks(g);
    if (g->i >= g->length || g->at[g->i] != ':' || !is_gap(g, g->i + 1))
        return false;
    g->i++;
    g->nodes++;
    g->parent = column;
    return true;
}

/* A plain scalar outside of brackets, to a colon, a comment or the end of its line. */
static void take_plain(guard *g)
{
    bool after_gap = false;
    while (!is_end(g, g->i)) {
        if (g->at[g->i] == '#' && after_gap)
            return;
        if (g->at[g->i] == ':' && is_gap(g, g->i + 1))
            return;
        after_gap = is_blank(g, g->i);
        g->i++;
    }
    g->plain = true;
}

static bool is_block_scalar(const guard *g)
{
    return g->at[g->i] == '|' || g->at[g->i] == '>';
}

/* The lines of a block scalar are text, whatever stands in them. */
static void take_block_scalar(guard *g)
{
    complain(g, g->i, "block-scalar", "a block of text begins here",
             "the text in quotes, or plain on lines that are indented further");
    skip_to_end_of_line(g);
    g->plain = true;
}

/* At the first sign of a value or key outside of brackets.  False: to the end of the line. */
static bool take_token(guard *g)
{
    const long column = (long)(g->i - g->line_start);
    const char byte   = g->at[g->i];
    g->content        = true;
    if (byte == '-' && is_gap(g, g->i + 1)) {
        g->i++;
        g->nodes++;
        g->parent = column;
        return true;
    }
    if (take_mark(g) || take_complex_key(g))
        return true;
    if (is_block_scalar(g)) {
        take_block_scalar(g);
        return false;
    }
    if (byte == '"' || byte == '\'')
        take_quoted(g);
    else if (byte == '[' || byte == '{')
        take_brackets(g);
    else
        take_plain(g);
    if (g->fatal || !take_colon(g, column))
        return false;
    g->plain = false;
    return true;
}

static void take_block_line(guard *g)
{
    bool tab = false;
    while (is_blank(g, g->i)) {
        tab = tab || g->at[g->i] == '\t';
        g->i++;
    }
    if (is_end(g, g->i) || g->at[g->i] == '#')
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
        if (is_end(g, g->i) || g->at[g->i] == '#')
            return;
    }
}

static void walk(guard *g)
{
    look_at_line_start(g);
    while (g->i < g->length && !g->fatal && g->nodes <= TS_FILE_NODES_MOST) {
        take_block_line(g);
        if (g->fatal)
            return;
        skip_to_end_of_line(g);
        if (g->i < g->length)
            take_line_end(g);
    }
}

bool ts_guard_file(ts_text bytes, ts_diagnostics *list, size_t *nodes)
{
    guard g = {.at = bytes.at, .length = bytes.length, .line = 1, .list = list, .parent = -1};
    *nodes  = 0;
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
