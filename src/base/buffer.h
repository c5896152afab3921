/* base/buffer.h: text that grows, free of locale.
 *
 * A failed append sets `failed` and later appends do nothing, so a writer checks once, at the end.
 */
#ifndef TS_BASE_BUFFER_H
#define TS_BASE_BUFFER_H

#include "base/text.h"
#include "towershaft/status.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef struct ts_buffer {
    char               *bytes;  /* always zero-terminated once anything was appended; may be NULL */
    size_t              length; /* without the terminating zero                                   */
    size_t              room;
    const ts_allocator *allocator;
    bool                failed;
} ts_buffer;

void ts_buffer_open(ts_buffer *buffer, const ts_allocator *allocator); /* NULL: the standard one */
void ts_buffer_close(ts_buffer *buffer);
void ts_buffer_clear(ts_buffer *buffer); /* keeps the room, and a failure: it is never forgotten */

void ts_buffer_bytes(ts_buffer *buffer, const char *bytes, size_t length);
/* The next `count` bytes, for the caller to write all of them; NULL without memory. */
char *ts_buffer_take(ts_buffer *buffer, size_t count);
void  ts_buffer_add(ts_buffer *buffer, const char *text);
void  ts_buffer_text(ts_buffer *buffer, ts_text text);
void  ts_buffer_fill(ts_buffer *buffer, char byte, size_t count);
void  ts_buffer_integer(ts_buffer *buffer, int64_t value);
void  ts_buffer_number(ts_buffer *buffer, double value); /* shortest form that reads back */
/* `decimals` digits after the point (0..12), correctly rounded, ties to even; never "-0". */
void ts_buffer_fixed(ts_buffer *buffer, double value, int decimals);
/* `digits` significant digits (1..17), zeros kept, without an exponent between 1e-4 and 1e9;
 * 0 is "0".  Both this and the two calls above want a finite value: anything else is a mistake of
 * ours, stopped in checked builds and written as "?" otherwise. */
void ts_buffer_significant(ts_buffer *buffer, double value, int digits);
/* %s %d %u %zu %c %% and %.*s only; anything with a decimal point goes through the calls above. */
void ts_buffer_print(ts_buffer *buffer, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
void ts_buffer_print_list(ts_buffer *buffer, const char *format, va_list list)
    __attribute__((format(printf, 2, 0)));

ts_status ts_buffer_send(const ts_buffer *buffer, const ts_sink *sink);

#endif
