/* report/page.h: a page for a terminal: columns, wrapped sentences, signs with colour beside them.
 *
 * Colour never stands alone: every sign has its own shape and word.
 */
#ifndef TS_REPORT_PAGE_H
#define TS_REPORT_PAGE_H

#include "base/buffer.h"
#include "check/finding.h"
#include "quantity/quantity.h"

#include <stdbool.h>

typedef struct ts_page {
    ts_buffer *out;
    int        columns; /* 60 .. 400 */
    bool       colour;
    bool       all; /* also what passed */
    ts_units   units;
} ts_page;

void ts_page_heading(ts_page *page, const char *text);
void ts_page_line_end(ts_page *page);
/* Text in a cell of `width` columns, cut with an ellipsis when it does not fit. */
void ts_page_left(ts_page *page, ts_text text, int width);
void ts_page_right(ts_page *page, ts_text text, int width);
/* A sentence wrapped at blanks; later lines begin after `indent` columns.  `used` columns are taken
 * on the first line already. */
void ts_page_wrap(ts_page *page, const char *text, int indent, int used);
/* The same for a text that was made for it; closes the buffer. */
void ts_page_wrap_made(ts_page *page, ts_buffer *made, int indent, int used);
/* Without the end of the last line; returns the columns that it holds then. */
size_t ts_page_spread(ts_page *page, ts_text text, int indent, int used);

typedef enum ts_tone {
    TS_TONE_PLAIN,
    TS_TONE_STRONG,
    TS_TONE_FAINT,
    TS_TONE_REFUSE,
    TS_TONE_WARN,
    TS_TONE_NOTE
} ts_tone;
void ts_page_tone(ts_page *page, ts_tone tone); /* writes nothing without colour */

/* "[X]", "[!]", "[i]", "[/]", "[?]" of a finding, in its tone. */
void        ts_page_sign(ts_page *page, const ts_finding *finding);
const char *ts_level_name(ts_level level);
const char *ts_state_name(ts_state state);

/* A value for people without its unit, in the unit shown for its kind, to `digits` significant
 * digits; "?" for what is not computable. */
void ts_page_value(ts_page *page, double si, ts_kind kind, int digits, int width);
void ts_page_value_text(const ts_page *page, ts_buffer *out, double si, ts_kind kind, int digits);

/* A speed: whole rpm from 1000 on, four digits below. */
void ts_page_speed(ts_page *page, double si, int width);
void ts_page_speed_text(const ts_page *page, ts_buffer *out, double si);
/* Significant digits without zeros at the end of the decimals: "9600", "0.05". */
void ts_page_short(ts_buffer *out, double value, int digits);

#endif
