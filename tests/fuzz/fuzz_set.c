/* Can any edit break a file?
 *
 * The input is an address, a line end, a value (or nothing: removal), a line end, and the file.
 * What comes out must read, or have fewer errors than before; where the value stood, nothing else
 * may have changed; and setting the same once more must change nothing.
 */
#include "model/edit.h"
#include "model/reader.h"

#include <stdlib.h>
#include <string.h>

static void require(bool condition)
{
    if (!condition)
        abort();
}

static ts_text line_of(ts_text *rest)
{
    const char   *end    = memchr(rest->at, '\n', rest->length);
    const size_t  length = end != NULL ? (size_t)(end - rest->at) : rest->length;
    const ts_text line   = {rest->at, length};
    rest->at += length;
    rest->length -= length;
    if (rest->length > 0) {
        rest->at++;
        rest->length--;
    }
    return line;
}

static size_t errors_of(ts_text bytes)
{
    ts_arena       *arena = ts_arena_open(NULL);
    ts_diagnostics *list  = ts_diagnostics_open(arena, "fuzz.yaml", bytes);
    ts_source       source;
    ts_drive        drive;
    (void)ts_read_drive(bytes, "fuzz.yaml", arena, list, &source, &drive);
    const size_t count = ts_diagnostics_count(list);
    ts_arena_close(arena);
    return count;
}

static ts_status edit(ts_text bytes, ts_text address, ts_text value, ts_buffer *out)
{
    ts_arena       *arena  = ts_arena_open(NULL);
    ts_diagnostics *list   = ts_diagnostics_open(arena, "fuzz.yaml", bytes);
    const ts_status status = value.length > 0
                                 ? ts_edit_set(bytes, "fuzz.yaml", address, value, arena, list, out)
                                 : ts_edit_unset(bytes, "fuzz.yaml", address, arena, list, out);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    require((status == TS_OK) == (ts_diagnostics_count(list) == 0));
    require((status == TS_OK) == (out->length > 0) || bytes.length == 0);
    ts_arena_close(arena);
    return status;
}

static void check_edit(ts_text bytes, ts_text address, ts_text value)
{
    ts_buffer once, twice;
    ts_buffer_open(&once, NULL);
    ts_buffer_open(&twice, NULL);
    if (edit(bytes, address, value, &once) == TS_OK) {
        const ts_text edited = {once.bytes, once.length};
        const size_t  errors = errors_of(edited);
        require(errors == 0 || errors < errors_of(bytes));
        if (errors == 0 && value.length > 0 && strchr("\"'[{", value.at[0]) == NULL) {
            require(edit(edited, address, value, &twice) == TS_OK);
            require(ts_text_equal(edited, (ts_text){twice.bytes, twice.length}));
        }
    }
    ts_buffer_close(&once);
    ts_buffer_close(&twice);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size < 2)
        return 0;
    /* A copy of just this size, so that a byte read past the end is noticed. */
    char *bytes = malloc(size);
    if (bytes == NULL)
        return 0;
    memcpy(bytes, data, size);
    ts_text       rest    = {bytes, size};
    const ts_text address = line_of(&rest);
    const ts_text value   = line_of(&rest);
    check_edit(rest, address, value);
    free(bytes);
    return 0;
}
