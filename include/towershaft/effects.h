/* towershaft/effects.h: what stops when a part fails, and what may have stopped it?
 *
 * Every part of the drive in every way in which it may fail: which accessories stop, which go on,
 * which neck breaks, what it means for the engine; and every single failure and pair of failures
 * that brings about each effect which has a name.
 */
#ifndef TOWERSHAFT_EFFECTS_H
#define TOWERSHAFT_EFFECTS_H

#include "towershaft/study.h"

typedef struct ts_effects_options {
    const char *part;      /* NULL or "": the whole; else one part, by its name or its address */
    const char *condition; /* NULL: the one in which its spool turns fastest; speeds of a part  */
    const char *format;    /* of one part: "pdf", "html"; NULL: for a terminal                  */
    const char *paper;     /* "A4", "Letter"; NULL: A4                                          */
} ts_effects_options;

/* For a terminal or, always whole, by docs/schema/effects.schema.json.  TS_NOT_UNDERSTOOD: no drive
 * was read, or it knows no such part or condition; the messages say which is nearest. */
TS_API ts_status ts_effects_write(ts_study *study, const ts_effects_options *options, bool json,
                                  const ts_page_options *page, const ts_sink *sink);

#endif
