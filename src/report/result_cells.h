/* report/result_cells.h: a table for spreadsheets, cell by cell, whatever file it goes into.
 *
 * Numbers come as their digits, so that none is written in another way than the next; an empty text
 * is an empty cell.  What a cell holds is never a formula.
 */
#ifndef TS_REPORT_RESULT_CELLS_H
#define TS_REPORT_RESULT_CELLS_H

#include "base/buffer.h"

typedef struct ts_cells {
    ts_buffer *out;
    void (*word)(struct ts_cells *cells, const char *text);
    void (*number)(struct ts_cells *cells, const char *digits);
    void (*end_row)(struct ts_cells *cells);
    bool within; /* a row has begun */
} ts_cells;

/* RFC 4180; a text that a spreadsheet would take for a formula begins with an apostrophe. */
ts_cells ts_cells_csv(ts_buffer *out);
/* Rows of a sheet of ECMA-376, without what stands before and behind them. */
ts_cells ts_cells_sheet(ts_buffer *out);

#endif
