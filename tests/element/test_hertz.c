/* Do pressed bodies follow Hertz, from the circle to the line? */
#include "base/arena.h"
#include "element/hertz.h"
#include "support/close.h"

static const double pi = 3.14159265358979323846;

/* Complete elliptic integrals of the first and second kind by the arithmetic-geometric mean, a
 * route that the program does not take (derived: Gauss 1799). */
static void elliptic(double k, double *K, double *E)
{
    double a = 1.0, g = k, sum = (1.0 - k * k) / 2.0, power = 0.5;

    for (int i = 0; i < 12; i++) {
        const double mean = (a + g) / 2.0, half = (a - g) / 2.0;

        g = sqrt(a * g);
        a = mean;
        power *= 2.0;
        sum += power * half * half;
    }
    *K = pi / (2.0 * a);
    *E = *K * (1.0 - sum);
}

/* Derived: the pressure over the band is half an ellipse. */
static void band_carries_the_load(void **state)
{
    (void)state;
    const ts_line_contact c = ts_hertz_line(4.2e5, 8.4e-3, 226.4e9, NULL);

    assert_close(pi / 2.0 * c.p_max * c.b_H, 4.2e5, 1e-14);
    assert_close(c.p_max, c.b_H * 226.4e9 / (4.0 * 8.4e-3), 1e-14);
}

/* S. Timoshenko, J. Goodier, Theory of Elasticity, article 140 (from memory): two balls. */
static void circle_is_the_closed_form(void **state)
{
    (void)state;
    const double           E_r = ts_reduced_modulus(206e9, 0.3, 206e9, 0.3, NULL), Q = 730.0;
    const double           R = ts_reduced_radius(6e-3, 11e-3, NULL);
    const ts_point_contact c = ts_hertz_point(Q, R, R, E_r, NULL);
    const double           a = cbrt(3.0 * Q * R / (2.0 * E_r));

    assert_close(c.k, 1.0, 1e-14);
    assert_close(c.a, a, 1e-14);
    assert_close(c.b, a, 1e-14);
    assert_close(c.p_max, 3.0 * Q / (2.0 * pi * a * a), 1e-14);
}

static void ellipse_satisfies_its_equation(void **state)
{
    (void)state;
    static const double ratios[] = {1.001, 1.1, 2.0, 7.0, 40.0, 300.0, 2e4};

    for (int i = 0; i < 7; i++) {
        const double           R_x = 3e-3, R_y = R_x * ratios[i], E_r = 2e11, Q = 90.0;
        const ts_point_contact c = ts_hertz_point(Q, R_x, R_y, E_r, NULL);
        double                 K, E;

        elliptic(c.k, &K, &E);
        const double e2 = 1.0 - c.k * c.k;
        assert_close((E - c.k * c.k * K) / (c.k * c.k * (K - E)), ratios[i], 1e-9 / e2);
        assert_close(c.a * c.a * c.a, 6.0 * Q * R_y / (pi * E_r) * (K - E) / e2, 1e-11 / e2);
        assert_close(2.0 * pi / 3.0 * c.p_max * c.a * c.b, Q, 1e-13);
        /* Brewe and Hamrock 1977 (from memory): within 3 % of the exact axes up to 1:100. */
        if (ratios[i] < 150.0)
            assert_close(1.0 / c.k, 1.0339 * pow(ratios[i], 0.636), 0.035);
    }
}

/* Derived: far from the ends of a long ellipse its middle is a line contact under the load that
 * stands on that slice, (3/4)*Q/a... of a half ellipse. */
static void slender_ellipse_is_a_line(void **state)
{
    (void)state;
    const double           R_x = 2e-3, E_r = 2.2e11, Q = 500.0;
    const ts_point_contact c = ts_hertz_point(Q, R_x, R_x * 1e8, E_r, NULL);
    const double           w = pi / 2.0 * c.p_max * c.b; /* load of the middle slice */
    const ts_line_contact  l = ts_hertz_line(w, R_x, E_r, NULL);

    assert_close(l.b_H, c.b, 1e-6);
    assert_close(l.p_max, c.p_max, 1e-6);
}

static void directions_can_be_exchanged(void **state)
{
    (void)state;
    const ts_point_contact one   = ts_hertz_point(50.0, 3e-3, 17e-3, 2e11, NULL);
    const ts_point_contact other = ts_hertz_point(50.0, 17e-3, 3e-3, 2e11, NULL);

    assert_memory_equal(&one, &other, sizeof one);
}

static void pressure_grows_with_the_third_root_of_the_load(void **state)
{
    (void)state;
    const ts_point_contact one   = ts_hertz_point(50.0, 3e-3, 17e-3, 2e11, NULL);
    const ts_point_contact eight = ts_hertz_point(400.0, 3e-3, 17e-3, 2e11, NULL);

    assert_close(eight.p_max, 2.0 * one.p_max, 1e-14);
    assert_close(eight.k, one.k, 1e-15);
}

static void nothing_presses_without_load(void **state)
{
    (void)state;
    const ts_point_contact c = ts_hertz_point(0.0, 3e-3, 17e-3, 2e11, NULL);

    assert_same_double(c.p_max, 0.0);
    assert_same_double(c.a, 0.0);
    assert_same_double(ts_hertz_line(0.0, 3e-3, 2e11, NULL).p_max, 0.0);
}

static void what_cannot_touch_is_no_number(void **state)
{
    (void)state;
    const double none = NAN, endless = INFINITY;

    assert_nan(ts_hertz_line(-1.0, 3e-3, 2e11, NULL).p_max);
    assert_nan(ts_hertz_line(1.0, -3e-3, 2e11, NULL).p_max);
    assert_nan(ts_hertz_line(1.0, 0.0, 2e11, NULL).b_H);
    assert_nan(ts_hertz_line(none, 3e-3, 2e11, NULL).p_max);
    assert_nan(ts_hertz_line(endless, 3e-3, 2e11, NULL).p_max);
    assert_nan(ts_hertz_point(-1.0, 3e-3, 3e-3, 2e11, NULL).p_max);
    assert_nan(ts_hertz_point(1.0, 3e-3, -3e-3, 2e11, NULL).p_max);
    assert_nan(ts_hertz_point(1.0, 3e-3, none, 2e11, NULL).k);
    assert_nan(ts_hertz_point(1.0, 3e-3, endless, 2e11, NULL).k);
    assert_nan(ts_hertz_point(1.0, 3e-3, 3e-3, 0.0, NULL).a);
    /* Surfaces that fit: */
    assert_nan(ts_hertz_line(1.0, ts_reduced_radius(5e-3, -4e-3, NULL), 2e11, NULL).p_max);
}

static void notes_change_nothing(void **state)
{
    (void)state;
    ts_arena              *arena    = ts_arena_open(NULL);
    ts_workings           *workings = ts_workings_open(arena);
    const ts_point_contact silent   = ts_hertz_point(50.0, 3e-3, 17e-3, 2e11, NULL);
    const ts_point_contact noted    = ts_hertz_point(50.0, 3e-3, 17e-3, 2e11, workings);
    const ts_subject       whole    = {0, TS_EVERY_CONDITION};

    assert_memory_equal(&silent, &noted, sizeof silent);
    assert_true(ts_workings_find(workings, whole, "k_H") != SIZE_MAX);
    ts_arena_close(arena);
}

/* Derived: softness adds up, each body with its own ratio of Poisson, whichever is named first; a
 * rigid mate leaves twice the plane modulus of the other. */
static void bodies_of_two_metals_share_their_softness(void **state)
{
    (void)state;
    const double steel = 206e9 / (1.0 - 0.3 * 0.3), bronze = 110e9 / (1.0 - 0.34 * 0.34);
    const double both = ts_reduced_modulus(206e9, 0.3, 110e9, 0.34, NULL);

    assert_close(both, 2.0 / (1.0 / steel + 1.0 / bronze), 1e-14);
    assert_close(ts_reduced_modulus(110e9, 0.34, 206e9, 0.3, NULL), both, 1e-15);
    assert_close(ts_reduced_modulus(110e9, 0.34, 1e25, 0.0, NULL), 2.0 * bronze, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(band_carries_the_load),
        cmocka_unit_test(circle_is_the_closed_form),
        cmocka_unit_test(ellipse_satisfies_its_equation),
        cmocka_unit_test(slender_ellipse_is_a_line),
        cmocka_unit_test(directions_can_be_exchanged),
        cmocka_unit_test(pressure_grows_with_the_third_root_of_the_load),
        cmocka_unit_test(nothing_presses_without_load),
        cmocka_unit_test(what_cannot_touch_is_no_number),
        cmocka_unit_test(notes_change_nothing),
        cmocka_unit_test(bodies_of_two_metals_share_their_softness),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
