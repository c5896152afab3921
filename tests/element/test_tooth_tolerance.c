/* Are flank tolerances those of the tables, and are they told apart from those beyond them? */
#include "base/arena.h"
#include "element/tooth_tolerance.h"
#include "element/tooth_tolerance_rounding.h"
#include "support/close.h"

#include <math.h>
#include <string.h>

static const double um = 1e-6, mm = 1e-3;

static ts_tolerance_input gear(double m_n, double d, double b, int class)
{
    return (ts_tolerance_input){.m_n = m_n * mm, .d = d * mm, .b = b * mm, .class = class};
}

static double *all_of(ts_tooth_tolerance *t, int i)
{
    double *const all[] = {&t->f_p,     &t->F_p,     &t->f_Halpha, &t->f_falpha, &t->F_alpha,
                           &t->f_Hbeta, &t->f_fbeta, &t->F_beta,   &t->F_r};

    return all[i];
}
#define QUANTITIES 9

/* Everything but the padding. */
static void assert_same_tolerances(ts_tooth_tolerance a, ts_tooth_tolerance b)
{
    for (int i = 0; i < QUANTITIES; i++)
        assert_same_double(*all_of(&a, i), *all_of(&b, i));
    assert_int_equal(a.remarks, b.remarks);
}

/* ISO 1328-1:1995 and GB/T 10095.1, grades 5 to 9 of tables 1, 3, B.1 and B.2 (from memory). */
static void printed_rows_of_1995(void **state)
{
    (void)state;
    static const double f_pt[]  = {4.7, 6.5, 9.5, 13.0, 19.0}; /* d 5..20, m 0.5..2    */
    static const double F_a[]   = {4.6, 6.5, 9.0, 13.0, 18.0};
    static const double f_Ha[]  = {2.9, 4.2, 6.0, 8.5, 12.0};
    static const double f_fa2[] = {6.0, 8.5, 12.0, 17.0, 24.0}; /* d 50..125, m 2..3.5 */
    static const double f_fb2[] = {6.0, 8.5, 12.0, 17.0, 24.0}; /* b 20..40           */

    for (int i = 0; i < 5; i++) {
        const ts_tolerance_input small = gear(1.0, 12.0, 25.0, 5 + i);
        const ts_tolerance_input usual = gear(3.0, 90.0, 25.0, 5 + i);
        const ts_tooth_tolerance s     = ts_tooth_tolerance_1995(&small, NULL);
        const ts_tooth_tolerance u     = ts_tooth_tolerance_1995(&usual, NULL);

        assert_close(s.f_p, f_pt[i] * um, 1e-12);
        assert_close(s.F_alpha, F_a[i] * um, 1e-12);
        assert_close(s.f_Halpha, f_Ha[i] * um, 1e-12);
        assert_close(u.f_falpha, f_fa2[i] * um, 1e-12);
        assert_close(u.f_fbeta, f_fb2[i] * um, 1e-12);
        assert_int_equal(u.remarks, 0);
    }
}

/* ISO 1328-2:1997, table of F_i'' and f_i'', d 50..125, m 1.5..2.5, grades 5 to 8, and the smallest
 * gears of grade 5 (from memory). */
static void printed_rows_of_radial_composite(void **state)
{
    (void)state;
    static const double F_i[] = {22.0, 31.0, 43.0, 61.0}, f_i[] = {6.5, 9.5, 13.0, 19.0};

    for (int i = 0; i < 4; i++) {
        const ts_tolerance_input  in = gear(2.0, 80.0, 20.0, 5 + i);
        const ts_radial_tolerance t  = ts_radial_tolerance_1997(&in, NULL);

        assert_close(t.F_ipp, F_i[i] * um, 1e-12);
        assert_close(t.f_ipp, f_i[i] * um, 1e-12);
    }
    const ts_tolerance_input small = gear(0.3, 10.0, 5.0, 5);
    assert_close(ts_radial_tolerance_1997(&small, NULL).f_ipp, 2.0 * um, 1e-12);
}

/* The values of the bank case iso1328-2013, but for f_falpha and what holds it (derived there). */
static void formulas_of_2013(void **state)
{
    (void)state;
    const ts_tolerance_input in = gear(3.0, 100.0, 30.0, 5);
    const ts_tooth_tolerance t  = ts_tooth_tolerance_2013(&in, NULL);

    assert_close(t.f_p, 6.5 * um, 1e-12);
    assert_close(t.F_p, 20.0 * um, 1e-12);
    assert_close(t.f_Halpha, 5.5 * um, 1e-12);
    assert_close(t.f_fbeta, 7.0 * um, 1e-12);
    assert_close(t.f_Hbeta, 6.5 * um, 1e-12);
    assert_close(t.F_beta, 9.5 * um, 1e-12);
    assert_close(t.F_r, 18.0 * um, 1e-12);
    /* 0.55*3 + 5 = 6.65, and with the slope sqrt(5.3^2 + 6.65^2) = 8.504 (derived). */
    assert_close(t.f_falpha, 6.5 * um, 1e-12);
    assert_close(t.F_alpha, 8.5 * um, 1e-12);
}

/* No tolerance of usual gears changed by more than a third with the edition: derived from both sets
 * of formulas.  A form tolerance of 0.55 m_n + 1 would be down to a quarter and up to a half. */
static void editions_lie_near_each_other(void **state)
{
    (void)state;
    static const double modules[] = {1.0, 2.6, 4.6}, diameters[] = {79.0, 187.0, 396.0};

    for (int m = 0; m < 3; m++)
        for (int d = 0; d < 3; d++) {
            const ts_tolerance_input in   = gear(modules[m], diameters[d], 28.0, 7);
            ts_tooth_tolerance       now  = ts_tooth_tolerance_2013(&in, NULL);
            ts_tooth_tolerance       then = ts_tooth_tolerance_1995(&in, NULL);

            for (int i = 0; i < QUANTITIES; i++) {
                const double ratio = *all_of(&now, i) / *all_of(&then, i);

                assert_true(ratio > 0.7 && ratio < 1.35);
            }
        }
}

static void halves_are_rounded_up_and_steps_change_at_5_and_10_um(void **state)
{
    (void)state;
    static const ts_rounded_formula any =
        TS_ROUNDED_FORMULA("x", "any tolerance", "1*given", "derived: a test");
    static const double exact[]  = {2.65, 2.649, 4.94, 4.96, 5.2, 5.25, 9.74, 9.75, 10.2, 10.5};
    static const double fine[]   = {2.7e-6, 2.6e-6, 4.9e-6, 5e-6,  5e-6,
                                    5.5e-6, 9.5e-6, 10e-6,  10e-6, 11e-6};
    static const double coarse[] = {2.5e-6, 2.5e-6, 5e-6,  5e-6,  5e-6,
                                    5.5e-6, 9.5e-6, 10e-6, 10e-6, 11e-6};

    for (int i = 0; i < 10; i++) {
        assert_same_double(ts_tolerance_rounded(&any, exact[i] * um, TS_ROUND_TO_TENTHS, NULL),
                           fine[i]);
        assert_same_double(ts_tolerance_rounded(&any, exact[i] * um, TS_ROUND_TO_HALVES, NULL),
                           coarse[i]);
    }
}

/* A tolerance of a gear that has one size as told, and all others usual. */
typedef double tolerance_at(double size);

static double pitch_at_diameter(double d)
{
    const ts_tolerance_input in = gear(10.0, d, 100.0, 12);
    return ts_tooth_tolerance_1995(&in, NULL).F_p;
}

static double pitch_at_module(double m)
{
    const ts_tolerance_input in = gear(m, 300.0, 100.0, 12);
    return ts_tooth_tolerance_1995(&in, NULL).f_p;
}

static double helix_at_width(double b)
{
    const ts_tolerance_input in = gear(10.0, 300.0, b, 12);
    return ts_tooth_tolerance_1995(&in, NULL).F_beta;
}

static double radial_at_diameter(double d)
{
    const ts_tolerance_input in = gear(5.0, d, 20.0, 12);
    return ts_radial_tolerance_1997(&in, NULL).F_ipp;
}

static double radial_at_module(double m)
{
    const ts_tolerance_input in = gear(m, 100.0, 20.0, 12);
    return ts_radial_tolerance_1997(&in, NULL).f_ipp;
}

/* Ends of the ranges, mm: ISO 1328-1:1995 tables 1 to 4 and ISO 1328-2:1997 tables 1 and 2 (from
 * memory).  A size that stands at an end belongs to the range below it, and what is beyond the
 * first and the last has no tolerance. */
static void a_tolerance_steps_at_every_end_of_a_range(void **state)
{
    (void)state;
    static const struct {
        tolerance_at *of;
        double        ends[13];
        size_t        count;
    } all[] = {
        {pitch_at_diameter,
         {5, 20, 50, 125, 280, 560, 1000, 1600, 2500, 4000, 6000, 8000, 10000},
         13},
        {pitch_at_module, {0.5, 2, 3.5, 6, 10, 16, 25, 40, 70}, 9},
        {helix_at_width, {4, 10, 20, 40, 80, 160, 250, 400, 650, 1000}, 10},
        {radial_at_diameter, {5, 20, 50, 125, 280, 560, 1000}, 7},
        {radial_at_module, {0.2, 0.5, 0.8, 1, 1.5, 2.5, 4, 6, 10}, 9},
    };

    for (size_t k = 0; k < sizeof all / sizeof all[0]; k++)
        for (size_t i = 0; i < all[k].count; i++) {
            const double end = all[k].ends[i], over = all[k].of(end * (1.0 + 1e-6));
            const double at = all[k].of(end), under = all[k].of(end * (1.0 - 1e-6));

            assert_true(i == 0 ? isnan(under) : under == at);
            assert_true(i == 0 ? isfinite(at) && isfinite(over) : !(over == at));
            assert_true(i + 1 < all[k].count ? i == 0 || over > at : isnan(over));
        }
}

static void two_classes_double_a_tolerance(void **state)
{
    (void)state;
    for (int class = 1; class <= 9; class ++) {
        const ts_tolerance_input finer   = gear(4.0, 300.0, 60.0, class);
        const ts_tolerance_input coarser = gear(4.0, 300.0, 60.0, class + 2);
        ts_tooth_tolerance       f       = ts_tooth_tolerance_2013(&finer, NULL);
        ts_tooth_tolerance       c       = ts_tooth_tolerance_2013(&coarser, NULL);

        for (int i = 0; i < QUANTITIES; i++) { /* but for half a step of each */
            const double half = *all_of(&f, i) > 10.0 * um ? 0.5 * um : 0.25 * um;

            assert_close_abs(*all_of(&c, i), 2.0 * *all_of(&f, i), 2.0 * half + 0.5001 * um);
        }
    }
}

static void limit_of_a_range_belongs_to_the_range_below(void **state)
{
    (void)state;
    const ts_tolerance_input at = gear(2.0, 50.0, 20.0, 6), below = gear(1.0, 30.0, 15.0, 6);
    const ts_tolerance_input beyond = gear(2.0, 50.001, 20.0, 6);

    assert_same_double(ts_tooth_tolerance_1995(&at, NULL).F_p,
                       ts_tooth_tolerance_1995(&below, NULL).F_p);
    assert_same_double(ts_tooth_tolerance_1995(&at, NULL).F_beta,
                       ts_tooth_tolerance_1995(&below, NULL).F_beta);
    assert_true(ts_tooth_tolerance_1995(&beyond, NULL).F_p >
                ts_tooth_tolerance_1995(&at, NULL).F_p);
}

static void internal_gear_has_the_tolerances_of_its_size(void **state)
{
    (void)state;
    const ts_tolerance_input outside = gear(2.5, 180.0, 30.0, 5), ring = gear(2.5, -180.0, 30.0, 5);
    const ts_tooth_tolerance a = ts_tooth_tolerance_2013(&outside, NULL);
    const ts_tooth_tolerance b = ts_tooth_tolerance_2013(&ring, NULL);

    assert_same_tolerances(a, b);
}

static void beyond_its_range_2013_goes_on_and_says_so(void **state)
{
    (void)state;
    const ts_tolerance_input in = {
        .m_n = 0.3 * mm, .d = 4.0 * mm, .b = 3.0 * mm, .beta = 0.9, .class = 5};
    const ts_tooth_tolerance t = ts_tooth_tolerance_2013(&in, NULL);

    assert_int_equal(t.remarks, TS_TOLERANCE_MODULE | TS_TOLERANCE_DIAMETER | TS_TOLERANCE_WIDTH |
                                    TS_TOLERANCE_HELIX);
    assert_true(t.f_p > 0.0 && t.F_beta > 0.0);
    for (unsigned i = 0; i < TS_TOLERANCE_REMARKS; i++) {
        const ts_tolerance_remark remark = (ts_tolerance_remark)(1U << i);

        assert_true(strlen(ts_tolerance_remark_says(remark, TS_TOLERANCE_2013)) > 10);
        assert_non_null(strstr(ts_tolerance_remark_clause(remark, TS_TOLERANCE_2013), "2013"));
    }
    assert_string_equal(ts_tolerance_remark_says(TS_TOLERANCE_TEETH, TS_TOLERANCE_1995), "");
}

static void beyond_its_range_1995_has_no_tolerance(void **state)
{
    (void)state;
    const ts_tolerance_input narrow = gear(2.0, 60.0, 3.0, 6), tiny = gear(0.4, 60.0, 20.0, 6);
    const ts_tolerance_input huge = gear(8.0, 2000.0, 100.0, 6);
    const ts_tooth_tolerance n    = ts_tooth_tolerance_1995(&narrow, NULL);
    const ts_tooth_tolerance t    = ts_tooth_tolerance_1995(&tiny, NULL);

    assert_int_equal(n.remarks, TS_TOLERANCE_WIDTH);
    assert_nan(n.F_beta);
    assert_true(n.F_p > 0.0);
    assert_int_equal(t.remarks, TS_TOLERANCE_MODULE);
    assert_nan(t.f_p);
    assert_true(t.F_beta > 0.0);
    assert_int_equal(ts_radial_tolerance_1997(&huge, NULL).remarks, TS_TOLERANCE_DIAMETER);
    assert_nan(ts_radial_tolerance_1997(&huge, NULL).F_ipp);
}

static void class_that_is_none_has_no_tolerance(void **state)
{
    (void)state;
    static const int none_2013[] = {-1, 0, 12, 2147483647}, none_1995[] = {-1, 13, -2147483647};

    for (int i = 0; i < 4; i++) {
        const ts_tolerance_input in = gear(2.0, 60.0, 20.0, none_2013[i]);
        ts_tooth_tolerance       t  = ts_tooth_tolerance_2013(&in, NULL);

        assert_int_equal(t.remarks, TS_TOLERANCE_CLASS);
        for (int k = 0; k < QUANTITIES; k++)
            assert_nan(*all_of(&t, k));
    }
    for (int i = 0; i < 3; i++) {
        const ts_tolerance_input in = gear(2.0, 60.0, 20.0, none_1995[i]);
        ts_tooth_tolerance       t  = ts_tooth_tolerance_1995(&in, NULL);

        assert_int_equal(t.remarks, TS_TOLERANCE_CLASS);
        for (int k = 0; k < QUANTITIES; k++)
            assert_nan(*all_of(&t, k));
        assert_nan(ts_radial_tolerance_1997(&in, NULL).F_ipp);
    }
}

static void what_is_no_number_has_no_tolerance(void **state)
{
    (void)state;
    const double             none = NAN;
    const ts_tolerance_input d = gear(2.0, none, 20.0, 6), m = gear(none, 60.0, 20.0, 6);
    const ts_tolerance_input b = gear(2.0, 60.0, none, 6);
    ts_tooth_tolerance       t = ts_tooth_tolerance_2013(&d, NULL);

    for (int k = 0; k < QUANTITIES; k++)
        assert_nan(*all_of(&t, k));
    assert_true((t.remarks & TS_TOLERANCE_DIAMETER) != 0);
    assert_nan(ts_tooth_tolerance_2013(&m, NULL).F_alpha);
    assert_true(ts_tooth_tolerance_2013(&m, NULL).F_beta > 0.0);
    assert_nan(ts_tooth_tolerance_2013(&b, NULL).F_beta);
    assert_true(ts_tooth_tolerance_2013(&b, NULL).F_alpha > 0.0);
    assert_nan(ts_tooth_tolerance_1995(&d, NULL).F_beta);
}

static void notes_change_nothing_and_tell_what_rounding_took(void **state)
{
    (void)state;
    ts_arena                *arena    = ts_arena_open(NULL);
    ts_workings             *workings = ts_workings_open(arena);
    const ts_tolerance_input in       = gear(2.25, 117.0, 19.0, 6);
    const ts_tooth_tolerance silent   = ts_tooth_tolerance_2013(&in, NULL);
    const ts_tooth_tolerance noted    = ts_tooth_tolerance_2013(&in, workings);
    const ts_subject         whole    = {0, TS_EVERY_CONDITION};

    assert_same_tolerances(silent, noted);
    const size_t at   = ts_workings_find(workings, whole, "F_alphaT");
    const size_t rest = ts_workings_find(workings, whole, "rF_alphaT");
    const size_t full = ts_workings_find(workings, whole, "F_alphaTx");
    assert_true(at != SIZE_MAX && rest != SIZE_MAX && full != SIZE_MAX);
    assert_same_double(ts_workings_at(workings, at)->value, noted.F_alpha);
    assert_close_abs(ts_workings_at(workings, full)->value - ts_workings_at(workings, rest)->value,
                     noted.F_alpha, 1e-18);
    assert_int_equal(ts_origin(workings, at, "F_alphaTx", ts_workings_at(workings, full)->value),
                     full);
    assert_true(ts_workings_complete(workings));
    ts_arena_close(arena);
}

static void a_remark_has_the_clause_of_its_edition(void **state)
{
    (void)state;
    static const char *const editions[] = {
        [TS_TOLERANCE_2013] = "ISO 1328-1:2013",
        [TS_TOLERANCE_1995] = "ISO 1328-1:1995",
        [TS_RADIAL_1997]    = "ISO 1328-2:1997",
    };

    for (int year = 0; year < 3; year++) {
        const ts_tolerance_year of = (ts_tolerance_year)year;

        assert_true(ts_tolerance_remark_says(TS_TOLERANCE_DIAMETER, of)[0] != '\0');
        assert_non_null(
            strstr(ts_tolerance_remark_clause(TS_TOLERANCE_DIAMETER, of), editions[year]));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(printed_rows_of_1995),
        cmocka_unit_test(printed_rows_of_radial_composite),
        cmocka_unit_test(formulas_of_2013),
        cmocka_unit_test(editions_lie_near_each_other),
        cmocka_unit_test(halves_are_rounded_up_and_steps_change_at_5_and_10_um),
        cmocka_unit_test(a_tolerance_steps_at_every_end_of_a_range),
        cmocka_unit_test(two_classes_double_a_tolerance),
        cmocka_unit_test(limit_of_a_range_belongs_to_the_range_below),
        cmocka_unit_test(internal_gear_has_the_tolerances_of_its_size),
        cmocka_unit_test(beyond_its_range_2013_goes_on_and_says_so),
        cmocka_unit_test(beyond_its_range_1995_has_no_tolerance),
        cmocka_unit_test(class_that_is_none_has_no_tolerance),
        cmocka_unit_test(what_is_no_number_has_no_tolerance),
        cmocka_unit_test(notes_change_nothing_and_tell_what_rounding_took),
        cmocka_unit_test(a_remark_has_the_clause_of_its_edition),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
