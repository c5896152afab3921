/* base/text_wrap.h: a sentence over as many lines as it takes. */
#ifndef TS_BASE_TEXT_WRAP_H
#define TS_BASE_TEXT_WRAP_H

#include "base/buffer.h"
#include "base/text.h"

typedef struct ts_wrap {
    size_t columns; /* of a line; 0: one line takes it all        */
    size_t indent;  /* blanks before every line after the first   */
    size_t used;    /* columns that the first line holds already  */
} ts_wrap;

/* A text that fits stands as it is.  Otherwise it breaks at blanks, runs of which become one; a
 * word longer than a line stands on its own.  Ends without an end of line, and returns the columns
 * that the last line holds then. */
size_t ts_wrap_text(ts_buffer *out, ts_text text, ts_wrap wrap);

#endif
