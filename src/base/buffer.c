/* base/buffer.c: how is text put together without caring for memory or locale at every step? */
#include "base/buffer.h"

#include "base/arena.h"
#include "base/assert.h"
#include "base/number.h"

#include <math.h>
#include <string.h>

#define ROOM_FIRST ((size_t)256)

void ts_buffer_open(ts_buffer *buffer, const ts_allocator *allocator)
{
    *buffer = (ts_buffer){.allocator = allocator != NULL ? allocator : &ts_allocator_standard};
}

void ts_buffer_close(ts_buffer *buffer)
{
    if (buffer->bytes != NULL)
        (void)buffer->allocator->resize(buffer->allocator->context, buffer->bytes, 0);
    ts_buffer_open(buffer, buffer->allocator);
}

void ts_buffer_clear(ts_buffer *buffer)
{
    buffer->length = 0;
    if (buffer->bytes != NULL)
        buffer->bytes[0] = '\0';
}

/* Makes room for `more` bytes and the zero after them. */
static bool grow(ts_buffer *buffer, size_t more)
{
    if (buffer->failed)
        return false;
    if (more < buffer->room - buffer->length)
        return true;
    if (more > SIZE_MAX / 2 - buffer->length - 1) {
        buffer->failed = true;
        return false;
    }
    const size_t needed = buffer->length + more + 1;
    size_t       room   = buffer->room > 0 ? buffer->room : ROOM_FIRST;
    while (room < needed)
        room *= 2;
    char *bytes = buffer->allocator->resize(buffer->allocator->context, buffer->bytes, room);
    if (bytes == NULL) {
        buffer->failed = true;
        return false;
    }
    buffer->bytes = bytes;
    buffer->room  = room;
    return true;
}

void ts_buffer_bytes(ts_buffer *buffer, const char *bytes, size_t length)
{
    if (!grow(buffer, length))
        return;
    if (length > 0)
        memcpy(buffer->bytes + buffer->length, bytes, length);
    buffer->length += length;
    buffer->bytes[buffer->length] = '\0';
}

char *ts_buffer_take(ts_buffer *buffer, size_t count)
{
    if (!grow(buffer, count))
        return NULL;
    char *taken = buffer->bytes + buffer->length;
    buffer->length += count;
    buffer->bytes[buffer->length] = '\0';
    return taken;
}

void ts_buffer_add(ts_buffer *buffer, const char *text)
{
    ts_buffer_text(buffer, ts_text_of(text));
}

void ts_buffer_text(ts_buffer *buffer, ts_text text)
{
    ts_buffer_bytes(buffer, text.at, text.length);
}

void ts_buffer_fill(ts_buffer *buffer, char byte, size_t count)
{
    if (!grow(buffer, count))
        return;
    memset(buffer->bytes + buffer->length, byte, count);
    buffer->length += count;
    buffer->bytes[buffer->length] = '\0';
}

static void add_whole(ts_buffer *buffer, bool negative, uint64_t magnitude)
{
    char   digits[24];
    size_t at = sizeof digits;
    do {
        digits[--at] = (char)('0' + magnitude % 10);
        magnitude /= 10;
    } while (magnitude > 0);
    if (negative)
        digits[--at] = '-';
    ts_buffer_bytes(buffer, digits + at, sizeof digits - at);
}

void ts_buffer_integer(ts_buffer *buffer, int64_t value)
{
    add_whole(buffer, value < 0, value < 0 ? 0 - (uint64_t)value : (uint64_t)value);
}

/* A number that was not computed must not look like one. */
static bool refuse_not_finite(ts_buffer *buffer, double value)
{
    TS_ASSERT(isfinite(value));
    if (isfinite(value))
        return false;
    ts_buffer_add(buffer, "?");
    return true;
}

void ts_buffer_number(ts_buffer *buffer, double value)
{
    char out[TS_NUMBER_ROOM];
    if (!refuse_not_finite(buffer, value))
        ts_buffer_bytes(buffer, out, ts_number_print(out, value));
}

void ts_buffer_fixed(ts_buffer *buffer, double value, int decimals)
{
    char out[TS_NUMBER_FIXED_ROOM];
    if (!refuse_not_finite(buffer, value))
        ts_buffer_bytes(buffer, out, ts_number_fixed(out, value, decimals));
}

void ts_buffer_significant(ts_buffer *buffer, double value, int digits)
{
    char out[TS_NUMBER_ROOM];
    if (!refuse_not_finite(buffer, value))
        ts_buffer_bytes(buffer, out, ts_number_significant(out, value, digits));
}

void ts_buffer_print(ts_buffer *buffer, const char *format, ...)
{
    va_list list;
    va_start(list, format);
    ts_buffer_print_list(buffer, format, list);
    va_end(list);
}

/* Never reads past `most` bytes: "%.*s" is how a piece without a zero is printed. */
static void add_at_most(ts_buffer *buffer, const char *text, int most)
{
    TS_ASSERT(most >= 0);
    size_t length = 0;
    while (length < (size_t)(most > 0 ? most : 0) && text[length] != '\0')
        length++;
    ts_buffer_bytes(buffer, text, length);
}

/* Our own and not vsnprintf, so that no flag of a locale can ever reach the output. */
void ts_buffer_print_list(ts_buffer *buffer, const char *format, va_list list)
{
    for (const char *at = format; *at != '\0'; at++) {
        const size_t plain = strcspn(at, "%");
        ts_buffer_bytes(buffer, at, plain);
        at += plain;
        if (*at == '\0')
            return;
        at++;
        if (*at == 's') {
            ts_buffer_add(buffer, va_arg(list, const char *));
        } else if (*at == 'd') {
            ts_buffer_integer(buffer, va_arg(list, int));
        } else if (*at == 'u') {
            add_whole(buffer, false, va_arg(list, unsigned));
        } else if (*at == 'c') {
            ts_buffer_fill(buffer, (char)va_arg(list, int), 1);
        } else if (*at == '%') {
            ts_buffer_fill(buffer, '%', 1);
        } else if (strncmp(at, "zu", 2) == 0) {
            add_whole(buffer, false, va_arg(list, size_t));
            at += 1;
        } else if (strncmp(at, ".*s", 3) == 0) {
            const int most = va_arg(list, int);
            add_at_most(buffer, va_arg(list, const char *), most);
            at += 2;
        } else {
            const bool directive_known = false;
            TS_ASSERT(directive_known);
            return;
        }
    }
}

ts_status ts_buffer_send(const ts_buffer *buffer, const ts_sink *sink)
{
    if (buffer->failed)
        return TS_NO_MEMORY;
    if (buffer->length == 0)
        return TS_OK;
    return sink->write(sink->context, buffer->bytes, buffer->length) == 0 ? TS_OK : TS_NO_OUTPUT;
}
