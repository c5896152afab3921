/* report/oil_grid.c: how do the tables of the oil stand on a page and in a report? */
#include "report/oil_grid.h"

#include <math.h>

#define GAP    2
#define INDENT 4

static ts_text cell(const ts_oil_sheet *s, const ts_oil_grid *g, uint32_t row, int column,
                    ts_buffer *text)
{
    ts_buffer_clear(text);
    if (row >= g->rows)
        ts_buffer_add(text, g->heads[column]);
    else
        g->cell(s, row, column, text);
    return (ts_text){text->bytes != NULL ? text->bytes : "", text->length};
}

static void print_row(const ts_oil_sheet *s, const ts_oil_grid *g, uint32_t row, const int *width,
                      bool two_lines, ts_buffer *text)
{
    for (int column = 0; column < g->columns; column++) {
        const ts_text words = cell(s, g, row, column, text);

        if (two_lines && column == 0) {
            ts_page_spread(s->page, words, INDENT, 0);
            ts_page_line_end(s->page);
            continue;
        }
        if (column > 0)
            ts_buffer_fill(s->page->out, ' ', two_lines && column == 1 ? INDENT : GAP);
        if (column == 0)
            ts_page_left(s->page, words, width[column]);
        else
            ts_page_right(s->page, words, width[column]);
    }
    ts_page_line_end(s->page);
}

static void print_grid(const ts_oil_sheet *s, const ts_oil_grid *g)
{
    int       width[TS_OIL_COLUMNS] = {0}, all = 0;
    ts_buffer text;

    ts_buffer_open(&text, s->page->out->allocator);
    for (int column = 0; column < g->columns; column++) {
        for (uint32_t row = 0; row <= g->rows; row++) {
            const int here = (int)ts_text_columns(cell(s, g, row, column, &text));
            width[column]  = here > width[column] ? here : width[column];
        }
        all += width[column] + (column > 0 ? GAP : 0);
    }
    ts_page_tone(s->page, TS_TONE_FAINT);
    print_row(s, g, g->rows, width, all > s->page->columns, &text);
    ts_page_tone(s->page, TS_TONE_PLAIN);
    for (uint32_t row = 0; row < g->rows && !text.failed; row++)
        print_row(s, g, row, width, all > s->page->columns, &text);
    s->page->out->failed = s->page->out->failed || text.failed;
    ts_buffer_close(&text);
}

void ts_oil_value(const ts_oil_sheet *s, ts_buffer *text, double si, ts_kind kind, int digits)
{
    ts_page_value_text(s->page, text, si, kind, digits);
}

void ts_oil_both(const ts_oil_sheet *s, ts_buffer *text, double one, double other, ts_kind kind,
                 int digits)
{
    ts_oil_value(s, text, one, kind, digits);
    ts_buffer_add(text, " / ");
    ts_oil_value(s, text, other, kind, digits);
}

const char *ts_oil_unit(const ts_oil_sheet *s, ts_kind kind)
{
    return ts_kind_shown(kind, s->page->units)->name;
}

/* What a single place loses is small: W where people are shown kW. */
const char *ts_oil_watt(const ts_oil_sheet *s)
{
    return s->page->units == TS_UNITS_METRIC ? "W" : ts_oil_unit(s, TS_KIND_POWER);
}

void ts_oil_watts(const ts_oil_sheet *s, ts_buffer *text, double P)
{
    if (s->page->units != TS_UNITS_METRIC)
        ts_oil_value(s, text, P, TS_KIND_POWER, 3);
    else if (P >= 100.0 || P < 0.05)
        ts_buffer_fixed(text, P, 0);
    else
        ts_buffer_fixed(text, P, 1);
}

void ts_oil_watts_by_both(const ts_oil_sheet *s, ts_buffer *text, double one, double other)
{
    ts_oil_watts(s, text, one);
    ts_buffer_add(text, " / ");
    ts_oil_watts(s, text, other);
}

/* A heading, a sentence below it; `made` is closed. */
static void heading(const ts_oil_sheet *s, ts_buffer *made)
{
    if (!made->failed)
        ts_page_heading(s->page, made->bytes);
    s->page->out->failed = s->page->out->failed || made->failed;
    ts_buffer_close(made);
}

static void put_cells(const ts_oil_sheet *s, const char *caption, const ts_oil_grid *g)
{
    ts_manuscript *manuscript = s->chapter->manuscript;
    ts_column      columns[TS_OIL_COLUMNS];
    ts_buffer      text;

    ts_buffer_open(&text, s->answer->allocator);
    for (int column = 0; column < g->columns; column++)
        columns[column] = (ts_column){g->heads[column], column > 0};
    ts_manuscript_table(manuscript, caption, columns, (size_t)g->columns);
    for (uint32_t row = 0; row < g->rows; row++)
        for (int column = 0; column < g->columns; column++)
            ts_manuscript_cell(manuscript, cell(s, g, row, column, &text));
    manuscript->failed = manuscript->failed || text.failed;
    ts_buffer_close(&text);
}

/* A table below its caption, which is closed. */
void ts_oil_table(const ts_oil_sheet *s, ts_buffer *made, const ts_oil_grid *g)
{
    if (s->chapter == NULL) {
        heading(s, made);
        print_grid(s, g);
        return;
    }
    s->chapter->manuscript->failed = s->chapter->manuscript->failed || made->failed;
    if (!made->failed)
        put_cells(s, made->bytes, g);
    ts_buffer_close(made);
}
