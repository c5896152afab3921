/* model/scalar_decode.c: which text do the bytes of a YAML scalar stand for? */
#include "model/scalar_decode.h"

#include <stdint.h>
#include <string.h>

typedef struct decoder {
    ts_text raw;
    size_t  i;
    char   *out;
    size_t  length;
    size_t  kept; /* bytes of out that no folding takes away: they came from escapes */
} decoder;

static bool is_blank(char byte)
{
    return byte == ' ' || byte == '\t';
}

static void put(decoder *d, char byte)
{
    d->out[d->length++] = byte;
}

/* ---- lines ---------------------------------------------------------------------------------- */

static bool at_line_end(const decoder *d)
{
    return d->i < d->raw.length && (d->raw.at[d->i] == '\n' || d->raw.at[d->i] == '\r');
}

static void take_line_end(decoder *d)
{
    if (d->raw.at[d->i] == '\r')
        d->i++;
    if (d->i < d->raw.length && d->raw.at[d->i] == '\n')
        d->i++;
}

static void skip_blanks(decoder *d)
{
    while (d->i < d->raw.length && is_blank(d->raw.at[d->i]))
        d->i++;
}

/* One line end becomes a blank; of more, each after the first a line end.  Blanks around go.  An
 * escaped line end becomes nothing. */
static void fold(decoder *d, bool escaped)
{
    size_t breaks = 0;
    while (!escaped && d->length > d->kept && is_blank(d->out[d->length - 1]))
        d->length--;
    take_line_end(d);
    skip_blanks(d);
    for (; at_line_end(d); breaks++) {
        take_line_end(d);
        skip_blanks(d);
    }
    if (breaks == 0 && !escaped)
        put(d, ' ');
    for (; breaks > 0; breaks--)
        put(d, '\n');
    d->kept = d->length;
}

/* ---- escapes -------------------------------------------------------------------------------- */

static uint32_t hexadecimal(decoder *d, int digits)
{
    uint32_t value = 0;
    for (; digits > 0 && d->i < d->raw.length; digits--) {
        const char digit = d->raw.at[d->i++];
        if (digit >= '0' && digit <= '9')
            value = value << 4 | (uint32_t)(digit - '0');
        else
            value = value << 4 | ((uint32_t)((digit | 0x20) - 'a' + 10) & 0xF);
    }
    return value;
}

/* As UTF-8; what is no character becomes U+FFFD. */
static void put_code_point(decoder *d, uint32_t code)
{
    if (code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF))
        code = 0xFFFD;
    if (code < 0x80) {
        put(d, (char)code);
    } else if (code < 0x800) {
        put(d, (char)(0xC0 | code >> 6));
        put(d, (char)(0x80 | (code & 0x3F)));
    } else if (code < 0x10000) {
        put(d, (char)(0xE0 | code >> 12));
        put(d, (char)(0x80 | (code >> 6 & 0x3F)));
        put(d, (char)(0x80 | (code & 0x3F)));
    } else {
        put(d, (char)(0xF0 | code >> 18));
        put(d, (char)(0x80 | (code >> 12 & 0x3F)));
        put(d, (char)(0x80 | (code >> 6 & 0x3F)));
        put(d, (char)(0x80 | (code & 0x3F)));
    }
}

/* YAML 1.2.2, section 5.7. */
static uint32_t named_escape(char letter)
{
    static const char     letters[] = "0abt\tnvfreN_LP";
    static const uint32_t codes[]   = {0x00, 0x07, 0x08, 0x09, 0x09, 0x0A,   0x0B,
                                       0x0C, 0x0D, 0x1B, 0x85, 0xA0, 0x2028, 0x2029};
    const char           *at        = letter != '\0' ? strchr(letters, letter) : NULL;
    return at != NULL ? codes[at - letters] : (unsigned char)letter; /* " / \ and the blank */
}

/* Behind the backslash. */
static void take_escape(decoder *d)
{
    if (d->i >= d->raw.length)
        return;
    if (at_line_end(d)) {
        fold(d, true);
        return;
    }
    const char letter = d->raw.at[d->i++];
    switch (letter) {
    case 'x':
        put_code_point(d, hexadecimal(d, 2));
        break;
    case 'u':
        put_code_point(d, hexadecimal(d, 4));
        break;
    case 'U':
        put_code_point(d, hexadecimal(d, 8));
        break;
    default:
        put_code_point(d, named_escape(letter));
        break;
    }
    d->kept = d->length;
}

bool ts_scalar_decode(ts_text raw, char quote, ts_arena *arena, ts_text *out)
{
    /* No escape grows to more than twice its bytes: \L is two, and U+2028 three. */
    decoder d = {.raw = raw, .out = TS_TAKE(arena, char, raw.length * 2 + 1)};
    if (d.out == NULL)
        return false;
    while (d.i < raw.length) {
        if (at_line_end(&d)) {
            fold(&d, false);
            continue;
        }
        const char byte = raw.at[d.i++];
        if (quote == '"' && byte == '\\') {
            take_escape(&d);
            continue;
        }
        if (quote == '\'' && byte == '\'')
            d.i++; /* two stand for one */
        put(&d, byte);
    }
    *out = (ts_text){d.out, d.length};
    return true;
}
