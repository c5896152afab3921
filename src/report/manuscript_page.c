/* How does a manuscript read on a terminal? */
#include "report/manuscript_page.h"

#include <string.h>

enum { INDENT = 2, LABEL = 18, GAP = 2, COLUMNS_MOST = 24 };

static int wider(int width, const char *text)
{
    const int here = (int)ts_text_columns(ts_text_of(text));
    return here > width ? here : width;
}

/* ---- tables ---------------------------------------------------------------------------------- */

/* Whatever follows the last cell that says something would be blanks. */
static size_t last_said(const char *const *cells, size_t count)
{
    while (count > 0 && cells[count - 1][0] == '\0')
        count--;
    return count;
}

static void line(const ts_block *table, const int *width, const char *const *cells, ts_page *page)
{
    const size_t count = last_said(cells, table->column_count);
    int          used  = INDENT;
    ts_buffer_fill(page->out, ' ', INDENT);
    for (size_t i = 0; i < count; i++) {
        const ts_text text = ts_text_of(cells[i]);
        if (i + 1 == count && !table->columns[i].number) {
            ts_page_wrap(page, cells[i], used, used);
            return;
        }
        if (table->columns[i].number)
            ts_page_right(page, text, width[i]);
        else
            ts_page_left(page, text, width[i]);
        if (i + 1 < count)
            ts_buffer_fill(page->out, ' ', GAP);
        used += width[i] + GAP;
    }
    ts_page_line_end(page);
}

static void table(const ts_block *block, ts_page *page)
{
    const char  *heads[COLUMNS_MOST];
    int          width[COLUMNS_MOST] = {0};
    const size_t columns = block->column_count, rows = ts_block_rows(block);
    bool         headed = false;
    if (columns > COLUMNS_MOST)
        return;
    for (size_t i = 0; i < columns; i++) {
        heads[i] = block->columns[i].head;
        headed   = headed || heads[i][0] != '\0';
        width[i] = wider(0, heads[i]);
        for (size_t r = 0; r < rows; r++)
            width[i] = wider(width[i], block->cells[r * columns + i]);
    }
    if (block->text != NULL && block->text[0] != '\0') {
        ts_page_tone(page, TS_TONE_FAINT);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap(page, block->text, INDENT, INDENT);
        ts_page_tone(page, TS_TONE_PLAIN);
    }
    if (headed) {
        ts_page_tone(page, TS_TONE_FAINT);
        line(block, width, heads, page);
        ts_page_tone(page, TS_TONE_PLAIN);
    }
    for (size_t r = 0; r < rows; r++)
        line(block, width, block->cells + r * columns, page);
}

/* ---- the rest -------------------------------------------------------------------------------- */

static void item(const ts_block *block, ts_page *page)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_left(page, ts_text_of(block->label != NULL ? block->label : ""), LABEL);
    ts_page_wrap(page, block->text, INDENT + LABEL, INDENT + LABEL);
}

static void paragraph(const ts_block *block, ts_page *page)
{
    ts_page_tone(page, block->kind == TS_BLOCK_BOX     ? TS_TONE_STRONG
                       : block->tone == TS_BLOCK_FAINT ? TS_TONE_FAINT
                                                       : TS_TONE_PLAIN);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap(page, block->text, INDENT, INDENT);
    ts_page_tone(page, TS_TONE_PLAIN);
}

static void block(const ts_block *one, ts_page *page)
{
    switch (one->kind) {
    case TS_BLOCK_HEADING:
        ts_page_heading(page, one->text);
        break;
    case TS_BLOCK_ITEM:
        item(one, page);
        break;
    case TS_BLOCK_TABLE:
        table(one, page);
        break;
    case TS_BLOCK_LINES:
        ts_buffer_add(page->out, one->text);
        break;
    default:
        paragraph(one, page);
        break;
    }
}

void ts_manuscript_page(const ts_manuscript *manuscript, ts_page *page)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%s, revision %s", manuscript->title, manuscript->revision);
    ts_page_wrap_made(page, &text, 0, 0);
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%s, SHA-256 %s, towershaft %s", manuscript->file, manuscript->hash,
                    manuscript->version);
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_wrap_made(page, &text, 0, 0);
    ts_page_wrap(page, manuscript->caution, 0, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    const ts_block *before = NULL;
    for (const ts_block *one = manuscript->first; one != NULL; before = one, one = one->next) {
        if (one->kind == TS_BLOCK_TABLE && before != NULL && before->kind != TS_BLOCK_HEADING)
            ts_page_line_end(page);
        block(one, page);
    }
}
