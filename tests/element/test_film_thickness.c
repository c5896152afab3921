/* Do films follow the powers that they were fitted with, and agree where two fits meet? */
#include "base/arena.h"
#include "element/film_thickness.h"
#include "support/close.h"

static const double U = 3e-11, G = 4500.0, W = 2e-5;

/* derived: the exponents of the published fits */
static void films_grow_by_their_powers(void **state)
{
    (void)state;
    const double line  = ts_film_line_least(U, G, W, NULL);
    const double point = ts_film_point_least(U, G, 1e-7, 2.0, NULL);
    const double mid   = ts_film_point_central(U, G, 1e-7, 2.0, NULL);

    assert_close(ts_film_line_least(8.0 * U, G, W, NULL), line * pow(8.0, 0.7), 1e-13);
    assert_close(ts_film_line_least(U, 3.0 * G, W, NULL), line * pow(3.0, 0.54), 1e-13);
    assert_close(ts_film_line_least(U, G, 5.0 * W, NULL), line * pow(5.0, -0.13), 1e-13);
    assert_close(ts_film_point_least(8.0 * U, G, 1e-7, 2.0, NULL), point * pow(8.0, 0.68), 1e-13);
    assert_close(ts_film_point_least(U, G, 5e-7, 2.0, NULL), point * pow(5.0, -0.073), 1e-13);
    assert_close(ts_film_point_central(8.0 * U, G, 1e-7, 2.0, NULL), mid * pow(8.0, 0.67), 1e-13);
    assert_true(mid > point);
}

static void film_of_a_wide_contact_no_longer_knows_its_width(void **state)
{
    (void)state;
    const double wide = ts_film_point_least(U, G, 1e-7, 30.0, NULL);

    assert_close(ts_film_point_least(U, G, 1e-7, 60.0, NULL), wide, 1e-8);
    assert_true(ts_film_point_least(U, G, 1e-7, 1.0, NULL) < 0.6 * wide);
}

/* Derived: a wide point contact under the pressure of a line contact has nearly its film.  With
 * p/E_r equal the load groups belong together as W_line = 2 pi (p/E_r)^2 and, for k = 8 with the
 * axes k^(1.57) apart, W_point = (2 pi/3) p a b/(E_r R^2). */
static void point_and_line_fits_agree_on_wide_contacts(void **state)
{
    (void)state;
    for (double p = 2e-3; p < 8e-3; p *= 1.5) {
        const double b = 4.0 * p, a = 8.0 * b;
        const double W_line  = 2.0 * 3.14159265358979 * p * p;
        const double W_point = 2.0 * 3.14159265358979 / 3.0 * p * a * b;
        const double line    = ts_film_line_least(1e-11, 4500.0, W_line, NULL);
        const double point   = ts_film_point_least(1e-11, 4500.0, W_point, 8.0, NULL);

        assert_close(point, line, 0.3);
    }
}

/* K. L. Johnson and others give 20 per GPa for mineral oils near 0.1 Pa.s, less for synthetic ones
 * (common practice, no source). */
static void oils_stiffen_as_oils_do(void **state)
{
    (void)state;
    const double mineral = ts_pressure_viscosity(TS_OIL_MINERAL, 0.1, NULL);

    assert_close(mineral, 20e-9, 0.05);
    for (int oil = 0; oil < TS_OIL_COUNT; oil++) {
        const double thin  = ts_pressure_viscosity((ts_base_oil)oil, 0.003, NULL);
        const double thick = ts_pressure_viscosity((ts_base_oil)oil, 0.1, NULL);

        assert_true(thin < thick && thin > 5e-9 && thick <= mineral);
        assert_non_null(ts_base_oil_name((ts_base_oil)oil));
    }
}

static void ellipticity_of_equal_radii(void **state)
{
    (void)state;
    assert_close(ts_ellipticity_1977(3e-3, 3e-3, NULL), 1.03, 1e-15);
    assert_close(ts_ellipticity_brewe(3e-3, 3e-3, NULL), 1.0339, 1e-15);
    /* by hand: 2^1.28 = exp(1.28 * 0.693147180560) = 2.428389769, 2^1.272 = 2.414961183 */
    assert_close(ts_ellipticity_1977(3e-3, 12e-3, NULL), 1.03 * 2.428389769, 1e-9);
    assert_close(ts_ellipticity_brewe(3e-3, 12e-3, NULL), 1.0339 * 2.414961183, 1e-9);
}

static void notes_change_nothing(void **state)
{
    (void)state;
    ts_arena    *arena    = ts_arena_open(NULL);
    ts_workings *workings = ts_workings_open(arena);

    assert_same_double(ts_film_line_least(U, G, W, workings), ts_film_line_least(U, G, W, NULL));
    assert_same_double(ts_pressure_viscosity(TS_OIL_MIL_23699, 0.02, workings),
                       ts_pressure_viscosity(TS_OIL_MIL_23699, 0.02, NULL));
    assert_int_equal(ts_workings_count(workings), 2);
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(films_grow_by_their_powers),
        cmocka_unit_test(film_of_a_wide_contact_no_longer_knows_its_width),
        cmocka_unit_test(point_and_line_fits_agree_on_wide_contacts),
        cmocka_unit_test(oils_stiffen_as_oils_do),
        cmocka_unit_test(ellipticity_of_equal_radii),
        cmocka_unit_test(notes_change_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
