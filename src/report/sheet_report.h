/* report/sheet_report.h: what the maker of an accessory needs to know of its pad, every value in
 * both systems of units.
 *
 * Every number is one of the answer or of the file; nothing but the moment of the overhang is
 * computed for the sheet.  What is not known says so.
 */
#ifndef TS_REPORT_SHEET_REPORT_H
#define TS_REPORT_SHEET_REPORT_H

#include "report/answer.h"
#include "report/json_quantity.h"
#include "report/report_chapter.h"

/* One value. */
typedef struct ts_sheet_row {
    const char   *what;
    double        si; /* NaN: not known */
    ts_kind       kind;
    ts_json_place place;
    const char   *note; /* NULL, or what is to be said beside it */
} ts_sheet_row;

typedef enum ts_sheet_part {
    TS_SHEET_TORQUES,
    TS_SHEET_SPLINE,
    TS_SHEET_BODY,
    TS_SHEET_PLACE,
    TS_SHEET_PARTS
} ts_sheet_part;

enum { TS_SHEET_ROWS = 8, TS_SHEET_WORDS = 8 };

/* In one condition, in the order of the columns of the page. */
typedef enum ts_sheet_column {
    TS_SHEET_SPEED,
    TS_SHEET_LEAST, /* of the band */
    TS_SHEET_MOST,
    TS_SHEET_TORQUE,
    TS_SHEET_POWER,
    TS_SHEET_OIL,
    TS_SHEET_COLUMNS
} ts_sheet_column;

typedef struct ts_sheet_word {
    const char *label, *says;
} ts_sheet_word;

typedef struct ts_sheet_line { /* an assumption or a finding */
    const char *label, *says;
    ts_node     node;
} ts_sheet_line;

typedef struct ts_sheet {
    const ts_answer       *answer;
    const struct ts_sheet *before; /* the one issued last, or NULL: nothing is compared */
    uint32_t               pad;
    ts_sheet_word          words[TS_SHEET_WORDS];
    size_t                 word_count;
    ts_sheet_row (*conditions)[TS_SHEET_COLUMNS]; /* [condition] */
    const char   **states;                        /* [condition] NULL, or what its clutch does */
    ts_sheet_row   rows[TS_SHEET_PARTS][TS_SHEET_ROWS];
    size_t         row_count[TS_SHEET_PARTS];
    ts_sheet_line *assumptions, *findings;
    size_t         assumption_count, finding_count;
} ts_sheet;

extern const char *const ts_sheet_titles[TS_SHEET_PARTS];

/* Of a pad with an accessory.  False without memory. */
bool ts_sheet_make(const ts_answer *answer, uint32_t pad, ts_arena *arena, ts_sheet *out);

/* ---- beside the sheet issued last; all need sheet->before ----
 *
 * Rows are the same by what they tell, conditions by their name.  NULL, or SIZE_MAX: it was not
 * there. */
const ts_sheet_row *ts_sheet_issued_row(const ts_sheet *sheet, ts_sheet_part part,
                                        const char *what);
const char         *ts_sheet_issued_word(const ts_sheet *sheet, const char *label);
size_t              ts_sheet_issued_condition(const ts_sheet *sheet, const char *name);
bool   ts_sheet_issued_line(const ts_sheet_line *list, size_t count, const ts_sheet_line *one);
bool   ts_sheet_value_changed(const ts_sheet_row *now, const ts_sheet_row *before);
bool   ts_sheet_condition_changed(const ts_sheet *sheet, size_t c);
size_t ts_sheet_changed(const ts_sheet *sheet);              /* words, conditions and values     */
size_t ts_sheet_gone(const ts_sheet *sheet, ts_buffer *out); /* their names; returns how many    */

void ts_sheet_write(const ts_sheet *sheet, ts_manuscript *manuscript);
void ts_sheet_json(const ts_sheet *sheet, ts_buffer *out);

#endif
