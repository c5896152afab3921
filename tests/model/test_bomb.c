/* Are files that were made to hang a reader refused at once?
 *
 * ctest: release-only
 * ctest: alone
 */
#include "model/opened_drive.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>
#include <time.h>

#include <cmocka.h>

static ts_buffer repeated(const char *head, const char *piece, size_t bytes)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    ts_buffer_add(&out, head);
    while (out.length + strlen(piece) <= bytes)
        ts_buffer_add(&out, piece);
    return out;
}

static double milliseconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec * 1e-6;
}

/* Refused, and how long it took of this process. */
static double time_once(const ts_buffer *file, const char *code)
{
    opened_drive  o;
    ts_arena     *arena = ts_arena_open(NULL);
    const double  from  = milliseconds();
    const ts_text bytes = {file->bytes, file->length};
    o.arena             = arena;
    o.bytes             = bytes;
    o.list              = ts_diagnostics_open(arena, "bomb.yaml", bytes);
    o.status            = ts_read_drive(bytes, "bomb.yaml", arena, o.list, &o.source, &o.drive);
    const double took   = milliseconds() - from;
    assert_int_equal(o.status, TS_NOT_UNDERSTOOD);
    const ts_diagnostic *message = message_of(&o, code);
    assert_true(message->line >= 1 && message->column >= 1);
    close_drive(&o);
    return took;
}

/* The best of five: what another program does to the machine meanwhile is not the reader's. */
static double time_of_refusal(const ts_buffer *file, const char *code)
{
    double best = time_once(file, code);
    for (int i = 1; i < 5; i++) {
        const double took = time_once(file, code);
        best              = took < best ? took : best;
    }
    return best;
}

static void bombs_are_refused_at_once(void **state)
{
    (void)state;
    static const struct {
        const char *head, *piece;
        size_t      bytes;
        const char *code;
    } bombs[] = {
        /* every alias names ten of the one before: 10^9 values from 500 bytes */
        {"a: &a [x,x,x,x,x,x,x,x,x,x]\n", "b: &b [*a,*a,*a,*a,*a,*a,*a,*a,*a,*a]\n", 400,
         "yaml-mark"},
        {"", "[", 1 << 20, "too-deep"},
        {"a: ", "[", 1 << 20, "too-deep"},
        {"a: ", "{a: ", 1 << 20, "too-deep"},
        {"", "[\n", 1 << 20, "too-deep"},
        {"", "- ", 1 << 17, "too-deep"},
        {"a: [", "a,", 1 << 20, "too-many-entries"},
        {"", "{a: b,", 1 << 20, "too-deep"},
        {"a: {", "b: c,", 1 << 20, "too-many-entries"},
        {"", "? ", 1 << 16, "complex-key"},
        {"", "a", ((size_t)4 << 20) + 1, "too-large"},
    };
    for (size_t i = 0; i < sizeof bombs / sizeof bombs[0]; i++) {
        ts_buffer    file = repeated(bombs[i].head, bombs[i].piece, bombs[i].bytes);
        const double took = time_of_refusal(&file, bombs[i].code);
        if (took > 10.0)
            fail_msg("%s%s...: %d us", bombs[i].head, bombs[i].piece, (int)(took * 1e3));
        ts_buffer_close(&file);
    }
}

static void stairs_of_blanks_are_refused(void **state)
{
    (void)state;
    ts_buffer file;
    ts_buffer_open(&file, NULL);
    for (size_t depth = 0; depth < 1000; depth++) {
        ts_buffer_fill(&file, ' ', depth);
        ts_buffer_add(&file, "a:\n");
    }
    assert_true(time_of_refusal(&file, "too-deep") < 10.0);
    ts_buffer_close(&file);
}

static void too_many_nodes_are_counted_before_they_are_kept(void **state)
{
    (void)state;
    ts_buffer file = repeated("a:\n", "- b\n", (size_t)4 << 20);
    assert_true(time_of_refusal(&file, "too-many-nodes") < 30.0); /* 4 MiB are looked through */
    ts_buffer_close(&file);
}

/* Twice the length, not four times the time: keys of one record, sorted. */
static void many_keys_take_time_in_proportion(void **state)
{
    (void)state;
    double took[2];
    for (int k = 0; k < 2; k++) {
        ts_buffer    file;
        const size_t keys = k == 0 ? 20000 : 160000;
        ts_buffer_open(&file, NULL);
        for (size_t i = 0; i < keys; i++)
            ts_buffer_print(&file, "key %zu: x\n", i * 7919 % keys);
        took[k] = time_of_refusal(&file, "unknown-key");
        ts_buffer_close(&file);
    }
    assert_true(took[1] < 16.0 * took[0]); /* 8 times the keys */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bombs_are_refused_at_once),
        cmocka_unit_test(stairs_of_blanks_are_refused),
        cmocka_unit_test(too_many_nodes_are_counted_before_they_are_kept),
        cmocka_unit_test(many_keys_take_time_in_proportion),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
