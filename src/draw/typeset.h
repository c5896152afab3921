/* draw/typeset.h: a manuscript set on pages of paper, as PDF with bookmarks and page numbers.
 *
 * Same manuscript, same bytes: no clock, no counter and no name of this machine gets into the file.
 * Lengths inside are points (1/72 inch), y downwards.
 */
#ifndef TS_DRAW_TYPESET_H
#define TS_DRAW_TYPESET_H

#include "base/manuscript.h"
#include "draw/figure.h"

typedef enum ts_paper { TS_PAPER_A4, TS_PAPER_LETTER } ts_paper;

typedef struct ts_typeset_options {
    ts_paper                  paper;
    double                    enlarge; /* everything this many times as large; 0: as it is */
    const ts_drawing_subject *subject; /* of the figures */
    /* Says how the figure of a block is drawn; false when there is no such figure. */
    bool (*figure)(void *context, const ts_block *block, ts_draw_options *options);
    void               *context;
    const ts_allocator *allocator; /* NULL: the standard one */
} ts_typeset_options;

/* TS_OK, TS_NO_MEMORY, or TS_NO_OUTPUT when the sink refuses.  A figure that cannot be drawn is a
 * boxed sentence in its place. */
ts_status ts_typeset_pdf(const ts_manuscript *manuscript, const ts_typeset_options *options,
                         const ts_sink *sink);

#endif
