/* Does the involute function agree with its tables, and does its inverse undo it? */
#include "element/involute.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

/* Involute tables, six decimals, as in any handbook (from memory). */
static void inv_agrees_with_printed_tables(void **state)
{
    (void)state;
    assert_close_abs(ts_inv(14.5 * degree), 0.005545, 5e-7);
    assert_close_abs(ts_inv(20.0 * degree), 0.014904, 5e-7);
    assert_close_abs(ts_inv(22.5 * degree), 0.021514, 5e-7);
    assert_close_abs(ts_inv(25.0 * degree), 0.029975, 5e-7);
    assert_close_abs(ts_inv(30.0 * degree), 0.053751, 5e-7);
}

/* derived: Maclaurin series; at 1e-6 rad the second term is 4e-13 of the first, and tan(x) - x in
 * doubles would be wrong in the fifth digit. */
static void inv_keeps_its_digits_at_small_angles(void **state)
{
    (void)state;
    assert_close(ts_inv(1e-6), 1e-18 / 3.0 + 2e-30 / 15.0, 1e-15);
    assert_close(ts_inv(-1e-6), -1e-18 / 3.0, 1e-12);
    assert_same_double(ts_inv(0.0), 0.0);
}

/* Both branches at the place where they meet; tan(0.1) - 0.1 derived: series in 50 digits. */
static void inv_is_continuous_where_its_branches_meet(void **state)
{
    (void)state;
    assert_close(ts_inv(0.1), 3.3467208545054505808e-4, 2e-16);
    for (double alpha = 0.2; alpha < 0.3; alpha += 0.001)
        assert_close_abs(ts_inv(alpha), tan(alpha) - alpha, 1e-16); /* four ulp of alpha */
}

static void inverse_undoes_inv_over_twelve_decades(void **state)
{
    (void)state;
    for (double alpha = 1e-4; alpha < 1.55; alpha *= 1.01)
        assert_close(ts_inv_inverse(ts_inv(alpha)), alpha, 4e-15);
    for (double value = 1e-15; value < 1e3; value *= 1.7)
        assert_close(ts_inv(ts_inv_inverse(value)), value, 1e-11);
}

static void inverse_refuses_what_no_angle_has(void **state)
{
    (void)state;
    assert_same_double(ts_inv_inverse(0.0), 0.0);
    assert_nan(ts_inv_inverse(-1e-9));
    assert_nan(ts_inv_inverse(1.1e12));
    assert_true(ts_inv_inverse(1e12) < 1.5707963267948966);
    assert_nan(ts_inv_inverse((double)INFINITY));
    assert_nan(ts_inv_inverse((double)NAN));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(inv_agrees_with_printed_tables),
        cmocka_unit_test(inv_keeps_its_digits_at_small_angles),
        cmocka_unit_test(inv_is_continuous_where_its_branches_meet),
        cmocka_unit_test(inverse_undoes_inv_over_twelve_decades),
        cmocka_unit_test(inverse_refuses_what_no_angle_has),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
