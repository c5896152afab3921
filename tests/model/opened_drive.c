/* model/opened_drive.c: a file read into a model, for tests. */
#include "model/opened_drive.h"

#include "support/read_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

void open_bytes(opened_drive *opened, ts_text bytes)
{
    opened->arena = ts_arena_open(NULL);
    assert_non_null(opened->arena);
    opened->bytes = (ts_text){ts_arena_copy(opened->arena, bytes.at, bytes.length), bytes.length};
    assert_non_null(opened->bytes.at);
    opened->list   = ts_diagnostics_open(opened->arena, "drive.yaml", opened->bytes);
    opened->status = ts_read_drive(opened->bytes, "drive.yaml", opened->arena, opened->list,
                                   &opened->source, &opened->drive);
    assert_int_equal(opened->status == TS_OK, ts_diagnostics_count(opened->list) == 0);
}

static void show_messages(const opened_drive *opened)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    ts_diagnostics_print(opened->list, 0, &out);
    print_message("%s", out.bytes != NULL ? out.bytes : "there are no messages\n");
    ts_buffer_close(&out);
}

void open_sample(opened_drive *opened)
{
    const ts_text bytes = read_file(SAMPLE);
    open_bytes(opened, bytes);
    free_file(bytes);
    if (opened->status != TS_OK)
        show_messages(opened);
    assert_int_equal(opened->status, TS_OK);
}

void open_variant(opened_drive *opened, const char *old, const char *new)
{
    const ts_text bytes = read_file(SAMPLE);
    const char   *at    = strstr(bytes.at, old);
    if (at == NULL)
        fail_msg("the sample does not hold %s", old);
    const size_t head = (size_t)(at - bytes.at);
    ts_buffer    out;
    ts_buffer_open(&out, NULL);
    ts_buffer_bytes(&out, bytes.at, head);
    ts_buffer_add(&out, new);
    ts_buffer_add(&out, at + strlen(old));
    open_bytes(opened, (ts_text){out.bytes, out.length});
    ts_buffer_close(&out);
    free_file(bytes);
}

void open_extended(opened_drive *opened, const char *line)
{
    const ts_text bytes = read_file(SAMPLE);
    ts_buffer     out;
    ts_buffer_open(&out, NULL);
    ts_buffer_text(&out, bytes);
    ts_buffer_print(&out, "%s\n", line);
    open_bytes(opened, (ts_text){out.bytes, out.length});
    ts_buffer_close(&out);
    free_file(bytes);
}

void close_drive(opened_drive *opened)
{
    ts_arena_close(opened->arena);
}

const ts_diagnostic *message_of(const opened_drive *opened, const char *code)
{
    for (size_t i = 0; i < ts_diagnostics_kept(opened->list); i++) {
        const ts_diagnostic *each = ts_diagnostics_at(opened->list, i);
        if (strcmp(each->code, code) == 0)
            return each;
    }
    show_messages(opened);
    fail_msg("there is no message %s", code);
    return NULL;
}

ts_node node_at(const opened_drive *opened, const char *address)
{
    ts_node       deepest;
    const ts_node node = ts_source_find(&opened->source, ts_text_of(address), &deepest);
    if (node == 0)
        fail_msg("there is nothing at %s", address);
    return node;
}
