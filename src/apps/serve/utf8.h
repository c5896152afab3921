/* apps/serve/utf8.h: how long is the character that begins here? */
#ifndef TS_APPS_SERVE_UTF8_H
#define TS_APPS_SERVE_UTF8_H

#include <stddef.h>

/* 1 to 4; 0: no character of UTF-8 begins here (table 3-7 of the Unicode standard: no overlong
 * form, no surrogate, nothing above U+10FFFF), or it is cut off. */
size_t utf8_length(const char *bytes, size_t length);

#endif
