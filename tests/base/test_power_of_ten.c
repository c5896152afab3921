/* Are the tabled powers of ten right to the last of their 128 bits?
 *
 * Each is held against the exact power, multiplied out with the long whole numbers of base, which
 * are themselves held against their defining identities.
 */
#include "base/power_of_ten.h"

#include "base/big.h"
#include "support/close.h"
#include "support/sequence.h"

static void set_power_of_ten(ts_big *big, int exponent)
{
    ts_big_set(big, 1);
    ts_big_times_five_power(big, exponent);
    ts_big_shift_left(big, exponent);
}

static void set_128(ts_big *big, uint64_t high, uint64_t low)
{
    ts_big_set(big, high);
    ts_big_shift_left(big, 64);
    ts_big part;
    ts_big_set(&part, low);
    if (high == 0) {
        *big = part;
        return;
    }
    big->limb[0] = low; /* the shift left it empty */
}

/* table <= 2^shift * 10^k < table + 1, as whole numbers on both sides. */
static void check_one(int k)
{
    const ts_power_of_ten power = ts_power_of_ten_at(k);
    assert_true(power.high >> 63 == 1);
    ts_big table, next, exact;
    set_128(&table, power.high, power.low);
    set_128(&next, power.high + (power.low == UINT64_MAX ? 1 : 0), power.low + 1);
    const int shift = 127 - ts_power_of_ten_log2(k);
    ts_big_set(&exact, 1);
    if (k >= 0) {
        set_power_of_ten(&exact, k);
    } else {
        ts_big ten;
        set_power_of_ten(&ten, -k);
        /* both sides times 10^-k */
        ts_big_times_five_power(&table, -k);
        ts_big_shift_left(&table, -k);
        ts_big_times_five_power(&next, -k);
        ts_big_shift_left(&next, -k);
    }
    if (shift >= 0) {
        ts_big_shift_left(&exact, shift);
    } else {
        ts_big_shift_left(&table, -shift);
        ts_big_shift_left(&next, -shift);
    }
    if (ts_big_compare(&table, &exact) > 0 || ts_big_compare(&exact, &next) >= 0)
        fail_msg("10^%d", k);
    assert_int_equal(ts_power_of_ten_exact(k), ts_big_compare(&table, &exact) == 0);
}

static void every_tabled_power_is_cut_off_from_the_exact_one(void **state)
{
    (void)state;
    for (int k = TS_POWER_OF_TEN_FIRST; k <= TS_POWER_OF_TEN_LAST; k++)
        check_one(k);
}

static void long_numbers_keep_their_identities(void **state)
{
    (void)state;
    sequence random = {3};
    for (int i = 0; i < 2000; i++) {
        ts_big    a, b, c;
        const int five = (int)sequence_below(&random, 300);
        const int two  = (int)sequence_below(&random, 700);
        ts_big_set(&a, sequence_next(&random));
        b = a;
        /* a * 5^n * 2^m, in two orders, is the same */
        ts_big_times_five_power(&a, five);
        ts_big_shift_left(&a, two);
        ts_big_shift_left(&b, two);
        for (int k = 0; k < five; k++)
            ts_big_times_plus(&b, 5, 0);
        assert_int_equal(ts_big_compare(&a, &b), 0);
        /* (a * f + r) / f = a with the rest r */
        const uint64_t factor = sequence_next(&random) | 3, rest = sequence_next(&random) % factor;
        ts_big_times_plus(&a, factor, rest);
        assert_int_equal(ts_big_compare(&a, &b), 1);
        c = a;
        assert_true(ts_big_divide(&a, factor) == rest);
        assert_int_equal(ts_big_compare(&a, &b), 0);
        /* (b * f + r) - (b * (f - 1) + r) = b */
        c = b;
        ts_big_times_plus(&c, factor, rest);
        ts_big_times_plus(&a, factor - 1, rest);
        ts_big_subtract(&c, &a);
        assert_int_equal(ts_big_compare(&c, &b), 0);
    }
    ts_big zero;
    ts_big_set(&zero, 0);
    ts_big_shift_left(&zero, 100);
    ts_big_times_plus(&zero, 7, 0);
    assert_int_equal(ts_big_bits(&zero), 0);
    ts_big_times_plus(&zero, 7, 5);
    assert_int_equal(ts_big_bits(&zero), 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_tabled_power_is_cut_off_from_the_exact_one),
        cmocka_unit_test(long_numbers_keep_their_identities),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
