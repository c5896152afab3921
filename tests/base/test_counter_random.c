/* Do the random numbers of a place come out as published, and spread as they should? */
#include "base/counter_random.h"
#include "base/normal_law.h"
#include "support/close.h"

/* Known answers of Philox 4x32-10 from the authors' own file kat_vectors (from memory). */
static void words_are_the_published_ones(void **state)
{
    (void)state;
    static const uint32_t counters[3][4] = {
        {0, 0, 0, 0},
        {0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu},
        {0x243f6a88u, 0x85a308d3u, 0x13198a2eu, 0x03707344u},
    };
    static const uint32_t keys[3][2] = {
        {0, 0}, {0xffffffffu, 0xffffffffu}, {0xa4093822u, 0x299f31d0u}};
    static const uint32_t answers[3][4] = {
        {0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u},
        {0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu},
        {0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u},
    };

    for (int i = 0; i < 3; i++) {
        uint32_t words[4];

        ts_random_words(counters[i], keys[i], words);
        assert_memory_equal(words, answers[i], sizeof words);
    }
}

static void pairs_are_even_and_independent(void **state)
{
    (void)state;
    double sum[2] = {0.0, 0.0}, square[2] = {0.0, 0.0}, product = 0.0;
    enum { COUNT = 200000 };

    for (uint64_t i = 0; i < COUNT; i++) {
        double pair[2];

        ts_random_pair(42, i, 0, pair);
        for (int k = 0; k < 2; k++) {
            assert_true(pair[k] > 0.0 && pair[k] < 1.0);
            sum[k] += pair[k];
            square[k] += pair[k] * pair[k];
        }
        product += (pair[0] - 0.5) * (pair[1] - 0.5);
    }
    /* Derived: means 1/2 and 1/3, scattering by 0.289 and 0.298 over the root of the count; five of
     * these. */
    for (int k = 0; k < 2; k++) {
        assert_close_abs(sum[k] / COUNT, 0.5, 5.0 * 0.289 / sqrt(COUNT));
        assert_close_abs(square[k] / COUNT, 1.0 / 3.0, 5.0 * 0.298 / sqrt(COUNT));
    }
    assert_close_abs(product / COUNT, 0.0, 5.0 / 12.0 / sqrt(COUNT));
}

/* Quantiles 1.2815515655446004 and 2.3263478740408408 of any table (from memory). */
static void normal_places_are_the_tables(void **state)
{
    (void)state;
    assert_close(ts_normal_place(0.90), 1.2815515655446004, 1e-14);
    assert_close(ts_normal_place(0.99), 2.3263478740408408, 1e-14);
    assert_close_abs(ts_normal_place(0.5), 0.0, 1e-16);
    for (int i = -300; i <= 80; i++) {
        const double z = i / 10.0;

        /* Near 1 the share keeps only so many digits of z: half an ulp over the density, twice. */
        const double lost = z > 0.0 ? 6e-16 * exp(z * z / 2.0) : 0.0;

        assert_close_abs(ts_normal_place(ts_normal_share(z)), z, lost + 1e-15 * fmax(1.0, -z));
    }
    assert_nan(ts_normal_place(0.0));
    assert_nan(ts_normal_place(1.0));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(words_are_the_published_ones),
        cmocka_unit_test(pairs_are_even_and_independent),
        cmocka_unit_test(normal_places_are_the_tables),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
