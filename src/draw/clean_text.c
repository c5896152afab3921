/* draw/clean_text.c: what may a name hold without disturbing the line it stands in? */
#include "base/text.h"
#include "draw/lettering.h"

#include <stdint.h>
#include <string.h>

/* The code point at the start of well-formed UTF-8, and its length. */
static uint32_t first_point(const char *at, size_t *length)
{
    const unsigned char *b = (const unsigned char *)at;
    if (b[0] < 0x80) {
        *length = 1;
        return b[0];
    }
    *length        = b[0] < 0xE0 ? 2 : b[0] < 0xF0 ? 3 : 4;
    uint32_t point = b[0] & (0xFFU >> (*length + 1));
    for (size_t i = 1; i < *length; i++)
        point = (point << 6) | (b[i] & 0x3FU);
    return point;
}

/* Controls, marks of direction, line and paragraph ends, and what no font should be asked for. */
static bool disturbs(uint32_t point)
{
    return point < 0x20 || (point >= 0x7F && point < 0xA0) || point == 0x061C ||
           (point >= 0x200B && point <= 0x200F) || (point >= 0x2028 && point <= 0x202E) ||
           (point >= 0x2060 && point <= 0x206F) || point == 0xFEFF ||
           (point >= 0xFFF9 && point <= 0xFFFC) || (point >= 0xE0000 && point <= 0xE0FFF) ||
           (point & 0xFFFE) == 0xFFFE;
}

void ts_add_clean(ts_buffer *out, const char *text)
{
    static const char replacement[] = "\xEF\xBF\xBD";
    ts_text           rest          = ts_text_of(text);
    while (rest.length > 0) {
        const size_t good = ts_text_utf8_length(rest);
        for (size_t i = 0, length = 0; i < good; i += length) {
            const uint32_t point = first_point(rest.at + i, &length);
            if (point == '\n' || point == '\t')
                ts_buffer_bytes(out, " ", 1);
            else if (disturbs(point))
                ts_buffer_add(out, replacement);
            else
                ts_buffer_bytes(out, rest.at + i, length);
        }
        rest = (ts_text){rest.at + good, rest.length - good};
        if (rest.length > 0) { /* one byte that is no UTF-8 */
            ts_buffer_add(out, replacement);
            rest = (ts_text){rest.at + 1, rest.length - 1};
        }
    }
}
