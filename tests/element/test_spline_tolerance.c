/* Are splines of all angles shaped alike, and are their tolerances those of the table of ISO 286?
 */
#include "element/spline_tolerance.h"

#include "support/close.h"

#include <math.h>

static const double degree = 3.14159265358979323846 / 180.0, um = 1e-6, mm = 1e-3;

static const struct {
    double         alpha;
    ts_spline_root root;
} forms[] = {
    {30.0, TS_SPLINE_FLAT_ROOT},
    {30.0, TS_SPLINE_FILLET_ROOT},
    {37.5, TS_SPLINE_FILLET_ROOT},
    {45.0, TS_SPLINE_FILLET_ROOT},
};

static ts_spline metric(int form, double z, double m)
{
    ts_spline s;

    assert_true(ts_spline_iso4156(z, m, forms[form].alpha * degree, forms[form].root, &s, NULL));
    return s;
}

static ts_spline imperial(int form, double N, double P)
{
    ts_spline s;

    assert_true(
        ts_spline_b921(N, P / 0.0254, forms[form].alpha * degree, forms[form].root, &s, NULL));
    return s;
}

/* Derived: a hub goes over its shaft with room at both ends of the flanks, and the involute of each
 * reaches as far as the other touches it. */
static void every_form_goes_together(void **state)
{
    (void)state;
    for (int form = 0; form < 4; form++)
        for (double z = 12.0; z < 80.0; z += 7.0)
            for (int system = 0; system < 2; system++) {
                const ts_spline s =
                    system == 0 ? metric(form, z, 1.25 * mm) : imperial(form, z, 20.0);
                assert_close(s.D_b, s.D * cos(forms[form].alpha * degree), 1e-14);
                assert_close(s.s_v * 2.0 * z, 3.14159265358979323846 * s.D, 1e-14);
                assert_true(s.D_o < s.D_Fi && s.D_Fi < s.D_ri);
                assert_true(s.D_re < s.D_Fe && s.D_Fe < s.D_i && s.D_i < s.D && s.D < s.D_o);
            }
}

/* Derived, ISO 4156 alone: the form circle is cut by the flank of a rack whose straight part ends
 * h_s modules below the pitch line: along the flank that is h_s m/sin(alpha) from the pitch point.
 */
static void the_form_circle_lies_where_the_rack_ends(void **state)
{
    (void)state;
    static const double h_s[] = {0.6, 0.6, 0.55, 0.5};

    for (int form = 0; form < 4; form++) {
        const double    alpha = forms[form].alpha * degree, m = 2.0 * mm;
        const ts_spline s = metric(form, 30.0, m);
        const double    x = -h_s[form] * m / sin(alpha) * cos(alpha);
        const double    y = s.D / 2.0 - h_s[form] * m; /* of the contact, line of action */
        assert_close(s.D_Fe, 2.0 * hypot(x, y), 1e-13);
    }
}

static void flat_roots_are_of_30_degrees_alone(void **state)
{
    (void)state;
    ts_spline s;

    assert_false(ts_spline_iso4156(24.0, mm, 37.5 * degree, TS_SPLINE_FLAT_ROOT, &s, NULL));
    assert_false(ts_spline_b921(24.0, 800.0, 45.0 * degree, TS_SPLINE_FLAT_ROOT, &s, NULL));
    assert_false(ts_spline_iso4156(24.0, mm, 40.0 * degree, TS_SPLINE_FILLET_ROOT, &s, NULL));
}

/* A class sums two grades of ISO 286-1:2010, table 1 (from memory): IT6 to IT9 of the pitch
 * diameter and IT9 to IT12 of the space, each at the geometric mean of its range. */
static void a_class_is_two_grades_of_fits(void **state)
{
    (void)state;
    static const double of_D[3][4] = {
        {13, 21, 33, 52}, {16, 25, 39, 62}, {19, 30, 46, 74}}; /* 18..30, 30..50, 50..80 mm */
    static const double of_s[4] = {30, 48, 75, 120};           /* 3..6 mm */
    static const double ends[4] = {18, 30, 50, 80};

    for (int range = 0; range < 3; range++)
        for (int grade = 4; grade <= 7; grade++) {
            ts_spline s = {.D = sqrt(ends[range] * ends[range + 1]) * mm, .s_v = sqrt(18.0) * mm};
            ts_spline_limits out;

            s.N = 3.14159265358979323846 * s.D / (2.0 * s.s_v);
            assert_true(ts_spline_limits_of(&s, 20.0 * mm, grade, &out, NULL));
            assert_close(out.T_lambda, (of_D[range][grade - 4] + of_s[grade - 4]) * um, 0.03);
        }
}

/* Derived: actual limits lie within the effective ones, hub and shaft mirror each other. */
static void limits_lie_in_order_and_mirror_each_other(void **state)
{
    (void)state;
    for (int grade = 4; grade <= 7; grade++)
        for (double z = 12.0; z < 80.0; z += 7.0) {
            const ts_spline  s = metric(1, z, 1.5 * mm);
            ts_spline_limits out;

            assert_true(ts_spline_limits_of(&s, 15.0 * mm, grade, &out, NULL));
            assert_true(out.lambda > 0.0 && out.lambda < out.T_lambda);
            assert_same_double(out.E_vmin, s.s_v);
            assert_true(out.E_vmin < out.E_min && out.E_min < out.E_max && out.E_vmax < out.E_max);
            assert_true(out.S_vmax > out.S_max && out.S_max > out.S_min && out.S_vmin > out.S_min);
            assert_close(out.E_max - s.s_v, s.s_v - out.S_min, 1e-9);
            assert_close(out.c_vmax, out.E_vmax - out.S_vmin, 1e-9);
        }
}

/* The deviations of class 5 by hand (derived): z 20, m 2 mm, g 16 mm. */
static void deviations_of_class_5_by_hand(void **state)
{
    (void)state;
    const ts_spline  s = metric(1, 20.0, 2.0 * mm);
    ts_spline_limits out;

    assert_true(ts_spline_limits_of(&s, 16.0 * mm, 5, &out, NULL));
    assert_close(out.F_p, (3.55 * sqrt(62.83185307) + 9.0) * um, 1e-9);
    assert_close(out.F_alpha, (2.5 * 2.5 + 16.0) * um, 1e-12);
    assert_close(out.F_beta, 9.0 * um, 1e-12);
}

static void what_is_no_class_has_no_limits(void **state)
{
    (void)state;
    const ts_spline  s = metric(1, 20.0, 2.0 * mm);
    ts_spline_limits out;

    assert_false(ts_spline_limits_of(&s, 16.0 * mm, 3, &out, NULL));
    assert_false(ts_spline_limits_of(&s, 16.0 * mm, 8, &out, NULL));
    assert_false(ts_spline_limits_of(&s, 0.0, 5, &out, NULL));
    assert_false(ts_spline_limits_of(&s, (double)NAN, 5, &out, NULL));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_form_goes_together),
        cmocka_unit_test(the_form_circle_lies_where_the_rack_ends),
        cmocka_unit_test(flat_roots_are_of_30_degrees_alone),
        cmocka_unit_test(a_class_is_two_grades_of_fits),
        cmocka_unit_test(limits_lie_in_order_and_mirror_each_other),
        cmocka_unit_test(deviations_of_class_5_by_hand),
        cmocka_unit_test(what_is_no_class_has_no_limits),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
