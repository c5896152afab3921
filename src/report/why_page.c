/* How does the working of a number stand on a terminal? */
#include "report/why_page.h"

#include "base/formula_typeset.h"
#include "base/symbol_typeset.h"

#include <math.h>
#include <string.h>

#define DIGITS    6
#define ANY_WIDTH (SIZE_MAX / 2)

#define BRANCH      "\u251C\u2500 "
#define BRANCH_LAST "\u2514\u2500 "
#define TRUNK       "\u2502  "
#define NO_TRUNK    "   "
#define STEM        "\u2502"
#define ELLIPSIS    "\u2026"
#define UNKNOWN     "\uFFFD"

/* What is known of a note while the tree is drawn. */
typedef struct mark {
    uint32_t uses;
    uint32_t label; /* the number by which it is referred to; 0: none */
    bool     counted;
    bool     opened;
} mark;

typedef struct sheet {
    const ts_why *why;
    ts_page      *page;
    ts_buffer    *out;
    mark         *marks;
    uint32_t      labels;
    int           levels;
    size_t        column;
    bool          last[TS_WHY_LEVELS_MOST + 1]; /* is the entry at that level its parent's last? */
} sheet;

/* One number on the page. */
typedef struct entry {
    const char *name;
    double      value;
    size_t      index; /* of the note that gives it, or SIZE_MAX */
    ts_subject  used_by;
    int         level;
    bool        opens;  /* are its inputs listed under it?                      */
    size_t      indent; /* columns from the entry's beginning to its equal sign */
} entry;

static void put_entry(sheet *s, entry *e);

static void say(sheet *s, const char *text)
{
    ts_buffer_add(s->out, text);
    s->column += ts_text_columns(ts_text_of(text));
}

static void fill(sheet *s, size_t count)
{
    ts_buffer_fill(s->out, ' ', count);
    s->column += count;
}

/* Something else wrote to the buffer from `begin` on. */
static void count_columns(sheet *s, size_t begin)
{
    if (!s->out->failed)
        s->column += ts_text_columns((ts_text){s->out->bytes + begin, s->out->length - begin});
}

static bool is_harmless(uint32_t code)
{
    const bool reorders = (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    return code >= 0x20 && !(code >= 0x7F && code < 0xA0) && !reorders;
}

/* A stranger's text, without what a terminal would obey, cut after `most` columns. */
static void say_strange(sheet *s, ts_text text, size_t most)
{
    const bool   cut  = ts_text_columns(text) > most;
    const size_t end  = s->column + (cut && most > 0 ? most - 1 : most);
    size_t       next = 0;
    for (size_t at = 0; at < text.length && s->column < end; at = next) {
        uint32_t     code  = 0;
        const size_t taken = ts_text_code_point(text, at, &code);
        const size_t begin = s->out->length;
        next               = at + (taken > 0 ? taken : 1);
        if (taken > 0 && is_harmless(code))
            ts_buffer_bytes(s->out, text.at + at, taken);
        else
            ts_buffer_add(s->out, code == '\t' ? " " : UNKNOWN);
        count_columns(s, begin);
    }
    if (cut)
        say(s, ELLIPSIS);
}

static void end_line(sheet *s)
{
    ts_page_line_end(s->page);
    s->column = 0;
}

static void say_trunks(sheet *s, int level)
{
    for (int i = 1; i < level; i++)
        say(s, s->last[i] ? NO_TRUNK : TRUNK);
}

static void begin_entry(sheet *s, const entry *e)
{
    ts_page_tone(s->page, TS_TONE_FAINT);
    say_trunks(s, e->level);
    if (e->level > 0)
        say(s, s->last[e->level] ? BRANCH_LAST : BRANCH);
    ts_page_tone(s->page, TS_TONE_PLAIN);
}

/* A further line of the entry, up to where its equal sign stands. */
static void begin_detail(sheet *s, const entry *e)
{
    ts_page_tone(s->page, TS_TONE_FAINT);
    say_trunks(s, e->level);
    if (e->level > 0)
        say(s, s->last[e->level] ? NO_TRUNK : TRUNK);
    const size_t begun = s->column;
    if (e->opens)
        say(s, STEM);
    ts_page_tone(s->page, TS_TONE_PLAIN);
    fill(s, begun + e->indent - s->column);
}

/* Words from here on, and where they do not fit on further lines of the entry. */
static void say_words(sheet *s, const entry *e, ts_text text)
{
    const size_t edge  = (size_t)s->page->columns;
    bool         first = true;
    for (size_t at = 0; at < text.length;) {
        size_t end = at;
        while (end < text.length && text.at[end] != ' ')
            end++;
        const ts_text word = {text.at + at, end - at};
        if (!first && s->column + 1 + ts_text_columns(word) > edge) {
            end_line(s);
            begin_detail(s, e);
            fill(s, 2);
        } else if (!first) {
            fill(s, 1);
        }
        say_strange(s, word, ANY_WIDTH);
        first = false;
        at    = end < text.length ? end + 1 : end;
    }
}

/* The same for text that is put together first. */
static void say_made(sheet *s, const entry *e, ts_buffer *text)
{
    s->out->failed = s->out->failed || text->failed;
    if (!text->failed)
        say_words(s, e, (ts_text){text->bytes, text->length});
    ts_buffer_close(text);
}

/* At the right edge of this line, or of the next one, or where that is too narrow at its left. */
static void say_right(sheet *s, const entry *e, ts_text text)
{
    const size_t edge = (size_t)s->page->columns, width = ts_text_columns(text);
    if (width == 0) {
        end_line(s);
        return;
    }
    if (s->column + 2 + width > edge) {
        end_line(s);
        begin_detail(s, e);
    }
    if (s->column + width < edge)
        fill(s, edge - width - s->column);
    ts_page_tone(s->page, TS_TONE_FAINT);
    if (s->column + width > edge)
        say_words(s, e, text);
    else
        say_strange(s, text, ANY_WIDTH);
    ts_page_tone(s->page, TS_TONE_PLAIN);
    end_line(s);
}

/* The same for text that is put together first. */
static void say_buffer_right(sheet *s, const entry *e, ts_buffer *text)
{
    s->out->failed = s->out->failed || text->failed;
    say_right(s, e, (ts_text){text->bytes, text->failed ? 0 : text->length});
    ts_buffer_close(text);
}

static const ts_note *note_of(const sheet *s, const entry *e)
{
    return ts_workings_at(s->why->workings, e->index);
}

static void say_value(sheet *s, const entry *e)
{
    const size_t begin = s->out->length;
    ts_value_typeset(s->out, e->value, DIGITS);
    const ts_note *note = e->index == SIZE_MAX ? NULL : note_of(s, e);
    if (note != NULL && strcmp(ts_why_unit(note), "1") != 0)
        ts_buffer_print(s->out, " %s", ts_why_unit(note));
    const ts_unit *shown = note == NULL ? NULL : ts_why_shown_unit(note, s->page->units);
    if (shown != NULL && isfinite(e->value)) {
        ts_buffer_add(s->out, "  (");
        ts_value_typeset(s->out, ts_from_si(e->value, shown), DIGITS);
        ts_buffer_print(s->out, " %s)", shown->name);
    }
    count_columns(s, begin);
}

/* "drive.yaml:42", or the empty text. */
static void file_and_line(const sheet *s, const ts_note *note, ts_buffer *out)
{
    const ts_why_places *places = s->why->places;
    const uint32_t       line   = places->line(places->context, note->node);
    ts_buffer_add(out, places->file);
    if (line > 0)
        ts_buffer_print(out, ":%u", line);
}

/* What stands at the right of the number itself. */
static void say_meaning(sheet *s, const entry *e, const mark *m)
{
    const ts_note *note = note_of(s, e);
    ts_buffer      text;
    ts_buffer_open(&text, s->out->allocator);
    if (note->formula != NULL && m->opened && m->label > 0)
        ts_buffer_print(&text, "see [%u] above", m->label);
    else if (note->formula != NULL)
        ts_buffer_add(&text, note->formula->meaning);
    else if (note->kind == TS_NOTE_GIVEN)
        file_and_line(s, note, &text);
    else
        ts_buffer_print(&text, "%s: %s", ts_why_stands(note),
                        note->source + (strncmp(note->source, "derived: ", 9) == 0 ? 9 : 0));
    say_buffer_right(s, e, &text);
}

/* Says whose number it is where it is not the reader's own, or is called otherwise there. */
static void say_subject(sheet *s, const entry *e)
{
    const ts_note *note = note_of(s, e);
    const bool     own  = note->subject.object == e->used_by.object &&
                     note->subject.condition == e->used_by.condition &&
                     strcmp(note->symbol, e->name) == 0;
    if (own || note->kind == TS_NOTE_GIVEN)
        return;
    ts_buffer address;
    ts_buffer_open(&address, s->out->allocator);
    ts_why_address(s->why, note, &address);
    s->out->failed = s->out->failed || address.failed;
    begin_detail(s, e);
    say(s, "of ");
    say_made(s, e, &address);
    end_line(s);
}

static void say_quotation(sheet *s, const entry *e)
{
    const ts_why_places *places  = s->why->places;
    const ts_note       *note    = note_of(s, e);
    const uint32_t       line    = places->line(places->context, note->node);
    const char          *address = places->address(places->context, note->node);
    if (line == 0)
        return;
    begin_detail(s, e);
    const size_t begin = s->out->length;
    ts_buffer_print(s->out, "%u | ", line);
    count_columns(s, begin);
    const size_t edge = (size_t)s->page->columns;
    say_strange(s, ts_text_trim(places->text(places->context, note->node)),
                s->column + 20 < edge ? edge - s->column : 20);
    say_right(s, e, ts_text_of(address));
}

/* The formula and its source, the same with numbers, and for a search what is left of it. */
static void say_formula(sheet *s, const entry *e)
{
    const ts_note *note     = note_of(s, e);
    const bool     searched = note->kind == TS_NOTE_SEARCHED;
    ts_buffer      text;

    begin_detail(s, e);
    ts_buffer_open(&text, s->out->allocator);
    ts_buffer_add(&text, searched ? "found so that " : "= ");
    ts_formula_typeset(&text, note->formula->text);
    ts_buffer_add(&text, searched ? " = 0" : "");
    say_made(s, e, &text);
    say_right(s, e, ts_text_of(note->formula->source));

    begin_detail(s, e);
    ts_buffer_open(&text, s->out->allocator);
    ts_buffer_add(&text, searched ? "there " : "= ");
    ts_formula_typeset_numbers(&text, note->formula->text, note->inputs, note->input_count, DIGITS);
    if (searched) {
        ts_buffer_add(&text, " = ");
        ts_value_typeset(&text, note->residual, DIGITS);
    }
    say_made(s, e, &text);
    end_line(s);
}

static uint32_t inputs_below(const ts_note *note)
{
    uint32_t count = 0;
    for (uint32_t i = 0; i < note->input_count; i++)
        count += ts_why_is_unknown(note, &note->inputs[i]) ? 0 : 1;
    return count;
}

static void put_inputs(sheet *s, const entry *e)
{
    const ts_note *note = note_of(s, e);
    uint32_t       left = inputs_below(note);
    for (uint32_t i = 0; i < note->input_count; i++) {
        const ts_input *input = &note->inputs[i];
        if (ts_why_is_unknown(note, input))
            continue;
        left--;
        s->last[e->level + 1] = left == 0;
        put_entry(s, &(entry){.name    = input->name,
                              .value   = input->value,
                              .index   = ts_why_origin(s->why, e->index, i),
                              .used_by = note->subject,
                              .level   = e->level + 1});
    }
}

static void say_closed(sheet *s, const entry *e)
{
    ts_buffer address;
    ts_buffer_open(&address, s->out->allocator);
    ts_why_address(s->why, note_of(s, e), &address);
    begin_detail(s, e);
    say(s, "closed here; ask why ");
    say_made(s, e, &address);
    end_line(s);
}

/* A number that was not computed: from the file, from a table, assumed. */
static void put_end(sheet *s, const entry *e, bool again)
{
    say_subject(s, e);
    if (note_of(s, e)->kind == TS_NOTE_GIVEN && !again)
        say_quotation(s, e);
}

static void put_computed(sheet *s, const entry *e)
{
    say_subject(s, e);
    say_formula(s, e);
    if (e->opens)
        put_inputs(s, e);
    else if (inputs_below(note_of(s, e)) > 0)
        say_closed(s, e);
}

/* The first line up to its value. */
static void say_number(sheet *s, entry *e)
{
    begin_entry(s, e);
    ts_page_tone(s->page, e->level == 0 ? TS_TONE_STRONG : TS_TONE_PLAIN);
    const size_t begin = s->out->length, column = s->column;
    ts_symbol_typeset(s->out, ts_text_of(e->name));
    count_columns(s, begin);
    e->indent = s->column - column + 1;
    say(s, " = ");
    say_value(s, e);
    ts_page_tone(s->page, TS_TONE_PLAIN);
}

static void put_entry(sheet *s, entry *e)
{
    say_number(s, e);
    if (e->index == SIZE_MAX) {
        say_right(s, e, TS_TEXT("no note says where this comes from"));
        return;
    }
    const ts_note *note     = note_of(s, e);
    mark          *m        = &s->marks[e->index];
    const bool     again    = m->opened;
    const bool     computed = note->formula != NULL;
    e->opens = computed && !again && e->level + 1 < s->levels && inputs_below(note) > 0;
    if (e->opens && m->uses > 1) {
        m->label           = ++s->labels;
        const size_t begin = s->out->length;
        ts_buffer_print(s->out, "  [%u]", m->label);
        count_columns(s, begin);
    }
    say_meaning(s, e, m);
    m->opened = again || e->opens || !computed;
    if (computed && !again)
        put_computed(s, e);
    else if (!computed)
        put_end(s, e, again);
}

/* In the order in which the entries are put, so that both passes open the same notes. */
static void count_uses(sheet *s, size_t index, int level)
{
    mark *m = &s->marks[index];
    m->uses++;
    if (m->counted || level + 1 >= s->levels)
        return;
    m->counted          = true;
    const ts_note *note = ts_workings_at(s->why->workings, index);
    for (uint32_t i = 0; i < note->input_count; i++) {
        if (ts_why_is_unknown(note, &note->inputs[i]))
            continue;
        const size_t origin = ts_why_origin(s->why, index, i);
        if (origin != SIZE_MAX)
            count_uses(s, origin, level + 1);
    }
}

static void say_title(sheet *s, const ts_note *note)
{
    ts_buffer address;
    ts_buffer_open(&address, s->out->allocator);
    ts_why_address(s->why, note, &address);
    s->out->failed = s->out->failed || address.failed;
    say_strange(s, ts_text_of(address.bytes), ANY_WIDTH);
    end_line(s);
    end_line(s);
    ts_buffer_close(&address);
}

ts_status ts_why_page(const ts_why *why, ts_page *page)
{
    const size_t        notes = ts_workings_count(why->workings);
    const ts_allocator *from  = page->out->allocator;
    const size_t        root  = ts_why_root(why);
    sheet s = {.why = why, .page = page, .out = page->out, .levels = ts_why_levels(why)};

    s.marks = from->resize(from->context, NULL, notes * sizeof *s.marks);
    if (s.marks == NULL)
        return TS_NO_MEMORY;
    memset(s.marks, 0, notes * sizeof *s.marks);
    const ts_note *asked = ts_workings_at(why->workings, why->index);
    say_title(&s, asked);
    if (root != SIZE_MAX)
        count_uses(&s, root, 0);
    put_entry(&s, &(entry){.name    = asked->symbol,
                           .value   = asked->value,
                           .index   = root,
                           .used_by = asked->subject});
    from->resize(from->context, s.marks, 0);
    return page->out->failed ? TS_NO_MEMORY : TS_OK;
}
