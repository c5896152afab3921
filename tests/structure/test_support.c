/* structure/test_support.c: can the tools of the tests fail, as a test of anything must? */
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include <string.h>

static void nan_is_never_close(void **state)
{
    (void)state;
    const double nan = (double)NAN;
    assert_false(close_enough(nan, 1.0, 1.0));
    assert_false(close_enough(1.0, nan, 1.0));
    assert_false(close_enough(nan, nan, 1.0));
    assert_false(close_enough(1.0, 1.0, nan));
}

static void infinity_is_close_to_itself_alone(void **state)
{
    (void)state;
    const double infinity = (double)INFINITY;
    assert_true(close_enough(infinity, infinity, 0.0));
    assert_false(close_enough(infinity, -infinity, infinity));
    assert_false(close_enough(1.0, infinity, infinity));
    assert_false(close_enough(infinity, 1.0, infinity));
}

/* A comparison that casts to float would take the first of these for equal. */
static void a_wrong_tenth_digit_is_seen(void **state)
{
    (void)state;
    assert_false(close_enough(1.0000000001, 1.0, 1e-11));
    assert_true(close_enough(1.0000000001, 1.0, 1e-9));
    assert_false(close_enough(1.0, -1.0, 0.0));
}

static void an_allocator_that_fails_once_goes_on(void **state)
{
    (void)state;
    faulty_allocator   faulty;
    const ts_allocator allocator = faulty_allocator_open(&faulty, 2, FAULTY_ONCE);
    char              *block     = allocator.resize(allocator.context, NULL, 8);
    assert_non_null(block);
    memcpy(block, "1234567", 8);
    assert_null(allocator.resize(allocator.context, block, 100));
    assert_string_equal(block, "1234567");
    char *larger = allocator.resize(allocator.context, block, 100);
    assert_non_null(larger);
    assert_string_equal(larger, "1234567");
    assert_int_equal(faulty.calls, 3);
    assert_int_equal(faulty.failed, 1);
    assert_int_equal(faulty.live_blocks, 1);
    assert_int_equal(faulty.live_bytes, 100);
    assert_null(allocator.resize(allocator.context, larger, 0));
    assert_int_equal(faulty.live_blocks, 0);
    assert_int_equal(faulty.live_bytes, 0);
    assert_int_equal(faulty.most_bytes, 100);
}

static void an_allocator_that_fails_onwards_never_recovers(void **state)
{
    (void)state;
    faulty_allocator   faulty;
    const ts_allocator allocator = faulty_allocator_open(&faulty, 2, FAULTY_ONWARDS);
    void              *block     = allocator.resize(allocator.context, NULL, 8);
    assert_non_null(block);
    assert_null(allocator.resize(allocator.context, NULL, 8));
    assert_null(allocator.resize(allocator.context, NULL, 8));
    assert_int_equal(faulty.failed, 2);
    assert_int_equal(faulty.live_blocks, 1);
    assert_null(allocator.resize(allocator.context, block, 0));
}

static void a_file_is_read_whole(void **state)
{
    (void)state;
    const ts_text license = read_file("LICENSE");
    assert_int_equal(license.length, strlen(license.at));
    assert_non_null(strstr(license.at, "END OF TERMS AND CONDITIONS"));
    free_file(license);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nan_is_never_close),
        cmocka_unit_test(infinity_is_close_to_itself_alone),
        cmocka_unit_test(a_wrong_tenth_digit_is_seen),
        cmocka_unit_test(an_allocator_that_fails_once_goes_on),
        cmocka_unit_test(an_allocator_that_fails_onwards_never_recovers),
        cmocka_unit_test(a_file_is_read_whole),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
