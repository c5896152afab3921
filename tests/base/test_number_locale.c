/* Are numbers the same bytes where people write a decimal comma? */
#include "base/buffer.h"
#include "base/number.h"

#include "support/close.h"
#include "support/sequence.h"

#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define COUNT 2000

/* Everything that base writes about a number, in one text. */
static void write_all(ts_buffer *out)
{
    sequence random = {5};
    for (int i = 0; i < COUNT; i++) {
        const double value = i % 2 == 0 ? sequence_double(&random)
                                        : (double)sequence_below(&random, 10000000) / 1000.0;
        ts_buffer_number(out, value);
        ts_buffer_add(out, " ");
        ts_buffer_fixed(out, fmod(value, 1e9), 4);
        ts_buffer_add(out, " ");
        ts_buffer_significant(out, value, 6);
        ts_buffer_print(out, " %d %u %zu\n", 1234567, 1234567U, (size_t)1234567);
    }
}

static void go_german(void)
{
    if (setlocale(LC_ALL, "de_DE.UTF-8") == NULL)
        fail_msg("the locale de_DE.UTF-8 is missing; tools/setup-debian.sh makes it");
    char text[16];
    (void)snprintf(text, sizeof text, "%.1f", 0.5);
    assert_string_equal(text, "0,5"); /* or this test would prove nothing */
}

static void numbers_are_written_the_same_under_a_german_locale(void **state)
{
    (void)state;
    ts_buffer plain, german;
    ts_buffer_open(&plain, NULL);
    ts_buffer_open(&german, NULL);
    assert_non_null(setlocale(LC_ALL, "C"));
    write_all(&plain);
    go_german();
    write_all(&german);
    assert_int_equal(plain.length, german.length);
    assert_memory_equal(plain.bytes, german.bytes, plain.length);
    assert_true(memchr(german.bytes, ',', german.length) == NULL);
    ts_buffer_close(&plain);
    ts_buffer_close(&german);
    assert_non_null(setlocale(LC_ALL, "C"));
}

static void numbers_are_read_the_same_under_a_german_locale(void **state)
{
    (void)state;
    go_german();
    /* Over 19 digits, so that all three routes of the reader are tried. */
    static const char *const texts[]  = {"3.5", "0.1234567890123456789012345", "1.5e-300",
                                         "9007199254740993.00000000000000000001"};
    static const double      values[] = {3.5, 0x1.f9add3746f65fp-4, 1.5e-300, 9007199254740994.0};
    for (size_t i = 0; i < 4; i++) {
        double value;
        size_t taken;
        assert_int_equal(ts_number_parse(ts_text_of(texts[i]), &value, &taken), TS_NUMBER_FINE);
        assert_int_equal(taken, strlen(texts[i]));
        assert_same_double(value, values[i]);
    }
    double value;
    size_t taken;
    assert_int_equal(ts_number_parse(TS_TEXT("3,5"), &value, &taken), TS_NUMBER_DECIMAL_COMMA);
    assert_non_null(setlocale(LC_ALL, "C"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(numbers_are_written_the_same_under_a_german_locale),
        cmocka_unit_test(numbers_are_read_the_same_under_a_german_locale),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
