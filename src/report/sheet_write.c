/* How does the sheet of a pad read, with both systems of units beside each other? */
#include "report/sheet_report.h"

#include <math.h>

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

static void cell_value(writer *w, const ts_sheet_row *row, ts_units units)
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

static void words(writer *w, const ts_sheet *sheet)
{
    static const ts_column columns[] = {{"", false}, {"", false}};
    ts_manuscript_table(w->to, "", columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < sheet->word_count; i++) {
        cell_text(w, sheet->words[i].label);
        cell_text(w, sheet->words[i].says);
    }
}

static void conditions(writer *w, const ts_sheet *sheet)
{
    static const ts_column columns[] = {
        {"condition", false}, {"rpm", true}, {"band rpm", true}, {"N.m", true},  {"lbf.in", true},
        {"kW", true},         {"hp", true},  {"oil degC", true}, {"degF", true}, {"", false}};
    const ts_drive *drive = sheet->answer->drive;
    ts_manuscript_heading(w->to, 2, "Speeds and loads in every condition");
    ts_manuscript_table(w->to,
                        "Torque and power: what the pad gives to the accessory; below nothing the "
                        "accessory drives.  Oil: where it is fed to the box",
                        columns, sizeof columns / sizeof columns[0]);
    for (size_t c = 0; c < drive->condition_count; c++) {
        const ts_sheet_row *row = sheet->conditions[c];
        cell_text(w, drive->conditions[c].name);
        cell_value(w, &row[TS_SHEET_SPEED], TS_UNITS_METRIC);
        cell_band(w, &row[TS_SHEET_LEAST], &row[TS_SHEET_MOST]);
        for (int which = TS_SHEET_TORQUE; which <= TS_SHEET_OIL; which++) {
            cell_value(w, &row[which], TS_UNITS_METRIC);
            cell_value(w, &row[which], TS_UNITS_US);
        }
        cell_text(w, sheet->states[c]);
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
    ts_manuscript_table(w->to, "", columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < sheet->row_count[which]; i++) {
        const ts_sheet_row *row = &sheet->rows[which][i];
        cell_text(w, row->what);
        for (int units = TS_UNITS_METRIC; units <= TS_UNITS_US; units++) {
            cell_value(w, row, (ts_units)units);
            cell_text(w, ts_kind_shown(row->kind, (ts_units)units)->name);
        }
        cell_text(w, row->note);
    }
}

static void lines(writer *w, const char *title, const ts_sheet_line *list, size_t count)
{
    static const ts_column columns[] = {{"", false}, {"", false}};
    ts_manuscript_heading(w->to, 2, title);
    if (count > 0)
        ts_manuscript_table(w->to, "", columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < count; i++) {
        cell_text(w, list[i].label);
        cell_text(w, list[i].says);
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
    words(&w, sheet);
    conditions(&w, sheet);
    for (int which = 0; which < TS_SHEET_PARTS; which++)
        part(&w, sheet, (ts_sheet_part)which);
    lines(&w, "Assumptions that this rests on", sheet->assumptions, sheet->assumption_count);
    lines(&w, "What the checks find here", sheet->findings, sheet->finding_count);
    manuscript->failed = manuscript->failed || w.cell.failed;
    ts_buffer_close(&w.cell);
}
