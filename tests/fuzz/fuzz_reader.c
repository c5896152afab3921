/* Can any file break the reader, and does what it accepts stand the next steps?
 *
 * A sound file must lay out as a train, and every node of it be found again by its address.
 */
#include "model/reader.h"
#include "model/train.h"

#include <stdlib.h>
#include <string.h>

static void require(bool condition)
{
    if (!condition)
        abort();
}

static void check_messages(const ts_diagnostics *list)
{
    ts_buffer out;
    require(ts_diagnostics_count(list) > 0);
    for (size_t i = 0; i < ts_diagnostics_kept(list); i++) {
        const ts_diagnostic *each = ts_diagnostics_at(list, i);
        require(each->line >= 1 && each->column >= 1 && each->columns >= 1);
        require(each->code[0] != '\0' && each->says[0] != '\0');
    }
    ts_buffer_open(&out, NULL);
    ts_diagnostics_print(list, 0, &out);
    require(!out.failed && out.length > 0);
    ts_buffer_close(&out);
}

static void check_addresses(const ts_source *source)
{
    ts_buffer address;
    ts_buffer_open(&address, NULL);
    for (ts_node node = 1; node <= source->node_count; node++) {
        ts_node deepest;
        ts_buffer_clear(&address);
        ts_source_address(source, node, &address);
        const ts_text text = {address.bytes != NULL ? address.bytes : "", address.length};
        require(ts_source_find(source, text, &deepest) == node);
    }
    ts_buffer_close(&address);
}

static void check_places(const ts_source *source)
{
    for (ts_node node = 1; node <= source->node_count; node++) {
        const ts_node_place *place = &source->nodes[node];
        require(place->start <= place->end && place->end <= source->bytes.length);
        require(place->line >= 1 && place->column >= 1);
        require(place->parent < node);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    /* A copy of just this size, so that a byte read past the end is noticed. */
    char *bytes = malloc(size > 0 ? size : 1);
    if (bytes == NULL)
        return 0;
    if (size > 0)
        memcpy(bytes, data, size);
    const ts_text   text  = {bytes, size};
    ts_arena       *arena = ts_arena_open(NULL);
    ts_diagnostics *list  = ts_diagnostics_open(arena, "fuzz.yaml", text);
    ts_source       source;
    ts_drive        drive;
    ts_train        train;
    const ts_status status = ts_read_drive(text, "fuzz.yaml", arena, list, &source, &drive);
    require(status == TS_OK || status == TS_NOT_UNDERSTOOD);
    check_places(&source);
    if (status == TS_OK) {
        check_addresses(&source);
        require(ts_train_build(&drive, arena, list, &train) == TS_OK);
    } else {
        check_messages(list);
    }
    ts_arena_close(arena);
    free(bytes);
    return 0;
}
