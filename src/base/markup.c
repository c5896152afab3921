/* base/markup.c: how does a text get into HTML or SVG without becoming part of it? */
#include "base/markup.h"

static const char *entity_of(uint32_t code)
{
    switch (code) {
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '&':
        return "&amp;";
    case '"':
        return "&quot;";
    case '\'':
        return "&#39;";
    default:
        return NULL;
    }
}

/* Control codes, and marks that would turn the direction of what follows. */
static bool is_unruly(uint32_t code)
{
    return (code < 0x20 && code != '\n') || (code >= 0x7F && code < 0xA0) ||
           (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

/* Nothing that could end a text or an attribute gets through; what is unruly or no UTF-8 becomes
 * U+FFFD. */
void ts_markup_text(ts_buffer *out, const char *text)
{
    const ts_text whole = ts_text_of(text);
    for (size_t at = 0; at < whole.length;) {
        uint32_t     code   = 0;
        const size_t taken  = ts_text_code_point(whole, at, &code);
        const char  *entity = taken > 0 ? entity_of(code) : NULL;
        if (entity != NULL)
            ts_buffer_add(out, entity);
        else if (taken == 0 || is_unruly(code))
            ts_buffer_add(out, "\xEF\xBF\xBD");
        else
            ts_buffer_bytes(out, text + at, taken);
        at += taken > 0 ? taken : 1;
    }
}
