/* base/text_columns.c: how many columns does a text take on a terminal? */
#include "base/text.h"

/* The blocks of combining marks that stand over or under the letter before them (Unicode 15,
 * Blocks.txt; from memory), and the zero-width characters of U+200B..U+200F. */
static bool takes_no_column(uint32_t code)
{
    static const struct {
        uint32_t first, last;
    } range[] = {
        {0x0300, 0x036F}, {0x0483, 0x0489}, {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF},
        {0x200B, 0x200F}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F},
    };
    for (size_t i = 0; i < sizeof range / sizeof range[0]; i++) {
        if (code >= range[i].first && code <= range[i].last)
            return true;
    }
    return false;
}

size_t ts_text_columns(ts_text text)
{
    size_t columns = 0;
    for (size_t at = 0; at < text.length;) {
        uint32_t     code  = 0;
        const size_t taken = ts_text_code_point(text, at, &code);
        columns += taken > 0 && takes_no_column(code) ? 0 : 1;
        at += taken > 0 ? taken : 1;
    }
    return columns;
}
