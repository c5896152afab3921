/* base/diagnostic_print.c: how is a person shown what is wrong in a file, and where? */
#include "base/diagnostic_list.h"
#include "base/text_wrap.h"

#define LINE_MOST  ((size_t)160) /* columns of the file's line that are shown at once */
#define LINE_LEAST ((size_t)40)
#define MARGIN     4 /* blanks before it; a sentence goes on after fewer */
#define CUT_MARK   "..."

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

/* Where the printing has got to in the file.  Diagnostics come in the order of lines and columns,
 * so one walk over the bytes serves them all, be the file a single line of megabytes. */
typedef struct cursor {
    ts_text  bytes;
    size_t   start; /* of the line `number`, which ends before `end` */
    size_t   end;
    uint32_t number;
    size_t   at; /* the byte in the line at which `column` begins */
    uint32_t column;
} cursor;

static cursor cursor_at_first_line(ts_text bytes)
{
    return (cursor){.bytes = bytes, .end = line_end(bytes, 0), .number = 1, .column = 1};
}

/* False when the file has no such line; a column past the end of its line ends up at that end. */
static bool seek(cursor *c, uint32_t number, uint32_t column)
{
    while (c->number < number) {
        if (c->end >= c->bytes.length)
            return false;
        c->start  = past_break(c->bytes, c->end);
        c->end    = line_end(c->bytes, c->start);
        c->at     = 0;
        c->column = 1;
        c->number++;
    }
    const ts_text line = {c->bytes.at + c->start, c->end - c->start};
    for (; c->column < column && c->at < line.length; c->column++) {
        uint32_t     code;
        const size_t taken = ts_text_code_point(line, c->at, &code);
        c->at += taken > 0 ? taken : 1;
    }
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

static size_t glyph_before(ts_text line, size_t at)
{
    for (size_t back = 2; back <= 4 && back <= at; back++) {
        uint32_t code;
        if (ts_text_code_point(line, at - back, &code) == back)
            return at - back;
    }
    return at - 1;
}

/* As many glyphs as take `columns` at most; marks without a column are limited by their bytes. */
static size_t window_end(ts_text line, size_t from, size_t columns)
{
    size_t at = from, taken = 0;
    while (at < line.length) {
        const glyph g = glyph_at(line, at);
        if (taken + g.columns > columns || at + g.bytes - from > 4 * columns)
            break;
        taken += g.columns;
        at += g.bytes;
    }
    return at;
}

static size_t window_start(ts_text line, size_t to, size_t columns)
{
    size_t at = to, taken = 0;
    while (at > 0) {
        const size_t before = glyph_before(line, at);
        taken += glyph_at(line, before).columns;
        if (taken > columns || to - before > 4 * columns)
            break;
        at = before;
    }
    return at;
}

/* How much of a line fits on the terminal with the marks of its cuts; else it would be broken
 * there, and the carets stand under nothing. */
static size_t window_columns(size_t columns)
{
    const size_t beside = MARGIN + 2 * (sizeof CUT_MARK - 1);
    if (columns == 0 || columns > LINE_MOST + beside)
        return LINE_MOST;
    return columns > LINE_LEAST + beside ? columns - beside : LINE_LEAST;
}

/* The line, cut round the byte `at` when it is longer than `most` columns, and the carets under
 * `count` code points. */
static void show_line(ts_buffer *out, ts_text line, size_t at, uint32_t count, size_t most)
{
    const bool   whole = window_end(line, 0, most) == line.length;
    const size_t last  = window_start(line, line.length, most); /* nothing is cut at the end */
    const size_t near  = window_start(line, at, most / 2);
    const size_t from  = whole ? 0 : (near < last ? near : last);
    const size_t to    = window_end(line, from, most);
    size_t       blank = 0, marks = 0, marked = 0;
    ts_buffer_add(out, from > 0 ? "    " CUT_MARK : "    ");
    for (size_t here = from; here < to;) {
        const glyph g = glyph_at(line, here);
        show_glyph(out, g, line.at + here);
        if (here < at)
            blank += g.columns;
        else if (marked++ < count)
            marks += g.columns;
        here += g.bytes;
    }
    ts_buffer_add(out, to < line.length ? CUT_MARK "\n    " : "\n    ");
    ts_buffer_fill(out, ' ', blank + (from > 0 ? sizeof CUT_MARK - 1 : 0));
    ts_buffer_fill(out, '^', marks > 0 ? marks : 1);
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

static void show_sentence(ts_buffer *out, const ts_diagnostic *d)
{
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
}

static void show_head(ts_buffer *out, const char *name, const ts_diagnostic *d, size_t columns)
{
    const size_t start = out->length;
    show_text(out, name);
    if (d->line > 0)
        ts_buffer_print(out, ":%u:%u", d->line, d->column);
    ts_buffer_add(out, ": ");
    ts_buffer sentence;
    ts_buffer_open(&sentence, out->allocator);
    show_sentence(&sentence, d);
    out->failed = out->failed || sentence.failed;
    if (!out->failed) {
        const ts_text place = {out->bytes + start, out->length - start};
        (void)ts_wrap_text(out, (ts_text){sentence.bytes, sentence.length},
                     (ts_wrap){columns, MARGIN / 2, ts_text_columns(place)});
    }
    ts_buffer_close(&sentence);
    ts_buffer_add(out, "\n");
}

void ts_diagnostics_print(const ts_diagnostics *list, size_t columns, ts_buffer *out)
{
    cursor c = cursor_at_first_line(list->bytes);
    for (size_t i = 0; i < list->kept; i++) {
        const ts_diagnostic *d = &list->items[i];
        show_head(out, list->name, d, columns);
        if (d->line == 0 || !seek(&c, d->line, d->column))
            continue;
        const ts_text line = {c.bytes.at + c.start, c.end - c.start};
        show_line(out, line, c.at, d->columns, window_columns(columns));
    }
    if (list->count > list->kept)
        ts_buffer_print(out, "%s: and %zu more\n", list->name, list->count - list->kept);
}
