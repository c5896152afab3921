/* How does a cell stand in a CSV, and how in a workbook? */
#include "report/result_cells.h"

#include "base/markup.h"

#include <string.h>

/* ---- CSV --------------------------------------------------------------------------------------
 */

static void comma(ts_cells *cells)
{
    if (cells->within)
        ts_buffer_add(cells->out, ",");
    cells->within = true;
}

/* What a spreadsheet may take for the begin of a formula, and blanks before it. */
static bool is_formula(const char *text)
{
    text += strspn(text, " \t\r\n");
    return *text != '\0' && strchr("=+-@|%", *text) != NULL;
}

/* A text in quotes where it needs them, and with an apostrophe where it might come alive. */
static void csv_word(ts_cells *cells, const char *text)
{
    ts_buffer *out   = cells->out;
    const bool alive = is_formula(text);
    comma(cells);
    if (!alive && strpbrk(text, ",\"\r\n\t;'") == NULL) {
        ts_buffer_add(out, text);
        return;
    }
    ts_buffer_add(out, alive ? "\"'" : "\"");
    for (; *text != '\0'; text++) {
        const bool control = (unsigned char)*text < 0x20 || *text == 0x7F;
        ts_buffer_bytes(out, control ? " " : text, 1);
        if (*text == '"')
            ts_buffer_add(out, "\"");
    }
    ts_buffer_add(out, "\"");
}

static void csv_number(ts_cells *cells, const char *digits)
{
    comma(cells);
    ts_buffer_add(cells->out, digits);
}

static void csv_end(ts_cells *cells)
{
    ts_buffer_add(cells->out, "\r\n");
    cells->within = false;
}

ts_cells ts_cells_csv(ts_buffer *out)
{
    return (ts_cells){.out = out, .word = csv_word, .number = csv_number, .end_row = csv_end};
}

/* ---- workbook ---------------------------------------------------------------------------------
 */

static void begin_row(ts_cells *cells)
{
    if (!cells->within)
        ts_buffer_add(cells->out, "<row>");
    cells->within = true;
}

/* A text is marked as one, so that nothing in it is ever worked out. */
static void sheet_word(ts_cells *cells, const char *text)
{
    begin_row(cells);
    if (*text == '\0') {
        ts_buffer_add(cells->out, "<c/>");
        return;
    }
    ts_buffer_add(cells->out, "<c t=\"inlineStr\"><is><t xml:space=\"preserve\">");
    ts_markup_text(cells->out, text);
    ts_buffer_add(cells->out, "</t></is></c>");
}

static void sheet_number(ts_cells *cells, const char *digits)
{
    begin_row(cells);
    if (*digits == '\0')
        ts_buffer_add(cells->out, "<c/>");
    else
        ts_buffer_print(cells->out, "<c><v>%s</v></c>", digits);
}

static void sheet_end(ts_cells *cells)
{
    begin_row(cells);
    ts_buffer_add(cells->out, "</row>\n");
    cells->within = false;
}

ts_cells ts_cells_sheet(ts_buffer *out)
{
    return (ts_cells){.out = out, .word = sheet_word, .number = sheet_number, .end_row = sheet_end};
}
