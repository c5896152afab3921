/* base/markup.h: texts of the user's file among the marks of HTML and SVG. */
#ifndef TS_BASE_MARKUP_H
#define TS_BASE_MARKUP_H

#include "base/buffer.h"

/* Nothing that could end a text or an attribute gets through; what is unruly (control codes, marks
 * that turn the direction of what follows) or no UTF-8 becomes U+FFFD. */
void ts_markup_text(ts_buffer *out, const char *text);

#endif
