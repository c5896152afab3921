/* Does the walk down the tree pass the simplest ratios, and is the nearest one the nearest? */
#include "element/stern_brocot.h"
#include "support/close.h"

/* A. Brocot, 1861, as retold in popular accounts of his gear trains (from memory): the way to
 * 191/23. */
static void walk_to_191_over_23_is_brocots(void **state)
{
    (void)state;
    static const ts_rational printed[] = {{17, 2},  {25, 3},   {33, 4},  {58, 7},
                                          {83, 10}, {108, 13}, {191, 23}};
    ts_mediant_walk          walk      = ts_mediant_begin();
    size_t                   next      = 0;

    do {
        if (walk.here.under == 1)
            continue;
        assert_true(next < sizeof printed / sizeof printed[0]);
        assert_true(ts_rational_equal(walk.here, printed[next]));
        next++;
    } while (ts_mediant_step(&walk, (ts_rational){191, 23}));
    assert_int_equal(next, sizeof printed / sizeof printed[0]);
    assert_true(walk.ended);
}

/* Engineering Commons article on gearing by the tree (read): 21/17 for 1.234. */
static void walk_to_1_234_passes_21_over_17(void **state)
{
    (void)state;
    ts_mediant_walk walk = ts_mediant_begin();
    bool            met  = false;

    while (ts_mediant_step_to(&walk, 1.234) && walk.here.under < 1000)
        met = met || (walk.here.over == 21 && walk.here.under == 17);
    assert_true(met);
}

/* derived: neighbours in the tree have determinant 1. */
static void bracket_of_the_walk_stays_unimodular(void **state)
{
    (void)state;
    ts_mediant_walk walk = ts_mediant_begin();

    for (int i = 0; i < 60 && ts_mediant_step_to(&walk, 3.14159265358979323846); i++) {
        assert_int_equal(walk.high.over * walk.low.under - walk.low.over * walk.high.under, 1);
        assert_int_equal(walk.here.over, walk.low.over + walk.high.over);
    }
    assert_close(ts_rational_value(walk.here), 3.14159265358979323846, 1e-4);
}

/* A second route: every fraction of the rectangle. */
static void nearest_ratio_is_the_nearest_of_all(void **state)
{
    (void)state;
    static const double targets[] = {1.234, 0.3719, 7.77, 0.011, 95.3, 2.0, 0.99};

    for (size_t i = 0; i < sizeof targets / sizeof targets[0]; i++) {
        const ts_rational best  = ts_nearest_ratio(targets[i], 70, 50);
        double            least = 1e9;

        for (int over = 1; over <= 70; over++)
            for (int under = 1; under <= 50; under++)
                least = fmin(least, fabs((double)over / under - targets[i]));
        assert_true(best.over >= 1 && best.over <= 70 && best.under >= 1 && best.under <= 50);
        assert_close_abs(fabs(ts_rational_value(best) - targets[i]), least, 1e-15);
    }
}

static void no_ratio_for_what_is_no_ratio(void **state)
{
    (void)state;
    assert_int_equal(ts_nearest_ratio(0.0, 10, 10).under, 0);
    assert_int_equal(ts_nearest_ratio(-1.5, 10, 10).under, 0);
    assert_int_equal(ts_nearest_ratio((double)NAN, 10, 10).under, 0);
    assert_int_equal(ts_nearest_ratio((double)INFINITY, 10, 10).under, 0);
    assert_int_equal(ts_nearest_ratio(1.5, 0, 10).under, 0);
}

/* Along a side of the tree numbers grow by 1 a step; along the golden ratio they overflow 64 bits
 * after about 90 steps, and the walk ends. */
static void walk_ends_before_it_overflows(void **state)
{
    (void)state;
    ts_mediant_walk walk  = ts_mediant_begin();
    int             steps = 0;

    while (ts_mediant_step(
               &walk, (ts_rational){INT64_C(7540113804746346429), INT64_C(4660046610375530309)}) &&
           steps < 1000)
        steps++;
    assert_true(walk.ended);
    assert_true(steps < 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(walk_to_191_over_23_is_brocots),
        cmocka_unit_test(walk_to_1_234_passes_21_over_17),
        cmocka_unit_test(bracket_of_the_walk_stays_unimodular),
        cmocka_unit_test(nearest_ratio_is_the_nearest_of_all),
        cmocka_unit_test(no_ratio_for_what_is_no_ratio),
        cmocka_unit_test(walk_ends_before_it_overflows),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
