/* Do the estimates of samples come out as published and as closed forms say? */
#include "base/counter_random.h"
#include "sample/estimate.h"
#include "sample/variance_share.h"
#include "support/close.h"

#include <stdlib.h>

/* R. G. Newcombe, Two-sided confidence intervals for the single proportion, Statistics in Medicine
 * 17 (1998) 857, table I, method 3 (from memory). */
static void bounds_of_chances_are_the_published_ones(void **state)
{
    (void)state;
    static const struct {
        uint64_t hits, count;
        double   low, high;
    } printed[] = {{81, 263, 0.2553, 0.3662},
                   {15, 148, 0.0624, 0.1605},
                   {0, 20, 0.0000, 0.1611},
                   {1, 29, 0.0061, 0.1718}};

    for (int i = 0; i < 4; i++) {
        const ts_chance chance = ts_chance_of(printed[i].hits, printed[i].count);
        assert_close_abs(chance.low, printed[i].low, 0.5e-4);
        assert_close_abs(chance.high, printed[i].high, 0.5e-4);
        const ts_chance other = ts_chance_of(printed[i].count - printed[i].hits, printed[i].count);
        assert_close_abs(other.low, 1.0 - chance.high, 1e-14);
    }
    assert_true(isnan(ts_chance_of(0, 0).share));
}

static void what_is_missing_is_counted_and_takes_no_part(void **state)
{
    (void)state;
    double      values[] = {4.0, (double)NAN, 1.0, 3.0, (double)NAN, -2.0};
    ts_estimate of;

    ts_estimate_of(values, 6, &of);
    assert_int_equal(of.count, 4);
    assert_int_equal(of.missing, 2);
    assert_int_equal(of.below, 1);
    assert_close_abs(of.mean, 1.5, 1e-15);
    assert_close(of.deviation, sqrt(21.0 / 3.0), 1e-14);
    assert_close_abs(of.half[0], 2.5, 1e-15);
    assert_close_abs(of.half[1], 0.5, 1e-15);
    assert_close_abs(of.quantile[2], 2.0, 1e-15);
    assert_close(of.quantile[1], -2.0 + 0.15 * 3.0, 1e-14);
    assert_close_abs(of.least, -2.0, 0.0);
    assert_close_abs(of.most, 4.0, 0.0);
    double none[] = {(double)NAN};
    ts_estimate_of(none, 1, &of);
    assert_true(of.count == 0 && isnan(of.mean) && isnan(of.least) && isnan(of.quantile[0]));
}

static void ranks_follow_order_and_not_size(void **state)
{
    (void)state;
    const double a[] = {1.0, 2.0, 3.0, 4.0, 5.0}, b[] = {1.0, 8.0, 27.0, 64.0, 125.0};
    const double c[] = {5.0, 4.0, 3.0, 2.0, 1.0}, flat[] = {2.0, 2.0, 2.0, 2.0, 2.0};
    const double tied[] = {1.0, 2.0, 2.0, 4.0, 5.0};
    double       ranks[20];

    assert_close_abs(ts_rank_correlation(a, b, 5, ranks), 1.0, 1e-15);
    assert_close_abs(ts_rank_correlation(a, c, 5, ranks), -1.0, 1e-15);
    assert_true(isnan(ts_rank_correlation(a, flat, 5, ranks)));
    /* derived: ranks 0, 1.5, 1.5, 3, 4 against 0 .. 4 */
    assert_close(ts_rank_correlation(a, tied, 5, ranks), 9.5 / sqrt(10.0 * 9.5), 1e-14);
}

/* ---- shares of the variance ------------------------------------------------------------------ */

typedef double function(const double *x, int count);

/* Samples of a function of `count` values, each even between low and high, lot by lot. */
static double *lots_of(function *f, int count, double low, double high, size_t lots)
{
    double *values = malloc(lots * (size_t)(count + 2) * sizeof *values), *to = values;

    for (size_t j = 0; j < lots; j++) {
        double a[8], b[8], pair[2];
        for (uint32_t k = 0; k < (uint32_t)count; k++) {
            ts_random_pair(3, j, k, pair);
            a[k] = low + (high - low) * pair[0];
            b[k] = low + (high - low) * pair[1];
        }
        *to++ = f(a, count);
        *to++ = f(b, count);
        for (int k = 0; k < count; k++) {
            const double kept = a[k];
            a[k]              = b[k];
            *to++             = f(a, count);
            a[k]              = kept;
        }
    }
    return values;
}

static double ishigami(const double *x, int count)
{
    (void)count;
    return sin(x[0]) + 7.0 * sin(x[1]) * sin(x[1]) + 0.1 * pow(x[2], 4.0) * sin(x[0]);
}

/* T. Ishigami and T. Homma (1990): closed forms with a = 7, b = 0.1 (from memory, and derived). */
static void shares_of_the_ishigami_function_are_its_closed_forms(void **state)
{
    (void)state;
    enum { LOTS = 40000 };
    const double      pi = acos(-1.0), p4 = pow(pi, 4.0);
    const double      first  = 0.5 * (1.0 + 0.1 * p4 / 5.0) * (1.0 + 0.1 * p4 / 5.0);
    const double      second = 49.0 / 8.0, third = 0.01 * p4 * p4 * (1.0 / 18.0 - 1.0 / 50.0);
    const double      all     = first + second + third;
    const double      alone[] = {first / all, second / all, 0.0};
    const double      whole[] = {(first + third) / all, second / all, third / all};
    double           *values  = lots_of(ishigami, 3, -pi, pi, LOTS);
    ts_variance_share shares[3];

    assert_close_abs(alone[0], 0.3139, 1e-4);
    assert_close_abs(whole[2], 0.2437, 1e-4);
    assert_int_equal(ts_variance_shares(values, LOTS, 3, shares), LOTS);
    for (int k = 0; k < 3; k++) {
        assert_close_abs(shares[k].alone, alone[k], 5.0 * shares[k].alone_error);
        assert_close_abs(shares[k].whole, whole[k], 5.0 * shares[k].whole_error);
        assert_true(shares[k].alone_error < 0.02 && shares[k].whole_error < 0.02);
    }
    free(values);
}

static double weighted(const double *x, int count)
{
    double sum = 0.0;
    for (int k = 0; k < count; k++)
        sum += (k + 1) * x[k];
    return sum;
}

/* Derived: squares of the weights over their sum; nothing is shared, so both kinds agree. */
static void shares_of_a_sum_are_the_squares_of_its_weights(void **state)
{
    (void)state;
    enum { LOTS = 20000 };
    double           *values = lots_of(weighted, 4, 0.0, 1.0, LOTS);
    ts_variance_share shares[4];

    ts_variance_shares(values, LOTS, 4, shares);
    for (int k = 0; k < 4; k++) {
        const double due = (k + 1.0) * (k + 1.0) / 30.0;
        assert_close_abs(shares[k].alone, due, 5.0 * shares[k].alone_error);
        assert_close_abs(shares[k].whole, due, 5.0 * shares[k].whole_error);
    }
    values[7] = (double)NAN;
    assert_int_equal(ts_variance_shares(values, LOTS, 4, shares), LOTS - 1);
    assert_true(isfinite(shares[0].alone));
    for (size_t i = 0; i < LOTS * 6; i++)
        values[i] = 4.0;
    ts_variance_shares(values, LOTS, 4, shares);
    assert_true(isnan(shares[0].alone) && isnan(shares[3].whole_error));
    free(values);
}

/* Derived: of four tosses 1, 5, 11, 15 and 16 of 16 ways; both tails of an odd count are a half;
 * and of many the bell (hits half a step and three deviations above the mean). */
static void a_fair_coin_falls_as_its_ways_are_many(void **state)
{
    (void)state;
    static const double ways[] = {16.0, 15.0, 11.0, 5.0, 1.0};

    for (uint64_t hits = 0; hits <= 4; hits++)
        assert_close(ts_coin_tail(hits, 4), ways[hits] / 16.0, 1e-14);
    assert_close(ts_coin_tail(501, 1001), 0.5, 1e-11);
    assert_close(ts_coin_tail(5047 + 103, 10000), 0.00139, 0.02); /* (5149.5 - 5000)/50 = 2.99 */
    assert_close(ts_coin_tail(0, 0), 1.0, 1e-15);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bounds_of_chances_are_the_published_ones),
        cmocka_unit_test(what_is_missing_is_counted_and_takes_no_part),
        cmocka_unit_test(ranks_follow_order_and_not_size),
        cmocka_unit_test(shares_of_the_ishigami_function_are_its_closed_forms),
        cmocka_unit_test(shares_of_a_sum_are_the_squares_of_its_weights),
        cmocka_unit_test(a_fair_coin_falls_as_its_ways_are_many),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
