/* What does the reader do when there is no memory? */
#include "model/edit.h"
#include "model/opened_drive.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static ts_status read_and_build(const ts_allocator *allocator, ts_text bytes)
{
    ts_source       source;
    ts_drive        drive;
    ts_train        train;
    ts_arena       *arena  = ts_arena_open(allocator);
    ts_status       status = TS_NO_MEMORY;
    ts_diagnostics *list   = arena != NULL ? ts_diagnostics_open(arena, "drive.yaml", bytes) : NULL;
    if (list != NULL)
        status = ts_read_drive(bytes, "drive.yaml", arena, list, &source, &drive);
    if (status == TS_OK)
        status = ts_train_build(&drive, arena, list, &train);
    ts_arena_close(arena);
    return status;
}

static ts_status edit(const ts_allocator *allocator, ts_text bytes)
{
    ts_buffer out;
    ts_arena *arena  = ts_arena_open(allocator);
    ts_status status = TS_NO_MEMORY;
    ts_buffer_open(&out, allocator);
    ts_diagnostics *list = arena != NULL ? ts_diagnostics_open(arena, "drive.yaml", bytes) : NULL;
    if (list != NULL)
        status =
            ts_edit_set(bytes, "drive.yaml", TS_TEXT("title"), TS_TEXT("a: b"), arena, list, &out);
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}

/* Every request for memory fails once, and then every one from some on. */
static void assert_every_failure_is_clean(ts_status (*work)(const ts_allocator *, ts_text),
                                          ts_text bytes, ts_status without_failure)
{
    faulty_allocator faulty;
    for (int manner = 0; manner < 2; manner++) {
        for (size_t n = 1;; n++) {
            const ts_allocator allocator =
                faulty_allocator_open(&faulty, n, manner == 0 ? FAULTY_ONCE : FAULTY_ONWARDS);
            const ts_status status = work(&allocator, bytes);
            assert_int_equal(faulty.live_blocks, 0);
            if (faulty.failed == 0) {
                assert_int_equal(status, without_failure);
                assert_true(n > 3);
                break;
            }
            assert_int_equal(status, TS_NO_MEMORY);
        }
    }
}

static void reader_without_memory_says_so_and_leaks_nothing(void **state)
{
    (void)state;
    const ts_text bytes = read_file(SAMPLE);
    assert_every_failure_is_clean(read_and_build, bytes, TS_OK);
    free_file(bytes);
}

static void messages_without_memory_are_clean_too(void **state)
{
    (void)state;
    const ts_text bytes = read_file("tests/fuzz/corpus/reader/quotes.yaml");
    assert_every_failure_is_clean(read_and_build, bytes, TS_NOT_UNDERSTOOD);
    free_file(bytes);
}

static void edit_without_memory_says_so_and_leaks_nothing(void **state)
{
    (void)state;
    const ts_text bytes = read_file(SAMPLE);
    assert_every_failure_is_clean(edit, bytes, TS_OK);
    free_file(bytes);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reader_without_memory_says_so_and_leaks_nothing),
        cmocka_unit_test(messages_without_memory_are_clean_too),
        cmocka_unit_test(edit_without_memory_says_so_and_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
