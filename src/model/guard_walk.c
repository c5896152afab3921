/* model/guard_walk.c: how does the guard of a file get on, and what does it say on the way? */
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

void ts_guard_complain_at(ts_guard_walk *g, size_t at, const char *code, const char *says,
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

void ts_guard_line_start(ts_guard_walk *g)
{
    if (g->i >= g->length)
        return;
    const char first = g->at[g->i];
    if (is_conflict_marker(g)) {
        ts_guard_complain_at(g, g->i, "conflict-marker",
                             "this line is a conflict marker of version control",
                             "a file whose conflicts are resolved");
        ts_guard_skip_line(g);
    } else if (first == '%') {
        ts_guard_complain_at(g, g->i, "directive", "a YAML directive stands here",
                             "no directives in a drive file");
        ts_guard_skip_line(g);
    } else if (is_document_marker(g, "---") || is_document_marker(g, "...")) {
        if (first == '-' && g->content) {
            ts_guard_complain_at(g, g->i, "second-document", "a second document begins here",
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
    ts_guard_line_start(g);
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
    ts_guard_complain_at(g, g->i, "yaml-mark", says, "every value written out where it stands");
    while (!ts_guard_is_gap(g, g->i) && (g->depth == 0 || !ts_guard_is_sign(g->at[g->i])))
        g->i++;
    return true;
}

static bool take_complex_key(ts_guard_walk *g)
{
    if (g->at[g->i] != '?' || !ts_guard_is_gap(g, g->i + 1))
        return false;
    ts_guard_complain_at(g, g->i, "complex-key", "a key is written with a question mark here",
                         "a key and a colon, such as teeth: 61");
    g->i++;
    return true;
}

bool ts_guard_take_mark(ts_guard_walk *g)
{
    return take_mark(g) || take_complex_key(g);
}
