/* model/guard_walk.h: where the guard of a file stands on its way through the bytes. */
#ifndef TS_MODEL_GUARD_WALK_H
#define TS_MODEL_GUARD_WALK_H

#include "base/diagnostic.h"
#include "model/file_guard.h"

#include <string.h>

/* A byte, and the line in which it stands. */
typedef struct ts_guard_place {
    size_t   at;
    size_t   line_start;
    uint32_t line; /* from 1; 0: no place */
} ts_guard_place;

/* Columns count bytes from 0 here. */
typedef struct ts_guard_walk {
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
    ts_guard_place  opened[TS_FILE_DEPTH_MOST + 1]; /* by depth: the bracket */
    uint32_t        fallen; /* the first line inside of brackets that begins no further in than
                               their key, which no sound file has; 0: none                     */
    int  fallen_depth;      /* of brackets, when it was met */
    bool fatal;             /* no sense in going on                    */
    bool content;           /* anything but comments met               */
    bool ended;             /* the document was closed with three dots */
    bool plain;             /* a plain scalar may go on below          */
    long parent;            /* column of the latest key or dash, or -1 */
} ts_guard_walk;

static inline bool ts_guard_is_end(const ts_guard_walk *g, size_t i)
{
    return i >= g->length || g->at[i] == '\n' || g->at[i] == '\r';
}

static inline bool ts_guard_is_blank(const ts_guard_walk *g, size_t i)
{
    return i < g->length && (g->at[i] == ' ' || g->at[i] == '\t');
}

static inline bool ts_guard_is_gap(const ts_guard_walk *g, size_t i)
{
    return ts_guard_is_end(g, i) || ts_guard_is_blank(g, i);
}

static inline bool ts_guard_is_sign(char byte)
{
    return byte == '[' || byte == ']' || byte == '{' || byte == '}' || byte == ',';
}

static inline ts_guard_place ts_guard_here(const ts_guard_walk *g)
{
    return (ts_guard_place){g->i, g->line_start, g->line};
}

/* Does the line that begins here hold text that is indented no further than the latest key? */
static inline bool ts_guard_has_fallen(const ts_guard_walk *g)
{
    size_t i = g->line_start;
    while (ts_guard_is_blank(g, i))
        i++;
    return !ts_guard_is_end(g, i) && g->at[i] != '#' && (long)(i - g->line_start) <= g->parent;
}

/* guard_walk.c */

void ts_guard_complain(ts_guard_walk *g, ts_guard_place place, const ts_diagnostic *what);
/* The same at a byte of the line in which the walk stands. */
void ts_guard_complain_at(ts_guard_walk *g, size_t at, const char *code, const char *says,
                          const char *expected);
/* At the first byte of a line: over what only a line may begin with. */
void ts_guard_line_start(ts_guard_walk *g);
void ts_guard_skip_line(ts_guard_walk *g);
/* Over one end of line. */
void ts_guard_line_end(ts_guard_walk *g);
/* Over an anchor, alias or tag, or a question mark of a key, with a message. */
bool ts_guard_take_mark(ts_guard_walk *g);

/* bracket_guard.c */

/* At an opening quote, to the byte after the closing one. */
void ts_guard_take_quoted(ts_guard_walk *g);
/* At the outermost opening bracket, to the byte after its closing one. */
void ts_guard_take_brackets(ts_guard_walk *g);

#endif
