/* Does what is written read back as the same double, in as few digits as can be? */
#include "quantity/quantity.h"

#include "base/number.h"
#include "support/close.h"
#include "support/sequence.h"

#include <locale.h>
#include <stdio.h>
#include <string.h>

static const ts_unit *unit_of(const char *name)
{
    const ts_unit *unit = ts_unit_named_any(ts_text_of(name));
    assert_non_null(unit);
    return unit;
}

/* Prints in the unit and reads back; returns how long the number is. */
static size_t there_and_back(ts_buffer *out, double si, const ts_unit *unit)
{
    double            back;
    ts_quantity_fault fault;
    ts_buffer_clear(out);
    ts_quantity_print(out, si, unit);
    if (!ts_quantity_parse((ts_text){out->bytes, out->length}, unit->kind, &back, NULL, &fault))
        fail_msg("%a %s was written %s: %s", si, unit->name, out->bytes, fault.says);
    if (memcmp(&back, &si, sizeof si) != 0)
        fail_msg("%a %s was written %s and read %a", si, unit->name, out->bytes, back);
    return strcspn(out->bytes, " ");
}

/* What people write comes back letter for letter: at most 15 digits, without needless zeros. */
static void what_a_person_wrote_comes_back_to_the_letter(void **state)
{
    (void)state;
    sequence  random = {41};
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t u = 0; u < ts_unit_count(); u++) {
        const ts_unit *unit = ts_unit_at(u);
        for (int i = 0; i < 500; i++) {
            char         number[TS_NUMBER_ROOM], text[64];
            const double value = (double)sequence_below(&random, 10000000) /
                                 (double[]){1.0, 10.0, 1000.0, 10000.0}[i % 4];
            (void)ts_number_print(number, i % 7 == 0 ? -value - 1.0 : value);
            if (strcmp(unit->name, "1") == 0)
                (void)snprintf(text, sizeof text, "%s", number);
            else
                (void)snprintf(text, sizeof text, "%s %s", number, unit->name);
            double            si;
            const ts_unit    *read;
            ts_quantity_fault fault;
            if (!ts_quantity_parse(ts_text_of(text), unit->kind, &si, &read, &fault))
                fail_msg("%s: %s", text, fault.says);
            assert_ptr_equal(read, unit);
            (void)there_and_back(&out, si, unit);
            /* Within 17 K of absolute zero the unit becomes K. */
            const bool cold = unit->offset > 0.0 && fabs(si) < unit->offset / 16.0;
            if (!cold && strcmp(out.bytes, text) != 0)
                fail_msg("%s was written %s", text, out.bytes);
        }
    }
    ts_buffer_close(&out);
}

static void whatever_was_computed_reads_back(void **state)
{
    (void)state;
    sequence  random = {43};
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    size_t longest = 0;
    for (size_t u = 0; u < ts_unit_count(); u++) {
        const ts_unit *unit = ts_unit_at(u);
        for (int i = 0; i < 1500; i++) {
            const double digits = (double)sequence_next(&random) * 0x1p-64;
            double       si     = ldexp(digits + 0.5, (int)sequence_below(&random, 100) - 50);
            if (i % 16 == 0) /* the interval below a power of two is half as wide */
                si = ldexp(1.0, (int)sequence_below(&random, 100) - 50);
            const size_t length = there_and_back(&out, i % 2 == 0 ? si : -si, unit);
            longest             = length > longest ? length : longest;
        }
    }
    /* derived: sign, 18 digits, point, "0.0000" before them */
    assert_true(longest <= 25);
    ts_buffer_close(&out);
}

static void any_magnitude_reads_back_in_the_si_unit(void **state)
{
    (void)state;
    sequence  random = {47};
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (int i = 0; i < 20000; i++) {
        const double si = sequence_double(&random);
        if (fabs(si) > 1e-179 && fabs(si) < 1e179)
            (void)there_and_back(&out, si, unit_of("N.m"));
    }
    ts_buffer_close(&out);
}

/* No text with one digit less, neither cut off nor one more in the last place, reads back. */
static void check_shortest(ts_buffer *out, double si, const ts_unit *unit)
{
    ts_decimal decimal;
    size_t     taken;
    (void)there_and_back(out, si, unit);
    (void)ts_number_parse_decimal(ts_text_of(out->bytes), &decimal, &taken);
    while (decimal.digits > 0 && decimal.digits % 10 == 0) {
        decimal.digits /= 10;
        decimal.exponent++;
    }
    for (uint64_t more = 0; more < 2 && decimal.digits >= 10; more++) {
        char   text[64];
        double back;
        (void)snprintf(text, sizeof text, "%s%llue%d %s", decimal.negative ? "-" : "",
                       (unsigned long long)(decimal.digits / 10 + more), (int)decimal.exponent + 1,
                       unit->name);
        assert_true(ts_quantity_parse(ts_text_of(text), unit->kind, &back, NULL, NULL));
        if (memcmp(&back, &si, sizeof si) == 0)
            fail_msg("%s was written for %s", out->bytes, text);
    }
}

static void no_shorter_text_reads_back(void **state)
{
    (void)state;
    sequence  random = {53};
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    static const char *const names[] = {"rpm", "hp", "lbf.in", "in", "deg", "gpm", "mm", "degF"};
    for (int i = 0; i < 8000; i++) {
        const double si = ldexp(0.5 + (double)sequence_next(&random) * 0x1p-65,
                                (int)sequence_below(&random, 20) + 5);
        check_shortest(&out, si, unit_of(names[i % 8]));
    }
    ts_buffer_close(&out);
}

/* What reads back as a power of two reaches half as far below it as above. */
static void powers_of_two_have_no_shorter_text_either(void **state)
{
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t u = 0; u < ts_unit_count(); u++) {
        const ts_unit *unit = ts_unit_at(u);
        for (int power = -200; power < 200; power++) {
            if (unit->offset > 0.0 && power < 5)
                continue; /* written in K there */
            if (unit != ts_kind_si(TS_KIND_NUMBER))
                check_shortest(&out, ldexp(1.0, power), unit);
        }
    }
    ts_buffer_close(&out);
}

static void expect_print(double si, const char *unit, const char *text)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    ts_quantity_print(&out, si, unit_of(unit));
    assert_string_equal(out.bytes, text);
    ts_buffer_close(&out);
}

static void known_quantities_have_known_texts(void **state)
{
    (void)state;
    expect_print(24600.0 * 0.10471975511965977, "rpm", "24600 rpm");
    expect_print(0.0, "rpm", "0 rpm");
    expect_print(-0.0, "mm", "0 mm");
    expect_print(-0.0, "m", "0 m");
    expect_print(288.15, "degC", "15 degC");
    expect_print(273.15, "degC", "0 degC");
    expect_print(273.15, "degF", "32 degF");
    expect_print(2.0, "degC", "2 K");
    expect_print(0.95, "1", "0.95");
    expect_print(0.95, "%", "95 %");
    expect_print(4.2e-6, "mm", "0.0042 mm");
    expect_print(1e300, "kW", "1e297 kW");
}

static void ranges_read_back(void **state)
{
    (void)state;
    static const char *const texts[] = {"6600..7300 rpm", "..26000 rpm", "900.. rpm", "0..0 rpm",
                                        "-5..-0.25 rpm"};
    ts_buffer                out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        double         low, high;
        const ts_unit *unit;
        assert_true(ts_quantity_parse_range(ts_text_of(texts[i]), TS_KIND_ROTATIONAL_SPEED, &low,
                                            &high, &unit, NULL));
        ts_buffer_clear(&out);
        ts_quantity_print_range(&out, low, high, unit);
        assert_string_equal(out.bytes, texts[i]);
    }
    ts_buffer_clear(&out);
    ts_quantity_print_range(&out, 2.0, 288.15, unit_of("degC"));
    assert_string_equal(out.bytes, "2..288.15 K"); /* one unit for both ends */
    ts_buffer_close(&out);
}

static void people_are_shown_few_digits(void **state)
{
    (void)state;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    ts_quantity_show(&out, 1289.0, unit_of("rpm"), 5); /* derived: 1289*30/pi = 12309.04 */
    ts_buffer_add(&out, " ");
    ts_quantity_show(&out, 0.95, unit_of("1"), 3);
    assert_string_equal(out.bytes, "12309 rpm 0.950");
    ts_buffer_close(&out);
}

static void quantities_are_the_same_bytes_under_a_german_locale(void **state)
{
    (void)state;
    if (setlocale(LC_ALL, "de_DE.UTF-8") == NULL)
        fail_msg("the locale de_DE.UTF-8 is missing; tools/setup-debian.sh makes it");
    expect_print(0.0345, "mm", "34.5 mm");
    expect_print(1234567.25, "kW", "1234.56725 kW");
    double            si;
    ts_quantity_fault fault;
    assert_true(ts_quantity_parse(TS_TEXT("34.5 mm"), TS_KIND_LENGTH, &si, NULL, NULL));
    assert_same_double(si, 0.0345);
    assert_false(ts_quantity_parse(TS_TEXT("34,5 mm"), TS_KIND_LENGTH, &si, NULL, &fault));
    assert_string_equal(fault.says, "a comma stands inside the number; write 34.5 mm");
    assert_false(ts_quantity_parse(TS_TEXT("0.5 Hz"), TS_KIND_ROTATIONAL_SPEED, &si, NULL, &fault));
    assert_string_equal(fault.expected, "a rotational speed such as 30 rpm");
    assert_false(ts_quantity_parse(TS_TEXT("45 rpm"), TS_KIND_FREQUENCY, &si, NULL, &fault));
    assert_string_equal(fault.expected, "a frequency such as 0.75 Hz");
    assert_non_null(setlocale(LC_ALL, "C"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_a_person_wrote_comes_back_to_the_letter),
        cmocka_unit_test(whatever_was_computed_reads_back),
        cmocka_unit_test(any_magnitude_reads_back_in_the_si_unit),
        cmocka_unit_test(no_shorter_text_reads_back),
        cmocka_unit_test(powers_of_two_have_no_shorter_text_either),
        cmocka_unit_test(known_quantities_have_known_texts),
        cmocka_unit_test(ranges_read_back),
        cmocka_unit_test(people_are_shown_few_digits),
        cmocka_unit_test(quantities_are_the_same_bytes_under_a_german_locale),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
