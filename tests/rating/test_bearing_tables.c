/* Do the remembered tables and formulas of rolling bearings hold against physics and each other? */
#include "catalog/bearing_size.h"
#include "element/bearing_geometry.h"
#include "element/hertz.h"
#include "rating/bearing/dynamic_capacity.h"
#include "rating/bearing/equivalent_load.h"
#include "rating/bearing/life_modification.h"
#include "rating/bearing/static_capacity.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

/* ISO 76:2006, clause 4 (from memory): at C_0r the most loaded ball, with five times its share, is
 * pressed with 4200 MPa.  Grooves of 0.52 and 0.53 of the ball, E = 207 GPa, nu = 0.3. */
static double pressure_at_capacity(double gamma, bool inner)
{
    const double D_w = 0.01, f_0 = ts_static_f_0(gamma, NULL), f = inner ? 0.52 : 0.53;
    const double Q   = 5.0 * 1e6 * f_0 * D_w * D_w;
    const double E_r = ts_reduced_modulus(207e9, 0.3, 207e9, 0.3, NULL);
    const double race =
        inner ? D_w * (1.0 - gamma) / (2.0 * gamma) : -D_w * (1.0 + gamma) / (2.0 * gamma);
    const double R_x = ts_reduced_radius(D_w / 2.0, race, NULL);
    const double R_y = ts_reduced_radius(D_w / 2.0, -f * D_w, NULL);

    return ts_hertz_point(Q, R_x, R_y, E_r, NULL).p_max;
}

static void static_table_puts_4200_MPa_on_the_worse_race(void **state)
{
    (void)state;
    for (int i = 1; i <= 40; i++) {
        const double gamma = i / 100.0;
        const double worse =
            fmax(pressure_at_capacity(gamma, true), pressure_at_capacity(gamma, false));

        assert_close(worse, 4200e6, 0.012);
    }
    assert_nan(ts_static_f_0(0.41, NULL));
}

/* Both branches of P give the same load where they meet, within the table's two figures. */
static void load_factors_meet_at_e(void **state)
{
    (void)state;
    static const double angles[]    = {15, 20, 25, 30, 35, 40, 45};
    static const double relatives[] = {0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89};

    for (int i = 0; i < 9; i++) {
        const ts_load_factors deep = ts_deep_groove_factors(relatives[i], NULL);

        assert_close(deep.X_2 + deep.Y_2 * deep.e, 1.0, 0.012);
        for (int k = 0; k < 7; k++)
            for (int rows = 1; rows <= 2; rows++) {
                const ts_load_factors f =
                    ts_angular_contact_factors(angles[k] * degree, rows, relatives[i], NULL);

                assert_close(f.X_2 + f.Y_2 * f.e, f.X_1 + f.Y_1 * f.e, 0.012);
            }
    }
    assert_nan(ts_angular_contact_factors(17.0 * degree, 1, 1.0, NULL).e);
    assert_nan(ts_angular_contact_factors(50.0 * degree, 1, 1.0, NULL).e);
}

/* Catalogue values 19 500 N and 29 100 N (bank cases brg-6206 and brg-6208, from memory). */
static void generic_inside_comes_near_common_bearings(void **state)
{
    (void)state;
    static const double bores[] = {0.030, 0.040}, capacities[] = {19500.0, 29100.0};

    for (int i = 0; i < 2; i++) {
        ts_bearing_size   size;
        ts_bearing_inside in;

        assert_true(ts_bearing_size_of(TS_TEXT("02"), bores[i], &size));
        assert_true(ts_bearing_inside_of(TS_BEARING_DEEP_GROOVE, &size, &in));
        assert_int_equal(in.Z, 9);
        const double      gamma = ts_bearing_gamma(in.D_w, in.D_pw, 0.0, NULL);
        const ts_ball_set set   = {
              .i   = 1,
              .Z   = in.Z,
              .D_w = in.D_w,
              .b_m = TS_BALL_RATING,
              .f_c = ts_ball_f_c(gamma, in.f_i, in.f_e, TS_BALL_LEVEL, NULL),
        };
        assert_close(ts_ball_capacity(&set, NULL), capacities[i], 0.01);
    }
}

/* From memory: a roller bearing 40 x 80 x 18 is sold with 55.5 kN and 55.5 kN. */
static void generic_rollers_come_near_a_common_bearing(void **state)
{
    (void)state;
    ts_bearing_size   size;
    ts_bearing_inside in;

    assert_true(ts_bearing_size_of(TS_TEXT("02"), 0.040, &size));
    assert_true(ts_bearing_inside_of(TS_BEARING_CYLINDRICAL_ROLLER, &size, &in));
    const ts_roller_set set = {
        .i    = 1,
        .Z    = in.Z,
        .D_we = in.D_w,
        .L_we = in.L_we,
        .b_m  = TS_ROLLER_RATING,
        .f_c  = ts_roller_f_c(in.D_w / in.D_pw, NULL),
    };
    assert_close(ts_roller_capacity(&set, NULL), 55.5e3, 0.03);
    const ts_static_rollers rollers = {
        .i = 1, .Z = in.Z, .D_we = in.D_w, .L_we = in.L_we, .D_pw = in.D_pw};
    assert_close(ts_roller_static_capacity(&rollers, NULL), 55.5e3, 0.03);
}

static void every_size_has_room_for_its_inside(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_bearing_size_count(); i++) {
        const ts_bearing_size size = ts_bearing_size_at(i);

        assert_true(size.d > 0.0 && size.D > size.d && size.B > 0.0 && size.B < size.D - size.d);
        for (int form = 0; form < TS_BEARING_FORM_COUNT; form++) {
            ts_bearing_inside in;

            if (!ts_bearing_inside_of((ts_bearing_form)form, &size, &in))
                continue;
            assert_true(in.Z >= 6);
            assert_true(in.D_pw - in.D_w > size.d && in.D_pw + in.D_w < size.D);
            /* Room between neighbours. */
            assert_true(in.D_pw * sin(180.0 * degree / in.Z) > in.D_w);
            assert_true(in.D_w < size.B || in.L_we < size.B);
        }
    }
}

static void large_balls_follow_their_own_law(void **state)
{
    (void)state;
    ts_ball_set  set   = {.i = 1, .Z = 8, .D_w = 0.0254, .b_m = 1.3, .f_c = 59.9};
    const double below = ts_ball_capacity(&set, NULL);

    set.D_w = nextafter(0.0254, 1.0);
    assert_close(ts_ball_capacity(&set, NULL), below, 1e-3);
}

static void cleaner_oil_and_thicker_film_lengthen_life(void **state)
{
    (void)state;
    double last = 0.0;

    for (int i = 0; i <= 60; i++) {
        const double kappa = 0.1 * pow(1.1, i);
        const double e_C   = ts_contamination_of(TS_ON_LINE_15_12, fmin(kappa, 4.0), 0.06, NULL);
        const double a     = ts_life_modification(TS_ROLLING_BALLS, kappa, e_C * 0.2, NULL);

        assert_true(a >= last * (1.0 - 4e-4) && a >= 0.1 && a <= 50.0);
        last = a;
    }
    for (int i = 0; i + 1 < TS_CLEANNESS_COUNT; i++) {
        if (i == TS_ON_LINE_19_16)
            continue;
        assert_true(ts_contamination_of((ts_cleanness)i, 0.5, 0.06, NULL) >=
                    ts_contamination_of((ts_cleanness)(i + 1), 0.5, 0.06, NULL));
    }
    /* Loads far below the fatigue limit: the most that is granted. */
    assert_same_double(ts_life_modification(TS_ROLLING_ROLLERS, 4.0, 5.0, NULL), 50.0);
    assert_nan(ts_life_modification(TS_ROLLING_BALLS, 0.09, 0.2, NULL));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(static_table_puts_4200_MPa_on_the_worse_race),
        cmocka_unit_test(load_factors_meet_at_e),
        cmocka_unit_test(generic_inside_comes_near_common_bearings),
        cmocka_unit_test(generic_rollers_come_near_a_common_bearing),
        cmocka_unit_test(every_size_has_room_for_its_inside),
        cmocka_unit_test(large_balls_follow_their_own_law),
        cmocka_unit_test(cleaner_oil_and_thicker_film_lengthen_life),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
