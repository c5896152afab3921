/* report/rate_report.h: the answer of a rate file, on a page and as JSON. */
#ifndef TS_REPORT_RATE_REPORT_H
#define TS_REPORT_RATE_REPORT_H

#include "base/json_writer.h"
#include "rate/rated.h"
#include "report/answer.h"
#include "report/page.h"

/* `answer` has source, workings, outcome and head; its drive has title, revision and, as
 * conditions, what stands behind the @ of addresses (rate/rated.h). */
void ts_rate_page(const ts_rated *rated, const ts_answer *answer, ts_page *page);
void ts_rate_json(const ts_rated *rated, const ts_answer *answer, ts_buffer *out);

/* For the two above. */

/* A number in a unit for people. */
typedef struct ts_rated_number {
    double         value;
    const char    *unit;   /* "1": none                                                        */
    double         factor; /* of the value over the SI value, for units that data/unit.tsv lacks */
    const ts_unit *of;     /* NULL: such a unit                                                */
} ts_rated_number;
/* Small lengths are told in um when `fine`. */
ts_rated_number ts_rated_number_of(const ts_note *note, ts_units units, bool fine);

/* Is note number `index` a result of the section: computed or read from a table, and the last of
 * its name there? */
bool ts_rated_is_result(const ts_workings *workings, const ts_rated_section *section, size_t index);
bool ts_rated_is_asked(const ts_rated_section *section, const char *symbol);

/* Is it an input of the element: given (TS_NOTE_GIVEN) or assumed (TS_NOTE_ASSUMED)? */
bool ts_rated_is_input(const ts_workings *workings, const ts_rated_element *element, size_t index,
                       ts_note_kind kind);

const char *ts_rated_meaning(const ts_note *note);
const char *ts_rated_source(const ts_note *note);

/* "The elements hold: ..." */
void ts_rated_verdict(const ts_rated *rated, ts_buffer *out);

#endif
