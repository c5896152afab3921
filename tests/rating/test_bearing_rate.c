/* Does a bearing's life over all duties follow from its duties? */
#include "rating/bearing/bearing_rate.h"
#include "rating/bearing/equivalent_load.h"
#include "rating/bearing/rolling_life.h"
#include "support/close.h"

static const double          rpm  = 3.14159265358979323846 / 30.0;
static const ts_bearing_want want = {.S = 0.9, .e_C = NAN, .cleanness = TS_ON_LINE_15_12};

static ts_bearing of_size(ts_bearing_form form, double alpha, int rows, double bore)
{
    ts_bearing      bearing = {.form = form, .rows = rows, .alpha = alpha, .C_r = NAN, .C_0r = NAN};
    ts_bearing_size size;

    assert_true(ts_bearing_size_of(TS_TEXT("02"), bore, &size));
    assert_true(ts_bearing_inside_of(form, &size, &bearing.inside));
    bearing.d = size.d;
    bearing.D = size.D;
    return bearing;
}

static void one_duty_is_its_own_spectrum(void **state)
{
    (void)state;
    const ts_bearing      bearing = of_size(TS_BEARING_DEEP_GROOVE, 0.0, 1, 0.030);
    const ts_bearing_duty duty    = {
           .F_r = 900.0, .F_a = 300.0, .n = 12000 * rpm, .t = 3600.0, .nu = 6e-6};
    ts_bearing_ability ability;

    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_FINE);
    const ts_duty_rating    one = ts_bearing_duty_rate(&bearing, &ability, &duty, &want, NULL);
    const ts_bearing_rating all = ts_bearing_rate(&bearing, &ability, &duty, 1, &want, NULL);

    assert_close(all.L_10h, one.L_10h, 1e-14);
    assert_close(all.L_nmh, one.L_nmh, 1e-14);
    assert_close(one.L_nmh, one.a_ISO * one.L_10h, 1e-14); /* a_1 = 1 at 90 % */
    assert_same_double(all.S_0, one.S_0);
    assert_close(one.n_dm, 46.0 * 12000.0, 1e-12);
    assert_int_equal(all.worst_life, 0);
}

/* Derived: equal harm for equal turns gives the life of the mean load. */
static void spectrum_has_the_life_of_its_mean_load(void **state)
{
    (void)state;
    const ts_bearing      bearing   = of_size(TS_BEARING_CYLINDRICAL_ROLLER, 0.0, 1, 0.040);
    const ts_bearing_duty duties[3] = {
        {.F_r = 3000.0, .n = 9000 * rpm, .t = 1000.0, .nu = NAN},
        {.F_r = 5000.0, .n = 6000 * rpm, .t = 2000.0, .nu = NAN},
        {.F_r = 12000.0, .n = 0.0, .t = 0.0, .nu = NAN}, /* pressed while it stands */
    };
    ts_bearing_ability ability;
    ts_bearing_step    steps[2];

    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_FINE);
    const ts_bearing_rating all = ts_bearing_rate(&bearing, &ability, duties, 3, &want, NULL);
    for (int j = 0; j < 2; j++)
        steps[j] = (ts_bearing_step){duties[j].F_r, duties[j].n, duties[j].t};
    const double P_m = ts_mean_bearing_load(steps, 2, TS_LIFE_ROLLER, NULL);
    const double n   = (9000.0 * 1000.0 + 6000.0 * 2000.0) / 3000.0 * rpm;

    assert_close(all.L_10h,
                 ts_life_in_time(ts_basic_life(ability.C_r, P_m, TS_LIFE_ROLLER, NULL), n, NULL),
                 1e-12);
    assert_nan(all.L_nmh); /* the oil is not known */
    assert_int_equal(all.worst_static, 2);
    assert_close(all.S_0, ability.C_0r / 12000.0, 1e-14);
    assert_int_equal(all.worst_life, 1);
}

static void unloaded_duty_does_no_harm_but_may_slip(void **state)
{
    (void)state;
    const ts_bearing      bearing   = of_size(TS_BEARING_DEEP_GROOVE, 0.0, 1, 0.025);
    const ts_bearing_duty duties[2] = {{.F_r = 500.0, .n = 100.0, .t = 10.0, .nu = NAN},
                                       {.n = 2000.0, .t = 30.0, .nu = 5e-6}};
    ts_bearing_ability    ability;

    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_FINE);
    const ts_bearing_rating all = ts_bearing_rate(&bearing, &ability, duties, 2, &want, NULL);
    const ts_duty_rating    one = ts_bearing_duty_rate(&bearing, &ability, duties, &want, NULL);
    const ts_duty_rating idle   = ts_bearing_duty_rate(&bearing, &ability, duties + 1, &want, NULL);

    assert_close(all.L_10h, 4.0 * one.L_10h, 1e-13);
    assert_true(isinf(idle.L_10h) && isinf(idle.S_0));
    assert_int_equal(all.worst_slip, 1);
    assert_same_double(all.slip, 0.0);
}

static void pair_carries_more_than_one_and_less_than_two(void **state)
{
    (void)state;
    const double          forty  = 40.0 * 3.14159265358979323846 / 180.0;
    const ts_bearing      single = of_size(TS_BEARING_ANGULAR_CONTACT, forty, 1, 0.030);
    const ts_bearing      pair   = of_size(TS_BEARING_ANGULAR_CONTACT, forty, 2, 0.030);
    const ts_bearing_duty duty   = {.F_r = 1000.0, .F_a = 900.0, .n = 800.0, .t = 1.0, .nu = NAN};
    ts_bearing_ability    of_one, of_two;

    assert_int_equal(ts_bearing_prepare(&single, &of_one, NULL), TS_BEARING_FINE);
    assert_int_equal(ts_bearing_prepare(&pair, &of_two, NULL), TS_BEARING_FINE);
    assert_close(of_two.C_r / of_one.C_r, pow(2.0, 0.7), 1e-14);
    assert_close(of_two.C_0r / of_one.C_0r, 2.0, 1e-14);
    /* Fa/Fr = 0.9 below e = 1.14: P = Fr, and Fr + 0.55 Fa. */
    assert_close(ts_bearing_duty_rate(&single, &of_one, &duty, &want, NULL).P, 1000.0, 1e-14);
    assert_close(ts_bearing_duty_rate(&pair, &of_two, &duty, &want, NULL).P, 1495.0, 1e-13);
}

static void makers_capacity_goes_before_the_inside(void **state)
{
    (void)state;
    ts_bearing         bearing = of_size(TS_BEARING_DEEP_GROOVE, 0.0, 1, 0.030);
    ts_bearing_ability ability;

    bearing.C_r  = 19500.0;
    bearing.C_0r = 11300.0;
    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_FINE);
    assert_same_double(ability.C_r, 19500.0);
    assert_close(ability.C_u, 11300.0 / 22.0, 1e-14);
}

static void impossible_bearings_are_refused(void **state)
{
    (void)state;
    ts_bearing_ability ability;
    ts_bearing         bearing = of_size(TS_BEARING_DEEP_GROOVE, 0.0, 1, 0.030);

    bearing.inside.D_w = 0.017; /* through the bore */
    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_BAD_SIZE);
    bearing       = of_size(TS_BEARING_DEEP_GROOVE, 0.0, 1, 0.030);
    bearing.alpha = 0.3;
    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_BAD_FORM);
    bearing       = of_size(TS_BEARING_ANGULAR_CONTACT, 0.0, 1, 0.030);
    bearing.alpha = 0.3;
    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_BAD_ANGLE);
    bearing.D = NAN;
    assert_int_equal(ts_bearing_prepare(&bearing, &ability, NULL), TS_BEARING_BAD_SIZE);
    assert_true(ts_bearing_fault_says(TS_BEARING_BAD_ANGLE)[0] != '\0');
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_duty_is_its_own_spectrum),
        cmocka_unit_test(spectrum_has_the_life_of_its_mean_load),
        cmocka_unit_test(unloaded_duty_does_no_harm_but_may_slip),
        cmocka_unit_test(pair_carries_more_than_one_and_less_than_two),
        cmocka_unit_test(makers_capacity_goes_before_the_inside),
        cmocka_unit_test(impossible_bearings_are_refused),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
