/* Does a rate file answer for bearings and shear necks what the rooms below compute? */
#include "element/involute_spline.h"
#include "element/shear_neck.h"
#include "rate/rated_file.h"
#include "rating/bearing/bearing_rate.h"
#include "rating/spline/spline_stress.h"

#define BEARING "form: deep groove, series: 02, d: 30 mm, F_r: 900 N, F_a: 300 N, n: 9000 rpm"
#define NECK    "d: 10 mm, tol: 0.02 mm, Ftu_min: 1240 MPa, Ftu_max: 1380 MPa"

static void bearing_is_rated_as_the_room_below_does(void **state)
{
    (void)state;
    ts_bearing      bearing = {.form = TS_BEARING_DEEP_GROOVE, .rows = 1, .C_r = NAN, .C_0r = NAN};
    ts_bearing_size size;
    ts_bearing_ability    ability;
    const ts_bearing_duty duty = {
        .F_r = 900.0, .F_a = 300.0, .n = 300.0 * 3.14159265358979323846, .nu = 6e-6};
    const ts_bearing_want want = {.S = 0.9, .e_C = NAN, .cleanness = TS_ON_LINE_15_12};

    assert_true(ts_bearing_size_of(TS_TEXT("02"), 0.03, &size));
    assert_true(ts_bearing_inside_of(TS_BEARING_DEEP_GROOVE, &size, &bearing.inside));
    bearing.d = size.d;
    bearing.D = size.D;
    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_FINE);
    const ts_duty_rating below = ts_bearing_duty_rate(&bearing, &ability, &duty, &want, NULL);

    ts_study *study = rated_element("bearing", BEARING ", nu: 6 cSt, L_h: 500 h");
    assert_close(ts_study_number(study, "bearing/one:C_r"), ability.C_r, 1e-14);
    assert_close(ts_study_number(study, "bearing/one:P"), below.P, 1e-13);
    assert_close(ts_study_number(study, "bearing/one:L_10h"), below.L_10h, 1e-12);
    assert_close(ts_study_number(study, "bearing/one:L_nmh"), below.L_nmh, 1e-12);
    assert_close(ts_study_number(study, "bearing/one:S_0"), below.S_0, 1e-13);
    assert_int_equal(ts_study_verdict(study), TS_HOLDS);
    ts_study_close(study);
}

/* The number told is the number used. */
static void makers_capacity_is_the_one_told(void **state)
{
    (void)state;
    ts_study *study = rated_element("bearing", BEARING ", C_r: 20000 N, C_0r: 10000 N");

    assert_close(ts_study_number(study, "bearing/one:C_r"), 20000.0, 1e-15);
    assert_close(ts_study_number(study, "bearing/one:C_0r"), 10000.0, 1e-15);
    const double P = ts_study_number(study, "bearing/one:P");
    assert_close(ts_study_number(study, "bearing/one:L_10"), pow(20000.0 / P, 3.0), 1e-12);
    ts_study_close(study);
}

static void short_life_and_dents_are_refused(void **state)
{
    (void)state;
    ts_study *brief = rated_element("bearing", BEARING ", L_h: 90000 h");
    assert_non_null(finding_of(brief, "rate-bearing-life"));
    assert_int_equal(ts_study_verdict(brief), TS_DOES_NOT_HOLD);
    ts_study_close(brief);

    ts_study *dented =
        rated_element("bearing", "form: deep groove, series: 02, d: 30 mm, F_r: 14000 N, n: 0 rpm");
    assert_non_null(finding_of(dented, "rate-static-safety"));
    assert_non_null(finding_of(dented, "rate-range-bearing-load"));
    ts_study_close(dented);

    ts_study *idle = rated_element(
        "bearing", "form: cylindrical roller, series: 02, d: 30 mm, F_r: 90 N, n: 9000 rpm");
    assert_non_null(finding_of(idle, "rate-least-load"));
    ts_study_close(idle);
}

static void own_inside_needs_no_series(void **state)
{
    (void)state;
    ts_study *own = rated_element("bearing", "form: deep groove, d: 40 mm, D: 80 mm, Z: 9, D_w: "
                                             "11.906 mm, F_r: 900 N, n: 9000 rpm");
    /* Catalogue value 29 100 N (bank case brg-6208-dynamic-geometry, from memory). */
    assert_close(ts_study_number(own, "bearing/one:C_r"), 29100.0, 0.002);
    ts_study_close(own);

    ts_study *bare = rated_element("bearing", "form: deep groove, d: 40 mm, F_r: 1 N, n: 1 rpm");
    assert_int_equal(ts_study_verdict(bare), TS_VERDICT_NOT_COMPUTABLE);
    ts_study_close(bare);

    ts_study *odd = rated_element("bearing", "form: cylindrical roller, series: 19, d: 40 mm, "
                                             "F_r: 1 N, n: 1 rpm");
    assert_non_null(finding_of(odd, "rate-not-computable"));
    ts_study_close(odd);

    ts_study *steep = rated_element("bearing", "form: angular contact, series: 02, d: 40 mm, "
                                               "alpha: 17 deg, F_r: 1 N, n: 1 rpm");
    assert_non_null(finding_of(steep, "rate-not-computable"));
    ts_study_close(steep);
}

static void neck_has_the_band_of_the_room_below(void **state)
{
    (void)state;
    const ts_shear_neck  neck  = {.d        = {.low = 9.98e-3, .high = 10.02e-3},
                                  .Ftu      = {.low = 1240e6, .high = 1380e6},
                                  .ratio    = {.low = 0.6, .high = 0.6},
                                  .warmth   = {.low = 1.0, .high = 1.0},
                                  .yielding = {.low = 0.0, .high = 1.0},
                                  .K_ts     = 1.0};
    const ts_neck_limits band  = ts_neck_band(&neck, NULL);
    ts_study            *study = rated_element("shear neck", NECK);

    assert_close(ts_study_number(study, "shear neck/one:T_low@weakest"), band.low, 1e-13);
    assert_close(ts_study_number(study, "shear neck/one:T_high@strongest"), band.high, 1e-13);
    assert_int_equal(ts_study_verdict(study), TS_HOLDS);
    ts_study_close(study);
}

/* Band about 144 to 214 N.m: 1.25 times 120 is too much, and so is 1.25 times 214 for 250. */
static void weak_and_strong_necks_are_refused(void **state)
{
    (void)state;
    ts_study *weak = rated_element("shear neck", NECK ", T_legit: 120 N.m");
    assert_non_null(finding_of(weak, "rate-neck-too-weak"));
    ts_study_close(weak);
    ts_study *strong = rated_element("shear neck", NECK ", T_capacity: 250 N.m");
    assert_non_null(finding_of(strong, "rate-neck-too-strong"));
    ts_study_close(strong);
    ts_study *fine = rated_element("shear neck", NECK ", T_legit: 110 N.m, T_capacity: 280 N.m");
    assert_int_equal(ts_study_verdict(fine), TS_HOLDS);
    ts_study_close(fine);
    ts_study *brittle =
        rated_element("shear neck", NECK ", T_legit: 110 N.m, brittle: yes, K_ts: 1.4");
    assert_non_null(finding_of(brittle, "rate-neck-too-weak"));
    ts_study_close(brittle);
}

#define SPLINE "N: 16, P: 20, T: 60 N.m, L_e: 19 mm"

static void spline_is_rated_as_the_rooms_below_do(void **state)
{
    (void)state;
    ts_spline spline;

    assert_true(ts_spline_b921(16.0, 20.0 / 0.0254, 3.14159265358979323846 / 6.0,
                               TS_SPLINE_FILLET_ROOT, &spline, NULL));
    const ts_spline_load load  = {.T    = 60.0,
                                  .N    = 16.0,
                                  .D    = spline.D,
                                  .D_re = spline.D_re,
                                  .L_e  = 0.019,
                                  .t    = spline.s_v,
                                  .h    = 0.0254 / 20.0,
                                  .K_a  = 1.0,
                                  .K_m  = ts_spline_misalignment_factor(0.019, 0.003, NULL),
                                  .K_f  = 1.0,
                                  .K_w  = 1.0};
    ts_study            *study = rated_element("spline", SPLINE ", d_i: 0.0864 in, d_e: 0.096 in");

    assert_close(ts_study_number(study, "spline/one:D_re"), spline.D_re, 1e-14);
    assert_close(ts_study_number(study, "spline/one:M_i"),
                 ts_spline_between_pins(&spline, spline.s_v, 0.0864 * 0.0254, NULL), 1e-12);
    assert_close(ts_study_number(study, "spline/one:M_e"),
                 ts_spline_over_pins(&spline, spline.s_v, 0.096 * 0.0254, NULL), 1e-12);
    assert_close(ts_study_number(study, "spline/one:S_s"), ts_spline_root_shear(&load, NULL),
                 1e-12);
    assert_close(ts_study_number(study, "spline/one:S_c"), ts_spline_pressure_flexible(&load, NULL),
                 1e-12);
    assert_int_equal(ts_study_verdict(study), TS_HOLDS);
    ts_study_close(study);
    study = rated_element("spline", SPLINE ", fixed: yes, revolutions: 1e12");
    assert_close(ts_study_number(study, "spline/one:S_c"), ts_spline_pressure_fixed(&load, NULL),
                 1e-12);
    ts_study_close(study);
}

static void splines_are_refused_with_their_reason(void **state)
{
    (void)state;
    ts_study *hard = rated_element("spline", SPLINE ", S_sP: 20 MPa, S_cP: 5 MPa");
    assert_non_null(finding_of(hard, "rate-spline-root-shear"));
    assert_non_null(finding_of(hard, "rate-spline-tooth-shear"));
    assert_non_null(finding_of(hard, "rate-spline-pressure"));
    ts_study_close(hard);
    ts_study *bored = rated_element("spline", SPLINE ", D_h: 25 mm");
    assert_non_null(finding_of(bored, "rate-not-computable"));
    ts_study_close(bored);
    ts_study *pinned = rated_element("spline", "N: 16, m: 1.25 mm, d_i: 90 mm");
    assert_non_null(finding_of(pinned, "rate-not-computable"));
    ts_study_close(pinned);
    ts_study *bare = rated_element("spline", "N: 16, m: 1.25 mm, T: 60 N.m");
    assert_int_equal(ts_study_verdict(bare), TS_VERDICT_NOT_COMPUTABLE);
    ts_study_close(bare);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bearing_is_rated_as_the_room_below_does),
        cmocka_unit_test(makers_capacity_is_the_one_told),
        cmocka_unit_test(short_life_and_dents_are_refused),
        cmocka_unit_test(own_inside_needs_no_series),
        cmocka_unit_test(neck_has_the_band_of_the_room_below),
        cmocka_unit_test(weak_and_strong_necks_are_refused),
        cmocka_unit_test(spline_is_rated_as_the_rooms_below_do),
        cmocka_unit_test(splines_are_refused_with_their_reason),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
