/* Report: how did every number come about?  Each formula of a part once, with all conditions. */
#include "report/report_chapter.h"

#include "base/formula_typeset.h"
#include "base/symbol_typeset.h"
#include "report/why_page.h"

#include <math.h>

#define DIGITS    6
#define NAME_ROOM 18 /* columns for the name of a condition */

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

/* "    take-off          1234.5    T = 12.3, d = 0.082" */
static void value_line(ts_chapter *chapter, const ts_note *note, ts_buffer *out)
{
    const char  *name  = note->subject.condition >= 0
                             ? ts_answer_condition(chapter->answer, note->subject.condition)
                             : "always";
    const size_t taken = ts_text_columns(ts_text_of(name));
    ts_buffer_print(out, "    %s", name);
    ts_buffer_fill(out, ' ', taken < NAME_ROOM ? NAME_ROOM - taken : 1);
    ts_value_typeset(out, note->value, DIGITS);
    for (uint32_t i = 0; i < note->input_count; i++) {
        ts_buffer_add(out, i == 0 ? "    " : ", ");
        ts_symbol_typeset(out, ts_text_of(note->inputs[i].name));
        ts_buffer_add(out, " = ");
        ts_value_typeset(out, note->inputs[i].value, DIGITS);
    }
    if (note->kind == TS_NOTE_SEARCHED) {
        ts_buffer_add(out, "; left over: ");
        ts_value_typeset(out, note->residual, DIGITS);
    }
    ts_buffer_add(out, "\n");
}

/* All that is computed by the formula of note `at`, up to `end`. */
static void one_formula(ts_chapter *chapter, const shelf *notes, size_t at, size_t end,
                        ts_buffer *out)
{
    const ts_note *first = ts_workings_at(notes->workings, notes->note[at]);
    formula_line(first, out);
    for (size_t i = at; i < end; i++) {
        const ts_note *note = ts_workings_at(notes->workings, notes->note[i]);
        if (notes->done[i] || note->formula != first->formula)
            continue;
        notes->done[i] = true;
        value_line(chapter, note, out);
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
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT,
                       "Part by part, each formula once, with its value and its inputs in every "
                       "condition; all in SI, angles in radians.");
    if (!sort(chapter->answer, chapter->manuscript->arena, &notes)) {
        chapter->manuscript->failed = true;
        return;
    }
    for (size_t at = 0; at < notes.count;)
        at = one_part(chapter, &notes, at);
}
