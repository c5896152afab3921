/* model/scalar_write.h: how is a text written so that it reads back as itself? */
#ifndef TS_MODEL_SCALAR_WRITE_H
#define TS_MODEL_SCALAR_WRITE_H

#include "base/buffer.h"
#include "base/text.h"

#include <stdbool.h>

/* Would the text, written without quotes inside or outside of brackets, read as something else? */
bool ts_scalar_needs_quotes(ts_text text, bool in_brackets);

/* Do older YAML readers take the plain text for a number, as they do with 6:30? */
bool ts_scalar_misleads(ts_text text);

/* Appends the text in the given quotes: ', " or 0 for none. */
void ts_scalar_write(ts_buffer *out, ts_text text, char quote);

#endif
