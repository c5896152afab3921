/* report/oil_grid.h: tables of the oil, on a page for a terminal or in a chapter of the report. */
#ifndef TS_REPORT_OIL_GRID_H
#define TS_REPORT_OIL_GRID_H

#include "base/json_writer.h"
#include "report/oil_report.h"
#include "report/report_chapter.h"

#define TS_OIL_COLUMNS 12
#define TS_OIL_NONE    "\xC2\xB7" /* a cell that has nothing to tell; a note says why */
#define TS_OIL_BOILS   "boils"

typedef struct ts_oil_sheet {
    const ts_oil_answer *oil;
    const ts_answer     *answer;
    ts_page             *page;
    uint32_t             drive;   /* that is told of      */
    uint32_t             unit;    /* pack or breather that is told of */
    ts_chapter          *chapter; /* of a report, into which tables go; NULL: onto the page */
} ts_oil_sheet;

typedef struct ts_oil_grid {
    const char *const *heads;
    int                columns;
    uint32_t           rows;
    void (*cell)(const ts_oil_sheet *s, uint32_t row, int column, ts_buffer *text);
} ts_oil_grid;

/* A table below its caption, which is closed. */
void ts_oil_table(const ts_oil_sheet *s, ts_buffer *caption, const ts_oil_grid *g);

/* What goes into a cell: a value in the units of the page, or two with a stroke between. */
void ts_oil_value(const ts_oil_sheet *s, ts_buffer *text, double si, ts_kind kind, int digits);
void ts_oil_both(const ts_oil_sheet *s, ts_buffer *text, double one, double other, ts_kind kind,
                 int digits);
const char *ts_oil_unit(const ts_oil_sheet *s, ts_kind kind);
/* What a single place loses is small: W where people are shown kW. */
const char *ts_oil_watt(const ts_oil_sheet *s);
void        ts_oil_watts(const ts_oil_sheet *s, ts_buffer *text, double P);
void        ts_oil_watts_by_both(const ts_oil_sheet *s, ts_buffer *text, double one, double other);

/* Sentences below a table; `made` is closed. */
void ts_oil_note(const ts_oil_sheet *s, const char *words);
void ts_oil_note_made(const ts_oil_sheet *s, ts_buffer *made);
void ts_oil_states_note(const ts_oil_sheet *s);
void ts_oil_meshes_note(const ts_oil_sheet *s);
void ts_oil_bearings_note(const ts_oil_sheet *s);
void ts_oil_pads_note(const ts_oil_sheet *s);
void ts_oil_jets_note(const ts_oil_sheet *s);
void ts_oil_drag_note(const ts_oil_sheet *s);
/* Symbol, unit and source of every number. */
void ts_oil_sources(const ts_oil_sheet *s);
void ts_oil_sources_json(ts_json *json);

/* Losses of every drive by kind, in the condition that is told. */
void ts_oil_shares(ts_oil_sheet *s);
/* Pump packs and breathers. */
void ts_oil_units_tables(ts_oil_sheet *s);
/* What it rests on: defaults of the file that bear on it, and what stands fixed. */
void ts_oil_assumptions_page(const ts_answer *answer, ts_page *page);
void ts_oil_assumptions_cells(ts_chapter *chapter);
void ts_oil_assumptions_json(ts_json *json, const ts_answer *answer);
void ts_oil_units_json(ts_json *json, const ts_oil_units *units);

#endif
