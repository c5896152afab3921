/* Do numbers survive the way to text and back, and is every digit the right one?
 *
 * The C library of the test machine is the second opinion: its strtod and printf round correctly
 * under the C locale.
 */
#include "base/number.h"

#include "support/close.h"
#include "support/sequence.h"

#include <float.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool same_bits(double a, double b)
{
    return memcmp(&a, &b, sizeof a) == 0;
}

static void expect_text(double value, const char *text)
{
    char         out[TS_NUMBER_ROOM];
    const size_t length = ts_number_print(out, value);
    assert_string_equal(out, text);
    assert_int_equal(length, strlen(text));
}

static void known_values_have_known_texts(void **state)
{
    (void)state;
    expect_text(0.0, "0");
    expect_text(-0.0, "-0");
    expect_text(0.1, "0.1");
    expect_text(-2.5, "-2.5");
    expect_text(24600.0, "24600");
    expect_text(1e-5, "0.00001");
    expect_text(9.999e-6, "9.999e-6");
    expect_text(1e-7, "1e-7");
    expect_text(9999999999999998.0, "9999999999999998");
    expect_text(1e16, "1e16");
    expect_text(1.5e300, "1.5e300");
    expect_text(0x1p-1074, "5e-324");
    expect_text(DBL_MIN, "2.2250738585072014e-308");
    expect_text(DBL_MAX, "1.7976931348623157e308");
    expect_text(1.0 / 3.0, "0.3333333333333333");
    expect_text(0.1 + 0.2, "0.30000000000000004");
    expect_text(1e23, "1e23");
    expect_text(9007199254740993.0, "9007199254740992");
    /* 2^-24: the nearest text of 16 digits ends in 2, but this one reads back too and is as short
     */
    expect_text(0x1p-24, "5.960464477539063e-8");
    expect_text(0x1p+122, "5.316911983139664e36");
}

static void a_million_doubles_read_back_to_the_bit(void **state)
{
    (void)state;
    sequence random = {88172645463325252U};
    for (int i = 0; i < 1000000; i++) {
        double value = sequence_double(&random);
        if (i % 4 == 1)
            value = (double)sequence_below(&random, 100000000) / 1000.0;
        if (i % 16 == 2) /* subnormal */
            value = (double)sequence_below(&random, UINT64_C(1) << 52) * 0x1p-1074;
        char            out[TS_NUMBER_ROOM];
        double          back;
        size_t          taken;
        const size_t    length = ts_number_print(out, value);
        ts_number_fault fault  = ts_number_parse((ts_text){out, length}, &back, &taken);
        if (fault != TS_NUMBER_FINE || taken != length || !same_bits(back, value) ||
            length >= TS_NUMBER_ROOM)
            fail_msg("%a was written %s", value, out);
    }
}

/* The digits of a text, without sign, point, zeros at the ends and exponent. */
static size_t significant(const char *text, char digits[32])
{
    size_t count = 0;
    for (; *text != '\0' && *text != 'e'; text++) {
        if (*text >= '0' && *text <= '9' && (count > 0 || *text != '0') && count < 31)
            digits[count++] = *text;
    }
    while (count > 0 && digits[count - 1] == '0')
        count--;
    digits[count] = '\0';
    return count;
}

/* No text with one digit less reads back: neither the nearest below nor the nearest above. */
static bool has_shorter(double value, size_t count)
{
    if (count < 2)
        return false;
    char text[40];
    (void)snprintf(text, sizeof text, "%.*e", (int)count - 2, value);
    if (same_bits(strtod(text, NULL), value))
        return true;
    /* printf gave one neighbour; one unit of its last digit further stands the other */
    char        unit[40];
    const char *exponent = strchr(text, 'e');
    (void)snprintf(unit, sizeof unit, "1e%d", atoi(exponent + 1) - (int)count + 2);
    const double step = strtod(unit, NULL);
    for (int side = -1; side <= 1; side += 2) {
        char other[40];
        (void)snprintf(other, sizeof other, "%.*e", (int)count - 2,
                       strtod(text, NULL) + side * step);
        if (same_bits(strtod(other, NULL), value))
            return true;
    }
    return false;
}

/* The next smaller double of a power of two is half as far as the next larger one. */
static void every_power_of_two_reads_back_and_has_no_shorter_text(void **state)
{
    (void)state;
    for (int power = -1074; power < 1024; power++) {
        const double value = ldexp(1.0, power);
        char         out[TS_NUMBER_ROOM], digits[32];
        (void)ts_number_print(out, value);
        if (!same_bits(strtod(out, NULL), value))
            fail_msg("2^%d was written %s", power, out);
        const size_t count = significant(out, digits);
        if (value > DBL_MIN && has_shorter(value, count))
            fail_msg("2^%d has a shorter text than %s", power, out);
    }
}

static void no_shorter_text_reads_back_and_none_as_short_is_nearer(void **state)
{
    (void)state;
    sequence random = {99};
    for (int i = 0; i < 60000; i++) {
        double value = fabs(sequence_double(&random));
        if (i % 3 == 1)
            value = (double)sequence_below(&random, 1000000000) / 9973.0;
        if (value <= DBL_MIN) /* the helper's sums are not exact enough below */
            continue;
        char out[TS_NUMBER_ROOM], ours[32], nearest[40], theirs[32];
        (void)ts_number_print(out, value);
        const size_t count = significant(out, ours);
        if (has_shorter(value, count))
            fail_msg("%a has a shorter text than %s", value, out);
        (void)snprintf(nearest, sizeof nearest, "%.*e", (int)count - 1, value);
        (void)significant(nearest, theirs);
        /* Where the nearest text of that length reads back it is the one. */
        if (same_bits(strtod(nearest, NULL), value) && strcmp(ours, theirs) != 0)
            fail_msg("%a was written %s, nearer is %s", value, out, nearest);
    }
}

static void reads_as(const char *text, double value, size_t taken_expected)
{
    double value_read;
    size_t taken;
    assert_int_equal(ts_number_parse(ts_text_of(text), &value_read, &taken), TS_NUMBER_FINE);
    if (!same_bits(value_read, value) || taken != taken_expected)
        fail_msg("%s was read as %a, %zu bytes", text, value_read, taken);
}

static void a_number_ends_where_it_ends(void **state)
{
    (void)state;
    reads_as("34 N.m", 34.0, 2);
    reads_as("34N.m", 34.0, 2);
    reads_as("+5", 5.0, 2);
    reads_as("-0", -0.0, 2);
    reads_as("007", 7.0, 3);
    reads_as("5.", 5.0, 1);
    reads_as("6600..7300", 6600.0, 4);
    reads_as("1.5..2", 1.5, 3);
    reads_as("5e", 5.0, 1);
    reads_as("5e+", 5.0, 1);
    reads_as("5e3x", 5000.0, 3);
    reads_as("5E-1", 0.5, 4);
    reads_as("3, 5", 3.0, 1);
    reads_as("0.000", 0.0, 5);
    reads_as("1 000", 1.0, 1);
}

static void expect_fault(const char *text, ts_number_fault fault, size_t at)
{
    double value = 1.0;
    size_t taken = 99;
    if (ts_number_parse(ts_text_of(text), &value, &taken) != fault || taken != at)
        fail_msg("%s: at %zu", text, taken);
    assert_same_double(value, 0.0);
}

static void what_is_no_number_is_refused_where_it_stops_being_one(void **state)
{
    (void)state;
    expect_fault("", TS_NUMBER_EMPTY, 0);
    expect_fault("3,5", TS_NUMBER_DECIMAL_COMMA, 1);
    expect_fault("-3.5,5", TS_NUMBER_DECIMAL_COMMA, 4);
    expect_fault("1,234.5", TS_NUMBER_DECIMAL_COMMA, 1);
    expect_fault("abc", TS_NUMBER_NOT_A_NUMBER, 0);
    expect_fault(".5", TS_NUMBER_NOT_A_NUMBER, 0);
    expect_fault("-", TS_NUMBER_NOT_A_NUMBER, 1);
    expect_fault("--5", TS_NUMBER_NOT_A_NUMBER, 1);
    expect_fault("1.2.3", TS_NUMBER_NOT_A_NUMBER, 3);
    expect_fault("0x1p3", TS_NUMBER_NOT_A_NUMBER, 1);
    expect_fault("NaN", TS_NUMBER_NOT_A_NUMBER, 0);
    expect_fault("inf", TS_NUMBER_NOT_A_NUMBER, 0);
    expect_fault("1e309", TS_NUMBER_TOO_LARGE, 5);
    expect_fault("-1e99999999999999999999999", TS_NUMBER_TOO_LARGE, 26);
}

static void texts_beyond_the_doubles_round_to_their_ends(void **state)
{
    (void)state;
    reads_as("1e-400", 0.0, 6);
    reads_as("-1e-99999999999999999999", -0.0, 24);
    reads_as("2.4703282292062327208e-324", 0.0, 26);       /* just under half of 2^-1074 */
    reads_as("2.4703282292062327209e-324", 0x1p-1074, 26); /* just over                  */
    reads_as("0e999999999999999999", 0.0, 20);
    reads_as("2.2250738585072011e-308", 0x0.fffffffffffffp-1022, 23);
}

/* derived: halfway from DBL_MAX to 2^1024 rounds to even, which is too large; a hair less is not */
static void the_largest_double_ends_at_its_midpoint(void **state)
{
    (void)state;
    char      text[400];
    const int length = snprintf(text, sizeof text, "%.0Lf", 0x1.fffffffffffff8p+1023L);
    assert_int_equal(length, 309);
    expect_fault(text, TS_NUMBER_TOO_LARGE, 309);
    assert_int_equal(text[308], '2');
    text[308] = '1';
    reads_as(text, DBL_MAX, 309);
}

static void exponents_and_zeros_cancel(void **state)
{
    (void)state;
    char text[3000];
    memset(text, '0', sizeof text);
    text[1] = '.';
    memcpy(text + 2500, "125e2500", 9);
    reads_as(text, 12.5, 2508);
    memset(text, '0', sizeof text);
    text[0] = '7';
    memcpy(text + 2001, "e-2000", 7);
    reads_as(text, 7.0, 2007);
}

static void random_decimals_round_as_the_c_library_rounds_them(void **state)
{
    (void)state;
    sequence random = {4711};
    for (int i = 0; i < 200000; i++) {
        char      text[1000];
        const int digits = 1 + (int)sequence_below(&random, i % 100 == 0 ? 900 : 24);
        int       length = 0;
        for (int k = 0; k < digits; k++) {
            text[length++] = (char)('0' + sequence_below(&random, 10));
            if (k == digits / 2 && k + 1 < digits)
                text[length++] = '.';
        }
        const int around = i % 3 == 0 ? 360 : 30;
        (void)sprintf(text + length, "e%d",
                      (int)sequence_below(&random, 2 * (uint64_t)around) - around -
                          (digits > 100 ? digits / 2 : 0));
        double                value;
        size_t                taken;
        const double          expected = strtod(text, NULL);
        const ts_number_fault fault    = ts_number_parse(ts_text_of(text), &value, &taken);
        if (isinf(expected) ? fault != TS_NUMBER_TOO_LARGE
                            : fault != TS_NUMBER_FINE || !same_bits(value, expected))
            fail_msg("%s: %a, the C library says %a", text, value, expected);
    }
}

static void midpoints_go_to_the_even_side_and_a_hair_decides(void **state)
{
    (void)state;
    sequence random = {31};
    for (int i = 0; i < 3000; i++) {
        /* Up to 2^60 and down to 2^-200 a midpoint has few enough digits to be written out. */
        const double low = ldexp(1.0 + (double)sequence_below(&random, UINT64_C(1) << 52) * 0x1p-52,
                                 (int)sequence_below(&random, 260) - 200);
        const double high        = nextafter(low, (double)INFINITY);
        const long double middle = ((long double)low + (long double)high) / 2.0L;
        char              text[600];
        const int         length = snprintf(text, sizeof text - 1, "%.400Lf", middle);
        uint64_t          bits;
        memcpy(&bits, &low, sizeof bits);
        reads_as(text, (bits & 1) == 0 ? low : high, (size_t)length);
        text[length - 1] = '1';
        reads_as(text, high, (size_t)length);
    }
}

static void decimals_keep_nineteen_digits(void **state)
{
    (void)state;
    ts_decimal decimal;
    size_t     taken;
    assert_int_equal(ts_number_parse_decimal(TS_TEXT("-0.1250 m"), &decimal, &taken),
                     TS_NUMBER_FINE);
    assert_int_equal(decimal.digits, 1250);
    assert_int_equal(decimal.exponent, -4);
    assert_true(decimal.negative && !decimal.cut);
    assert_int_equal(taken, 7);
    assert_int_equal(
        ts_number_parse_decimal(TS_TEXT("12345678901234567890123e-3"), &decimal, &taken),
        TS_NUMBER_FINE);
    assert_true(decimal.digits == UINT64_C(1234567890123456789));
    assert_int_equal(decimal.exponent, 1);
    assert_true(decimal.cut);
}

static void fixed_decimals_are_rounded_from_the_exact_value(void **state)
{
    (void)state;
    sequence random = {17};
    char     ours[TS_NUMBER_FIXED_ROOM], theirs[400];
    for (int i = 0; i < 100000; i++) {
        double value = sequence_double(&random);
        if (i % 2 == 0)
            value = (double)(int64_t)sequence_below(&random, 2000000) / 1024.0 - 900.0;
        const int decimals = (int)sequence_below(&random, 13);
        (void)ts_number_fixed(ours, value, decimals);
        (void)snprintf(theirs, sizeof theirs, "%.*f", decimals, value);
        const char *expected = theirs;
        if (theirs[0] == '-' && strspn(theirs + 1, "0.") == strlen(theirs + 1))
            expected = theirs + 1; /* never "-0.00" */
        if (strcmp(ours, expected) != 0)
            fail_msg("%a with %d decimals: %s, not %s", value, decimals, ours, expected);
    }
    assert_int_equal(ts_number_fixed(ours, -DBL_MAX, 12), 1 + 309 + 1 + 12);
    (void)ts_number_fixed(ours, 0.125, 2);
    assert_string_equal(ours, "0.12"); /* a tie goes to even */
    (void)ts_number_fixed(ours, -0.0004, 3);
    assert_string_equal(ours, "0.000");
}

static void expect_significant(double value, int digits, const char *text)
{
    char out[TS_NUMBER_ROOM];
    (void)ts_number_significant(out, value, digits);
    assert_string_equal(out, text);
}

static void significant_digits_read_like_an_engineer_writes(void **state)
{
    (void)state;
    expect_significant(12309.4, 5, "12309");
    expect_significant(12309.4, 3, "12300");
    expect_significant(9.996, 3, "10.0");
    expect_significant(0.0999951, 4, "0.1000");
    expect_significant(0.0001, 2, "0.00010");
    expect_significant(0.00009994, 3, "9.99e-5");
    expect_significant(0.00009996, 3, "0.000100");
    expect_significant(999999999.0, 9, "999999999");
    expect_significant(999999999.7, 3, "1.00e9");
    expect_significant(2.1e11, 2, "2.1e11");
    expect_significant(-1.5, 1, "-2");
    expect_significant(2.5, 1, "2");
    expect_significant(2.5e21, 1, "2e21"); /* doubles that are ties: these go to even */
    expect_significant(3.5e21, 1, "4e21");
    expect_significant(4.5e21, 1, "4e21");
    expect_significant(0.0, 4, "0");
    expect_significant(-0.0, 4, "0");
    expect_significant(5e-324, 1, "5e-324");
    expect_significant(DBL_MAX, 17, "1.7976931348623157e308");
}

static void check_significant(double value, int digits)
{
    char ours[TS_NUMBER_ROOM], theirs[40], a[32], b[32];
    (void)ts_number_significant(ours, value, digits);
    (void)snprintf(theirs, sizeof theirs, "%.*e", digits - 1, value);
    (void)significant(ours, a);
    (void)significant(theirs, b);
    const double back = strtod(theirs, NULL);
    if (strcmp(a, b) != 0 || (isfinite(back) && !same_bits(strtod(ours, NULL), back)))
        fail_msg("%a with %d digits: %s, not %s", value, digits, ours, theirs);
}

static void significant_digits_are_rounded_from_the_exact_value(void **state)
{
    (void)state;
    sequence random = {23};
    for (int i = 0; i < 50000; i++) {
        double value = sequence_double(&random);
        if (i % 2 == 0)
            value = ((double)sequence_below(&random, 1000000) + 0.5) / 1000.0;
        check_significant(value, 1 + (int)sequence_below(&random, 17));
    }
}

/* Where a logarithm is rounded to a whole number the number of digits must still be right. */
static void significant_digits_are_right_beside_powers_of_ten(void **state)
{
    (void)state;
    for (int power = -307; power <= 308; power++) {
        char text[16];
        (void)snprintf(text, sizeof text, "1e%d", power);
        const double ten = strtod(text, NULL);
        for (int digits = 1; digits <= 17; digits++) {
            check_significant(ten, digits);
            check_significant(nextafter(ten, 0.0), digits);
            check_significant(nextafter(ten, (double)INFINITY), digits);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(known_values_have_known_texts),
        cmocka_unit_test(a_million_doubles_read_back_to_the_bit),
        cmocka_unit_test(every_power_of_two_reads_back_and_has_no_shorter_text),
        cmocka_unit_test(no_shorter_text_reads_back_and_none_as_short_is_nearer),
        cmocka_unit_test(a_number_ends_where_it_ends),
        cmocka_unit_test(what_is_no_number_is_refused_where_it_stops_being_one),
        cmocka_unit_test(texts_beyond_the_doubles_round_to_their_ends),
        cmocka_unit_test(the_largest_double_ends_at_its_midpoint),
        cmocka_unit_test(exponents_and_zeros_cancel),
        cmocka_unit_test(random_decimals_round_as_the_c_library_rounds_them),
        cmocka_unit_test(midpoints_go_to_the_even_side_and_a_hair_decides),
        cmocka_unit_test(decimals_keep_nineteen_digits),
        cmocka_unit_test(fixed_decimals_are_rounded_from_the_exact_value),
        cmocka_unit_test(significant_digits_read_like_an_engineer_writes),
        cmocka_unit_test(significant_digits_are_rounded_from_the_exact_value),
        cmocka_unit_test(significant_digits_are_right_beside_powers_of_ten),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
