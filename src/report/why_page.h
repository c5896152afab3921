/* report/why_page.h: the working of one number, down to the lines of the file.
 *
 * Every number stands on a line of its own: symbol, value in SI with its unit, in brackets the
 * value in the unit that people are shown, at the right what it means.  Under it the formula, with
 * its source at the right, and the formula with its numbers, all in SI.  Then its inputs, indented,
 * each opened in the same way.  A branch ends at a line of the file, which is quoted, at a row of a
 * table, at an assumption and its reason, or at a number that no note explains, which is said.
 * What is used again is opened once and afterwards referred to by its number.
 */
#ifndef TS_REPORT_WHY_PAGE_H
#define TS_REPORT_WHY_PAGE_H

#include "base/json_writer.h"
#include "base/text.h"
#include "base/workings.h"
#include "quantity/quantity.h"
#include "report/page.h"
#include "towershaft/status.h"

#include <stddef.h>
#include <stdint.h>

/* Where notes stand, told by somebody who knows the file.
 *
 * address    of a node: "drive/hp/box/clockwise/2"; also of the object 0, the whole drive
 * condition  its name: "take-off"; not asked for TS_EVERY_CONDITION
 * line       of a node, from 1; 0 when it stands in no file
 * text       of that line, without the line's end; control bytes in it are not let through */
typedef struct ts_why_places {
    void       *context;
    const char *file; /* as the user named it */
    const char *(*address)(void *context, uint32_t node);
    const char *(*condition)(void *context, int32_t condition);
    uint32_t (*line)(void *context, uint32_t node);
    ts_text (*text)(void *context, uint32_t node);
} ts_why_places;

#define TS_WHY_LEVELS_MOST 64

typedef struct ts_why {
    const ts_workings   *workings;
    size_t               index; /* of the note asked about */
    const ts_why_places *places;
    int levels; /* how many numbers deep; 0 means TS_WHY_LEVELS_MOST.  The number asked about is the
                   first level; what lies deeper is said to be closed. */
} ts_why;

/* TS_OK or TS_NO_MEMORY. */
ts_status ts_why_page(const ts_why *why, ts_page *page);

/* The same as one object: "address" and "root" of the number, and "notes", nearest first.  An input
 * names its origin by id, or null when no note explains it; the inputs of a note that is "closed"
 * lie too deep to be among the notes.  Each note once, however often it is used.  Values are in SI;
 * "shown" has them in the units for people. */
ts_status ts_why_json(const ts_why *why, ts_units units, ts_json *json);

/* For the two above: how a note is called ("drive/hp:F_t@take-off"), its unit, and the unit in
 * which people see it or NULL when that is the same or unknown. */
void           ts_why_address(const ts_why *why, const ts_note *note, ts_buffer *out);
const char    *ts_why_unit(const ts_note *note);
const ts_unit *ts_why_shown_unit(const ts_note *note, ts_units units);

/* "assumed", "table", or "computed" where its source begins with "derived": how a number stands that
 * no formula opens. */
const char *ts_why_stands(const ts_note *note);

/* The note from which input number `input` of note `index` comes, or SIZE_MAX. */
size_t ts_why_origin(const ts_why *why, size_t index, uint32_t input);

/* The unknown of a search is among the inputs of its equation; it has no origin but itself. */
bool ts_why_is_unknown(const ts_note *note, const ts_input *input);

/* How many levels are opened: why->levels within its bounds. */
int ts_why_levels(const ts_why *why);

/* The note asked about, or where a borrowed one leads; SIZE_MAX when that is nowhere. */
size_t ts_why_root(const ts_why *why);

#endif
