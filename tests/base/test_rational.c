/* Are ratios of tooth numbers exact, and is an overflow always seen? */
#include "base/rational.h"

#include "base/big.h"
#include "support/close.h"
#include "support/sequence.h"

__extension__ typedef __int128 wide;

static wide wide_gcd(wide a, wide b)
{
    a = a < 0 ? -a : a;
    b = b < 0 ? -b : b;
    while (b != 0) {
        const wide rest = a % b;

        a = b;
        b = rest;
    }
    return a;
}

/* The product in 128 bits, in lowest terms; {0, 0} when it does not fit. */
static ts_rational slow_times(ts_rational a, ts_rational b)
{
    wide       over = (wide)a.over * b.over, under = (wide)a.under * b.under;
    const wide shared = wide_gcd(over, under);
    over /= shared;
    under /= shared;
    if (over > INT64_MAX || over < -INT64_MAX || under > INT64_MAX)
        return (ts_rational){0, 0};
    return (ts_rational){(int64_t)over, (int64_t)under};
}

static int64_t some_whole(sequence *random)
{
    const int64_t size = (int64_t)(sequence_next(random) >> (1 + sequence_below(random, 62)));
    return sequence_below(random, 2) == 0 ? size : -size;
}

static void assert_same(ts_rational a, ts_rational b)
{
    assert_true(a.over == b.over && a.under == b.under);
}

static void greatest_common_divisors(void **state)
{
    (void)state;
    assert_int_equal(ts_gcd(0, 0), 0);
    assert_int_equal(ts_gcd(0, 7), 7);
    assert_int_equal(ts_gcd(7, 0), 7);
    assert_int_equal(ts_gcd(1071, 462), 21); /* derived: 3*3*7*17 and 2*3*7*11 */
    assert_true(ts_gcd(UINT64_MAX, UINT64_MAX - 1) == 1);
}

static void ratios_are_kept_in_lowest_terms(void **state)
{
    (void)state;
    assert_same(ts_rational_of(52, 61), (ts_rational){52, 61});
    assert_same(ts_rational_of(-52, 26), (ts_rational){-2, 1});
    assert_same(ts_rational_of(52, -26), (ts_rational){-2, 1});
    assert_same(ts_rational_of(-52, -26), (ts_rational){2, 1});
    assert_same(ts_rational_of(0, -5), (ts_rational){0, 1});
    assert_false(ts_rational_valid(ts_rational_of(5, 0)));
    assert_false(ts_rational_valid(ts_rational_of(0, 0)));
}

static void the_least_whole_number_has_no_opposite(void **state)
{
    (void)state;
    assert_false(ts_rational_valid(ts_rational_of(INT64_MIN, 1)));
    assert_false(ts_rational_valid(ts_rational_of(1, INT64_MIN)));
    assert_same(ts_rational_of(INT64_MIN, 2), (ts_rational){INT64_MIN / 2, 1});
    assert_same(ts_rational_of(INT64_MIN, INT64_MIN), (ts_rational){1, 1});
    /* 2^63 is one too many on either side */
    const ts_rational large = ts_rational_of(INT64_C(1) << 32, 1);
    const ts_rational other = ts_rational_of(-(INT64_C(1) << 31), 1);
    assert_false(ts_rational_valid(ts_rational_times(large, other)));
    const ts_rational one = ts_rational_of(1, 1), small = ts_rational_over(one, large);
    assert_false(ts_rational_valid(ts_rational_times(small, ts_rational_over(one, other))));
    assert_true(ts_rational_valid(ts_rational_times(other, other)));
}

static void products_agree_with_128_bits_and_overflow_is_seen(void **state)
{
    (void)state;
    sequence random = {11};
    int      fits = 0, overflows = 0;
    for (int i = 0; i < 200000; i++) {
        const ts_rational a = ts_rational_of(some_whole(&random), some_whole(&random));
        const ts_rational b = ts_rational_of(some_whole(&random), some_whole(&random));
        if (!ts_rational_valid(a) || !ts_rational_valid(b))
            continue;
        const ts_rational product = ts_rational_times(a, b), expected = slow_times(a, b);
        assert_same(product, expected);
        if (b.over != 0) {
            const ts_rational turned =
                b.over < 0 ? (ts_rational){-b.under, -b.over} : (ts_rational){b.under, b.over};
            assert_same(ts_rational_over(a, b), slow_times(a, turned));
        }
        fits += ts_rational_valid(product) ? 1 : 0;
        overflows += ts_rational_valid(product) ? 0 : 1;
    }
    assert_true(fits > 20000 && overflows > 20000);
}

static void what_is_undefined_stays_undefined(void **state)
{
    (void)state;
    const ts_rational nothing = ts_rational_of(1, 0), half = ts_rational_of(1, 2);
    assert_false(ts_rational_valid(ts_rational_times(nothing, half)));
    assert_false(ts_rational_valid(ts_rational_times(half, nothing)));
    assert_false(ts_rational_valid(ts_rational_over(half, ts_rational_of(0, 1))));
    assert_false(ts_rational_valid(ts_rational_over(nothing, half)));
    assert_false(ts_rational_equal(nothing, nothing));
    assert_nan(ts_rational_value(nothing));
}

static void long_chains_cancel_as_they_go(void **state)
{
    (void)state;
    /* derived: 52/61 * 61/45 * 45/83 ... telescopes, though the plain product overflows */
    ts_rational ratio = ts_rational_of(1, 1);
    for (int64_t teeth = 20; teeth < 220; teeth++)
        ratio = ts_rational_times(ratio, ts_rational_of(teeth, teeth + 1));
    assert_same(ratio, ts_rational_of(20, 220));
    assert_true(ts_rational_equal(ratio, ts_rational_of(1, 11)));
    /* and a chain that does not telescope overflows instead of wrapping */
    ratio = ts_rational_of(1, 1);
    for (int64_t teeth = 20; teeth < 220 && ts_rational_valid(ratio); teeth++)
        ratio = ts_rational_times(ratio, ts_rational_of(2 * teeth + 1, 1));
    assert_false(ts_rational_valid(ratio));
}

/* Is no double nearer?  |value - over/under| against half a step, in whole numbers: with value =
 * whole * 2^power that is 2 * |whole * 2^power * under - over| <= 2^power * under. */
static bool is_nearest(double value, ts_rational r)
{
    int            power;
    const uint64_t whole = (uint64_t)ldexp(frexp(fabs(value), &power), 53);
    power -= 53;
    ts_big ours, exact, step;
    ts_big_set(&step, (uint64_t)r.under);
    ts_big_shift_left(&step, power > 0 ? power : 0);
    ours = step;
    ts_big_times_plus(&ours, whole, 0);
    ts_big_set(&exact, (uint64_t)(r.over < 0 ? -r.over : r.over));
    ts_big_shift_left(&exact, power < 0 ? -power : 0);
    if (ts_big_compare(&ours, &exact) < 0) {
        const ts_big larger = exact;

        exact = ours;
        ours  = larger;
    }
    ts_big_subtract(&ours, &exact);
    ts_big_shift_left(&ours, 1);
    const int side = ts_big_compare(&ours, &step);
    return signbit(value) == (r.over < 0) && (side < 0 || (side == 0 && whole % 2 == 0));
}

static void the_value_is_the_nearest_double(void **state)
{
    (void)state;
    sequence random = {13};
    for (int i = 0; i < 100000; i++) {
        const ts_rational r = ts_rational_of(some_whole(&random), some_whole(&random));
        if (!ts_rational_valid(r))
            continue;
        if (r.over != 0 && !is_nearest(ts_rational_value(r), r))
            fail_msg("%lld/%lld", (long long)r.over, (long long)r.under);
    }
    assert_same_double(ts_rational_value(ts_rational_of(1, 3)), 1.0 / 3.0);
    assert_same_double(ts_rational_value(ts_rational_of(-52, 61)), -52.0 / 61.0);
    assert_same_double(ts_rational_value(ts_rational_of(0, 61)), 0.0);
    assert_same_double(ts_rational_value(ts_rational_of(INT64_MAX, 1)), 0x1p63);
    /* derived: 2^53 + 1 is a tie and goes to even; 2^54 + 3 over 2 lies above the tie */
    assert_same_double(ts_rational_value(ts_rational_of((INT64_C(1) << 53) + 1, 1)), 0x1p53);
    assert_same_double(ts_rational_value(ts_rational_of((INT64_C(1) << 54) + 3, 2)), 0x1p53 + 2.0);
}

/* derived: with an odd `under` and whole = 2^53 + k odd, over * 2^53 = whole * under + rest has a
 * solution for rest 1 and for rest -1; the ratio then lies 2^-115 beside the midpoint of two
 * doubles, which nothing but an exact remainder can tell. */
static void a_hair_beside_a_tie_decides(void **state)
{
    (void)state;
    const uint64_t mask   = (UINT64_C(1) << 53) - 1;
    sequence       random = {19};
    for (int i = 0; i < 20000; i++) {
        const uint64_t under   = (sequence_next(&random) >> 3) | UINT64_C(1) << 60 | 1;
        uint64_t       inverse = under; /* Newton: right to 3 bits, 6, 12, 24, 48, 96 */
        for (int k = 0; k < 5; k++)
            inverse *= 2 - under * inverse;
        const int      rest  = i % 2 == 0 ? 1 : -1;
        const uint64_t part  = (rest > 0 ? 0 - inverse : inverse) & mask;
        const wide     whole = ((wide)1 << 53) + (wide)part;
        const wide     over  = (whole * (wide)under + rest) >> 53;
        assert_true((over << 53) - whole * (wide)under == rest);
        const ts_rational r = ts_rational_of((int64_t)over, (int64_t)under);
        assert_true(ts_rational_valid(r));
        if (!is_nearest(ts_rational_value(r), r))
            fail_msg("%lld/%lld", (long long)r.over, (long long)r.under);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(greatest_common_divisors),
        cmocka_unit_test(ratios_are_kept_in_lowest_terms),
        cmocka_unit_test(the_least_whole_number_has_no_opposite),
        cmocka_unit_test(products_agree_with_128_bits_and_overflow_is_seen),
        cmocka_unit_test(what_is_undefined_stays_undefined),
        cmocka_unit_test(long_chains_cancel_as_they_go),
        cmocka_unit_test(the_value_is_the_nearest_double),
        cmocka_unit_test(a_hair_beside_a_tie_decides),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
