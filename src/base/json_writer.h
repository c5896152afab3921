/* base/json_writer.h: an answer as JSON, with numbers in their shortest form and never a NaN.
 *
 * Writes as it is told, two blanks a level, keys in the order given.  Strings are escaped for JSON
 * and for HTML script blocks (<, >, &, U+2028, U+2029 as \u).  Bytes that are
 * not UTF-8 become U+FFFD.  Unbalanced calls and more than 64 levels are assertions.
 */
#ifndef TS_BASE_JSON_WRITER_H
#define TS_BASE_JSON_WRITER_H

#include "base/buffer.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct ts_json {
    ts_buffer *out;
    int        depth;
    bool       compact; /* set before the first call: no blanks, no line ends */
    uint64_t   filled;  /* one bit a level: has it an item yet?               */
    uint64_t   objects; /* one bit a level: is it an object?                  */
    bool       after_key;
} ts_json;

void ts_json_begin(ts_json *json, ts_buffer *out, bool compact);
void ts_json_object(ts_json *json);
void ts_json_array(ts_json *json);
void ts_json_end(ts_json *json, char bracket); /* '}' or ']' */
void ts_json_key(ts_json *json, const char *key);
void ts_json_key_text(ts_json *json, ts_text key);
void ts_json_string(ts_json *json, const char *text); /* NULL writes null */
void ts_json_text(ts_json *json, ts_text text);
void ts_json_number(ts_json *json, double value); /* asserts that value is finite; else null */
void ts_json_integer(ts_json *json, int64_t value);
void ts_json_bool(ts_json *json, bool value);
void ts_json_null(ts_json *json);

/* A key and its value at once. */
void ts_json_string_at(ts_json *json, const char *key, const char *text);
void ts_json_number_at(ts_json *json, const char *key, double value); /* null unless finite */
void ts_json_integer_at(ts_json *json, const char *key, int64_t value);
void ts_json_count_at(ts_json *json, const char *key, uint64_t value);
void ts_json_bool_at(ts_json *json, const char *key, bool value);

#endif
