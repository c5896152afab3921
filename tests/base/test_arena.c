/* Is one region of memory enough for a study: aligned, zeroed, bounded, and gone in one call? */
#include "base/arena.h"

#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/sequence.h"

#include <string.h>

static void memory_is_zeroed_aligned_and_apart(void **state)
{
    (void)state;
    sequence       random = {1};
    ts_arena      *arena  = ts_arena_open(NULL);
    unsigned char *taken[500];
    size_t         sizes[500];
    for (size_t i = 0; i < 500; i++) {
        sizes[i] = (size_t)sequence_below(&random, i % 50 == 0 ? 200000 : 300) + 1;
        taken[i] = ts_arena_take(arena, sizes[i], 1);
        assert_non_null(taken[i]);
        assert_int_equal((uintptr_t)taken[i] % 16, 0);
        for (size_t b = 0; b < sizes[i]; b++)
            assert_int_equal(taken[i][b], 0);
        memset(taken[i], (int)(i % 251 + 1), sizes[i]);
    }
    for (size_t i = 0; i < 500; i++) {
        assert_int_equal(taken[i][0], i % 251 + 1);
        assert_int_equal(taken[i][sizes[i] - 1], i % 251 + 1);
    }
    ts_arena_close(arena);
}

static void sizes_that_overflow_fail_and_leave_the_arena_usable(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    assert_null(ts_arena_take(arena, SIZE_MAX, 2));
    assert_true(ts_arena_failed(arena));
    assert_null(ts_arena_take(arena, SIZE_MAX / 8, 8));
    assert_null(ts_arena_take(arena, SIZE_MAX, 1));
    assert_null(ts_arena_copy(arena, "", SIZE_MAX));
    assert_false(ts_arena_reserve(arena, SIZE_MAX - 4));
    assert_non_null(TS_TAKE(arena, double, 10));
    assert_true(ts_arena_failed(arena)); /* it stays known */
    ts_arena_close(arena);
}

static void nothing_is_a_valid_pointer_too(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    assert_non_null(ts_arena_take(arena, 0, 8));
    assert_non_null(ts_arena_take(arena, 8, 0));
    assert_false(ts_arena_failed(arena));
    ts_arena_close(arena);
    ts_arena_close(NULL);
}

static void copies_are_zero_terminated(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    assert_string_equal(ts_arena_copy(arena, "fuel pump", 4), "fuel");
    assert_string_equal(ts_arena_copy(arena, NULL, 0), "");
    ts_arena_close(arena);
}

static void what_is_reserved_asks_the_allocator_no_more(void **state)
{
    (void)state;
    faulty_allocator   count;
    const ts_allocator allocator = faulty_allocator_open(&count, 0, FAULTY_ONCE);
    ts_arena          *arena     = ts_arena_open(&allocator);
    assert_true(ts_arena_reserve(arena, 1008000)); /* 1000 bytes take 63 * 16 */
    const size_t calls = ts_arena_calls(arena);
    assert_int_equal(calls, count.calls);
    for (int i = 0; i < 1000; i++)
        assert_non_null(ts_arena_take(arena, 125, 8));
    assert_int_equal(ts_arena_calls(arena), calls);
    assert_int_equal(count.calls, calls);
    ts_arena_close(arena);
    assert_int_equal(count.live_blocks, 0);
}

static void small_pieces_cost_few_calls(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    for (int i = 0; i < 100000; i++)
        assert_non_null(ts_arena_take(arena, 3, 16));
    /* derived: 4.8 MB in chunks of 64 KiB, 128 KiB ... is seven of them, and the arena itself */
    assert_int_equal(ts_arena_calls(arena), 8);
    ts_arena_close(arena);
}

/* Takes pieces of all sizes; false when any of them failed. */
static bool take_many(const ts_allocator *allocator)
{
    ts_arena *arena = ts_arena_open(allocator);
    if (arena == NULL)
        return false;
    for (size_t i = 1; i < 60; i++) {
        char *piece = ts_arena_take(arena, i * i * i, 7);
        if (piece != NULL)
            memset(piece, 1, i * i * i * 7);
    }
    const bool fine = !ts_arena_failed(arena);
    ts_arena_close(arena);
    return fine;
}

static void every_allocation_may_fail(void **state)
{
    (void)state;
    for (int manner = 0; manner < 2; manner++) {
        for (size_t n = 1;; n++) {
            faulty_allocator   faulty;
            const ts_allocator allocator =
                faulty_allocator_open(&faulty, n, manner == 0 ? FAULTY_ONCE : FAULTY_ONWARDS);
            const bool fine = take_many(&allocator);
            assert_int_equal(fine, faulty.failed == 0);
            assert_int_equal(faulty.live_blocks, 0);
            if (faulty.failed == 0) {
                assert_true(n > 4);
                break;
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(memory_is_zeroed_aligned_and_apart),
        cmocka_unit_test(sizes_that_overflow_fail_and_leave_the_arena_usable),
        cmocka_unit_test(nothing_is_a_valid_pointer_too),
        cmocka_unit_test(copies_are_zero_terminated),
        cmocka_unit_test(what_is_reserved_asks_the_allocator_no_more),
        cmocka_unit_test(small_pieces_cost_few_calls),
        cmocka_unit_test(every_allocation_may_fail),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
