/* base/manuscript.h: what an author hands over: headings, sentences, tables, pictures, in order.
 *
 * A room that has something to tell adds blocks; an outlet (HTML, PDF) goes through them from the
 * first to the last.  Texts are UTF-8 as they come, names of the user's file among them: an outlet
 * escapes or cleans what it writes.  All memory is the arena's.  A manuscript that failed takes
 * every further call and does nothing, so a builder checks once, at the end.
 */
#ifndef TS_BASE_MANUSCRIPT_H
#define TS_BASE_MANUSCRIPT_H

#include "base/arena.h"
#include "base/buffer.h"
#include "base/text.h"

#include <stdbool.h>
#include <stdint.h>

typedef enum ts_block_kind {
    TS_BLOCK_HEADING, /* level 1 or 2, numbered "2" and "2.1"                             */
    TS_BLOCK_TEXT,    /* a paragraph                                                       */
    TS_BLOCK_ITEM,    /* one of a list: a label, and a paragraph beside it                 */
    TS_BLOCK_BOX,     /* a sentence that must not be overlooked                            */
    TS_BLOCK_TABLE,   /* heads and rows of cells                                           */
    TS_BLOCK_FIGURE,  /* a picture, by the name that the drawing room knows                */
    TS_BLOCK_LINES    /* lines as they stand, letters of one width                         */
} ts_block_kind;

typedef enum ts_block_tone { TS_BLOCK_PLAIN, TS_BLOCK_FAINT, TS_BLOCK_WARNING } ts_block_tone;

typedef struct ts_column {
    const char *head;
    bool        number; /* stands at the right of its column, and is never broken */
} ts_column;

typedef struct ts_block {
    ts_block_kind    kind;
    ts_block_tone    tone;
    int              level; /* of a heading                                            */
    bool             fresh; /* it begins a page                                        */
    const char      *label; /* number of a heading, sign of an item; may be NULL       */
    const char      *text;  /* what it says; a table's or a figure's caption           */
    const ts_column *columns;
    size_t           column_count;
    const char     **cells; /* row by row                                              */
    size_t           cell_count, cell_room;
    const char      *figure;    /* "behind", "teeth", ...                               */
    const char      *condition; /* of the figure; NULL: it chooses                      */
    struct ts_block *next;
} ts_block;

typedef struct ts_manuscript {
    ts_arena   *arena;
    const char *title, *revision, *file, *hash, *version, *caution;
    ts_block   *first, *last;
    int         chapter, section; /* counters of headings */
    bool        fresh;            /* the next heading begins a page */
    bool        failed;
} ts_manuscript;

/* An empty manuscript; the texts are set by the caller and live as long as the arena. */
void ts_manuscript_begin(ts_manuscript *manuscript, ts_arena *arena);

void ts_manuscript_heading(ts_manuscript *manuscript, int level, const char *text);
/* The next heading begins a page. */
void ts_manuscript_new_page(ts_manuscript *manuscript);
void ts_manuscript_text(ts_manuscript *manuscript, ts_block_tone tone, const char *text);
void ts_manuscript_item(ts_manuscript *manuscript, ts_block_tone tone, const char *label,
                        const char *text);
void ts_manuscript_box(ts_manuscript *manuscript, ts_block_tone tone, const char *text);
void ts_manuscript_lines(ts_manuscript *manuscript, const char *text);
void ts_manuscript_figure(ts_manuscript *manuscript, const char *figure, const char *condition,
                          const char *caption);

/* A table without rows; the columns are copied.  Cells are then added row by row. */
void ts_manuscript_table(ts_manuscript *manuscript, const char *caption, const ts_column *columns,
                         size_t count);
void ts_manuscript_cell(ts_manuscript *manuscript, ts_text text);
/* A cell put together in a buffer, which is emptied for the next. */
void ts_manuscript_made_cell(ts_manuscript *manuscript, ts_buffer *made);

/* Whole rows of a table. */
size_t ts_block_rows(const ts_block *table);

#endif
