/* base/text_wrap.c: where does a sentence break that is longer than a line? */
#include "base/text_wrap.h"

size_t ts_wrap_text(ts_buffer *out, ts_text text, ts_wrap wrap)
{
    size_t       column = wrap.used;
    const size_t whole  = ts_text_columns(text);
    if (wrap.columns == 0 || wrap.used + whole <= wrap.columns) {
        ts_buffer_text(out, text);
        return wrap.used + whole;
    }
    bool first = true; /* of its line: no blank before it */
    for (size_t at = 0; at < text.length;) {
        size_t end = at;
        while (end < text.length && text.at[end] != ' ')
            end++;
        const ts_text word  = {text.at + at, end - at};
        const size_t  width = ts_text_columns(word);
        if (!first && wrap.columns > 0 && column + 1 + width > wrap.columns) {
            ts_buffer_add(out, "\n");
            ts_buffer_fill(out, ' ', wrap.indent);
            column = wrap.indent;
        } else if (!first) {
            ts_buffer_add(out, " ");
            column++;
        }
        ts_buffer_text(out, word);
        column += width;
        first = false;
        while (end < text.length && text.at[end] == ' ')
            end++;
        at = end;
    }
    return column;
}
