/* Do laws have the shares, means and ends that they are told to have? */
#include "sample/law.h"
#include "support/close.h"

#define NONE ((double)INFINITY)

/* Mean and deviation by adding up places of even shares. */
static void moments(const ts_sample_law *law, double *mean, double *deviation)
{
    enum { COUNT = 400000 };
    double sum = 0.0, square = 0.0;

    for (int i = 0; i < COUNT; i++) {
        const double x = ts_law_place(law, (i + 0.5) / COUNT);
        sum += x;
        square += x * x;
    }
    *mean      = sum / COUNT;
    *deviation = sqrt(square / COUNT - *mean * *mean);
}

static void bells_have_their_mean_and_deviation(void **state)
{
    (void)state;
    static const ts_law laws[] = {TS_LAW_NORMAL, TS_LAW_LOG_NORMAL};

    for (int i = 0; i < 2; i++) {
        const ts_sample_law law = {laws[i], 12.0, 3.0, -NONE, NONE, 0.0};
        double              mean, deviation;
        assert_null(ts_law_fault(&law));
        moments(&law, &mean, &deviation);
        assert_close(mean, 12.0, 1e-5);
        assert_close(deviation, 3.0, 2e-4);
    }
}

/* Derived: the middle of a log-normal law is its mean over the root of 1 + (s/m)^2. */
static void half_of_a_log_normal_law_lies_below_its_closed_form(void **state)
{
    (void)state;
    const ts_sample_law law = {TS_LAW_LOG_NORMAL, 12.0, 3.0, -NONE, NONE, 0.0};

    assert_close(ts_law_place(&law, 0.5), 12.0 / sqrt(1.0625), 1e-12);
    assert_true(ts_law_place(&law, 1e-300) > 0.0);
}

/* Derived: cut on one side at its middle it is half a bell, whose mean is s * sqrt(2/pi) away and
 * whose deviation is s * sqrt(1 - 2/pi). */
static void half_a_bell_has_the_moments_of_half_a_bell(void **state)
{
    (void)state;
    const ts_sample_law law = {TS_LAW_NORMAL, 5.0, 2.0, 5.0, NONE, 0.0};
    double              mean, deviation;

    moments(&law, &mean, &deviation);
    assert_close(mean, 5.0 + 2.0 * sqrt(2.0 / acos(-1.0)), 1e-5);
    assert_close(deviation, 2.0 * sqrt(1.0 - 2.0 / acos(-1.0)), 3e-4);
    assert_close_abs(ts_law_place(&law, 0.0), 5.0, 0.0);
}

/* Derived: nine deviations out a bell falls off like an exponential of rate 9. */
static void a_tail_far_out_is_drawn_as_finely_as_its_mirror(void **state)
{
    (void)state;
    const ts_sample_law up   = {TS_LAW_NORMAL, 0.0, 1.0, 9.0, NONE, 0.0};
    const ts_sample_law down = {TS_LAW_NORMAL, 0.0, 1.0, -NONE, -9.0, 0.0};

    for (int i = 1; i < 10; i++) {
        const double x = ts_law_place(&up, 0.1 * i);
        assert_close_abs(x, -ts_law_place(&down, 1.0 - 0.1 * i), 1e-12);
        assert_true(x > 9.0 && x < 9.0 + 0.3);
    }
    assert_close_abs(ts_law_place(&up, 0.5), 9.0 + log(2.0) / 9.0, 2e-3);
}

/* Derived: areas of triangles. */
static void a_triangle_has_the_shares_of_its_areas(void **state)
{
    (void)state;
    const ts_sample_law law = {TS_LAW_TRIANGLE, 0.0, 0.0, 2.0, 10.0, 4.0};

    assert_close(ts_law_place(&law, 0.25), 4.0, 1e-14);
    assert_close(ts_law_place(&law, 0.0625), 3.0, 1e-14);
    assert_close(ts_law_place(&law, 1.0 - 9.0 / 48.0), 7.0, 1e-14);
    assert_close_abs(ts_law_place(&law, 0.0), 2.0, 0.0);
    assert_close_abs(ts_law_place(&law, 1.0), 10.0, 0.0);
}

static void whole_numbers_are_all_as_likely(void **state)
{
    (void)state;
    const ts_sample_law law    = {TS_LAW_WHOLE, 0.0, 0.0, 31.0, 34.0, 0.0};
    int                 met[4] = {0};

    for (int i = 0; i < 4000; i++)
        met[(int)ts_law_place(&law, (i + 0.5) / 4000.0) - 31]++;
    for (int i = 0; i < 4; i++)
        assert_int_equal(met[i], 1000);
    assert_close_abs(ts_law_place(&law, 1.0), 34.0, 0.0);
}

static void steps_reach_the_ends_or_leave_five_percent(void **state)
{
    (void)state;
    const ts_sample_law closed = {TS_LAW_UNIFORM, 0.0, 0.0, 1.0, 3.0, 0.0};
    const ts_sample_law open   = {TS_LAW_NORMAL, 0.0, 1.0, -NONE, NONE, 0.0};

    assert_close_abs(ts_law_place(&closed, ts_law_step_share(&closed, 0, 5)), 1.0, 0.0);
    assert_close_abs(ts_law_place(&closed, ts_law_step_share(&closed, 2, 5)), 2.0, 1e-15);
    assert_close_abs(ts_law_place(&closed, ts_law_step_share(&closed, 4, 5)), 3.0, 0.0);
    assert_close_abs(ts_law_step_share(&open, 0, 3), 0.05, 1e-15);
    assert_close_abs(ts_law_step_share(&open, 2, 3), 0.95, 1e-15);
}

static void laws_that_cannot_be_drawn_from_say_why(void **state)
{
    (void)state;
    const ts_sample_law bad[] = {
        {TS_LAW_NORMAL, 1.0, 0.0, -NONE, NONE, 0.0},
        {TS_LAW_NORMAL, (double)NAN, 1.0, -NONE, NONE, 0.0},
        {TS_LAW_NORMAL, 1.0, 1.0, 3.0, 2.0, 0.0},
        {TS_LAW_LOG_NORMAL, -1.0, 1.0, -NONE, NONE, 0.0},
        {TS_LAW_LOG_NORMAL, 1.0, 1.0, -NONE, 0.0, 0.0},
        {TS_LAW_UNIFORM, 0.0, 0.0, 1.0, NONE, 0.0},
        {TS_LAW_TRIANGLE, 0.0, 0.0, 1.0, 2.0, 3.0},
        {TS_LAW_WHOLE, 0.0, 0.0, 1.5, 4.0, 0.0},
    };

    for (size_t i = 0; i < sizeof bad / sizeof bad[0]; i++)
        assert_non_null(ts_law_fault(&bad[i]));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bells_have_their_mean_and_deviation),
        cmocka_unit_test(half_of_a_log_normal_law_lies_below_its_closed_form),
        cmocka_unit_test(half_a_bell_has_the_moments_of_half_a_bell),
        cmocka_unit_test(a_tail_far_out_is_drawn_as_finely_as_its_mirror),
        cmocka_unit_test(a_triangle_has_the_shares_of_its_areas),
        cmocka_unit_test(whole_numbers_are_all_as_likely),
        cmocka_unit_test(steps_reach_the_ends_or_leave_five_percent),
        cmocka_unit_test(laws_that_cannot_be_drawn_from_say_why),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
