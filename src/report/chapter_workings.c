/* Report: how did every number come about?  Each formula of a part once, with all conditions. */
#include "report/report_chapter.h"

#include "base/formula_typeset.h"
#include "base/symbol_typeset.h"
#include "report/why_page.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

#define DIGITS    6
#define NAME_ROOM 18 /* columns for the name of a condition */

#define LABEL_ROOM   14
#define PAGE_COLUMNS 112 /* that letters of one width find on A4 */

enum { GROUP_MOST = 256, ROWS_MOST = 64 };

/* What one formula computes of one part. */
typedef struct group {
    const ts_note *notes[GROUP_MOST];
    size_t         count;
    bool           shared; /* inputs that do not vary stand above */
} group;

/* The notes of one part after the other, parts in the order in which they were first computed. */
typedef struct shelf {
    const ts_workings *workings;
    size_t            *note; /* indices, sorted */
    bool              *done;
    size_t             count;
} shelf;

static bool is_computed(const ts_note *note)
{
    return note->kind == TS_NOTE_STEP || note->kind == TS_NOTE_SEARCHED;
}

/* One more than the greatest; parts that do not stand in the file have numbers beyond its nodes. */
static size_t objects_of(const ts_workings *all)
{
    size_t objects = 0;
    for (size_t i = 0; i < ts_workings_count(all); i++) {
        const size_t object = ts_workings_at(all, i)->subject.object;
        objects             = object >= objects ? object + 1 : objects;
    }
    return objects;
}

/* Sorts by counting: `first` says for each object where its notes begin. */
static bool sort(const ts_answer *answer, ts_arena *arena, shelf *out)
{
    const ts_workings *all     = answer->workings;
    const size_t       notes   = ts_workings_count(all);
    const size_t       objects = objects_of(all);
    size_t            *first   = TS_TAKE(arena, size_t, objects);
    size_t            *order   = TS_TAKE(arena, size_t, objects);
    *out                       = (shelf){.workings = all,
                                         .note     = TS_TAKE(arena, size_t, notes),
                                         .done     = TS_TAKE(arena, bool, notes)};
    if (first == NULL || order == NULL || out->note == NULL || out->done == NULL)
        return false;
    size_t seen = 0;
    for (size_t i = 0; i < notes; i++) {
        const ts_note *note = ts_workings_at(all, i);
        if (is_computed(note) && first[note->subject.object]++ == 0)
            order[seen++] = note->subject.object;
    }
    for (size_t o = 0; o < seen; o++) {
        const size_t begins = out->count;
        out->count += first[order[o]];
        first[order[o]] = begins;
    }
    for (size_t i = 0; i < notes; i++) {
        const ts_note *note = ts_workings_at(all, i);
        if (is_computed(note))
            out->note[first[note->subject.object]++] = i;
    }
    return true;
}

/* "F_t = 2*T/d   tangential force ..., N; ISO 6336-1:2019, clause 5" */
static void formula_line(const ts_note *note, ts_buffer *out)
{
    const ts_formula *formula  = note->formula;
    const bool        searched = note->kind == TS_NOTE_SEARCHED;
    ts_symbol_typeset(out, ts_text_of(formula->symbol));
    ts_buffer_add(out, searched ? " found so that " : " = ");
    (void)ts_formula_typeset(out, formula->text);
    ts_buffer_print(out, "%s\n    %s, %s; %s\n", searched ? " = 0" : "", formula->meaning,
                    ts_why_unit(note), formula->source);
}

/* ---- the notes of one formula ------------------------------------------------------------------
 */

/* Equal to the last bit; two that are no numbers are alike. */
static bool same(double a, double b)
{
    uint64_t bits[2];
    memcpy(&bits[0], &a, sizeof a);
    memcpy(&bits[1], &b, sizeof b);
    return bits[0] == bits[1];
}

/* Have all notes of the group the same inputs by name, in the same order? */
static bool are_alike(const group *g)
{
    for (size_t i = 1; i < g->count; i++) {
        if (g->notes[i]->input_count != g->notes[0]->input_count)
            return false;
        for (uint32_t k = 0; k < g->notes[0]->input_count; k++)
            if (strcmp(g->notes[i]->inputs[k].name, g->notes[0]->inputs[k].name) != 0)
                return false;
    }
    return true;
}

/* Has input `k` one value in all notes of a group that are alike? */
static bool is_constant(const group *g, uint32_t k)
{
    for (size_t i = 1; i < g->count; i++)
        if (!same(g->notes[i]->inputs[k].value, g->notes[0]->inputs[k].value))
            return false;
    return true;
}

static bool tells_the_same(const ts_note *a, const ts_note *b)
{
    if (!same(a->value, b->value) || !same(a->residual, b->residual) ||
        a->input_count != b->input_count)
        return false;
    for (uint32_t k = 0; k < a->input_count; k++)
        if (strcmp(a->inputs[k].name, b->inputs[k].name) != 0 ||
            !same(a->inputs[k].value, b->inputs[k].value))
            return false;
    return true;
}

static void put_input(const ts_input *input, bool first, ts_buffer *out)
{
    ts_buffer_add(out, first ? "    " : ", ");
    ts_symbol_typeset(out, ts_text_of(input->name));
    ts_buffer_add(out, " = ");
    ts_value_typeset(out, input->value, DIGITS);
}

static const char *condition_of(const ts_chapter *chapter, const ts_note *note)
{
    return note->subject.condition >= 0
               ? ts_answer_condition(chapter->answer, note->subject.condition)
               : "always";
}

/* "    take-off, climb   1234.5    T = 12.3": what notes `from` up to `end` tell alike, without the
 * inputs that are the same everywhere. */
static void value_line(ts_chapter *chapter, const group *g, size_t from, size_t end, ts_buffer *out)
{
    const ts_note *note  = g->notes[from];
    size_t         taken = 0;
    bool           first = true;
    ts_buffer_add(out, "    ");
    if (g->count > 1 && end - from == g->count) {
        ts_buffer_print(out, "all %zu conditions", g->count);
        taken = NAME_ROOM;
    }
    for (size_t i = from; i < end && taken < NAME_ROOM; i++) {
        const char *name = condition_of(chapter, g->notes[i]);
        ts_buffer_print(out, "%s%s", i > from ? ", " : "", name);
        taken += ts_text_columns(ts_text_of(name)) + (i > from ? 2 : 0);
        if (taken >= NAME_ROOM && i + 1 < end)
            ts_buffer_print(out, " and %zu more", end - i - 1);
    }
    ts_buffer_fill(out, ' ', taken < NAME_ROOM ? NAME_ROOM - taken : 1);
    ts_value_typeset(out, note->value, DIGITS);
    for (uint32_t k = 0; k < note->input_count; k++) {
        if (g->shared && is_constant(g, k))
            continue;
        put_input(&note->inputs[k], first, out);
        first = false;
    }
    if (note->kind == TS_NOTE_SEARCHED) {
        ts_buffer_add(out, "; left over: ");
        ts_value_typeset(out, note->residual, DIGITS);
    }
    ts_buffer_add(out, "\n");
}

/* "    with  d = 0.082": inputs that are the same in every line below. */
static void shared_line(const group *g, ts_buffer *out)
{
    bool first = true;
    for (uint32_t k = 0; k < g->notes[0]->input_count; k++) {
        if (!is_constant(g, k))
            continue;
        ts_buffer_add(out, first ? "    with" : "");
        put_input(&g->notes[0]->inputs[k], first, out);
        first = false;
    }
    ts_buffer_add(out, first ? "" : "\n");
}

/* ---- a condition a column, where that is shorter ------------------------------------------------
 */

enum {
    ROW_CONDITION = -2,
    ROW_VALUE     = -1
}; /* else the number of an input; past them what is left */

static void matrix_cell(const ts_chapter *chapter, const group *g, size_t i, int row,
                        ts_buffer *out)
{
    const ts_note *note = g->notes[i];
    ts_buffer_clear(out);
    if (row == ROW_CONDITION)
        ts_buffer_add(out, condition_of(chapter, note));
    else if (row == ROW_VALUE)
        ts_value_typeset(out, note->value, DIGITS);
    else if ((uint32_t)row < note->input_count)
        ts_value_typeset(out, note->inputs[row].value, DIGITS);
    else
        ts_value_typeset(out, note->residual, DIGITS);
}

static void matrix_label(const group *g, int row, ts_buffer *out)
{
    ts_buffer_clear(out);
    if (row == ROW_VALUE)
        ts_symbol_typeset(out, ts_text_of(g->notes[0]->formula->symbol));
    else if (row >= 0 && (uint32_t)row < g->notes[0]->input_count)
        ts_symbol_typeset(out, ts_text_of(g->notes[0]->inputs[row].name));
    else if (row >= 0)
        ts_buffer_add(out, "left over");
}

static ts_text made(const ts_buffer *text)
{
    return (ts_text){text->bytes != NULL ? text->bytes : "", text->length};
}

/* The rows to tell; the constant inputs stand above. */
static int rows_of(const group *g, int *rows)
{
    int count     = 0;
    rows[count++] = ROW_CONDITION;
    rows[count++] = ROW_VALUE;
    for (uint32_t k = 0; k < g->notes[0]->input_count; k++)
        if (count < ROWS_MOST && !is_constant(g, k))
            rows[count++] = (int)k;
    if (count < ROWS_MOST && g->notes[0]->kind == TS_NOTE_SEARCHED)
        rows[count++] = (int)g->notes[0]->input_count;
    return count;
}

static size_t widest(const ts_chapter *chapter, const group *g, const int *rows, int count,
                     ts_buffer *text)
{
    size_t most = 0;
    for (int r = 0; r < count; r++)
        for (size_t i = 0; i < g->count; i++) {
            matrix_cell(chapter, g, i, rows[r], text);
            const size_t here = ts_text_columns(made(text));
            most              = here > most ? here : most;
        }
    return most;
}

/* Writes nothing, and says so, where lines below each other would be as short, or do not fit. */
static bool put_matrix(ts_chapter *chapter, const group *g, size_t lines, ts_buffer *out)
{
    int       rows[ROWS_MOST];
    const int count = rows_of(g, rows);
    ts_buffer text;
    if (!g->shared || (size_t)count >= lines || count == ROWS_MOST)
        return false;
    ts_buffer_open(&text, out->allocator);
    const size_t wide = 1 + widest(chapter, g, rows, count, &text);
    const bool   fits = LABEL_ROOM + g->count * wide <= PAGE_COLUMNS;
    for (int r = 0; r < count && fits; r++) {
        matrix_label(g, rows[r], &text);
        const size_t label = ts_text_columns(made(&text));
        ts_buffer_add(out, "    ");
        ts_buffer_text(out, made(&text));
        ts_buffer_fill(out, ' ', label + 4 < LABEL_ROOM ? LABEL_ROOM - 4 - label : 0);
        for (size_t i = 0; i < g->count; i++) {
            matrix_cell(chapter, g, i, rows[r], &text);
            ts_buffer_fill(out, ' ', wide - ts_text_columns(made(&text)));
            ts_buffer_text(out, made(&text));
        }
        ts_buffer_add(out, "\n");
    }
    out->failed = out->failed || text.failed;
    ts_buffer_close(&text);
    return fits;
}

/* Where the notes that tell the same as note `from` end. */
static size_t alike_until(const group *g, size_t from)
{
    size_t end = from + 1;
    while (end < g->count && tells_the_same(g->notes[from], g->notes[end]))
        end++;
    return end;
}

static void put_group(ts_chapter *chapter, group *g, ts_buffer *out)
{
    size_t lines = 0;
    g->shared    = g->count > 1 && are_alike(g);
    if (g->shared)
        shared_line(g, out);
    for (size_t from = 0; from < g->count; from = alike_until(g, from))
        lines++;
    if (!put_matrix(chapter, g, lines, out))
        for (size_t from = 0; from < g->count; from = alike_until(g, from))
            value_line(chapter, g, from, alike_until(g, from), out);
}

/* Notes of the formula of note `at`, up to `end`: those of conditions, or those that do not vary.
 */
static void gather(const shelf *notes, size_t at, size_t end, bool varying, group *g)
{
    const ts_formula *formula = ts_workings_at(notes->workings, notes->note[at])->formula;
    g->count                  = 0;
    for (size_t i = at; i < end && g->count < GROUP_MOST; i++) {
        const ts_note *note = ts_workings_at(notes->workings, notes->note[i]);
        if (notes->done[i] || note->formula != formula || (note->subject.condition >= 0) != varying)
            continue;
        notes->done[i]       = true;
        g->notes[g->count++] = note;
    }
}

/* All that is computed by the formula of note `at`, up to `end`; the rest of more than GROUP_MOST
 * is told below the same formula again. */
static void one_formula(ts_chapter *chapter, const shelf *notes, size_t at, size_t end,
                        ts_buffer *out)
{
    group g;
    formula_line(ts_workings_at(notes->workings, notes->note[at]), out);
    for (int varying = 1; varying >= 0; varying--) {
        gather(notes, at, end, varying == 1, &g);
        if (g.count > 0)
            put_group(chapter, &g, out);
    }
    ts_buffer_add(out, "\n");
}

/* The part whose notes begin at `at`; returns where the next one begins. */
static size_t one_part(ts_chapter *chapter, const shelf *notes, size_t at)
{
    const uint32_t object = ts_workings_at(notes->workings, notes->note[at])->subject.object;
    size_t         end    = at;
    ts_buffer      text;
    while (end < notes->count &&
           ts_workings_at(notes->workings, notes->note[end])->subject.object == object)
        end++;
    ts_buffer_open(&text, chapter->answer->allocator);
    for (size_t i = at; i < end; i++)
        if (!notes->done[i])
            one_formula(chapter, notes, i, end, &text);
    ts_chapter_place(chapter, object, NULL, -1);
    if (!chapter->cell.failed && !text.failed) {
        ts_manuscript_heading(chapter->manuscript, 2, chapter->cell.bytes);
        ts_manuscript_lines(chapter->manuscript, text.bytes);
    }
    ts_buffer_clear(&chapter->cell);
    chapter->manuscript->failed = chapter->manuscript->failed || text.failed;
    ts_buffer_close(&text);
    return end;
}

void ts_chapter_all_workings(ts_chapter *chapter)
{
    shelf notes;
    ts_manuscript_text(
        chapter->manuscript, TS_BLOCK_FAINT,
        "Part by part, each formula once: first the inputs that do not vary, then its "
        "value and the other inputs in every condition; all in SI, angles in "
        "radians.");
    if (!sort(chapter->answer, chapter->manuscript->arena, &notes)) {
        chapter->manuscript->failed = true;
        return;
    }
    for (size_t at = 0; at < notes.count;)
        at = one_part(chapter, &notes, at);
}
