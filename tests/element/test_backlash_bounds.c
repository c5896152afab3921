/* Do the bounds of backlash hold whatever is made, and whatever it is warmed to? */
#include "element/backlash_bounds.h"
#include "element/thickness_allowance.h"
#include "support/close.h"
#include "support/sequence.h"

static const double degree = 3.14159265358979323846 / 180.0;

static ts_cylindrical_pair pair_of(int z_1, int z_2, double beta, double x_1)
{
    const ts_cylindrical_pair_input in = {.z_1     = z_1,
                                          .z_2     = z_2,
                                          .m_n     = 2e-3,
                                          .alpha_n = 25.0 * degree,
                                          .beta    = beta * degree,
                                          .x_1     = x_1,
                                          .rack    = {1.0, 1.25, 0.25}};
    ts_cylindrical_pair             pair;

    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

static const ts_backlash_allowance allowance = {
    .E_sn1 = {-60e-6, -100e-6}, .E_sn2 = {-50e-6, -90e-6}, .A_a = {-20e-6, 25e-6}};
static const ts_backlash_warmth warmth = {.theta        = {233.15, 393.15},
                                          .dtheta       = {-30.0, 10.0},
                                          .alpha_gears  = 11.5e-6,
                                          .alpha_casing = 23e-6};

/* The pair is solved anew with thinner teeth on other axes: another way through other code. */
static double play_made(const ts_cylindrical_pair *pair, double E_1, double E_2, double a_w)
{
    const ts_cylindrical_frame frame = {
        .m_n = pair->in.m_n, .alpha_n = pair->in.alpha_n, .beta = pair->in.beta};
    ts_cylindrical_pair_input in = pair->in;
    ts_cylindrical_pair       made;

    in.x_1 = ts_generated_shift(pair->x_1, E_1, &frame, TS_GEAR_1, NULL);
    in.x_2 = ts_generated_shift(pair->x_2, E_2, &frame, TS_GEAR_2, NULL);
    in.a_w = a_w;
    (void)ts_cylindrical_pair_solve(&in, &made, NULL);
    return made.j_bn;
}

static void bounds_as_built_are_those_of_the_extreme_pairs(void **state)
{
    (void)state;
    for (int beta = 0; beta < 40; beta += 13) {
        const ts_cylindrical_pair pair = pair_of(31, 46, beta, 0.15);
        ts_backlash               j;

        ts_backlash_solve(&pair, &allowance, NULL, &j, NULL);
        assert_close(j.j_bn[TS_BACKLASH_MIN], play_made(&pair, -60e-6, -50e-6, pair.a_w - 20e-6),
                     1e-9);
        assert_close(j.j_bn[TS_BACKLASH_MAX], play_made(&pair, -100e-6, -90e-6, pair.a_w + 25e-6),
                     1e-9);
        assert_nan(j.j_bn[TS_BACKLASH_LOW]);
        assert_nan(j.j_wt[TS_BACKLASH_HIGH]);
    }
}

/* "2 da tan a" of the trade is the first order of the circumferential play; derived: d(inv a) is
 * tan(a)^2 da, and da = -a_w tan(a) d(a) at constant base circles. */
static void play_of_farther_axes_begins_with_twice_the_tangent(void **state)
{
    (void)state;
    const ts_cylindrical_pair   pair   = pair_of(31, 46, 0, 0.0);
    const ts_backlash_allowance moved  = {.A_a = {1e-7, 1e-7}};
    const double                j_wt_1 = 2e-7 * tan(25.0 * degree);
    ts_backlash                 j;

    ts_backlash_solve(&pair, &moved, NULL, &j, NULL);
    assert_close(j.j_wt[TS_BACKLASH_MIN], j_wt_1, 1e-4);
}

static double unit_of(sequence *s)
{
    return (double)sequence_below(s, 1000001) / 1e6;
}

static double between(sequence *s, const double ends[2])
{
    return ends[0] + (ends[1] - ends[0]) * unit_of(s);
}

/* Gears as they are when warm: every length of theirs has grown, teeth too. */
static double play_warm(const ts_cylindrical_pair *pair, sequence *s)
{
    const double E_1   = between(s, (const double[]){-60e-6, -100e-6});
    const double E_2   = between(s, (const double[]){-50e-6, -90e-6});
    const double A_a   = between(s, allowance.A_a);
    const double theta = between(s, warmth.theta), dtheta = between(s, warmth.dtheta);
    const double grow = 1.0 + warmth.alpha_gears * (theta - 293.15);
    const double a_w  = (pair->a_w + A_a) * (1.0 + warmth.alpha_casing * (theta + dtheta - 293.15));

    return grow * play_made(pair, E_1, E_2, a_w / grow);
}

static void nothing_made_and_warmed_lies_outside_of_the_bounds(void **state)
{
    (void)state;
    sequence s = {7};

    for (int z = 19; z < 90; z += 14) {
        const ts_cylindrical_pair pair = pair_of(z, 41, z % 3 * 9, 0.1);
        double                    low = INFINITY, high = -INFINITY;
        ts_backlash               j;

        ts_backlash_solve(&pair, &allowance, &warmth, &j, NULL);
        for (int i = 0; i < 2000; i++) {
            const double made = play_warm(&pair, &s);

            low  = fmin(low, made);
            high = fmax(high, made);
        }
        assert_true(j.j_bn[TS_BACKLASH_LOW] <= low && high <= j.j_bn[TS_BACKLASH_HIGH]);
        assert_true(j.j_bn[TS_BACKLASH_LOW] < j.j_bn[TS_BACKLASH_MIN]);
    }
}

/* The corners are reached: play that is closest is met, but for the growth taken apart (0.2 %). */
static void bounds_over_the_temperatures_are_no_wider_than_the_growth_of_the_gears(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = pair_of(31, 46, 0, 0.0);
    ts_backlash               j;

    ts_backlash_solve(&pair, &allowance, &warmth, &j, NULL);
    const double grow = 1.0 + 11.5e-6 * (233.15 - 293.15);
    const double a_w  = (pair.a_w - 20e-6) * (1.0 + 23e-6 * (233.15 - 30.0 - 293.15));

    assert_close(j.j_bn[TS_BACKLASH_LOW], grow * play_made(&pair, -60e-6, -50e-6, a_w / grow),
                 2e-3);
}

static void gears_and_casing_of_one_stuff_and_warmth_only_grow(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = pair_of(31, 46, 0, 0.0);
    const ts_backlash_warmth  one  = {
          .theta = {353.15, 353.15}, .alpha_gears = 11.5e-6, .alpha_casing = 11.5e-6};
    ts_backlash j;

    ts_backlash_solve(&pair, &allowance, &one, &j, NULL);
    for (int end = 0; end < 2; end++)
        assert_close(j.j_bn[TS_BACKLASH_LOW + end],
                     (1.0 + 11.5e-6 * 60.0) * j.j_bn[TS_BACKLASH_MIN + end], 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bounds_as_built_are_those_of_the_extreme_pairs),
        cmocka_unit_test(play_of_farther_axes_begins_with_twice_the_tangent),
        cmocka_unit_test(nothing_made_and_warmed_lies_outside_of_the_bounds),
        cmocka_unit_test(bounds_over_the_temperatures_are_no_wider_than_the_growth_of_the_gears),
        cmocka_unit_test(gears_and_casing_of_one_stuff_and_warmth_only_grow),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
