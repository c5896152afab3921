/* Which racks exist, and how large may their root round be? */
#include "element/basic_rack.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

/* derived: (pi/4 - 1.25*tan(25 deg))/tan(32.5 deg), worked out apart. */
static void rack_A_at_25_degrees_takes_less_than_0_38(void **state)
{
    (void)state;
    assert_close(ts_basic_rack_rho_most(&ts_basic_rack_A, 25.0 * degree), 0.317882662497873, 1e-13);
    assert_false(ts_basic_rack_possible(&ts_basic_rack_A, 25.0 * degree));
    assert_true(ts_basic_rack_possible(&ts_basic_rack_A, 20.0 * degree));
}

/* ISO 53:1998 gives 0.39 for profile D as its full root round at 20 degrees (from memory). */
static void rack_D_has_nearly_a_full_root_round(void **state)
{
    (void)state;
    const double most = ts_basic_rack_rho_most(&ts_basic_rack_D, 20.0 * degree);

    assert_true(most >= ts_basic_rack_D.rho_fPs);
    assert_close(most, 0.39, 0.02);
}

/* derived: two circles of that radius in neighbouring corners touch in the middle of the space. */
static void full_root_round_reaches_the_middle_of_the_space(void **state)
{
    (void)state;
    const double alpha = 22.5 * degree, pi = 180.0 * degree;
    const double rho    = ts_basic_rack_rho_most(&ts_basic_rack_A, alpha);
    const double centre = pi / 4.0 + (1.25 - rho) * tan(alpha) + rho / cos(alpha);

    assert_close(centre, pi / 2.0, 1e-14);
}

static void fitted_rack_is_possible_and_changes_only_the_round(void **state)
{
    (void)state;
    for (double alpha = 10.0; alpha < 32.0; alpha += 0.5) {
        const ts_basic_rack fitted = ts_basic_rack_fitted(&ts_basic_rack_A, alpha * degree);

        assert_true(ts_basic_rack_possible(&fitted, alpha * degree));
        assert_same_double(fitted.h_aPs, 1.0);
        assert_same_double(fitted.h_fPs, 1.25);
        assert_true(fitted.rho_fPs <= 0.38);
    }
}

static void no_root_round_helps_where_the_flanks_meet_first(void **state)
{
    (void)state;
    const ts_basic_rack fitted = ts_basic_rack_fitted(&ts_basic_rack_A, 35.0 * degree);

    assert_true(ts_basic_rack_rho_most(&ts_basic_rack_A, 35.0 * degree) < 0.0);
    assert_false(ts_basic_rack_possible(&fitted, 35.0 * degree));
}

/* ISO 53:1998, table 2 (from memory). */
static void racks_are_those_of_the_standard(void **state)
{
    (void)state;
    const ts_basic_rack *const racks[]   = {&ts_basic_rack_A, &ts_basic_rack_B, &ts_basic_rack_C,
                                            &ts_basic_rack_D};
    static const double        rows[][3] = {
               {1.0, 1.25, 0.38}, {1.0, 1.25, 0.30}, {1.0, 1.25, 0.25}, {1.0, 1.40, 0.39}};

    for (int i = 0; i < 4; i++) {
        assert_same_double(racks[i]->h_aPs, rows[i][0]);
        assert_same_double(racks[i]->h_fPs, rows[i][1]);
        assert_same_double(racks[i]->rho_fPs, rows[i][2]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rack_A_at_25_degrees_takes_less_than_0_38),
        cmocka_unit_test(rack_D_has_nearly_a_full_root_round),
        cmocka_unit_test(full_root_round_reaches_the_middle_of_the_space),
        cmocka_unit_test(fitted_rack_is_possible_and_changes_only_the_round),
        cmocka_unit_test(no_root_round_helps_where_the_flanks_meet_first),
        cmocka_unit_test(racks_are_those_of_the_standard),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
