/* base/diagnostic.h: what could not be understood, where it stands, and what was expected. */
#ifndef TS_BASE_DIAGNOSTIC_H
#define TS_BASE_DIAGNOSTIC_H

#include "base/arena.h"
#include "base/buffer.h"
#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct ts_diagnostic {
    const char *code;     /* stable, kebab-case: "unknown-key", "decimal-comma", "pad-used-twice" */
    uint32_t    line;     /* from 1; 0 when the whole file is meant                               */
    uint32_t    column;   /* from 1, in code points                                               */
    uint32_t    columns;  /* how many code points the caret run covers, at least 1                */
    const char *says;     /* what is wrong, one sentence without a full stop                      */
    const char *expected; /* what was expected; NULL when nothing can be said                     */
    const char *nearest;  /* nearest valid name or value; NULL when there is none                 */
    const char *address;  /* address of the value; NULL when it has none                          */
} ts_diagnostic;

typedef struct ts_diagnostics ts_diagnostics;

#define TS_DIAGNOSTICS_MOST 200 /* later ones are counted, not kept */

/* name: the path as the user gave it, for "file:line:column"; bytes: the file, for caret lines.
 * Both must outlive the list. */
ts_diagnostics *ts_diagnostics_open(ts_arena *arena, const char *name, ts_text bytes);

/* Forgets all that it holds, and keeps what comes in `arena`. */
void ts_diagnostics_clear(ts_diagnostics *list, ts_arena *arena);

/* Copies everything it is given into the arena.  Kept in the order of line, then column. */
void ts_diagnose(ts_diagnostics *list, const ts_diagnostic *diagnostic);
/* The same with `says` formatted (%s %.*s %d %zu ... no floats). */
void ts_diagnose_format(ts_diagnostics *list, const ts_diagnostic *rest, const char *format, ...)
    __attribute__((format(printf, 3, 4)));

size_t ts_diagnostics_count(const ts_diagnostics *list); /* all, also those not kept */
size_t ts_diagnostics_kept(const ts_diagnostics *list);
const ts_diagnostic *ts_diagnostics_at(const ts_diagnostics *list, size_t index);

/* "file:line:column: says; expected ...; did you mean ...?" then the line and the caret run.
 * `columns` of the terminal wrap the sentence; 0 leaves it on one line, for programs to read.
 * Control bytes of the file are shown escaped; a line over 160 columns, or over those of the
 * terminal, is cut around the caret. */
void ts_diagnostics_print(const ts_diagnostics *list, size_t columns, ts_buffer *out);

#endif
