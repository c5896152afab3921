/* base/memo.h: was this very question answered lately?
 *
 * For the same work done over and over with few of its inputs changed.  Every place keeps its last
 * questions, byte for byte, and the answers.  An answer is used only for an equal question, so that
 * what is found is bitwise what would have been computed; a question must therefore hold all that
 * its answer depends on.  Without memory, and without a memo (NULL), nothing is known.
 */
#ifndef TS_BASE_MEMO_H
#define TS_BASE_MEMO_H

#include "towershaft/status.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct ts_memo ts_memo;

typedef enum ts_memo_kind {
    TS_MEMO_WEB,     /* frequencies of a gear across its plane */
    TS_MEMO_WHIRL,   /* first critical speed of a shaft         */
    TS_MEMO_BEARING, /* which bearing is the lightest that holds */
    TS_MEMO_DUTY,    /* what a condition makes of a bearing      */
    TS_MEMO_OUTLINE, /* half a tooth of a gear in a picture       */
    TS_MEMO_KINDS
} ts_memo_kind;

/* `depth`: how many questions a place keeps, the last ones; 0 is 1.  NULL: without memory. */
ts_memo *ts_memo_open(const ts_allocator *allocator, size_t depth);
void     ts_memo_close(ts_memo *memo); /* NULL is allowed */

/* More of the question that comes next.  Bytes between the members of a record are no question:
 * numbers one by one, or records that have none. */
void ts_memo_ask(ts_memo *memo, const void *bytes, size_t length);

/* Ends the question, of one place.  *known: the memory that is returned holds the answer, `size`
 * bytes; else it is the caller's to fill.  NULL: to be computed as if there were no memo. */
void *ts_memo_answer(ts_memo *memo, ts_memo_kind kind, size_t place, size_t size, bool *known);

#endif
