/* Do two bevel gears roll on cones that meet, and are their blanks as printed? */
#include "element/bevel_depth.h"
#include "element/bevel_pair.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

static ts_bevel_pair_input plain(int z_1, int z_2, double m_et, double Sigma, double b)
{
    return (ts_bevel_pair_input){.z_1     = z_1,
                                 .z_2     = z_2,
                                 .m_et    = m_et,
                                 .Sigma   = Sigma * degree,
                                 .alpha_n = 20.0 * degree,
                                 .b       = b};
}

static ts_bevel_pair solved(const ts_bevel_pair_input *in)
{
    ts_bevel_pair pair;

    assert_int_equal(ts_bevel_pair_solve(in, &pair, NULL), TS_BEVEL_FINE);
    return pair;
}

/* U. C. Jindal, Machine Design, examples 27-2 and 27-3 (read). */
static void printed_cones_agree(void **state)
{
    (void)state;
    const ts_bevel_pair_input in_3 = plain(30, 45, 6e-3, 90.0, 0.0);
    const ts_bevel_pair_input in_2 = plain(20, 36, 4e-3, 90.0, 0.0);
    const ts_bevel_pair       pair = solved(&in_3);

    assert_close(pair.delta_1 / degree, 33.7, 6e-4);
    assert_close(pair.R_e, 162.25e-3, 3e-5);
    assert_close(solved(&in_2).z_v1, 22.88, 2e-4);
}

/* derived: on their common cone line both gears have the same pitch, so the sines of the pitch
 * angles are as the tooth numbers, whatever the shaft angle. */
static void pitch_angles_share_the_shaft_angle_by_their_sines(void **state)
{
    (void)state;
    for (double Sigma = 40.0; Sigma < 120.0; Sigma += 7.0) {
        const ts_bevel_pair_input in   = plain(31, 44, 3e-3, Sigma, 15e-3);
        const ts_bevel_pair       pair = solved(&in);

        assert_close(pair.delta_1 + pair.delta_2, Sigma * degree, 1e-14);
        assert_close(sin(pair.delta_2) / sin(pair.delta_1), pair.u, 1e-13);
        assert_close(pair.d_e1 / (2.0 * sin(pair.delta_1)), pair.R_e, 1e-13);
        assert_close(pair.d_m1, pair.d_e1 * pair.R_m / pair.R_e, 1e-13);
        assert_close(pair.d_m2 / pair.d_m1, pair.u, 1e-13);
        assert_close(pair.m_mt * 31.0, pair.d_m1, 1e-13);
    }
}

static void swapping_the_gears_swaps_the_cones(void **state)
{
    (void)state;
    const ts_bevel_pair_input in   = plain(37, 41, 2.5e-3, 84.0, 18e-3),
                              back = plain(41, 37, 2.5e-3, 84.0, 18e-3);
    const ts_bevel_pair p = solved(&in), q = solved(&back);

    assert_close(p.delta_1, q.delta_2, 1e-14);
    assert_close(p.z_v2, q.z_v1, 1e-14);
    assert_close(p.R_m, q.R_m, 1e-14);
}

/* derived: as the shaft angle goes to 0 the cones become cylinders of the same tooth numbers. */
static void small_shaft_angle_gives_nearly_cylindrical_gears(void **state)
{
    (void)state;
    const ts_bevel_pair_input in   = plain(23, 67, 2e-3, 0.01, 0.0);
    const ts_bevel_pair       pair = solved(&in);

    assert_close(pair.z_v1, 23.0, 1e-7);
    assert_close(pair.z_v2, 67.0, 1e-7);
}

static void spiral_makes_the_normal_module_smaller(void **state)
{
    (void)state;
    ts_bevel_pair_input in = plain(43, 46, 2.4e-3, 90.0, 16e-3);

    in.beta_m                = 35.0 * degree;
    const ts_bevel_pair pair = solved(&in);
    assert_close(pair.m_mn, pair.m_mt * cos(35.0 * degree), 1e-14);
}

static void expect_fault(const ts_bevel_pair_input *in, ts_bevel_fault fault)
{
    ts_bevel_pair pair;

    assert_int_equal(ts_bevel_pair_solve(in, &pair, NULL), fault);
    assert_nan(pair.u);
    assert_nan(pair.delta_1);
    assert_nan(pair.b_over_R_e);
    assert_true(ts_bevel_fault_says(fault)[0] != '\0');
}

static void impossible_pairs_are_refused(void **state)
{
    (void)state;
    const ts_bevel_pair_input none  = plain(0, 40, 2e-3, 90.0, 0.0);
    const ts_bevel_pair_input flat  = plain(20, 40, 2e-3, 120.0, 0.0); /* crown gear: exactly 90 */
    const ts_bevel_pair_input ring  = plain(20, 40, 2e-3, 150.0, 0.0);
    const ts_bevel_pair_input wide  = plain(20, 40, 2e-3, 90.0, 45e-3);
    const ts_bevel_pair_input line  = plain(20, 40, 2e-3, 180.0, 0.0);
    const ts_bevel_pair_input blank = plain(20, 40, (double)NAN, 90.0, 0.0);

    expect_fault(&none, TS_BEVEL_OUT_OF_RANGE);
    expect_fault(&flat, TS_BEVEL_NO_CONE);
    expect_fault(&ring, TS_BEVEL_NO_CONE);
    expect_fault(&wide, TS_BEVEL_TOO_WIDE);
    expect_fault(&line, TS_BEVEL_OUT_OF_RANGE);
    expect_fault(&blank, TS_BEVEL_OUT_OF_RANGE);
}

/* "Elements of Metric Gear Technology" (SDP/SI) and KHK reference, 20/40 teeth, m 3, b 22 (from
 * memory, reproduced to the last digit). */
static void printed_blank_of_long_addendum_agrees(void **state)
{
    (void)state;
    const ts_bevel_pair_input in   = plain(20, 40, 3e-3, 90.0, 22e-3);
    const ts_bevel_pair       pair = solved(&in);
    ts_bevel_depth            depth;

    ts_bevel_depth_solve(&pair, TS_BEVEL_LONG_ADDENDUM, NULL, &depth, NULL);
    assert_close(depth.h_a1, 4.035e-3, 1e-6);
    assert_close(depth.h_f2, 4.599e-3, 1e-6);
    assert_close(depth.delta_a1 / degree, 30.48699, 3e-7);
    assert_close(depth.d_ae2, 121.7575e-3, 1e-6);
    assert_close(depth.d_ai1, 44.8425e-3, 1.2e-6);
}

/* derived: with tips parallel to the mating roots the clearance stays the same along the tooth. */
static void long_addendum_keeps_the_clearance_along_the_tooth(void **state)
{
    (void)state;
    const ts_bevel_pair_input in   = plain(27, 44, 3e-3, 90.0, 20e-3);
    const ts_bevel_pair       pair = solved(&in);

    for (int rule = TS_BEVEL_LONG_ADDENDUM; rule <= TS_BEVEL_LONG_SPIRAL; rule++) {
        ts_bevel_depth depth;

        ts_bevel_depth_solve(&pair, (ts_bevel_depth_rule)rule, NULL, &depth, NULL);
        assert_same_double(depth.theta_a1, depth.theta_f2);
        assert_same_double(depth.theta_a2, depth.theta_f1);
        assert_close(depth.h_f2 - depth.h_a1, 0.188 * 3e-3, 1e-12);
        assert_close(depth.h_f1 - depth.h_a2, 0.188 * 3e-3, 1e-12);
        assert_true(depth.h_a1 > depth.h_a2);
    }
}

static void equal_addenda_are_module_high(void **state)
{
    (void)state;
    const ts_bevel_pair_input in   = plain(20, 40, 3e-3, 90.0, 22e-3);
    const ts_bevel_pair       pair = solved(&in);
    ts_bevel_depth            depth, given;
    const ts_bevel_heights    heights = {3e-3, 3e-3, 3.75e-3, 3.75e-3};

    ts_bevel_depth_solve(&pair, TS_BEVEL_EQUAL_ADDENDA, NULL, &depth, NULL);
    ts_bevel_depth_solve(&pair, TS_BEVEL_HEIGHTS_GIVEN, &heights, &given, NULL);
    assert_close(depth.d_ae1, 65.3666e-3, 1e-6); /* the same source, standard gears */
    assert_close(depth.delta_f2 / degree, 60.23535, 3e-7);
    assert_close(given.d_ae1, depth.d_ae1, 1e-15);
    assert_close(given.delta_f2, depth.delta_f2, 1e-15);
}

/* derived: along its own cone each gear is b sin(delta) smaller in the middle of its face. */
static void mean_diameters_lie_half_a_face_nearer_to_the_apex(void **state)
{
    (void)state;
    for (double Sigma = 40.0; Sigma < 120.0; Sigma += 7.0) {
        const ts_bevel_pair_input in   = plain(31, 44, 3e-3, Sigma, 15e-3);
        const ts_bevel_pair       pair = solved(&in);

        assert_close(pair.d_m1, 2.0 * pair.R_m * sin(pair.delta_1), 1e-13);
        assert_close(pair.d_m2, 2.0 * pair.R_m * sin(pair.delta_2), 1e-13);
        assert_close(pair.d_m2 / pair.d_m1, pair.u, 1e-13);
    }
}

static void tooth_numbers_have_one_bound_for_either_gear(void **state)
{
    (void)state;
    const ts_bevel_pair_input most  = plain(1000000, 1000000, 3e-3, 90.0, 15e-3);
    const ts_bevel_pair_input one   = plain(1000001, 1000000, 3e-3, 90.0, 15e-3);
    const ts_bevel_pair_input other = plain(1000000, 1000001, 3e-3, 90.0, 15e-3);
    const ts_bevel_pair_input none  = plain(31, 0, 3e-3, 90.0, 15e-3);

    solved(&most);
    expect_fault(&one, TS_BEVEL_OUT_OF_RANGE);
    expect_fault(&other, TS_BEVEL_OUT_OF_RANGE);
    expect_fault(&none, TS_BEVEL_OUT_OF_RANGE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(printed_cones_agree),
        cmocka_unit_test(pitch_angles_share_the_shaft_angle_by_their_sines),
        cmocka_unit_test(swapping_the_gears_swaps_the_cones),
        cmocka_unit_test(small_shaft_angle_gives_nearly_cylindrical_gears),
        cmocka_unit_test(spiral_makes_the_normal_module_smaller),
        cmocka_unit_test(impossible_pairs_are_refused),
        cmocka_unit_test(printed_blank_of_long_addendum_agrees),
        cmocka_unit_test(long_addendum_keeps_the_clearance_along_the_tooth),
        cmocka_unit_test(equal_addenda_are_module_high),
        cmocka_unit_test(mean_diameters_lie_half_a_face_nearer_to_the_apex),
        cmocka_unit_test(tooth_numbers_have_one_bound_for_either_gear),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
