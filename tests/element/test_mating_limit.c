/* Do the closed-form limits stand where the path of contact reaches a base circle? */
#include "element/cylindrical_contact.h"
#include "element/involute.h"
#include "element/mating_limit.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

static ts_cylindrical_pair spur(int z_1, int z_2, double m, double alpha)
{
    ts_cylindrical_pair_input in = {.z_1 = z_1, .z_2 = z_2, .m_n = m, .alpha_n = alpha * degree};
    ts_cylindrical_pair       pair;

    in.rack = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

/* Bevan, Theory of Machines, ch. 10 ex. 4 (read: 18, 13, 15 teeth); Shigley, section 13-7 (from
 * memory: 12.3, 15.4, 16.45, 17.1). */
static void printed_least_tooth_numbers_agree(void **state)
{
    (void)state;
    const double alpha = 20.0 * degree;

    assert_close(ts_teeth_least_with_rack(1.0, alpha, 0.0, NULL), 17.1, 2e-3);
    assert_close(ts_teeth_least_at_ratio(1.0, alpha, 0.0, 1.0, NULL), 12.32, 1e-3);
    assert_close(ts_teeth_least_at_ratio(1.0, alpha, 0.0, 3.0, NULL), 14.98, 1e-3);
    assert_close(ts_teeth_least_at_ratio(1.0, alpha, 0.0, 4.0, NULL), 15.4, 4e-3);
    assert_close(ts_teeth_most_of_wheel(1.0, alpha, 0.0, 13, NULL), 16.45, 5e-4);
}

static void pinion_that_meshes_with_a_rack_meshes_with_every_wheel(void **state)
{
    (void)state;
    const double most = ts_teeth_most_of_wheel(1.0, 20.0 * degree, 0.0, 18, NULL);

    assert_true(isinf(most) && most > 0.0);
    assert_true(isfinite(ts_teeth_most_of_wheel(1.0, 20.0 * degree, 0.0, 17, NULL)));
}

/* derived: as the ratio grows the wheel becomes a rack. */
static void least_tooth_number_grows_to_that_of_the_rack(void **state)
{
    (void)state;
    const double alpha = 20.0 * degree;

    assert_close(ts_teeth_least_at_ratio(1.0, alpha, 0.3, 1e7, NULL),
                 ts_teeth_least_with_rack(1.0, alpha, 0.3, NULL), 1e-6);
}

/* A second route: with the largest wheel the path of contact begins at the base circle. */
static void limit_is_where_contact_begins_on_the_base_circle(void **state)
{
    (void)state;
    for (int z_1 = 13; z_1 <= 17; z_1++) {
        const double most = ts_teeth_most_of_wheel(1.0, 20.0 * degree, 0.0, z_1, NULL);
        const int    fits = (int)floor(most);

        if (fits >= 1000)
            continue;
        assert_true(spur(z_1, fits, 2e-3, 20.0).rho_A1 > 0.0);
        assert_true(spur(z_1, fits + 1, 2e-3, 20.0).rho_A1 < 0.0);
    }
}

/* Khurmi and Gupta, Theory of Machines, example 12.11 (read): 16/28 teeth, m 6, 16 degrees. */
static void printed_largest_addenda_agree(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = spur(16, 28, 6e-3, 16.0);

    assert_close(ts_tip_radius_most_1(&pair, NULL) - pair.d_1 / 2.0, 10.76e-3, 5e-4);
    assert_close(ts_tip_radius_most_2(&pair, NULL) - pair.d_2 / 2.0, 4.56e-3, 1.1e-3);
}

/* derived: tips made for a path give that path. */
static void tips_made_for_a_path_give_it(void **state)
{
    (void)state;
    const ts_cylindrical_pair plain = spur(20, 40, 10e-3, 20.0);
    ts_cylindrical_pair_input in    = plain.in;
    ts_cylindrical_pair       pair;

    in.tip  = TS_TIP_DIAMETERS;
    in.d_a1 = 2.0 * ts_tip_radius_for_path_1(&plain, 21e-3, NULL);
    in.d_a2 = 2.0 * ts_tip_radius_for_path_2(&plain, 17e-3, NULL);
    ts_cylindrical_pair_solve(&in, &pair, NULL);
    assert_close(pair.g_a, 21e-3, 1e-12);
    assert_close(pair.g_f, 17e-3, 1e-12);
    assert_close(ts_arc_of_contact(&pair, NULL), 38e-3 / cos(20.0 * degree), 1e-12);
    assert_close(ts_turn_in_contact_1(&pair, NULL) * pair.d_w1 / 2.0,
                 ts_turn_in_contact_2(&pair, NULL) * pair.d_w2 / 2.0, 1e-13);
}

/* The gap, m along the tip circle, between a corner of gear 1 and the flanks of the ring's spaces,
 * the least over a turn in small steps, gears without play: the long way to the closed form. */
static double least_gap(const ts_cylindrical_pair *pair)
{
    const double pi = 3.14159265358979323846, alpha = pair->alpha_t, a = fabs(pair->a_w);
    const double r_a1 = pair->d_a1 / 2.0, r_a2 = fabs(pair->d_a2) / 2.0;
    const double r_b1 = pair->d_b1 / 2.0, r_b2 = fabs(pair->d_b2) / 2.0;
    const double z_1 = pair->in.z_1, z_2 = -pair->in.z_2, slope = tan(pair->in.alpha_n);
    const double tooth  = (pi / 2.0 + 2.0 * pair->x_1 * slope) / z_1 + ts_inv(alpha);
    const double space  = (pi / 2.0 - 2.0 * pair->x_2 * slope) / z_2 + ts_inv(alpha);
    const double corner = tooth - ts_inv(acos(r_b1 / r_a1)), pitch = 2.0 * pi / z_2;
    double       least = INFINITY;

    for (double turn = -1.4; turn < 1.4; turn += 1e-5) {
        const double x = a + r_a1 * cos(turn + corner), y = r_a1 * sin(turn + corner);
        const double r = hypot(x, y);
        if (r < r_a2)
            continue;
        const double from = remainder(atan2(y, x) - turn * z_1 / z_2, pitch);
        least             = fmin(least, r_a2 * (space - ts_inv(acos(r_b2 / r)) - fabs(from)));
    }
    return least;
}

static void passing_tips_are_those_of_a_turn_in_small_steps(void **state)
{
    (void)state;
    int struck = 0;

    for (int z_2 = -47; z_2 >= -52; z_2--) {
        ts_cylindrical_pair_input in = {
            .z_1 = 40, .z_2 = z_2, .m_n = 2e-3, .alpha_n = 20.0 * degree, .rack = ts_basic_rack_A};
        ts_cylindrical_pair pair;
        assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
        const double room = ts_tips_passing_room(&pair, NULL), gap = least_gap(&pair);

        if (room < 0.0) {
            assert_close_abs(gap, room, 2e-6); /* m; the steps are that coarse */
            struck++;
        } else {
            assert_true(gap > -1e-9); /* flank on flank in the mesh itself */
        }
    }
    assert_int_equal(struck, 2); /* 40 teeth in 47 and 48 */
    const ts_cylindrical_pair outside = spur(40, 49, 2e-3, 20.0);
    assert_true(isinf(ts_tips_passing_room(&outside, NULL)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(printed_least_tooth_numbers_agree),
        cmocka_unit_test(pinion_that_meshes_with_a_rack_meshes_with_every_wheel),
        cmocka_unit_test(least_tooth_number_grows_to_that_of_the_rack),
        cmocka_unit_test(limit_is_where_contact_begins_on_the_base_circle),
        cmocka_unit_test(printed_largest_addenda_agree),
        cmocka_unit_test(tips_made_for_a_path_give_it),
        cmocka_unit_test(passing_tips_are_those_of_a_turn_in_small_steps),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
