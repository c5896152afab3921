/* base/text_columns.c: how many columns does a text take on a terminal? */
#include "base/combining_mark.h"
#include "base/text.h"

size_t ts_text_columns(ts_text text)
{
    size_t columns = 0;
    for (size_t at = 0; at < text.length;) {
        uint32_t     code  = 0;
        const size_t taken = ts_text_code_point(text, at, &code);
        columns += taken > 0 && ts_combining_mark(code) ? 0 : 1;
        at += taken > 0 ? taken : 1;
    }
    return columns;
}
