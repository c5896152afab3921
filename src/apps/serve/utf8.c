/* Which bytes are a character? */
#include "apps/serve/utf8.h"

static int is_tail(unsigned char byte)
{
    return byte >= 0x80 && byte <= 0xBF;
}

size_t utf8_length(const char *bytes, size_t length)
{
    const unsigned char *at = (const unsigned char *)bytes;
    if (length == 0)
        return 0;
    if (at[0] < 0x80)
        return 1;
    if (at[0] >= 0xC2 && at[0] <= 0xDF)
        return length >= 2 && is_tail(at[1]) ? 2 : 0;
    if (at[0] >= 0xE0 && at[0] <= 0xEF) {
        const unsigned char low  = at[0] == 0xE0 ? 0xA0 : 0x80;
        const unsigned char high = at[0] == 0xED ? 0x9F : 0xBF;
        return length >= 3 && at[1] >= low && at[1] <= high && is_tail(at[2]) ? 3 : 0;
    }
    if (at[0] >= 0xF0 && at[0] <= 0xF4) {
        const unsigned char low  = at[0] == 0xF0 ? 0x90 : 0x80;
        const unsigned char high = at[0] == 0xF4 ? 0x8F : 0xBF;
        return length >= 4 && at[1] >= low && at[1] <= high && is_tail(at[2]) && is_tail(at[3]) ? 4
                                                                                                : 0;
    }
    return 0;
}
