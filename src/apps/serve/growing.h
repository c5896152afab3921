/* apps/serve/growing.h: bytes that grow, and JSON written into them. */
#ifndef TS_APPS_SERVE_GROWING_H
#define TS_APPS_SERVE_GROWING_H

#include "towershaft/status.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct growing {
    char  *bytes; /* NUL behind the last when anything was added */
    size_t length, room;
    bool   failed; /* out of memory once: nothing more is added */
} growing;

void growing_add(growing *into, const char *bytes, size_t length);
void growing_text(growing *into, const char *text);
void growing_number(growing *into, long long value);
/* A JSON string in quotes.  Bytes that are not UTF-8 become U+FFFD; <, > and & are escaped too, so
 * that no sink of the page can take them for markup. */
void growing_string(growing *into, const char *bytes, size_t length);
void growing_forget(growing *into);
/* What the library writes is added. */
ts_sink growing_sink(growing *into);

#endif
