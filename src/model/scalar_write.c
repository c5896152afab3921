/* model/scalar_write.c: how is a text written so that it reads back as itself? */
#include "model/scalar_write.h"

#include <string.h>

static bool is_in(char byte, const char *set)
{
    return byte != '\0' && strchr(set, byte) != NULL;
}

/* YAML 1.2.2, section 7.3.3: - ? : may begin a plain text when no blank follows. */
static bool begins_badly(ts_text text, bool in_brackets)
{
    const char first = text.at[0];
    if (is_in(first, "-?:")) {
        const char second = text.length > 1 ? text.at[1] : ' ';
        return second == ' ' || second == '\t' || (in_brackets && is_in(second, ",[]{}"));
    }
    return is_in(first, ",[]{}#&*!|>'\"%@` \t");
}

bool ts_scalar_needs_quotes(ts_text text, bool in_brackets)
{
    if (text.length == 0 || begins_badly(text, in_brackets))
        return true;
    if (text.length >= 3 && (memcmp(text.at, "---", 3) == 0 || memcmp(text.at, "...", 3) == 0))
        return true;
    for (size_t i = 0; i < text.length; i++) {
        const char byte = text.at[i];
        const char next = i + 1 < text.length ? text.at[i + 1] : ' ';
        const bool gap  = next == ' ' || next == '\t';
        if (byte == '\t' || (byte == ':' && gap) ||
            (byte == ' ' && (next == '#' || i + 1 == text.length)))
            return true;
        if (in_brackets && (is_in(byte, ",[]{}") || (byte == ':' && is_in(next, ",[]{}"))))
            return true;
    }
    return false;
}

bool ts_scalar_misleads(ts_text text)
{
    size_t colons = 0;
    for (size_t i = 0; i < text.length; i++) {
        if (text.at[i] == ':')
            colons++;
        else if (text.at[i] < '0' || text.at[i] > '9')
            return false;
    }
    return colons > 0 && text.length > colons;
}

void ts_scalar_write(ts_buffer *out, ts_text text, char quote)
{
    if (quote == 0) {
        ts_buffer_text(out, text);
        return;
    }
    ts_buffer_fill(out, quote, 1);
    for (size_t i = 0; i < text.length; i++) {
        const char byte = text.at[i];
        if (quote == '"' && (byte == '"' || byte == '\\'))
            ts_buffer_fill(out, '\\', 1);
        if (quote == '\'' && byte == '\'')
            ts_buffer_fill(out, '\'', 1);
        ts_buffer_fill(out, byte, 1);
    }
    ts_buffer_fill(out, quote, 1);
}
