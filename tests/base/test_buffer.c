/* Does text grow as it is told, and is a failure kept until somebody asks? */
#include "base/buffer.h"

#include "support/close.h"
#include "support/faulty_allocator.h"

#include <string.h>

static void everything_is_appended_in_turn(void **state)
{
    (void)state;
    ts_buffer b;
    ts_buffer_open(&b, NULL);
    ts_buffer_add(&b, "speed ");
    ts_buffer_text(&b, (ts_text){"take-off", 4});
    ts_buffer_bytes(&b, " a\0b ", 5);
    ts_buffer_fill(&b, '-', 3);
    ts_buffer_integer(&b, INT64_MIN);
    ts_buffer_fill(&b, ' ', 0);
    ts_buffer_integer(&b, 0);
    ts_buffer_add(&b, NULL);
    const char expected[] = "speed take a\0b ----92233720368547758080";
    assert_int_equal(b.length, sizeof expected - 1);
    assert_memory_equal(b.bytes, expected, sizeof expected); /* the zero too */
    ts_buffer_clear(&b);
    assert_int_equal(b.length, 0);
    assert_string_equal(b.bytes, "");
    ts_buffer_close(&b);
    assert_null(b.bytes);
}

static void numbers_take_the_form_asked_for(void **state)
{
    (void)state;
    ts_buffer b;
    ts_buffer_open(&b, NULL);
    ts_buffer_number(&b, 0.1);
    ts_buffer_add(&b, " ");
    ts_buffer_fixed(&b, 812.449, 1);
    ts_buffer_add(&b, " ");
    ts_buffer_significant(&b, 812.449, 2);
    assert_string_equal(b.bytes, "0.1 812.4 810");
    ts_buffer_close(&b);
}

static void the_format_knows_few_directives(void **state)
{
    (void)state;
    ts_buffer b;
    ts_buffer_open(&b, NULL);
    ts_buffer_print(&b, "%s:%u:%d %zu%% [%c] %.*s|%.*s|", "file", 4294967295U, -2147483647 - 1,
                    SIZE_MAX, 'x', 3, "abcdef", 9, "abc");
    assert_string_equal(b.bytes, "file:4294967295:-2147483648 18446744073709551615% [x] abc|abc|");
    ts_buffer_clear(&b);
    ts_buffer_print(&b, "%s", "");
    ts_buffer_print(&b, "plain");
    const char unterminated[2] = {'a', 'b'};
    ts_buffer_print(&b, "%.*s", 2, unterminated);
    assert_string_equal(b.bytes, "plainab");
    ts_buffer_close(&b);
}

static void a_failed_append_is_kept_and_stops_the_rest(void **state)
{
    (void)state;
    faulty_allocator   faulty;
    const ts_allocator allocator = faulty_allocator_open(&faulty, 2, FAULTY_ONCE);
    ts_buffer          b;
    ts_buffer_open(&b, &allocator);
    ts_buffer_add(&b, "kept");
    ts_buffer_fill(&b, 'x', 100000); /* the second request */
    assert_true(b.failed);
    ts_buffer_add(&b, "lost");
    assert_string_equal(b.bytes, "kept");
    ts_buffer_clear(&b); /* what was lost stays lost: the writer must hear of it */
    ts_buffer_add(&b, "anew");
    assert_true(b.failed);
    assert_string_equal(b.bytes, "");
    ts_buffer_close(&b);
    assert_int_equal(faulty.live_blocks, 0);
}

static void a_length_that_overflows_fails(void **state)
{
    (void)state;
    ts_buffer b;
    ts_buffer_open(&b, NULL);
    ts_buffer_add(&b, "a");
    ts_buffer_fill(&b, 'x', SIZE_MAX);
    assert_true(b.failed);
    ts_buffer_close(&b);
}

static void growth_is_geometric(void **state)
{
    (void)state;
    faulty_allocator   count;
    const ts_allocator allocator = faulty_allocator_open(&count, 0, FAULTY_ONCE);
    ts_buffer          b;
    ts_buffer_open(&b, &allocator);
    for (int i = 0; i < 1 << 20; i++)
        ts_buffer_fill(&b, 'x', 1);
    /* derived: 256 bytes doubled 13 times hold 2^20 and the zero */
    assert_int_equal(count.calls, 14);
    ts_buffer_close(&b);
}

static int write_to_text(void *context, const char *bytes, size_t length)
{
    if (context == NULL)
        return 1;
    memcpy(context, bytes, length);
    return 0;
}

static void sending_tells_memory_from_output(void **state)
{
    (void)state;
    char      got[16] = {0};
    ts_buffer b;
    ts_buffer_open(&b, NULL);
    assert_int_equal(ts_buffer_send(&b, &(ts_sink){write_to_text, NULL}), TS_OK); /* nothing */
    ts_buffer_add(&b, "holds");
    assert_int_equal(ts_buffer_send(&b, &(ts_sink){write_to_text, got}), TS_OK);
    assert_string_equal(got, "holds");
    assert_int_equal(ts_buffer_send(&b, &(ts_sink){write_to_text, NULL}), TS_NO_OUTPUT);
    b.failed = true;
    assert_int_equal(ts_buffer_send(&b, &(ts_sink){write_to_text, got}), TS_NO_MEMORY);
    ts_buffer_close(&b);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(everything_is_appended_in_turn),
        cmocka_unit_test(numbers_take_the_form_asked_for),
        cmocka_unit_test(the_format_knows_few_directives),
        cmocka_unit_test(a_failed_append_is_kept_and_stops_the_rest),
        cmocka_unit_test(a_length_that_overflows_fails),
        cmocka_unit_test(growth_is_geometric),
        cmocka_unit_test(sending_tells_memory_from_output),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
