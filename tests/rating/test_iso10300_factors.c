/* Do the load and strength factors of bevels keep to their tables, limits and joints? */
#include "rating/iso10300/bevel_contact.h"
#include "rating/iso10300/bevel_dynamic.h"
#include "rating/iso10300/bevel_share.h"
#include "rating/iso10300/bevel_strength.h"
#include "rating/iso6336/dynamic_factor.h"
#include "support/close.h"

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

/* ---- dynamic factor -------------------------------------------------------------------------- */

static void dynamic_factor_joins_between_resonance_and_free_running(void **state)
{
    (void)state;
    for (double eps = 1.2; eps < 3.0; eps += 0.2) {
        const ts_bevel_dynamic_constants c = ts_bevel_dynamic_constants_of(eps, NULL);

        for (double B = 0.0; B < 2.0; B += 0.3) {
            const double inside = ts_bevel_dynamic_factor(1.25, &c, B, NULL);
            const double after  = ts_bevel_dynamic_factor(1.25 + 1e-12, &c, B, NULL);
            const double before = ts_bevel_dynamic_factor(1.5 - 1e-12, &c, B, NULL);
            const double above  = ts_bevel_dynamic_factor(1.5, &c, B, NULL);

            assert_close(after, inside, 1e-10);
            assert_close(before, above, 1e-10);
            assert_close(ts_bevel_dynamic_factor(1.375, &c, B, NULL), (inside + above) / 2.0,
                         1e-12);
            assert_same_double(ts_bevel_dynamic_factor(0.0, &c, B, NULL), 1.0);
        }
        assert_nan(ts_bevel_dynamic_factor((double)NAN, &c, 0.5, NULL));
    }
}

/* ISO 6336-1 splits the deviations into pitch and profile, bevels lump them: where both are alike
 * the sums of its constants are those of the bevels (derived; both recalled). */
static void constants_are_the_sums_of_those_of_cylindrical_gears(void **state)
{
    (void)state;
    for (double eps = 1.2; eps < 3.0; eps += 0.17) {
        const ts_bevel_dynamic_constants c = ts_bevel_dynamic_constants_of(eps, NULL);
        const ts_dynamic_constants       C = ts_dynamic_constants_of(eps, NULL);

        assert_close(c.c_v12, C.C_v1 + C.C_v2, 1e-14);
        assert_close(c.c_v3, C.C_v3, 1e-14);
        assert_close(c.c_v4, C.C_v4, 1e-14);
        assert_close(c.c_v56, C.C_v5 + C.C_v6, 1e-14);
        assert_close(c.c_v7, C.C_v7, 1e-14);
    }
    assert_nan(ts_bevel_dynamic_constants_of(1.0, NULL).c_v12);
    assert_nan(ts_bevel_dynamic_constants_of((double)NAN, NULL).c_v7);
}

/* ISO 10300-1, clause 7 (from memory): for steel N = 0.084 z_1 v_mt/100 sqrt(u^2/(1 + u^2)). */
static void resonance_agrees_with_the_short_form_for_steel(void **state)
{
    (void)state;
    for (double z_2 = 25.0; z_2 < 90.0; z_2 += 16.0) {
        const double z_1 = 25.0, d_m1 = 60e-3, u = z_2 / z_1, omega = 700.0;
        const double m_1 = ts_bevel_mass(7830.0, d_m1, 20.0 * degree, 0, NULL);
        const double m_2 = ts_bevel_mass(7830.0, d_m1 * u, 20.0 * degree, 1, NULL);
        const double m   = ts_bevel_reduced_mass(m_1, m_2, NULL);
        const double N = omega * z_1 / sqrt(TS_BEVEL_CGAMMA_0 / m), v = omega * d_m1 / 2.0;

        assert_close(N, 0.084 * z_1 * v / 100.0 * sqrt(u * u / (1.0 + u * u)), 0.01);
    }
}

static void light_load_softens_the_teeth_in_proportion(void **state)
{
    (void)state;
    assert_close(ts_bevel_stiffness_share(500.0, 1.5, 15e-3, NULL), 0.5, 1e-14);
    assert_same_double(ts_bevel_stiffness_share(5000.0, 1.0, 15e-3, NULL), 1.0);
}

static void hard_flanks_run_in_by_a_share_with_a_limit(void **state)
{
    (void)state;
    const double hlim = 800e6;

    assert_close(ts_bevel_running_in(TS_GEAR_CASE_HARDENED, 1500e6, 10e-6, 20.0, 0, NULL), 0.75e-6,
                 1e-14);
    assert_close(ts_bevel_running_in(TS_GEAR_NITRIDED, 1250e6, 80e-6, 20.0, 1, NULL), 3e-6, 1e-14);
    /* soft: 160/800 of 100 um is 20 um; the limits are 16 um and 8 um */
    assert_close(ts_bevel_running_in(TS_GEAR_THROUGH_HARDENED, hlim, 100e-6, 4.0, 0, NULL), 20e-6,
                 1e-13);
    assert_close(ts_bevel_running_in(TS_GEAR_THROUGH_HARDENED, hlim, 100e-6, 9.0, 0, NULL), 16e-6,
                 1e-13);
    assert_close(ts_bevel_running_in(TS_GEAR_THROUGH_HARDENED, hlim, 100e-6, 19.0, 1, NULL), 8e-6,
                 1e-13);
}

/* ---- shares ---------------------------------------------------------------------------------- */

static void curved_teeth_spread_the_root_load_up_to_a_limit(void **state)
{
    (void)state;
    const double beta = 35.0 * degree, R_m = 60e-3;

    assert_close(ts_bevel_curvature_factor(R_m, R_m, beta, NULL), 1.0, 1e-14); /* 0.211 + 0.789 */
    assert_same_double(ts_bevel_curvature_factor(3.0 * R_m, R_m, beta, NULL), 1.0);
    assert_same_double(ts_bevel_curvature_factor(0.2 * R_m, R_m, beta, NULL), 1.15);
    assert_close(ts_bevel_curvature_factor(0.8 * R_m, R_m, beta, NULL),
                 0.211 * pow(0.8, 0.279 / log10(sin(beta))) + 0.789, 1e-13);
    assert_same_double(ts_bevel_curvature_factor(R_m / 2.0, R_m, 0.0, NULL), 1.0);
    assert_same_double(ts_bevel_curvature_factor((double)NAN, R_m, beta, NULL), 1.0);
}

static void transverse_load_stays_between_one_and_one_pair(void **state)
{
    (void)state;
    ts_bevel_transverse_input in = {.eps_valpha = 1.3,
                                    .eps_vgamma = 1.8,
                                    .c_gamma    = 20e9,
                                    .f_peff     = 6e-6,
                                    .b_v        = 18e-3,
                                    .F_mtH      = 1e9,
                                    .Z_LS       = 0.9,
                                    .Y_eps      = 0.7};

    assert_same_double(ts_bevel_transverse_load(&in, NULL).K_Halpha, 1.0);
    in.F_mtH = 10.0;
    assert_close(ts_bevel_transverse_load(&in, NULL).K_Halpha, 1.8 / (1.3 * 0.81), 1e-14);
    assert_close(ts_bevel_transverse_load(&in, NULL).K_Falpha, 1.8 / (1.3 * 0.7), 1e-14);
    in.F_mtH           = 4000.0;
    in.eps_vgamma      = 2.0;
    const double below = ts_bevel_transverse_load(&in, NULL).K_alpha;
    in.eps_vgamma      = 2.0 + 1e-12;
    assert_close(ts_bevel_transverse_load(&in, NULL).K_alpha, below, 1e-9);
}

/* ---- strength -------------------------------------------------------------------------------- */

/* ISO 6336-2, clause 12, same formulas (from memory): 1 for 167.5 mm2/s at 40 degrees (100 at
 * 50), 10 m/s and 3 um. */
static void film_factors_are_one_at_the_test_conditions(void **state)
{
    (void)state;
    const double R_z[2] = {3e-6, 3e-6};

    for (double limit = 700e6; limit < 1700e6; limit += 100e6) {
        assert_close(ts_bevel_lubricant(limit, 167.5e-6, NULL), 1.0, 1e-14);
        assert_close(ts_bevel_film_speed(ts_bevel_speed_constant(limit, NULL), 10.0, NULL), 1.0,
                     1e-14);
        assert_close(ts_bevel_smoothness(limit, R_z, 10e-3, NULL), 1.0, 1e-13);
    }
    assert_close(ts_bevel_lubricant(1200e6, 1.0, NULL), 0.91 + 4.0 * 0.09 / (1.2 * 1.2), 1e-4);
    assert_same_double(ts_bevel_film_speed(0.93, 0.0, NULL), 0.93);
}

static void notch_surface_and_size_are_one_for_the_test_gear(void **state)
{
    (void)state;
    for (int class = TS_GEAR_CASE_HARDENED; class < TS_GEAR_CLASS_COUNT; class ++) {
        const ts_gear_class of    = (ts_gear_class) class;
        const double        rho_p = ts_bevel_slip_layer(of, 400e6, 0, NULL);

        assert_close(ts_bevel_notch(rho_p, 2.5, 0, NULL), 1.0, 1e-14);
        assert_true(ts_bevel_notch(rho_p, 4.0, 0, NULL) > 1.0);
        assert_close(ts_bevel_root_surface(of, 10e-6, 1, NULL), 1.0, 0.005);
        assert_true(ts_bevel_root_surface(of, 0.5e-6, 1, NULL) > 1.0);
        assert_same_double(ts_bevel_root_size(of, 2e-3, 0, NULL), 1.0);
        assert_true(ts_bevel_root_size(of, 20e-3, 0, NULL) < 1.0);
    }
    assert_close(ts_bevel_slip_layer(TS_GEAR_THROUGH_HARDENED, 700e6, 0, NULL),
                 (0.0194e-3 + 0.0064e-3) / 2.0, 1e-12);
    assert_nan(ts_bevel_slip_layer(TS_GEAR_THROUGH_HARDENED, (double)NAN, 0, NULL));
}

static void force_across_the_teeth_is_that_of_the_virtual_gear(void **state)
{
    (void)state;
    const double alpha = 20.0 * degree, beta = 35.0 * degree;
    const double alpha_t = atan(tan(alpha) / cos(beta)), beta_b = asin(sin(beta) * cos(alpha));

    assert_close(ts_bevel_normal_force(1000.0, alpha, beta, NULL),
                 1000.0 / (cos(alpha_t) * cos(beta_b)), 1e-14);
    assert_close(ts_bevel_elasticity_factor(206e9, 0.3, 206e9, 0.3, NULL),
                 sqrt(206e9 / (2.0 * pi * 0.91)), 1e-14);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(dynamic_factor_joins_between_resonance_and_free_running),
        cmocka_unit_test(constants_are_the_sums_of_those_of_cylindrical_gears),
        cmocka_unit_test(resonance_agrees_with_the_short_form_for_steel),
        cmocka_unit_test(light_load_softens_the_teeth_in_proportion),
        cmocka_unit_test(hard_flanks_run_in_by_a_share_with_a_limit),
        cmocka_unit_test(curved_teeth_spread_the_root_load_up_to_a_limit),
        cmocka_unit_test(transverse_load_stays_between_one_and_one_pair),
        cmocka_unit_test(film_factors_are_one_at_the_test_conditions),
        cmocka_unit_test(notch_surface_and_size_are_one_for_the_test_gear),
        cmocka_unit_test(force_across_the_teeth_is_that_of_the_virtual_gear),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
