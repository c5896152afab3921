/* Multiples of a step: both ends count, none is lost to rounding, and what is no scale has none. */
#include "draw/tick.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>

#include <cmocka.h>

static void both_ends_are_ticks(void **state)
{
    (void)state;
    const ts_ticks ticks = ts_ticks_within(-0.5, 2.0, 0.25);
    assert_int_equal(ticks.count, 11);
    assert_true(ts_tick_at(ticks, 0) == -0.5);
    assert_true(ts_tick_at(ticks, 10) == 2.0);
}

static void the_last_is_as_exact_as_the_first(void **state)
{
    (void)state;
    const ts_ticks ticks = ts_ticks_within(0.05, 100.0, 0.1);
    assert_int_equal(ticks.count, 1000);
    for (int i = 0; i < ticks.count; i++)
        assert_true(ts_tick_at(ticks, i) == (i + 1) * 0.1);
}

static void between_two_ticks_is_none(void **state)
{
    (void)state;
    assert_int_equal(ts_ticks_within(1.1, 1.9, 1.0).count, 0);
    assert_int_equal(ts_ticks_within(3.0, 1.0, 1.0).count, 0);
}

static void what_is_no_scale_has_no_ticks(void **state)
{
    (void)state;
    assert_int_equal(ts_ticks_within((double)NAN, 1.0, 0.1).count, 0);
    assert_int_equal(ts_ticks_within(0.0, (double)INFINITY, 0.1).count, 0);
    assert_int_equal(ts_ticks_within(0.0, 1.0, 0.0).count, 0);
    assert_int_equal(ts_ticks_within(0.0, 1.0, (double)NAN).count, 0);
    /* 1e20 and its next are further apart than the step: a sum of steps would never get there. */
    assert_true(ts_ticks_within(1e20, 2e20, 1.0).count <= 10000);
}

static void decades(void **state)
{
    (void)state;
    assert_int_equal(ts_decade_of(1.0), 0);
    assert_int_equal(ts_decade_of(999.0), 2);
    assert_int_equal(ts_decade_of(1000.0), 3);
    assert_int_equal(ts_decade_of(0.02), -2);
    assert_int_equal(ts_decade_of(0.0), 0);
    assert_int_equal(ts_decade_of((double)INFINITY), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_ends_are_ticks),
        cmocka_unit_test(the_last_is_as_exact_as_the_first),
        cmocka_unit_test(between_two_ticks_is_none),
        cmocka_unit_test(what_is_no_scale_has_no_ticks),
        cmocka_unit_test(decades),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
