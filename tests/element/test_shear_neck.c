/* Does a neck break inside of its guaranteed band, and do samples not care who draws them?
 *
 * ctest: threads
 */
#include "base/normal_law.h"
#include "element/shear_neck.h"
#include "support/close.h"

#include <pthread.h>
#include <stdlib.h>
#include <string.h>

static ts_spread exactly(double value)
{
    return (ts_spread){.law = TS_SPREAD_UNIFORM, .low = value, .high = value};
}

static ts_spread about(double mean, double sigma, double limits)
{
    return (ts_spread){.law   = TS_SPREAD_NORMAL,
                       .low   = mean - limits * sigma,
                       .high  = mean + limits * sigma,
                       .mean  = mean,
                       .sigma = sigma};
}

static ts_shear_neck sample_neck(void)
{
    return (ts_shear_neck){
        .d        = about(10e-3, 8e-6, 3.0),
        .d_i      = {.law = TS_SPREAD_UNIFORM, .low = 3.95e-3, .high = 4.05e-3},
        .Ftu      = about(1240e6, 37e6, 4.0),
        .ratio    = about(0.6, 0.012, 4.0),
        .warmth   = {.law = TS_SPREAD_UNIFORM, .low = 0.95, .high = 1.0},
        .yielding = {.law = TS_SPREAD_UNIFORM, .low = 0.0, .high = 1.0},
        .K_ts     = 1.3,
    };
}

/* Derived: pi/16 and pi/12 of tau d^3. */
static void exact_neck_has_the_closed_forms(void **state)
{
    (void)state;
    const double         pi = 3.14159265358979323846, tau = 0.6 * 1240e6;
    const ts_shear_neck  neck = {.d        = exactly(10e-3),
                                 .d_i      = exactly(0.0),
                                 .Ftu      = exactly(1240e6),
                                 .ratio    = exactly(0.6),
                                 .warmth   = exactly(1.0),
                                 .yielding = {.law = TS_SPREAD_UNIFORM, .low = 0.0, .high = 1.0},
                                 .K_ts     = 1.3};
    const ts_neck_limits band = ts_neck_band(&neck, NULL);
    ts_shear_neck        hard = neck;

    assert_close(band.low, pi * 1e-6 * tau / 16.0, 1e-13);
    assert_close(band.high, pi * 1e-6 * tau / 12.0, 1e-13);
    hard.brittle = true;
    assert_close(ts_neck_band(&hard, NULL).low, band.low / 1.3, 1e-13);
    assert_close(ts_neck_band(&hard, NULL).high, band.high, 1e-13);
}

static void no_sample_leaves_the_band(void **state)
{
    (void)state;
    enum { COUNT = 100000 };
    double       *T    = malloc(COUNT * sizeof *T);
    ts_shear_neck neck = sample_neck();

    assert_non_null(T);
    for (int brittle = 0; brittle < 2; brittle++) {
        neck.brittle              = brittle == 1;
        const ts_neck_limits band = ts_neck_band(&neck, NULL);
        double               low = INFINITY, high = 0.0;

        ts_neck_sample(&neck, 7, 0, COUNT, T);
        for (int i = 0; i < COUNT; i++) {
            assert_true(T[i] >= band.low && T[i] <= band.high);
            low  = fmin(low, T[i]);
            high = fmax(high, T[i]);
        }
        /* And the band is no wider than what can happen calls for. */
        assert_true(low < band.low * 1.25 && high > band.high * 0.85);
    }
    free(T);
}

/* The corners themselves, where every spread stands at a limit. */
static void corners_reach_the_band(void **state)
{
    (void)state;
    const ts_shear_neck  neck = sample_neck();
    const ts_neck_limits band = ts_neck_band(&neck, NULL);
    double               low = INFINITY, high = 0.0;

    for (int corner = 0; corner < 64; corner++) {
        ts_shear_neck    one   = neck;
        ts_spread *const all[] = {&one.d,     &one.d_i,    &one.Ftu,
                                  &one.ratio, &one.warmth, &one.yielding};
        double           T;

        for (int k = 0; k < 6; k++)
            *all[k] = exactly((corner >> k & 1) != 0 ? all[k]->high : all[k]->low);
        ts_neck_sample(&one, 1, 0, 1, &T);
        low  = fmin(low, T);
        high = fmax(high, T);
    }
    assert_close(low, band.low, 3e-14);
    assert_close(high, band.high, 3e-14);
}

/* Derived, first order: the scatter of a solid neck whose causes are normal. */
static void scatter_is_the_first_order_one(void **state)
{
    (void)state;
    enum { COUNT = 100000 };
    double       *T = malloc(COUNT * sizeof *T), sum = 0.0, square = 0.0;
    ts_shear_neck neck;

    assert_non_null(T);
    neck = (ts_shear_neck){.d        = about(10e-3, 25e-6 / 3.0, 6.0),
                           .d_i      = exactly(0.0),
                           .Ftu      = about(1240e6, 0.03 * 1240e6, 6.0),
                           .ratio    = about(0.6, 0.02 * 0.6, 6.0),
                           .warmth   = exactly(1.0),
                           .yielding = exactly(1.0),
                           .K_ts     = 1.0};
    ts_neck_sample(&neck, 99, 0, COUNT, T);
    for (int i = 0; i < COUNT; i++) {
        sum += T[i];
        square += T[i] * T[i];
    }
    const double          mean = sum / COUNT, cov = sqrt(square / COUNT / (mean * mean) - 1.0);
    const ts_neck_scatter s = ts_neck_scatter_of(mean, 0.03, 0.02, 10e-3, 25e-6, NULL);

    assert_close(cov, s.cov, 0.012);
    int below = 0;
    for (int i = 0; i < COUNT; i++)
        below += T[i] < s.T_B ? 1 : 0;
    assert_close_abs((double)below / COUNT, 0.10, 5.0 * 0.3 / sqrt(COUNT));
    free(T);
}

typedef struct share {
    const ts_shear_neck *neck;
    uint64_t             first;
    size_t               count;
    double              *T;
} share;

static void *draw(void *given)
{
    const share *s = given;

    ts_neck_sample(s->neck, 5, s->first, s->count, s->T);
    return NULL;
}

static void samples_do_not_depend_on_the_threads(void **state)
{
    (void)state;
    enum { COUNT = 30000 };
    double *alone = malloc(COUNT * sizeof *alone), *shared = malloc(COUNT * sizeof *shared);
    const ts_shear_neck neck = sample_neck();

    assert_non_null(alone);
    assert_non_null(shared);
    ts_neck_sample(&neck, 5, 0, COUNT, alone);
    for (size_t threads = 1; threads <= 5; threads++) {
        pthread_t id[5];
        share     shares[5];

        memset(shared, 0, COUNT * sizeof *shared);
        for (size_t k = 0; k < threads; k++) {
            const size_t from = COUNT * k / threads, to = COUNT * (k + 1) / threads;

            shares[k] = (share){&neck, from, to - from, shared + from};
            assert_int_equal(pthread_create(&id[k], NULL, draw, &shares[k]), 0);
        }
        for (size_t k = 0; k < threads; k++)
            assert_int_equal(pthread_join(id[k], NULL), 0);
        assert_memory_equal(alone, shared, COUNT * sizeof *alone);
    }
    free(alone);
    free(shared);
}

static void unsound_necks_have_no_band(void **state)
{
    (void)state;
    ts_shear_neck neck = sample_neck();
    double        T;

    neck.d_i = exactly(11e-3);
    assert_nan(ts_neck_band(&neck, NULL).low);
    ts_neck_sample(&neck, 1, 0, 1, &T);
    assert_nan(T);
    neck          = sample_neck();
    neck.yielding = exactly(1.1);
    assert_nan(ts_neck_band(&neck, NULL).high);
    neck      = sample_neck();
    neck.K_ts = 0.9;
    assert_nan(ts_neck_band(&neck, NULL).high);
    neck           = sample_neck();
    neck.Ftu.sigma = 0.0;
    assert_nan(ts_neck_band(&neck, NULL).high);
}

/* Derived: of a divisor that is uniform from 1 to K the mean of 1/divisor is ln(K)/(K - 1), and of
 * its square 1/K. */
static void a_brittle_neck_feels_all_shares_of_its_notch_alike(void **state)
{
    (void)state;
    enum { COUNT = 100000 };
    const double  K = 2.5;
    double       *T = malloc(COUNT * sizeof *T), sum = 0.0, square = 0.0;
    ts_shear_neck neck = {.d        = exactly(10e-3),
                          .d_i      = exactly(0.0),
                          .Ftu      = exactly(1240e6),
                          .ratio    = exactly(0.6),
                          .warmth   = exactly(1.0),
                          .yielding = exactly(0.0),
                          .K_ts     = K,
                          .brittle  = true};

    assert_non_null(T);
    const double whole = 0.6 * 1240e6 * 3.14159265358979323846 * 1e-6 / 16.0;
    ts_neck_sample(&neck, 5, 0, COUNT, T);
    for (int i = 0; i < COUNT; i++) {
        assert_true(T[i] <= whole * (1.0 + 1e-12) && T[i] >= whole / K * (1.0 - 1e-12));
        sum += T[i] / whole;
        square += T[i] / whole * (T[i] / whole);
    }
    const double mean = log(K) / (K - 1.0), error = sqrt((1.0 / K - mean * mean) / COUNT);

    assert_close_abs(sum / COUNT, mean, 5.0 * error);
    assert_close(square / COUNT, 1.0 / K, 0.005);
    free(T);
}

/* Derived: a bell that is cut alike on both sides is its mean in the middle and its limits at the
 * ends, however narrow it is cut. */
static void a_spread_has_its_ends_and_its_middle(void **state)
{
    (void)state;
    for (double limits = 0.25; limits < 5.0; limits += 0.25) {
        const ts_spread bell = about(100.0, 4.0, limits);

        assert_close(ts_spread_at(&bell, 0.5), 100.0, 1e-12);
        assert_close(ts_spread_at(&bell, 1e-15), 100.0 - 4.0 * limits, 1e-6);
        assert_close(ts_spread_at(&bell, 1.0 - 1e-15), 100.0 + 4.0 * limits, 1e-6);
        assert_close(ts_spread_at(&bell, 0.2) - 100.0, 100.0 - ts_spread_at(&bell, 0.8), 1e-11);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(exact_neck_has_the_closed_forms),
        cmocka_unit_test(no_sample_leaves_the_band),
        cmocka_unit_test(corners_reach_the_band),
        cmocka_unit_test(scatter_is_the_first_order_one),
        cmocka_unit_test(samples_do_not_depend_on_the_threads),
        cmocka_unit_test(unsound_necks_have_no_band),
        cmocka_unit_test(a_brittle_neck_feels_all_shares_of_its_notch_alike),
        cmocka_unit_test(a_spread_has_its_ends_and_its_middle),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
