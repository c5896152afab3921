/* base/text.c: what stands in a piece of somebody else's bytes? */
#include "base/text.h"

#include <string.h>

ts_text ts_text_of(const char *zero_terminated)
{
    if (zero_terminated == NULL)
        return (ts_text){"", 0};
    return (ts_text){zero_terminated, strlen(zero_terminated)};
}

bool ts_text_equal(ts_text a, ts_text b)
{
    return a.length == b.length && (a.length == 0 || memcmp(a.at, b.at, a.length) == 0);
}

static bool is_blank(char byte)
{
    return byte == ' ' || byte == '\t';
}

ts_text ts_text_trim(ts_text text)
{
    while (text.length > 0 && is_blank(text.at[0])) {
        text.at++;
        text.length--;
    }
    while (text.length > 0 && is_blank(text.at[text.length - 1]))
        text.length--;
    return text;
}

/* How long a sequence with this first byte is, and the range of its second byte, which is where
 * overlong forms, surrogates and values past U+10FFFF are told apart (Unicode 15, table 3-7). */
static size_t sequence_length(unsigned char first, unsigned char *low, unsigned char *high)
{
    *low  = 0x80;
    *high = 0xBF;
    if (first < 0x80)
        return 1;
    if (first < 0xC2 || first > 0xF4)
        return 0;
    if (first < 0xE0)
        return 2;
    if (first == 0xE0)
        *low = 0xA0;
    if (first == 0xED)
        *high = 0x9F;
    if (first < 0xF0)
        return 3;
    if (first == 0xF0)
        *low = 0x90;
    if (first == 0xF4)
        *high = 0x8F;
    return 4;
}

size_t ts_text_code_point(ts_text text, size_t at, uint32_t *code_point)
{
    static const unsigned char first_mask[] = {0, 0x7F, 0x1F, 0x0F, 0x07};

    const unsigned char *byte = (const unsigned char *)text.at + at;
    unsigned char        low, high;
    const size_t         length = sequence_length(byte[0], &low, &high);
    if (length == 0 || length > text.length - at)
        return 0;
    uint32_t code = byte[0] & first_mask[length];
    for (size_t i = 1; i < length; i++) {
        if (byte[i] < low || byte[i] > high)
            return 0;
        code = code << 6 | (byte[i] & 0x3FU);
        low  = 0x80;
        high = 0xBF;
    }
    *code_point = code;
    return length;
}

size_t ts_text_utf8_length(ts_text text)
{
    size_t at = 0;
    while (at < text.length) {
        uint32_t     code;
        const size_t taken = ts_text_code_point(text, at, &code);
        if (taken == 0)
            break;
        at += taken;
    }
    return at;
}
