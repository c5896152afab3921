/* Does a sentence break where it should? */
#include "base/text_wrap.h"

#include "support/close.h"

#include <string.h>

static void expect(const char *text, ts_wrap wrap, const char *wrapped, size_t column)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    assert_int_equal(ts_wrap_text(&out, ts_text_of(text), wrap), column);
    assert_string_equal(out.bytes != NULL ? out.bytes : "", wrapped);
    ts_buffer_close(&out);
}

static void text_that_fits_stands_as_it_is(void **state)
{
    (void)state;
    expect("a  b   c", (ts_wrap){8, 2, 0}, "a  b   c", 8);
    expect("a  b   c", (ts_wrap){0, 2, 70}, "a  b   c", 78);
    expect("", (ts_wrap){8, 2, 3}, "", 3);
}

static void text_breaks_at_blanks_and_goes_on_indented(void **state)
{
    (void)state;
    expect("one two three", (ts_wrap){9, 2, 0}, "one two\n  three", 7);
    expect("one two three", (ts_wrap){9, 2, 4}, "one\n  two\n  three", 7);
    expect("one  two  three", (ts_wrap){9, 0, 0}, "one two\nthree", 5);
}

static void word_longer_than_a_line_stands_on_its_own(void **state)
{
    (void)state;
    expect("a /very/long/path b", (ts_wrap){8, 1, 0}, "a\n /very/long/path\n b", 2);
}

static void columns_are_counted_not_bytes(void **state)
{
    (void)state;
    expect("\xCF\x83\xCF\x83\xCF\x83 \xCF\x83\xCF\x83", (ts_wrap){6, 0, 0},
           "\xCF\x83\xCF\x83\xCF\x83 \xCF\x83\xCF\x83", 6);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(text_that_fits_stands_as_it_is),
        cmocka_unit_test(text_breaks_at_blanks_and_goes_on_indented),
        cmocka_unit_test(word_longer_than_a_line_stands_on_its_own),
        cmocka_unit_test(columns_are_counted_not_bytes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
