/* Does a spectrum of loads help as DIN 743-4 says: in its limits, and against a slow second sum
 * that wears the fatigue limit down step by step? */
#include "rating/shaft/din743_spectrum.h"
#include "support/close.h"

static const ts_din_spectrum hard = {TS_DIN_B, 10.0, TS_DIN_DAMAGE};
static const ts_din_spectrum soft = {TS_DIN_T, 5.0, 1.0};

static double safety(const ts_din_step *steps, int count, const ts_din_spectrum *how)
{
    return ts_din_spectrum_safety(steps, count, how, NULL);
}

/* K_NF of one step: (N_D/N)^(1/q) between 1e3 and 1e6 cycles, 1 beyond. */
static void one_step_is_the_line_itself(void **state)
{
    (void)state;
    for (double n = 10.0; n < 1e12; n *= 7.0) {
        const ts_din_step step = {0.4, n};
        const double      N = fmax(n, 1e3), factor = N < 1e6 ? pow(1e6 / N, 0.2) : 1.0;
        const double      N_low = fmax(n / 0.3, 1e3);
        assert_close(safety(&step, 1, &soft), 2.5 * factor, 1e-12);
        assert_close(safety(&step, 1, &hard), 2.5 * (N_low < 1e6 ? pow(1e6 / N_low, 0.1) : 1.0),
                     1e-12);
    }
}

static void nothing_harms_without_loads_or_counts(void **state)
{
    (void)state;
    const ts_din_step none[2] = {{0.0, 1e9}, {0.5, 0.0}}, unknown = {(double)NAN, 1e4};
    const ts_din_step ever[2] = {{0.2, INFINITY}, {0.5, 2e4}};
    assert_true(isinf(safety(none, 2, &hard)));
    assert_true(isnan(safety(&unknown, 1, &hard)));
    assert_true(safety(ever, 2, &hard) > 2.0 && safety(ever, 2, &hard) < 5.0);
}

/* The life is cut into pieces; each harms by what then lies above the limit that is left. */
static double slow_sum(const ts_din_step *steps, int count, const ts_din_spectrum *how, double S)
{
    enum { PIECES = 200000 };
    double d = 0.0;

    for (int k = 0; k < PIECES && d < 1.0; k++) {
        const double limit = pow(1.0 - d, 1.0 / (how->q - 1.0));
        for (int i = 0; i < count; i++)
            if (S * steps[i].u > limit)
                d += steps[i].n / (1e6 * how->D_M) * pow(S * steps[i].u, how->q) / PIECES;
    }
    return d;
}

static void slow_sum_is_full_at_that_safety(void **state)
{
    (void)state;
    static const ts_din_step sets[3][4] = {
        {{0.50, 2e4}, {0.40, 3e5}, {0.30, 4e6}, {0.20, 1e8}},
        {{0.20, 9e8}, {0.90, 4e3}, {0.50, 2e5}, {0.45, 1e5}},
        {{0.60, 1e5}, {0.60, 1e5}, {0.10, 1e9}, {0.30, 1e5}},
    };
    for (int s = 0; s < 3; s++)
        for (int k = 0; k < 2; k++) {
            const ts_din_spectrum *how = k == 0 ? &hard : &soft;
            const double           S   = safety(sets[s], 4, how);
            assert_true(slow_sum(sets[s], 4, how, S * 0.999) < 1.0);
            assert_true(slow_sum(sets[s], 4, how, S * 1.001) >= 1.0);
        }
}

/* Never below the worst step for ever, nor below the line without a limit; never above the worst
 * step alone; more cycles never help; the order of the steps does not matter. */
static void safety_keeps_its_bounds(void **state)
{
    (void)state;
    uint64_t seed = 20120743;
    for (int trial = 0; trial < 2000; trial++) {
        ts_din_step steps[5], turned[5];
        double      worst = 0.0, elementary = 0.0;
        int         top = 0;
        for (int i = 0; i < 5; i++) {
            seed          = seed * 6364136223846793005ULL + 1442695040888963407ULL;
            steps[i]      = (ts_din_step){0.05 + (double)(seed >> 40) / (double)(1 << 24),
                                          pow(10.0, 3.0 + (double)(seed >> 20 & 0xFFFF) / 10000.0)};
            turned[4 - i] = steps[i];
            if (steps[i].u > steps[top].u)
                top = i;
            worst = fmax(worst, steps[i].u);
            elementary += steps[i].n / (1e6 * 0.3) * pow(steps[i].u, 10.0);
        }
        const double S = safety(steps, 5, &hard);
        assert_true(S >= (1.0 - 1e-12) / worst);
        assert_true(S >= fmin(pow(elementary, -0.1), pow(1e3, 0.1) / worst) * (1.0 - 1e-12));
        assert_true(S <= safety(&steps[top], 1, &hard) * (1.0 + 1e-12));
        assert_close(safety(turned, 5, &hard), S, 1e-12);
        steps[trial % 5].n *= 3.0;
        assert_true(safety(steps, 5, &hard) <= S * (1.0 + 1e-12));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_step_is_the_line_itself),
        cmocka_unit_test(nothing_harms_without_loads_or_counts),
        cmocka_unit_test(slow_sum_is_full_at_that_safety),
        cmocka_unit_test(safety_keeps_its_bounds),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
