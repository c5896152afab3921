/* How do answers grow while they are written? */
#include "apps/serve/growing.h"

#include "apps/serve/utf8.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void growing_add(growing *into, const char *bytes, size_t length)
{
    if (into->failed)
        return;
    if (length >= into->room - into->length) {
        size_t room = into->room == 0 ? 4096 : into->room;
        while (room - into->length <= length)
            room *= 2;
        char *grown = realloc(into->bytes, room);
        if (grown == NULL) {
            into->failed = true;
            return;
        }
        into->bytes = grown;
        into->room  = room;
    }
    if (length > 0)
        memcpy(into->bytes + into->length, bytes, length);
    into->length += length;
    into->bytes[into->length] = '\0';
}

void growing_text(growing *into, const char *text)
{
    growing_add(into, text, strlen(text));
}

void growing_number(growing *into, long long value)
{
    char text[24];
    growing_add(into, text, (size_t)snprintf(text, sizeof text, "%lld", value));
}

static void add_escaped(growing *into, unsigned char byte)
{
    char text[8];
    growing_add(into, text, (size_t)snprintf(text, sizeof text, "\\u%04x", byte));
}

/* It stands for itself in a string, as nearly all bytes of a file do. */
static bool is_plain(unsigned char byte)
{
    return byte >= 0x20 && byte < 0x7F && byte != '"' && byte != '\\' && byte != '<' &&
           byte != '>' && byte != '&';
}

void growing_string(growing *into, const char *bytes, size_t length)
{
    growing_add(into, "\"", 1);
    for (size_t i = 0; i < length;) {
        size_t plain = 0;
        while (i + plain < length && is_plain((unsigned char)bytes[i + plain]))
            plain++;
        growing_add(into, bytes + i, plain);
        i += plain;
        if (i == length)
            break;
        const unsigned char byte = (unsigned char)bytes[i];
        const size_t        size = utf8_length(bytes + i, length - i);
        if (size == 0) {
            growing_text(into, "\xEF\xBF\xBD");
            i++;
            continue;
        }
        if (byte == '"' || byte == '\\') {
            growing_add(into, "\\", 1);
            growing_add(into, bytes + i, 1);
        } else if (byte == '\n') {
            growing_text(into, "\\n");
        } else if (byte < 0x20 || byte == 0x7F || byte == '<' || byte == '>' || byte == '&') {
            add_escaped(into, byte);
        } else {
            growing_add(into, bytes + i, size);
        }
        i += size;
    }
    growing_add(into, "\"", 1);
}

void growing_forget(growing *into)
{
    free(into->bytes);
    *into = (growing){NULL, 0, 0, false};
}

static int take(void *context, const char *bytes, size_t length)
{
    growing *into = context;
    growing_add(into, bytes, length);
    return into->failed ? -1 : 0;
}

ts_sink growing_sink(growing *into)
{
    return (ts_sink){take, into};
}
