/* model/byte_guard.c: are these bytes a text file at all? */
#include "model/byte_guard.h"

#include "model/file_guard.h"

#include <string.h>

/* Always false, for the caller to hand on. */
static bool complain(ts_text bytes, size_t at, ts_diagnostics *list, const ts_diagnostic *what)
{
    ts_diagnostic placed = *what;
    placed.line          = 1;
    placed.column        = 1;
    for (size_t i = 0; i < at; i++) {
        if (bytes.at[i] == '\n') {
            placed.line++;
            placed.column = 1;
        } else if ((bytes.at[i] & 0xC0) != 0x80) {
            placed.column++;
        }
    }
    ts_diagnose(list, &placed);
    return false;
}

static bool is_sound_byte(ts_text text, size_t i)
{
    const unsigned char byte = (unsigned char)text.at[i];
    const unsigned char next = i + 1 < text.length ? (unsigned char)text.at[i + 1] : 0;
    if (byte == '\r')
        return next == '\n';
    if (byte == 0xC2)
        return next >= 0xA0;
    return (byte >= 0x20 && byte != 0x7F) || byte == '\n' || byte == '\t';
}

/* Are these eight bytes all from 0x20 to 0x7E?  Each test leaves the high bit of a byte that fails
 * it, and perhaps of bytes above that one. */
static bool all_printable(const char *at)
{
    const uint64_t ones = UINT64_C(0x0101010101010101), high = ones * 0x80;
    uint64_t       eight;

    memcpy(&eight, at, 8);
    const uint64_t low = (eight - ones * 0x20) & ~eight, rubout = eight ^ ones * 0x7F;
    return ((eight | low | ((rubout - ones) & ~rubout)) & high) == 0;
}

size_t ts_text_sound_length(ts_text text)
{
    size_t i = 0;
    while (i < text.length) {
        if (i + 8 <= text.length && all_printable(text.at + i))
            i += 8;
        else if (is_sound_byte(text, i))
            i++;
        else
            break;
    }
    return i;
}

/* Most files are ASCII all through, which is seen eight bytes at a time. */
static bool is_ascii(ts_text bytes)
{
    uint64_t high = 0;
    size_t   i    = 0;
    for (; i + 8 <= bytes.length; i += 8) {
        uint64_t eight;
        memcpy(&eight, bytes.at + i, 8);
        high |= eight;
    }
    for (; i < bytes.length; i++)
        high |= (unsigned char)bytes.at[i];
    return (high & UINT64_C(0x8080808080808080)) == 0;
}

static bool guard_encoding(ts_text bytes, ts_diagnostics *list)
{
    const size_t well_formed = is_ascii(bytes) ? bytes.length : ts_text_utf8_length(bytes);
    bool         sound       = true;
    if (well_formed < bytes.length)
        sound = complain(bytes, well_formed, list,
                         &(ts_diagnostic){.code     = "not-utf-8",
                                          .says     = "these bytes are not UTF-8",
                                          .expected = "a file saved as UTF-8"});
    if (bytes.length >= 3 && memcmp(bytes.at, "\xEF\xBB\xBF", 3) == 0)
        sound = complain(bytes, 0, list,
                         &(ts_diagnostic){.code     = "byte-order-mark",
                                          .says     = "the file begins with a byte order mark",
                                          .expected = "a file saved as UTF-8 without one"});
    return sound;
}

/* The first byte that no text file has. */
static bool guard_control(ts_text bytes, ts_diagnostics *list)
{
    const size_t at = ts_text_sound_length(bytes);
    if (at == bytes.length)
        return true;
    if (bytes.at[at] == '\0')
        return complain(bytes, at, list,
                        &(ts_diagnostic){.code     = "nul-byte",
                                         .says     = "a NUL byte stands here",
                                         .expected = "text in UTF-8"});
    if (bytes.at[at] == '\r')
        return complain(
            bytes, at, list,
            &(ts_diagnostic){.code     = "lone-return",
                             .says     = "a carriage return stands here without a line feed",
                             .expected = "lines that end in LF or in CR LF"});
    return complain(bytes, at, list,
                    &(ts_diagnostic){.code     = "control-byte",
                                     .says     = "a control character stands here",
                                     .expected = "text in UTF-8"});
}

bool ts_guard_bytes(ts_text bytes, ts_diagnostics *list)
{
    if (bytes.length > TS_FILE_BYTES_MOST)
        return complain(bytes, 0, list,
                        &(ts_diagnostic){.code     = "too-large",
                                         .says     = "the file is larger than 4 MiB",
                                         .expected = "a drive file of some kB"});
    const bool encoded = guard_encoding(bytes, list);
    return guard_control(bytes, list) && encoded;
}
