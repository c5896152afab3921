/* base/manuscript.c: how does a manuscript grow, block by block? */
#include "base/manuscript.h"

#include <string.h>

void ts_manuscript_begin(ts_manuscript *manuscript, ts_arena *arena)
{
    *manuscript = (ts_manuscript){.arena = arena};
}

static const char *kept(ts_manuscript *manuscript, ts_text text)
{
    const char *copy =
        ts_arena_copy(manuscript->arena, text.at != NULL ? text.at : "", text.length);
    manuscript->failed = manuscript->failed || copy == NULL;
    return copy != NULL ? copy : "";
}

/* A block at the end; NULL when there is no memory. */
static ts_block *append(ts_manuscript *manuscript, ts_block_kind kind, const char *text)
{
    ts_block *block = manuscript->failed ? NULL : TS_TAKE(manuscript->arena, ts_block, 1);
    if (block == NULL) {
        manuscript->failed = true;
        return NULL;
    }
    block->kind = kind;
    block->text = kept(manuscript, ts_text_of(text));
    if (manuscript->last != NULL)
        manuscript->last->next = block;
    else
        manuscript->first = block;
    manuscript->last = block;
    return block;
}

void ts_manuscript_heading(ts_manuscript *manuscript, int level, const char *text)
{
    ts_block *block = append(manuscript, TS_BLOCK_HEADING, text);
    if (block == NULL)
        return;
    ts_buffer number;
    ts_buffer_open(&number, ts_arena_allocator(manuscript->arena));
    manuscript->chapter += level == 1;
    manuscript->section = level == 1 ? 0 : manuscript->section + 1;
    ts_buffer_print(&number, "%d", manuscript->chapter);
    if (level > 1)
        ts_buffer_print(&number, ".%d", manuscript->section);
    manuscript->failed = manuscript->failed || number.failed;
    block->level       = level;
    block->fresh       = manuscript->fresh;
    manuscript->fresh  = false;
    block->label = kept(manuscript, (ts_text){number.bytes, number.failed ? 0 : number.length});
    ts_buffer_close(&number);
}

void ts_manuscript_new_page(ts_manuscript *manuscript)
{
    manuscript->fresh = true;
}

static void plain(ts_manuscript *manuscript, ts_block_kind kind, ts_block_tone tone,
                  const char *label, const char *text)
{
    ts_block *block = append(manuscript, kind, text);
    if (block == NULL)
        return;
    block->tone  = tone;
    block->label = label != NULL ? kept(manuscript, ts_text_of(label)) : NULL;
}

void ts_manuscript_text(ts_manuscript *manuscript, ts_block_tone tone, const char *text)
{
    plain(manuscript, TS_BLOCK_TEXT, tone, NULL, text);
}

void ts_manuscript_item(ts_manuscript *manuscript, ts_block_tone tone, const char *label,
                        const char *text)
{
    plain(manuscript, TS_BLOCK_ITEM, tone, label, text);
}

void ts_manuscript_box(ts_manuscript *manuscript, ts_block_tone tone, const char *text)
{
    plain(manuscript, TS_BLOCK_BOX, tone, NULL, text);
}

void ts_manuscript_lines(ts_manuscript *manuscript, const char *text)
{
    plain(manuscript, TS_BLOCK_LINES, TS_BLOCK_PLAIN, NULL, text);
}

void ts_manuscript_figure(ts_manuscript *manuscript, const char *figure, const char *condition,
                          const char *caption)
{
    ts_block *block = append(manuscript, TS_BLOCK_FIGURE, caption);
    if (block == NULL)
        return;
    block->figure    = kept(manuscript, ts_text_of(figure));
    block->condition = condition != NULL ? kept(manuscript, ts_text_of(condition)) : NULL;
}

void ts_manuscript_table(ts_manuscript *manuscript, const char *caption, const ts_column *columns,
                         size_t count)
{
    ts_block *block = append(manuscript, TS_BLOCK_TABLE, caption);
    if (block == NULL)
        return;
    ts_column *own = TS_TAKE(manuscript->arena, ts_column, count);
    if (own == NULL) {
        manuscript->failed = true;
        return;
    }
    for (size_t c = 0; c < count; c++)
        own[c] = (ts_column){kept(manuscript, ts_text_of(columns[c].head)), columns[c].number};
    block->columns      = own;
    block->column_count = count;
}

/* Room for one cell more: twice as much each time. */
static bool make_room(ts_manuscript *manuscript, ts_block *table)
{
    if (table->cell_count < table->cell_room)
        return true;
    const size_t room  = table->cell_room == 0 ? 4 * table->column_count : 2 * table->cell_room;
    const char **cells = TS_TAKE(manuscript->arena, const char *, room);
    if (cells == NULL)
        return false;
    if (table->cell_count > 0)
        memcpy(cells, table->cells, table->cell_count * sizeof *cells);
    table->cells     = cells;
    table->cell_room = room;
    return true;
}

void ts_manuscript_cell(ts_manuscript *manuscript, ts_text text)
{
    ts_block *table = manuscript->last;
    if (manuscript->failed)
        return;
    if (!make_room(manuscript, table)) {
        manuscript->failed = true;
        return;
    }
    table->cells[table->cell_count] = kept(manuscript, text);
    table->cell_count++;
}

void ts_manuscript_made_cell(ts_manuscript *manuscript, ts_buffer *made)
{
    manuscript->failed = manuscript->failed || made->failed;
    ts_manuscript_cell(manuscript, (ts_text){made->bytes, made->failed ? 0 : made->length});
    ts_buffer_clear(made);
}

size_t ts_block_rows(const ts_block *table)
{
    return table->column_count > 0 ? table->cell_count / table->column_count : 0;
}
