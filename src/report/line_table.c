/* How far do the shafts bend, and how long do their bearings last? */
#include "report/check_page.h"
#include "report/fine.h"
#include "report/report_chapter.h"

#include <math.h>

#define INDENT 4

enum { PLACE, BEARING, SIZE, F_R, AT, LIFE, S_0, COLUMNS };

static const struct {
    const char *head;
    ts_kind     kind; /* TS_KIND_NUMBER: no unit in the head */
    bool        word;
} columns[COLUMNS] = {
    [PLACE] = {"bearing", TS_KIND_NUMBER, true}, [BEARING] = {"form", TS_KIND_NUMBER, true},
    [SIZE] = {"d x D", TS_KIND_LENGTH, true},    [F_R] = {"F_r", TS_KIND_FORCE, false},
    [AT] = {"at", TS_KIND_NUMBER, true},         [LIFE] = {"life h", TS_KIND_NUMBER, false},
    [S_0] = {"S_0", TS_KIND_NUMBER, false},
};

typedef struct table {
    const ts_answer *answer;
    ts_page         *page;
    ts_buffer        text;
    int              width[COLUMNS];
} table;

/* ---- bearings -------------------------------------------------------------------------------- */

static int32_t hardest(const ts_answer *answer, uint32_t l, int k)
{
    int32_t at   = 0;
    double  most = -1.0;
    for (uint32_t c = 0; c < answer->drive->condition_count; c++) {
        const double F = ts_line_at(answer->lines, l, c)->reaction[k].F_r;
        if (F > most) {
            most = F;
            at   = (int32_t)c;
        }
    }
    return at;
}

static bool is_known(const ts_line *line)
{
    return line->fault == NULL && line->missing == NULL;
}

static void size_text(table *t, const ts_line_bearing *b)
{
    const ts_unit *unit = ts_kind_shown(TS_KIND_LENGTH, t->page->units);
    ts_page_short(&t->text, ts_from_si(b->bearing.d, unit), 4);
    ts_buffer_add(&t->text, " x ");
    ts_page_short(&t->text, ts_from_si(b->bearing.D, unit), 4);
    if (b->bearing.rows > 1)
        ts_buffer_print(&t->text, ", %d rows", b->bearing.rows);
}

static ts_text cell(table *t, uint32_t l, int k, int column)
{
    const ts_line_bearing *b = &t->answer->lines->lines[l].bearings[k];
    ts_buffer_clear(&t->text);
    switch (column) {
    case PLACE:
        ts_buffer_print(&t->text, "%s%s", b->place, b->locates ? " =" : "");
        break;
    case BEARING:
        ts_buffer_print(&t->text, "%s%s%s", ts_bearing_form_name(b->bearing.form),
                        b->series != NULL ? " " : "", b->series != NULL ? b->series : "");
        break;
    case SIZE:
        size_text(t, b);
        break;
    case F_R:
        ts_page_value_text(
            t->page, &t->text,
            ts_line_at(t->answer->lines, l, (uint32_t)hardest(t->answer, l, k))->reaction[k].F_r,
            TS_KIND_FORCE, 4);
        break;
    case AT:
        ts_buffer_add(&t->text, ts_answer_condition(t->answer, hardest(t->answer, l, k)));
        break;
    case LIFE:
        if (!(b->rating.L_nmh < 3.6e9)) /* a million hours */
            ts_buffer_add(&t->text, isnan(b->rating.L_nmh) ? "?" : "> 1000000");
        else
            ts_page_short(&t->text, b->rating.L_nmh / 3600.0, 4);
        break;
    default:
        ts_page_value_text(t->page, &t->text, b->rating.S_0, TS_KIND_NUMBER, 3);
    }
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

/* "F_r N": with the unit in which the column stands. */
static ts_text head(table *t, int column)
{
    ts_buffer_clear(&t->text);
    ts_buffer_add(&t->text, columns[column].head);
    if (columns[column].kind != TS_KIND_NUMBER)
        ts_buffer_print(&t->text, " %s", ts_kind_shown(columns[column].kind, t->page->units)->name);
    return (ts_text){t->text.bytes != NULL ? t->text.bytes : "", t->text.length};
}

static void lay_out(table *t)
{
    for (int column = 0; column < COLUMNS; column++) {
        size_t widest = ts_text_columns(head(t, column));
        for (uint32_t l = 0; l < t->answer->lines->count; l++) {
            const ts_line *line = &t->answer->lines->lines[l];
            for (int k = 0; k < line->bearing_count && is_known(line); k++) {
                const size_t width = ts_text_columns(cell(t, l, k, column));
                widest             = width > widest ? width : widest;
            }
        }
        t->width[column] = (int)widest;
    }
}

/* Cells that no longer fit go below the others. */
static void put(table *t, ts_text text, int column, int *used)
{
    const int gap = column == PLACE ? INDENT : 2;
    if (*used > 0 && *used + gap + t->width[column] > t->page->columns) {
        ts_page_line_end(t->page);
        *used = 0;
        ts_buffer_fill(t->page->out, ' ', INDENT + 2);
        *used += INDENT + 2;
    } else {
        ts_buffer_fill(t->page->out, ' ', (size_t)gap);
        *used += gap;
    }
    if (columns[column].word)
        ts_page_left(t->page, text, t->width[column]);
    else
        ts_page_right(t->page, text, t->width[column]);
    *used += t->width[column];
}

static void heads(table *t)
{
    int used = 0;
    ts_page_tone(t->page, TS_TONE_FAINT);
    for (int column = 0; column < COLUMNS; column++)
        put(t, head(t, column), column, &used);
    ts_page_tone(t->page, TS_TONE_PLAIN);
    ts_page_line_end(t->page);
}

/* ---- shafts ---------------------------------------------------------------------------------- */

/* Of the gear that slopes most; slope < 0: there is none. */
typedef struct bend {
    double  v, slope; /* m, rad */
    int32_t at;       /* condition */
} bend;

static bend bend_of(const table *t, uint32_t l)
{
    const ts_line *line = &t->answer->lines->lines[l];
    double         v = 0.0, slope = -1.0;
    int32_t        at = 0;
    for (uint32_t c = 0; c < t->answer->drive->condition_count; c++)
        for (int g = 0; g < line->gear_count; g++) {
            const ts_line_gear_state *s = &ts_line_at(t->answer->lines, l, c)->state[g];
            const double way = hypot(s->v[0], s->v[1]), turn = hypot(s->theta[0], s->theta[1]);
            if (!(turn > slope + 1e-9 || (turn > slope - 1e-9 && way > v)))
                continue;
            slope = turn;
            v     = way;
            at    = (int32_t)c;
        }
    return (bend){v, slope < 0.0 || slope > 1e-9 ? slope : 0.0, at}; /* below is rounding */
}

/* "gives way 12.3 um, slopes 0.41 mrad at take-off" */
static void bends(const table *t, uint32_t l, ts_buffer *out)
{
    const bend most = bend_of(t, l);
    if (most.slope < 0.0)
        return;
    ts_buffer_add(out, ": gives way ");
    ts_page_short(out, most.v * ts_fine_scale(t->page->units), 3);
    ts_buffer_print(out, " %s, slopes ", ts_fine_unit(t->page->units));
    ts_page_short(out, most.slope * 1e3, 3);
    ts_buffer_print(out, " mrad at %s", ts_answer_condition(t->answer, most.at));
}

/* " at its shoulder 12 mm", from the front (inner) end; " there" where the number before it had the
 * same one. */
static void weakest_at(const table *t, ts_buffer *says, const ts_line_notch *notch,
                       const ts_line_notch *before)
{
    if (notch == before) {
        ts_buffer_add(says, " there");
        return;
    }
    ts_buffer_print(says, " at its %s ", ts_din_notch_name(notch->section.notch));
    ts_page_value_text(t->page, says, notch->x, TS_KIND_LENGTH, 3);
    ts_buffer_add(says, t->page->units == TS_UNITS_US ? " in" : " mm");
}

static void line_rows(table *t, uint32_t l)
{
    const ts_line *line = &t->answer->lines->lines[l];
    ts_buffer      says;
    ts_buffer_open(&says, t->page->out->allocator);
    ts_buffer_add(&says, line->name);
    if (line->missing != NULL)
        ts_buffer_print(&says, ": %s is not known", line->missing);
    else if (line->fault != NULL)
        ts_buffer_print(&says, ": %s", line->fault);
    else
        bends(t, l, &says);
    if (is_known(line) && line->weakest_D >= 0) {
        ts_buffer_add(&says, "; S_D ");
        ts_page_short(&says, line->notches[line->weakest_D].S_D, 3);
        ts_buffer_add(&says, " (Goodman ");
        ts_page_short(&says, line->n_G, 3);
        ts_buffer_add(&says, ")");
        weakest_at(t, &says, &line->notches[line->weakest_D], NULL);
        ts_buffer_add(&says, ", S_K ");
        ts_page_short(&says, line->S_K, 3);
        weakest_at(t, &says, &line->notches[line->weakest_K], &line->notches[line->weakest_D]);
        ts_buffer_add(&says, ", S_F ");
        ts_page_short(&says, line->notches[line->weakest_F].S_F, 3);
        weakest_at(t, &says, &line->notches[line->weakest_F], &line->notches[line->weakest_D]);
    }
    ts_page_wrap_made(t->page, &says, INDENT, 0);
    for (int k = 0; k < line->bearing_count && is_known(line); k++) {
        int used = 0;
        if (!line->bearings[k].there)
            continue;
        for (int column = 0; column < COLUMNS; column++)
            put(t, cell(t, l, k, column), column, &used);
        ts_page_line_end(t->page);
    }
}

void ts_line_table(const ts_answer *answer, ts_page *page)
{
    table t = {.answer = answer, .page = page};
    if (answer->lines == NULL)
        return;
    ts_buffer_open(&t.text, page->out->allocator);
    ts_buffer_add(&t.text,
                  "Shafts and bearings (=: holds the shaft along its axis); modified life, "
                  "90 %; the drive lasts ");
    ts_page_short(&t.text, answer->lines->life / 3600.0, 6);
    ts_buffer_add(&t.text, " h, all bearings together ");
    ts_page_short(&t.text, answer->lines->set_life / 3600.0, 4);
    ts_buffer_add(&t.text, " h");
    if (!t.text.failed)
        ts_page_heading(page, t.text.bytes);
    lay_out(&t);
    heads(&t);
    for (uint32_t l = 0; l < answer->lines->count; l++)
        line_rows(&t, l);
    page->out->failed = page->out->failed || t.text.failed;
    ts_buffer_close(&t.text);
}

/* ---- the same in a report -------------------------------------------------------------------- */

static void short_cell(ts_chapter *chapter, double value)
{
    if (isfinite(value))
        ts_page_short(&chapter->cell, value, 3);
    else
        ts_buffer_add(&chapter->cell, "\xC2\xB7");
    ts_chapter_cell(chapter);
}

static void line_cells(table *t, ts_chapter *chapter, uint32_t l)
{
    const ts_line *line  = &t->answer->lines->lines[l];
    const bool     known = is_known(line), notched = known && line->weakest_D >= 0;
    const bend     most = known ? bend_of(t, l) : (bend){0.0, -1.0, 0};
    const double   none = (double)NAN;
    ts_chapter_word(chapter, line->name);
    short_cell(chapter, most.slope < 0.0 ? none : most.v * 1e6);
    short_cell(chapter, most.slope < 0.0 ? none : most.slope * 1e3);
    ts_chapter_word(chapter, most.slope < 0.0 ? "" : ts_answer_condition(t->answer, most.at));
    short_cell(chapter, notched ? line->notches[line->weakest_D].S_D : none);
    short_cell(chapter, notched ? line->S_K : none);
    short_cell(chapter, notched ? line->notches[line->weakest_F].S_F : none);
    short_cell(chapter, notched ? line->n_G : none);
    if (line->missing != NULL)
        ts_buffer_print(&chapter->cell, "not computable: %s is not known", line->missing);
    else if (line->fault != NULL)
        ts_buffer_add(&chapter->cell, line->fault);
    else if (notched)
        ts_buffer_add(&chapter->cell,
                      ts_din_notch_name(line->notches[line->weakest_D].section.notch));
    ts_chapter_cell(chapter);
}

static void bearing_cells(table *t, ts_chapter *chapter, uint32_t l, int k)
{
    ts_chapter_word(chapter, t->answer->lines->lines[l].name);
    for (int column = 0; column < COLUMNS; column++)
        ts_manuscript_cell(chapter->manuscript, cell(t, l, k, column));
}

static void bearings(table *t, ts_chapter *chapter)
{
    ts_column heads_of[COLUMNS + 1] = {{"shaft", false}};
    for (int column = 0; column < COLUMNS; column++) {
        const ts_text words = head(t, column);
        heads_of[column + 1] =
            (ts_column){ts_arena_copy(chapter->manuscript->arena, words.at, words.length),
                        !columns[column].word};
        chapter->manuscript->failed =
            chapter->manuscript->failed || heads_of[column + 1].head == NULL;
    }
    ts_buffer_add(&chapter->cell, "Bearings (=: holds the shaft along its axis); modified life at "
                                  "90 %; the drive lasts ");
    ts_page_short(&chapter->cell, t->answer->lines->life / 3600.0, 6);
    ts_buffer_add(&chapter->cell, " h, all bearings together ");
    ts_page_short(&chapter->cell, t->answer->lines->set_life / 3600.0, 4);
    ts_buffer_add(&chapter->cell, " h");
    if (!chapter->cell.failed && !chapter->manuscript->failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, heads_of, COLUMNS + 1);
    ts_buffer_clear(&chapter->cell);
    for (uint32_t l = 0; l < t->answer->lines->count; l++) {
        const ts_line *line = &t->answer->lines->lines[l];
        for (int k = 0; k < line->bearing_count && is_known(line); k++)
            if (line->bearings[k].there)
                bearing_cells(t, chapter, l, k);
    }
}

void ts_line_cells(ts_chapter *chapter)
{
    const bool      us       = chapter->page.units == TS_UNITS_US;
    const ts_column shafts[] = {{"shaft", false},
                                {us ? "gives way mil" : "gives way um", true},
                                {"slopes mrad", true},
                                {"at", false},
                                {"S_D", true},
                                {"S_K", true},
                                {"S_F", true},
                                {"Goodman", true},
                                {"weakest, of S_D", false}};
    table           t        = {.answer = chapter->answer, .page = &chapter->page};
    ts_buffer_open(&t.text, chapter->cell.allocator);
    ts_manuscript_table(
        chapter->manuscript,
        "Shafts: how far the gear that slopes most gives way, and the least safety "
        "against fatigue for ever (S_D) and for its life (S_K), and yield (S_F), DIN 743",
        shafts, sizeof shafts / sizeof shafts[0]);
    for (uint32_t l = 0; l < t.answer->lines->count; l++)
        line_cells(&t, chapter, l);
    bearings(&t, chapter);
    chapter->manuscript->failed = chapter->manuscript->failed || t.text.failed;
    ts_buffer_close(&t.text);
}
