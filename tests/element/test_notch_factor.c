/* Do the fits of notch factors go to the limits that any notch has?
 *
 * Derived: where the shaft below the notch vanishes (d to 0) the notch is no more than an end and
 * the factor goes to 1, whatever h/r is; the coefficients of a fit must then add up to 1, 0 and 0.
 * Of a groove that is shallow beside the shaft (D without end) the factor of torsion is that of an
 * elliptic notch in a half plane under antiplane shear, 1 + sqrt(h/r): H. Neuber,
 * Kerbspannungslehre (from memory).  Two fits of one notch meet where they change.
 */
#include "element/notch_factor.h"

#include "support/close.h"

#include <math.h>

typedef double factor(double D, double d, double r, ts_workings *workings);

static double groove(double D, double d, double r, ts_workings *workings)
{
    return ts_groove_torsion_factor(TS_GROOVE_PILKEY, D, d, r, workings);
}

static double groove_of_roark(double D, double d, double r, ts_workings *workings)
{
    return ts_groove_torsion_factor(TS_GROOVE_ROARK, D, d, r, workings);
}

/* Of a notch as deep as a share u of the radius, h/r as told. */
static double at(factor *of, double ratio, double u)
{
    const double D = 0.04, h = u * D / 2.0;

    return of(D, D - 2.0 * h, h / ratio, NULL);
}

#define ALMOST_ALL (1.0 - 1e-9)
#define ALMOST_NO  1e-9

static void nothing_is_left_to_raise_where_the_shaft_ends(void **state)
{
    (void)state;
    static const struct {
        factor *of;
        double  from, to; /* of h/r */
    } fits[] = {
        {groove, 0.25, 1.999},
        {groove, 2.001, 6.0},
        {groove_of_roark, 0.25, 2.0},
        {ts_shoulder_torsion_factor, 0.25, 4.0},
        {ts_shoulder_bending_factor, 0.1, 1.999},
        {ts_shoulder_bending_factor, 2.001, 20.0},
    };
    /* a + b sqrt(x) + c x of the sums of a, b and c as they are rounded in the sources. */
    static const double sums[][3] = {
        {1.015, -0.024, -0.013}, {1.015, -0.032, 0.003}, {1.0, 0.0, 0.0},
        {0.964, 0.058, -0.014},  {1.028, 0.0, -0.031},   {1.003, 0.002, 0.001},
    };

    for (size_t i = 0; i < sizeof fits / sizeof fits[0]; i++)
        for (int k = 0; k <= 10; k++) {
            const double x    = fits[i].from + (fits[i].to - fits[i].from) * k / 10.0;
            const double left = sums[i][0] - 1.0 + sums[i][1] * sqrt(x) + sums[i][2] * x;

            assert_close_abs(at(fits[i].of, x, ALMOST_ALL), 1.0 + left, 1e-6);
            assert_true(fabs(left) < 0.05);
        }
}

static void a_shallow_groove_is_one_in_a_half_plane(void **state)
{
    (void)state;
    for (int k = 0; k <= 10; k++) {
        const double x = 0.25 * pow(8.0, k / 10.0); /* to 2, where the other fit begins */

        assert_close(at(groove, x, ALMOST_NO), 1.0 + sqrt(x), 0.01);
        assert_close(at(groove, 2.0 * pow(5.0, k / 10.0) + 1e-9, ALMOST_NO),
                     1.0 + sqrt(2.0 * pow(5.0, k / 10.0)), 0.01);
    }
}

static void two_fits_meet_where_they_change(void **state)
{
    (void)state;
    for (int k = 1; k < 10; k++) {
        const double u = 0.1 * k;

        assert_close(at(groove, 2.0 + 1e-9, u), at(groove, 2.0 - 1e-9, u), 0.01);
        assert_close(at(ts_shoulder_bending_factor, 2.0 + 1e-9, u),
                     at(ts_shoulder_bending_factor, 2.0 - 1e-9, u), u < 0.6 ? 0.011 : 0.034);
    }
}

/* Two sources of one chart, read by different people. */
static void two_sources_of_a_groove_agree(void **state)
{
    (void)state;
    for (int k = 1; k < 10; k++)
        for (int i = 0; i <= 8; i++) {
            const double x = 0.25 * pow(8.0, i / 8.0) * (1.0 - 1e-12) + 1e-12;

            assert_close(at(groove_of_roark, x, 0.1 * k), at(groove, x, 0.1 * k), 0.06);
        }
}

static void a_deeper_or_a_sharper_notch_of_the_same_depth_is_worse(void **state)
{
    (void)state;
    factor *const all[] = {groove, groove_of_roark, ts_shoulder_torsion_factor,
                           ts_shoulder_bending_factor};

    for (size_t i = 0; i < 4; i++)
        for (int k = 1; k < 8; k++) {
            const double u = 0.1 * k;

            assert_true(at(all[i], 1.9, u) > at(all[i], 0.9, u));
            assert_true(at(all[i], 0.9, u) > at(all[i], 0.3, u));
        }
}

static void beyond_its_fit_a_factor_is_not_a_number(void **state)
{
    (void)state;
    assert_true(isnan(at(groove, 0.2499, 0.3)));
    assert_true(isnan(at(groove, 50.01, 0.3)));
    assert_true(isfinite(at(groove, 49.99, 0.3)));
    assert_true(isnan(at(groove_of_roark, 2.0001, 0.3)));
    assert_true(isnan(at(ts_shoulder_torsion_factor, 4.0001, 0.3)));
    assert_true(isfinite(at(ts_shoulder_torsion_factor, 3.9999, 0.3)));
    assert_true(isnan(at(ts_shoulder_bending_factor, 0.0999, 0.3)));
    assert_true(isnan(at(ts_shoulder_bending_factor, 20.001, 0.3)));
    assert_true(isfinite(at(ts_shoulder_bending_factor, 19.99, 0.3)));
    assert_true(isnan(groove(0.04, 0.04, 0.001, NULL)));
    assert_true(isnan(groove(0.04, 0.03, 0.0, NULL)));
    assert_true(isnan(groove(0.04, 0.0, 0.001, NULL)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_is_left_to_raise_where_the_shaft_ends),
        cmocka_unit_test(a_shallow_groove_is_one_in_a_half_plane),
        cmocka_unit_test(two_fits_meet_where_they_change),
        cmocka_unit_test(two_sources_of_a_groove_agree),
        cmocka_unit_test(a_deeper_or_a_sharper_notch_of_the_same_depth_is_worse),
        cmocka_unit_test(beyond_its_fit_a_factor_is_not_a_number),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
