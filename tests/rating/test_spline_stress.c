/* Are splines as large as their standards say, and are their stresses what statics says? */
#include "element/involute_spline.h"
#include "rating/spline/spline_stress.h"
#include "support/close.h"

static const double pi = 3.14159265358979323846;

/* Derived: a pin that touches at the pitch circle of a tooth with 0.5 pitch.  Both measurements,
 * taken back through the involute, must give the thickness they were made from. */
static void pins_touch_the_flanks(void **state)
{
    (void)state;
    for (int N = 10; N <= 41; N++) {
        ts_spline s;

        assert_true(ts_spline_b921(N, 20.0 / 0.0254, pi / 6.0, TS_SPLINE_FILLET_ROOT, &s, NULL));
        const double pin    = 0.96 * 2.0 * 0.0254 / 20.0 * 0.9;
        const double M_e    = ts_spline_over_pins(&s, s.s_v, pin, NULL);
        const double across = N % 2 == 1 ? cos(pi / (2.0 * N)) : 1.0;
        const double phi    = acos(across * s.D_b / (M_e - pin));
        /* Angle of a flank at the base circle from the tooth's middle, and the pin's half width. */
        const double half = s.s_v / s.D + tan(s.alpha_D) - s.alpha_D;

        assert_close(tan(phi) - phi, half + pin / s.D_b - pi / N, 1e-9);
        assert_true(M_e > s.D_o * across);
        const double M_i = ts_spline_between_pins(&s, s.s_v, pin, NULL);
        assert_true(M_i < s.D_i + 1e-3 && M_i > 0.0);
    }
}

/* ISO 4156 and B92.1 are one system in two units where the depth is the same: 30 degrees, fillet
 * root, diameters (N + 1.8)/P and (N + 1)/P. */
static void both_systems_agree_where_they_are_one(void **state)
{
    (void)state;
    ts_spline inch, metric;

    assert_true(ts_spline_b921(24.0, 12.0 / 0.0254, pi / 6.0, TS_SPLINE_FILLET_ROOT, &inch, NULL));
    assert_true(
        ts_spline_iso4156(24.0, 0.0254 / 12.0, pi / 6.0, TS_SPLINE_FILLET_ROOT, &metric, NULL));
    assert_close(metric.D, inch.D, 1e-14);
    assert_close(metric.D_b, inch.D_b, 1e-14);
    assert_close(metric.D_ri, inch.D_ri, 1e-14);
    assert_close(metric.D_re, inch.D_re, 1e-14);
    assert_close(metric.s_v, inch.s_v, 1e-14);
    /* The internal tip clears the form circle of the shaft. */
    assert_true(metric.D_i > metric.D_Fe && metric.D_Fe > metric.D_re);
    assert_true(metric.D_Fi > metric.D_o && metric.D_ri > metric.D_Fi);
    assert_false(ts_spline_b921(5.0, 800.0, pi / 6.0, TS_SPLINE_FLAT_ROOT, &inch, NULL));
    assert_false(ts_spline_b921(24.0, 800.0, 0.7, TS_SPLINE_FLAT_ROOT, &inch, NULL));
}

static const ts_spline_load load = {.T    = 70.0,
                                    .N    = 16,
                                    .D    = 0.02032,
                                    .D_re = 0.01778,
                                    .D_h  = 0.008,
                                    .L_e  = 0.019,
                                    .t    = 0.002,
                                    .h    = 0.00127,
                                    .K_a  = 1.0,
                                    .K_m  = 1.0,
                                    .K_f  = 1.0,
                                    .K_w  = 1.0};

/* Derived: all teeth together carry T; one of D/2 N L h each carries its share of the force. */
static void pressure_balances_the_torque(void **state)
{
    (void)state;
    const double p = ts_spline_pressure_flexible(&load, NULL);

    assert_close(p * load.N * load.L_e * load.h * load.D / 2.0, load.T, 1e-14);
    /* Half of the teeth in shear. */
    assert_close(ts_spline_pitch_shear(&load, NULL) * load.N / 2.0 * load.L_e * load.t * load.D /
                     2.0,
                 load.T, 1e-14);
}

/* The handbook's 1.656 (rpm/10^6)^2 (D_oi^2 + 0.212 D_ri^2) in psi and inches is the spinning ring
 * of steel (bank, spl-dudley-stress; from memory). */
static void spin_is_the_handbooks(void **state)
{
    (void)state;
    const ts_spline_sleeve sleeve = {.D_ri    = 0.89 * 0.0254,
                                     .D_oi    = 1.4 * 0.0254,
                                     .t_w     = 0.255 * 0.0254,
                                     .alpha_D = pi / 6.0,
                                     .Y       = 1.5,
                                     .rho     = 7833.0,
                                     .n       = 12000.0 * pi / 30.0};
    const double           rpm = 12000.0, psi = 6894.757293168361;
    const double book = 1.656e6 * pow(rpm / 1e6, 2.0) * (1.4 * 1.4 + 0.212 * 0.89 * 0.89) * psi;
    const ts_spline_bursting s = ts_spline_burst(&load, &sleeve, NULL);

    assert_close(s.S_2, book, 0.01);
    assert_close(s.S_t, s.S_1 + s.S_2 + s.S_3, 1e-14);
}

static void factors_stand_at_their_columns(void **state)
{
    (void)state;
    assert_close(ts_spline_fatigue_factor(1e5, false, NULL), 0.5, 1e-12);
    assert_close(ts_spline_fatigue_factor(1e5, true, NULL), 0.4, 1e-12);
    assert_close(ts_spline_fatigue_factor(10.0, true, NULL), 1.8, 1e-12);
    assert_close(ts_spline_wear_factor(1e12, NULL), 0.5, 1e-12);
    assert_close(ts_spline_misalignment_factor(4.0 * 0.0254, 0.008, NULL), 3.0, 1e-12);
    assert_close(ts_spline_misalignment_factor(0.001, 0.0, NULL), 1.0, 1e-12);
    assert_nan(ts_spline_wear_factor(0.0, NULL));
    assert_nan(ts_spline_misalignment_factor(0.02, -0.001, NULL));
}

static void wear_grows_with_way_and_pressure(void **state)
{
    (void)state;
    const double slide = ts_spline_slide(0.02, 0.003, NULL);

    assert_close(slide, 0.00012, 1e-14);
    assert_close(ts_spline_wear_depth(1e-18, 20e6, slide, 1e8, NULL), 2.4e-7, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pins_touch_the_flanks),
        cmocka_unit_test(both_systems_agree_where_they_are_one),
        cmocka_unit_test(pressure_balances_the_torque),
        cmocka_unit_test(spin_is_the_handbooks),
        cmocka_unit_test(factors_stand_at_their_columns),
        cmocka_unit_test(wear_grows_with_way_and_pressure),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
