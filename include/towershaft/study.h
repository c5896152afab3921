/* towershaft/study.h: one drive, read, solved and judged.
 *
 * Shapes    A study holds one drive file and its answer.  Reading a file replaces both.
 * Units     SI everywhere: m, N, Pa, W, rad, rad/s.  A margin is capacity / demand - 1.
 * Errors    A status other than TS_OK means that the work could not be done; the reasons are in
 *           the diagnostics.  A drive that does not hold is an answer, not an error.
 * Missing   What cannot be computed is NaN, and a finding says what it lacked.
 * Owner     The study owns all that it returns; pointers stay good until the next read or close.
 * Threads   One thread per study at a time; separate studies never meet.
 * Purity    The same bytes, name and options give the same answer, bit for bit: no clock, locale,
 *           environment, file or global state is read.
 */
#ifndef TOWERSHAFT_STUDY_H
#define TOWERSHAFT_STUDY_H

#include "towershaft/status.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct ts_study ts_study;

/* What the program always says. */
TS_API const char *ts_caution(void);
TS_API const char *ts_version(void);

/* Opens an empty study; `allocator` NULL is the C library's. */
TS_API ts_status ts_study_open(const ts_allocator *allocator, ts_study **out);
TS_API void      ts_study_close(ts_study *study); /* NULL is allowed */

/* Opens an empty study, with the allocator of `like`, for a drive that differs little from the one
 * that `like` holds.  Both remember from now on what they have computed lately, part by part, and compute
 * anew only where a number that goes into it has changed: the answers are the same, bit for bit.
 * They are used by one thread at a time, and may be closed in any order. */
TS_API ts_status ts_study_open_beside(ts_study *like, ts_study **out);

/* Which kinds of file will do: a drive, or stand-alone elements (towershaft/rate.h). */
typedef enum ts_file_wanted { TS_WANT_DRIVE, TS_WANT_RATE, TS_WANT_EITHER } ts_file_wanted;

typedef struct ts_study_options {
    int32_t today; /* days since 1970-01-01, for waivers that end; INT32_MIN: not told, a waiver
                      with an end is then reported as one whose date could not be judged      */
    bool workings; /* keep every step, for `why` and for sources beside results               */
    bool us;       /* customary units in the sentences of findings; values stay SI            */
    ts_file_wanted file; /* any other kind is not understood                                     */
} ts_study_options;

/* Reads and solves.  `name` is the path as the user gave it.  The bytes are copied.
 * TS_NOT_UNDERSTOOD: see ts_study_diagnostic. */
TS_API ts_status ts_study_read(ts_study *study, const char *name, const char *bytes, size_t length,
                               const ts_study_options *options);

/* ---- what could not be understood ---- */

typedef struct ts_message {
    const char *code;
    uint32_t    line, column; /* from 1; 0: the whole file */
    const char *says;
    const char *expected; /* may be NULL */
    const char *nearest;  /* may be NULL */
    const char *address;  /* may be NULL */
} ts_message;

TS_API size_t     ts_study_message_count(const ts_study *study);
TS_API ts_message ts_study_message(const ts_study *study, size_t index);
/* "file:line:column: ..." with the line and a caret, all of them, sentences wrapped at `columns` of
 * a terminal (0: not wrapped); or the same as JSON.  `study` NULL writes nothing. */
TS_API ts_status ts_study_write_messages(const ts_study *study, bool json, int columns,
                                         const ts_sink *sink);

/* ---- the answer ---- */

typedef enum ts_verdict { TS_HOLDS, TS_DOES_NOT_HOLD, TS_VERDICT_NOT_COMPUTABLE } ts_verdict;

TS_API ts_verdict ts_study_verdict(const ts_study *study);

typedef struct ts_finding_view {
    const char *rule, *level, *state; /* "B2-speed-band", "refuse", "open" */
    const char *address;
    uint32_t    line, column;
    const char *condition; /* NULL when it does not vary      */
    const char *says;
    const char *remedy;               /* may be NULL */
    double      value, limit, margin; /* SI; NaN when there is none */
    const char *unit;                 /* SI unit of value and limit; may be NULL */
    const char *source;
    const char *fingerprint; /* 16 hexadecimal digits, stable between runs and line moves */
} ts_finding_view;

TS_API size_t          ts_study_finding_count(const ts_study *study);
TS_API ts_finding_view ts_study_finding(ts_study *study, size_t index);

/* One computed number, "drive/hp/box/clockwise/2:n@take-off".  NaN when there is none such; needs
 * workings. */
TS_API double ts_study_number(ts_study *study, const char *address);

/* ---- the answer on paper and screen ---- */

typedef enum ts_document {
    TS_DOCUMENT_PAGE,  /* for a terminal                      */
    TS_DOCUMENT_JSON,  /* docs/schema/check.schema.json       */
    TS_DOCUMENT_SARIF, /* OASIS SARIF 2.1.0                   */
    TS_DOCUMENT_JUNIT  /* JUnit XML as build servers read it  */
} ts_document;

typedef struct ts_page_options {
    bool us;      /* customary units on what people see; never in JSON */
    bool colour;  /* terminal colours beside the signs, never instead  */
    int  columns; /* terminal width; 0 means 100                       */
    bool all;     /* also the passed margins                           */
} ts_page_options;

TS_API ts_status ts_study_write(ts_study *study, ts_document document,
                                const ts_page_options *options, const ts_sink *sink);

/* The working of one number down to the lines of the file.  An address without a symbol lists the
 * numbers that stand there.  TS_NOT_UNDERSTOOD with a message when there is no such number. */
TS_API ts_status ts_study_write_why(ts_study *study, const char *address, bool json,
                                    const ts_page_options *options, const ts_sink *sink);

/* What an address, symbol or condition would be completed to, one a line. */
TS_API ts_status ts_study_write_addresses(ts_study *study, const char *prefix, const ts_sink *sink);

/* What changed from `before` to `after`: inputs, ratios, speeds, findings that appeared, went or
 * changed, in order of consequence. */
TS_API ts_status ts_compare_write(ts_study *before, ts_study *after, bool json,
                                  const ts_page_options *options, const ts_sink *sink);

/* One value of a file replaced, or with `value` NULL one optional key removed; every other byte
 * stays.  The new bytes go to `sink` only when they can be read again (whether or not the drive
 * then holds).  The study forgets what it held; its messages are those of this call. */
TS_API ts_status ts_study_set_bytes(ts_study *study, const char *name, const char *bytes,
                                    size_t length, const char *address, const char *value,
                                    const ts_sink *sink);

/* The same for one item of a list, such as a shaft of a branch, that takes the place `place` (from
 * 1) in its list; those between move up. */
TS_API ts_status ts_study_move_bytes(ts_study *study, const char *name, const char *bytes,
                                     size_t length, const char *address, uint32_t place,
                                     const ts_sink *sink);

typedef struct ts_study_edit {
    const char *address;
    const char *value; /* NULL: removed, or moved  */
    uint32_t    place; /* 0: not moved             */
} ts_study_edit;

/* The bytes that the study has read, with the edits made one after another as the two above make
 * them; the study keeps what it holds.  The bytes are not proven: read them, and when they cannot
 * be read, or this returns TS_NOT_UNDERSTOOD (it leaves no message), make the edits by the above.
 */
TS_API ts_status ts_study_propose(ts_study *study, const ts_study_edit *edits, size_t count,
                                  const ts_sink *sink);

#endif
