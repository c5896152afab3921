/* base/json_writer.c: how does an answer become JSON, as it is told? */
#include "base/json_writer.h"

#include "base/assert.h"

#include <math.h>
#include <string.h>

#define DEPTH_MOST 64 /* one bit a level */

void ts_json_begin(ts_json *json, ts_buffer *out, bool compact)
{
    *json = (ts_json){.out = out, .compact = compact};
}

static uint64_t level_bit(const ts_json *json)
{
    return UINT64_C(1) << (json->depth - 1);
}

static bool in_object(const ts_json *json)
{
    return json->depth > 0 && (json->objects & level_bit(json)) != 0;
}

static void start_line(ts_json *json)
{
    if (json->compact)
        return;
    ts_buffer_add(json->out, "\n");
    ts_buffer_fill(json->out, ' ', 2 * (size_t)json->depth);
}

/* The comma and the line before an item of the open object or array. */
static void start_item(ts_json *json)
{
    if (json->depth == 0)
        return;
    if ((json->filled & level_bit(json)) != 0)
        ts_buffer_bytes(json->out, ",", 1);
    json->filled |= level_bit(json);
    start_line(json);
}

/* A value stands after its key, in an array, or alone. */
static void start_value(ts_json *json)
{
    TS_ASSERT(json->after_key == in_object(json));
    if (!json->after_key)
        start_item(json);
    json->after_key = false;
}

static void open_level(ts_json *json, const char *bracket, bool object)
{
    TS_ASSERT(json->depth < DEPTH_MOST);
    start_value(json);
    ts_buffer_add(json->out, bracket);
    json->depth++;
    json->filled &= ~level_bit(json);
    json->objects &= ~level_bit(json);
    json->objects |= object ? level_bit(json) : 0;
}

void ts_json_object(ts_json *json)
{
    open_level(json, "{", true);
}

void ts_json_array(ts_json *json)
{
    open_level(json, "[", false);
}

void ts_json_end(ts_json *json, char bracket)
{
    TS_ASSERT(json->depth > 0 && !json->after_key);
    const char closing = in_object(json) ? '}' : ']';
    TS_ASSERT(bracket == closing);
    (void)bracket;
    const bool filled = (json->filled & level_bit(json)) != 0;
    json->depth--;
    if (filled)
        start_line(json);
    ts_buffer_fill(json->out, closing, 1);
}

/* JSON wants \u for control characters; a page that holds the answer in a script block must meet no
 * "</script" or "<!--", and old scripts take U+2028 and U+2029 for line ends. */
static bool must_escape(uint32_t code)
{
    return code < 0x20 || code == 0x7F || code == '<' || code == '>' || code == '&' ||
           code == 0x2028 || code == 0x2029;
}

static void add_escape(ts_buffer *out, uint32_t code)
{
    static const char hex[] = "0123456789abcdef";
    if (code == '\n')
        ts_buffer_add(out, "\\n");
    else if (code == '\t')
        ts_buffer_add(out, "\\t");
    else
        ts_buffer_print(out, "\\u%c%c%c%c", hex[code >> 12 & 15], hex[code >> 8 & 15],
                        hex[code >> 4 & 15], hex[code & 15]);
}

/* ASCII that does not stand for itself, beside the control characters below a blank. */
static const bool special[128] = {
    ['"'] = true, ['\\'] = true, ['<'] = true, ['>'] = true, ['&'] = true, [0x7F] = true};

static bool is_plain(char byte)
{
    const unsigned char code = (unsigned char)byte;
    return code >= 0x20 && code < 0x80 && !special[code];
}

/* Bytes that stand for themselves in a string. */
static size_t plain_length(ts_text text)
{
    size_t at = 0;
    while (at < text.length && is_plain(text.at[at]))
        at++;
    return at;
}

/* Nearly all: keys, addresses, names.  `behind` comes after it. */
static bool add_plain_string(ts_buffer *out, ts_text text, const char *behind, size_t more)
{
    if (plain_length(text) < text.length)
        return false;
    char *to = ts_buffer_take(out, text.length + 2 + more);
    if (to == NULL)
        return true;
    to[0] = '"';
    if (text.length > 0)
        memcpy(to + 1, text.at, text.length);
    to[1 + text.length] = '"';
    memcpy(to + 2 + text.length, behind, more);
    return true;
}

/* Bytes that are not UTF-8 become U+FFFD, one for each, so that the answer always is. */
static void add_string(ts_buffer *out, ts_text text)
{
    if (add_plain_string(out, text, "", 0))
        return;
    size_t plain = 0; /* where the bytes begin that are copied as they are */
    ts_buffer_add(out, "\"");
    for (size_t at = 0; at < text.length;) {
        if (is_plain(text.at[at])) { /* nearly all */
            at++;
            continue;
        }
        uint32_t     code  = 0;
        const size_t taken = ts_text_code_point(text, at, &code);
        const bool   quote = code == '"' || code == '\\';
        if (taken > 0 && !quote && !must_escape(code)) {
            at += taken;
            continue;
        }
        ts_buffer_bytes(out, text.at + plain, at - plain);
        if (taken == 0)
            ts_buffer_add(out, "\\ufffd");
        else if (quote)
            ts_buffer_print(out, "\\%c", (int)code);
        else
            add_escape(out, code);
        at += taken > 0 ? taken : 1;
        plain = at;
    }
    if (plain < text.length)
        ts_buffer_bytes(out, text.at + plain, text.length - plain);
    ts_buffer_add(out, "\"");
}

void ts_json_key(ts_json *json, const char *key)
{
    ts_json_key_text(json, ts_text_of(key));
}

void ts_json_key_text(ts_json *json, ts_text key)
{
    TS_ASSERT(in_object(json) && !json->after_key);
    start_item(json);
    json->after_key = true;
    if (add_plain_string(json->out, key, ": ", json->compact ? 1 : 2))
        return;
    add_string(json->out, key);
    ts_buffer_add(json->out, json->compact ? ":" : ": ");
}

void ts_json_string(ts_json *json, const char *text)
{
    if (text == NULL)
        ts_json_null(json);
    else
        ts_json_text(json, ts_text_of(text));
}

void ts_json_text(ts_json *json, ts_text text)
{
    start_value(json);
    add_string(json->out, text);
}

void ts_json_number(ts_json *json, double value)
{
    TS_ASSERT(isfinite(value));
    if (!isfinite(value)) {
        ts_json_null(json);
        return;
    }
    start_value(json);
    ts_buffer_number(json->out, value);
}

void ts_json_integer(ts_json *json, int64_t value)
{
    start_value(json);
    ts_buffer_integer(json->out, value);
}

void ts_json_bool(ts_json *json, bool value)
{
    start_value(json);
    ts_buffer_add(json->out, value ? "true" : "false");
}

void ts_json_null(ts_json *json)
{
    start_value(json);
    ts_buffer_add(json->out, "null");
}

void ts_json_string_at(ts_json *json, const char *key, const char *text)
{
    ts_json_key(json, key);
    ts_json_string(json, text);
}

void ts_json_number_at(ts_json *json, const char *key, double value)
{
    ts_json_key(json, key);
    if (isfinite(value))
        ts_json_number(json, value);
    else
        ts_json_null(json);
}

void ts_json_integer_at(ts_json *json, const char *key, int64_t value)
{
    ts_json_key(json, key);
    ts_json_integer(json, value);
}

void ts_json_count_at(ts_json *json, const char *key, uint64_t value)
{
    ts_json_key(json, key);
    ts_json_integer(json, (int64_t)value);
}

void ts_json_bool_at(ts_json *json, const char *key, bool value)
{
    ts_json_key(json, key);
    ts_json_bool(json, value);
}
