/* How does the sheet of a pad read, with both systems of units beside each other? */
#include "report/sheet_report.h"

#include <math.h>
#include <string.h>

#define COLUMNS_MOST 16
#define DIGITS       5
#define LEAST_LENGTH 1e-9 /* m; what is less is rounding */

typedef struct writer {
    ts_manuscript *to;
    ts_buffer      cell;
    ts_page        pages[2]; /* by ts_units, writing into `cell` */
} writer;

static void cell_text(writer *w, const char *text)
{
    ts_manuscript_cell(w->to, ts_text_of(text != NULL ? text : ""));
}

static void value_text(writer *w, const ts_sheet_row *row, ts_units units)
{
    const bool nothing = row->kind == TS_KIND_LENGTH && fabs(row->si) < LEAST_LENGTH;
    if (nothing)
        ts_buffer_add(&w->cell, "0");
    else if (isnan(row->si))
        ts_buffer_add(&w->cell, "?");
    else if (row->kind == TS_KIND_ROTATIONAL_SPEED)
        ts_page_speed_text(&w->pages[units], &w->cell, row->si);
    else
        ts_page_value_text(&w->pages[units], &w->cell, row->si, row->kind, DIGITS);
}

static void cell_value(writer *w, const ts_sheet_row *row, ts_units units)
{
    value_text(w, row, units);
    ts_manuscript_made_cell(w->to, &w->cell);
}

/* "6400..12000", "..9000", or nothing where no band is told. */
static void cell_band(writer *w, const ts_sheet_row *least, const ts_sheet_row *most)
{
    if (!isnan(least->si) && least->si > 0.0)
        ts_page_speed_text(&w->pages[0], &w->cell, least->si);
    if (!isnan(least->si) || !isnan(most->si))
        ts_buffer_add(&w->cell, "..");
    if (!isnan(most->si))
        ts_page_speed_text(&w->pages[0], &w->cell, most->si);
    ts_manuscript_made_cell(w->to, &w->cell);
}

/* ---- change bars -----------------------------------------------------------------------------
 */

/* A table whose rows bear a bar where they changed, and what stood there; without an issued sheet
 * neither column is there. */
static void begin_table(writer *w, const ts_sheet *sheet, const char *caption,
                        const ts_column *columns, size_t count)
{
    static const ts_column bar = {"", false}, was = {"was", false};
    ts_column              all[COLUMNS_MOST];
    size_t                 used = 0;
    if (sheet->before != NULL)
        all[used++] = bar;
    for (size_t i = 0; i < count; i++)
        all[used++] = columns[i];
    if (sheet->before != NULL)
        all[used++] = was;
    ts_manuscript_table(w->to, caption, all, used);
}

static void cell_bar(writer *w, const ts_sheet *sheet, bool changed)
{
    if (sheet->before != NULL)
        cell_text(w, changed ? "|" : "");
}

/* "12.4 N.m, 110 lbf.in", "new", or nothing. */
static void cell_was(writer *w, const ts_sheet *sheet, const ts_sheet_row *now,
                     const ts_sheet_row *before)
{
    if (sheet->before == NULL)
        return;
    if (before == NULL)
        ts_buffer_add(&w->cell, "new");
    else if (ts_sheet_value_changed(now, before))
        for (int units = TS_UNITS_METRIC; units <= TS_UNITS_US; units++) {
            ts_buffer_add(&w->cell, units == TS_UNITS_METRIC ? "" : ", ");
            value_text(w, before, (ts_units)units);
            ts_buffer_print(&w->cell, "\xC2\xA0%s",
                            ts_kind_shown(before->kind, (ts_units)units)->name);
        }
    ts_manuscript_made_cell(w->to, &w->cell);
}

/* What changed in a condition, in metric units: "rpm 12400, N.m 33.1". */
static void cell_was_condition(writer *w, const ts_sheet *sheet, size_t c)
{
    const char  *name = sheet->answer->drive->conditions[c].name;
    const size_t old  = sheet->before != NULL ? ts_sheet_issued_condition(sheet, name) : SIZE_MAX;
    size_t       said = 0;
    if (sheet->before == NULL)
        return;
    if (old == SIZE_MAX)
        ts_buffer_add(&w->cell, "new");
    for (int k = 0; old != SIZE_MAX && k < TS_SHEET_COLUMNS; k++) {
        const ts_sheet_row *before = &sheet->before->conditions[old][k];
        if (!ts_sheet_value_changed(&sheet->conditions[c][k], before))
            continue;
        ts_buffer_print(&w->cell, "%s%s%s ", said++ > 0 ? ", " : "",
                        k == TS_SHEET_LEAST  ? "least "
                        : k == TS_SHEET_MOST ? "most "
                                             : "",
                        ts_kind_shown(before->kind, TS_UNITS_METRIC)->name);
        value_text(w, before, TS_UNITS_METRIC);
    }
    ts_manuscript_made_cell(w->to, &w->cell);
}

/* Said before everything else. */
static void say_changes(writer *w, const ts_sheet *sheet)
{
    const size_t     changed = ts_sheet_changed(sheet);
    const ts_answer *old     = sheet->before->answer;
    const char      *issued  = old->drive->revision.text;
    ts_buffer_print(&w->cell, "Against revision %s (%s, SHA-256 %.*s): ",
                    issued != NULL ? issued : "not told", old->source->name, 12, old->sha256);
    if (changed == 0)
        ts_buffer_add(&w->cell, "no value changed.");
    else
        ts_buffer_print(&w->cell, "%zu %s, each with a bar.", changed,
                        changed == 1 ? "row changed or is new" : "rows changed or are new");
    const size_t before = w->cell.length;
    ts_buffer_add(&w->cell, " No longer there: ");
    if (ts_sheet_gone(sheet, &w->cell) > 0)
        ts_buffer_add(&w->cell, ".");
    else if (!w->cell.failed) {
        w->cell.length                = before;
        w->cell.bytes[w->cell.length] = '\0';
    }
    if (!w->cell.failed)
        ts_manuscript_box(w->to, changed > 0 ? TS_BLOCK_WARNING : TS_BLOCK_PLAIN, w->cell.bytes);
    ts_buffer_clear(&w->cell);
}

/* ---- tables ---------------------------------------------------------------------------------- */

static void words(writer *w, const ts_sheet *sheet)
{
    static const ts_column columns[] = {{"", false}, {"", false}};
    begin_table(w, sheet, "", columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < sheet->word_count; i++) {
        const ts_sheet_word *now     = &sheet->words[i];
        const char          *was     = ts_sheet_issued_word(sheet, now->label);
        const bool           changed = was == NULL || strcmp(was, now->says) != 0;
        cell_bar(w, sheet, changed);
        cell_text(w, now->label);
        cell_text(w, now->says);
        if (sheet->before != NULL)
            cell_text(w, !changed ? "" : was != NULL ? was : "new");
    }
}

static void conditions(writer *w, const ts_sheet *sheet)
{
    static const ts_column columns[] = {
        {"condition", false}, {"rpm", true}, {"band rpm", true}, {"N.m", true},  {"lbf.in", true},
        {"kW", true},         {"hp", true},  {"oil degC", true}, {"degF", true}, {"", false}};
    const ts_drive *drive = sheet->answer->drive;
    ts_manuscript_heading(w->to, 2, "Speeds and loads in every condition");
    begin_table(w, sheet,
                "Torque and power: what the pad gives to the accessory; below nothing the "
                "accessory drives.  Oil: where it is fed to the box",
                columns, sizeof columns / sizeof columns[0]);
    for (size_t c = 0; c < drive->condition_count; c++) {
        const ts_sheet_row *row = sheet->conditions[c];
        cell_bar(w, sheet, sheet->before != NULL && ts_sheet_condition_changed(sheet, c));
        cell_text(w, drive->conditions[c].name);
        cell_value(w, &row[TS_SHEET_SPEED], TS_UNITS_METRIC);
        cell_band(w, &row[TS_SHEET_LEAST], &row[TS_SHEET_MOST]);
        for (int which = TS_SHEET_TORQUE; which <= TS_SHEET_OIL; which++) {
            cell_value(w, &row[which], TS_UNITS_METRIC);
            cell_value(w, &row[which], TS_UNITS_US);
        }
        cell_text(w, sheet->states[c]);
        cell_was_condition(w, sheet, c);
    }
}

static void part(writer *w, const ts_sheet *sheet, ts_sheet_part which)
{
    static const ts_column columns[] = {{"", false},  {"metric", true}, {"", false},
                                        {"US", true}, {"", false},      {"", false}};
    ts_manuscript_heading(w->to, 2, ts_sheet_titles[which]);
    if (sheet->row_count[which] == 0) {
        ts_manuscript_text(w->to, TS_BLOCK_PLAIN, "Nothing is known.");
        return;
    }
    begin_table(w, sheet, "", columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < sheet->row_count[which]; i++) {
        const ts_sheet_row *row    = &sheet->rows[which][i];
        const ts_sheet_row *before = ts_sheet_issued_row(sheet, which, row->what);
        cell_bar(w, sheet, before == NULL || ts_sheet_value_changed(row, before));
        cell_text(w, row->what);
        for (int units = TS_UNITS_METRIC; units <= TS_UNITS_US; units++) {
            cell_value(w, row, (ts_units)units);
            cell_text(w, ts_kind_shown(row->kind, (ts_units)units)->name);
        }
        cell_text(w, row->note);
        cell_was(w, sheet, row, before);
    }
}

/* `issued` is the list of the sheet before; read only where there is one. */
static void lines(writer *w, const ts_sheet *sheet, const char *title, const ts_sheet_line *list,
                  size_t count, const ts_sheet_line *issued, size_t issued_count)
{
    static const ts_column columns[] = {{"", false}, {"", false}};
    ts_manuscript_heading(w->to, 2, title);
    if (count > 0)
        begin_table(w, sheet, "", columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < count; i++) {
        const bool changed = !ts_sheet_issued_line(issued, issued_count, &list[i]);
        cell_bar(w, sheet, changed);
        cell_text(w, list[i].label);
        cell_text(w, list[i].says);
        if (sheet->before != NULL)
            cell_text(w, changed ? "new, or said otherwise" : "");
    }
    if (count == 0)
        ts_manuscript_text(w->to, TS_BLOCK_PLAIN, "None.");
}

void ts_sheet_write(const ts_sheet *sheet, ts_manuscript *manuscript)
{
    writer w = {.to = manuscript};
    ts_buffer_open(&w.cell, sheet->answer->allocator);
    for (int units = TS_UNITS_METRIC; units <= TS_UNITS_US; units++)
        w.pages[units] = (ts_page){.out = &w.cell, .columns = 400, .units = (ts_units)units};
    ts_buffer_print(&w.cell, "Interface of the pad of %s", sheet->words[0].says);
    if (!w.cell.failed)
        ts_manuscript_heading(manuscript, 1, w.cell.bytes);
    ts_buffer_clear(&w.cell);
    if (sheet->before != NULL)
        say_changes(&w, sheet);
    words(&w, sheet);
    conditions(&w, sheet);
    for (int which = 0; which < TS_SHEET_PARTS; which++)
        part(&w, sheet, (ts_sheet_part)which);
    const ts_sheet none = {.before = NULL}, *old = sheet->before != NULL ? sheet->before : &none;
    lines(&w, sheet, "Assumptions that this rests on", sheet->assumptions, sheet->assumption_count,
          old->assumptions, old->assumption_count);
    lines(&w, sheet, "What the checks find here", sheet->findings, sheet->finding_count,
          old->findings, old->finding_count);
    manuscript->failed = manuscript->failed || w.cell.failed;
    ts_buffer_close(&w.cell);
}
