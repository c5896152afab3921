/* base/diagnostic_print.c: how is a person shown what is wrong in a file, and where? */
#include "base/diagnostic_list.h"

#define LINE_MOST ((size_t)160) /* columns of the file's line that are shown at once */
#define CUT_MARK  "..."

/* Where the printing has got to in the file; diagnostics come in the order of lines, so that one
 * walk over the bytes serves them all. */
typedef struct cursor {
    ts_text  bytes;
    size_t   at;
    uint32_t line;
} cursor;

/* A line ends at "\n", "\r" or both together, as in YAML 1.2.2, production 28. */
static size_t line_end(ts_text bytes, size_t at)
{
    while (at < bytes.length && bytes.at[at] != '\n' && bytes.at[at] != '\r')
        at++;
    return at;
}

static size_t past_break(ts_text bytes, size_t at)
{
    if (at + 1 < bytes.length && bytes.at[at] == '\r' && bytes.at[at + 1] == '\n')
        return at + 2;
    return at + 1;
}

static bool find_line(cursor *c, uint32_t line, ts_text *found)
{
    while (c->line < line) {
        const size_t end = line_end(c->bytes, c->at);
        if (end >= c->bytes.length)
            return false;
        c->at = past_break(c->bytes, end);
        c->line++;
    }
    *found = (ts_text){c->bytes.at + c->at, line_end(c->bytes, c->at) - c->at};
    return true;
}

/* One code point, or one byte that belongs to none, as it is shown. */
typedef struct glyph {
    size_t bytes;   /* how many of the line it stands for  */
    size_t columns; /* how many it takes on the terminal   */
    bool   escaped; /* shown byte by byte as \xNN          */
    bool   tab;     /* shown as one blank                  */
} glyph;

static bool is_control(uint32_t code)
{
    const bool reorders = (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    return code < 0x20 || (code >= 0x7F && code < 0xA0) || reorders;
}

static glyph glyph_at(ts_text line, size_t at)
{
    uint32_t     code  = 0;
    const size_t taken = ts_text_code_point(line, at, &code);
    if (taken == 0)
        return (glyph){.bytes = 1, .columns = 4, .escaped = true};
    if (code == '\t')
        return (glyph){.bytes = 1, .columns = 1, .tab = true};
    if (is_control(code))
        return (glyph){.bytes = taken, .columns = 4 * taken, .escaped = true};
    return (glyph){taken, ts_text_columns((ts_text){line.at + at, taken}), false, false};
}

static void show_glyph(ts_buffer *out, glyph g, const char *bytes)
{
    static const char hex[] = "0123456789abcdef";
    if (g.tab) {
        ts_buffer_fill(out, ' ', 1);
        return;
    }
    if (!g.escaped) {
        ts_buffer_bytes(out, bytes, g.bytes);
        return;
    }
    for (size_t i = 0; i < g.bytes; i++) {
        const unsigned char byte = (unsigned char)bytes[i];
        ts_buffer_print(out, "\\x%c%c", hex[byte >> 4], hex[byte & 15]);
    }
}

/* The caret run in columns as shown, [from, to), and the columns of the whole line.  Past the end
 * of the line every code point counts as one column, for what is missing there. */
typedef struct run {
    size_t from;
    size_t to;
    size_t whole;
} run;

static run measure(ts_text line, uint32_t column, uint32_t columns)
{
    run            r      = {0, 0, 0};
    const uint64_t first  = column > 0 ? column - 1 : 0;
    uint64_t       number = 0;
    for (size_t at = 0; at < line.length; number++) {
        const glyph g = glyph_at(line, at);
        if (number < first)
            r.from += g.columns;
        if (number < first + columns)
            r.to += g.columns;
        r.whole += g.columns;
        at += g.bytes;
    }
    if (number < first)
        r.from = r.whole; /* a column past the end points just behind it */
    if (r.to <= r.from)
        r.to = r.from + 1;
    return r;
}

/* Shows columns [first, first + LINE_MOST) of the line and returns how many it showed. */
static size_t show_window(ts_buffer *out, ts_text line, size_t first)
{
    size_t passed = 0, shown = 0;
    for (size_t at = 0; at < line.length;) {
        const glyph g = glyph_at(line, at);
        if (passed >= first && shown + g.columns <= LINE_MOST) {
            show_glyph(out, g, line.at + at);
            shown += g.columns;
        } else if (passed >= first) {
            break;
        }
        passed += g.columns;
        at += g.bytes;
    }
    return shown;
}

/* The first column at or after `wanted` at which a glyph begins. */
static size_t glyph_start(ts_text line, size_t wanted)
{
    size_t passed = 0;
    for (size_t at = 0; at < line.length && passed < wanted;) {
        const glyph g = glyph_at(line, at);
        passed += g.columns;
        at += g.bytes;
    }
    return passed;
}

static void show_line(ts_buffer *out, ts_text line, const ts_diagnostic *d)
{
    const run r     = measure(line, d->column, d->columns);
    size_t    first = 0;
    if (r.whole > LINE_MOST && r.from > LINE_MOST / 2)
        first = glyph_start(line, r.from - LINE_MOST / 2);
    ts_buffer_add(out, "    ");
    if (first > 0)
        ts_buffer_add(out, CUT_MARK);
    const size_t shown = show_window(out, line, first);
    if (first + shown < r.whole)
        ts_buffer_add(out, CUT_MARK);
    ts_buffer_add(out, "\n    ");
    ts_buffer_fill(out, ' ', r.from - first + (first > 0 ? sizeof CUT_MARK - 1 : 0));
    const size_t end   = r.to - first < shown ? r.to - first : shown;
    const size_t marks = end > r.from - first ? end - (r.from - first) : 1;
    ts_buffer_fill(out, '^', marks);
    ts_buffer_add(out, "\n");
}

/* Sentences may repeat words of the file, so they are shown as carefully as its lines. */
static void show_text(ts_buffer *out, const char *zero_terminated)
{
    const ts_text text = ts_text_of(zero_terminated);
    for (size_t at = 0; at < text.length;) {
        const glyph g = glyph_at(text, at);
        show_glyph(out, g, text.at + at);
        at += g.bytes;
    }
}

static void show_head(ts_buffer *out, const char *name, const ts_diagnostic *d)
{
    show_text(out, name);
    if (d->line > 0)
        ts_buffer_print(out, ":%u:%u", d->line, d->column);
    ts_buffer_add(out, ": ");
    show_text(out, d->says);
    if (d->expected != NULL) {
        ts_buffer_add(out, "; expected ");
        show_text(out, d->expected);
    }
    if (d->nearest != NULL) {
        ts_buffer_add(out, "; did you mean ");
        show_text(out, d->nearest);
        ts_buffer_add(out, "?");
    }
    ts_buffer_add(out, "\n");
}

void ts_diagnostics_print(const ts_diagnostics *list, ts_buffer *out)
{
    cursor c = {list->bytes, 0, 1};
    for (size_t i = 0; i < list->kept; i++) {
        const ts_diagnostic *d = &list->items[i];
        ts_text              line;
        show_head(out, list->name, d);
        if (d->line > 0 && find_line(&c, d->line, &line))
            show_line(out, line, d);
    }
    if (list->count > list->kept)
        ts_buffer_print(out, "%s: and %zu more\n", list->name, list->count - list->kept);
}
