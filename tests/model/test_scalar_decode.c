/* Do the bytes of a scalar decode as YAML says?
 *
 * Source of the examples: YAML 1.2.2, numbers 5.13, 7.5, 7.6, 7.7, 7.9 and 7.12; from memory.
 */
#include "model/scalar_decode.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static void assert_decodes(const char *raw, char quote, const char *expected, size_t length)
{
    ts_arena *arena = ts_arena_open(NULL);
    ts_text   out;
    assert_true(ts_scalar_decode(ts_text_of(raw), quote, arena, &out));
    assert_int_equal(out.length, length);
    assert_memory_equal(out.at, expected, length);
    ts_arena_close(arena);
}

#define DECODES(raw, quote, expected)                                                              \
    assert_decodes((raw), (quote), (expected), sizeof(expected) - 1)

static void plain_lines_fold(void **state)
{
    (void)state;
    DECODES("1st non-empty\n\n 2nd non-empty \n\t3rd non-empty", 0,
            "1st non-empty\n2nd non-empty 3rd non-empty"); /* example 7.12 */
    DECODES("a\r\n  b", 0, "a b");
    DECODES("it's \"so\" \\n", 0, "it's \"so\" \\n");
}

static void single_quotes_double(void **state)
{
    (void)state;
    DECODES("here''s to \"quotes\"", '\'', "here's to \"quotes\""); /* example 7.7 */
    DECODES("''''''''''", '\'', "'''''");
    DECODES(" 1st non-empty\n\n 2nd non-empty \n\t3rd non-empty ", '\'',
            " 1st non-empty\n2nd non-empty 3rd non-empty "); /* example 7.9 */
}

static void double_quotes_escape(void **state)
{
    (void)state;
    /* example 5.13 */
    DECODES("Fun with \\\\", '"', "Fun with \\");
    DECODES("\\\" \\a \\b \\e \\f", '"', "\" \x07 \x08 \x1B \x0C");
    DECODES("\\n \\r \\t \\v \\0", '"', "\n \r \t \v \0");
    DECODES("\\  \\_ \\N \\L \\P", '"', "  \xC2\xA0 \xC2\x85 \xE2\x80\xA8 \xE2\x80\xA9");
    DECODES("\\x41 \\u0041 \\U00000041", '"', "A A A");
    DECODES("\\xE9\\u20AC\\U0001F600", '"', "\xC3\xA9\xE2\x82\xAC\xF0\x9F\x98\x80");
    DECODES("\\/", '"', "/");
}

static void double_quoted_lines_fold(void **state)
{
    (void)state;
    /* example 7.5 */
    DECODES("folded \nto a space,\t\n \nto a line feed, or \t\\\n \\ \tnon-content", '"',
            "folded to a space,\nto a line feed, or \t \tnon-content");
    DECODES(" 1st non-empty\n\n 2nd non-empty \n\t3rd non-empty ", '"',
            " 1st non-empty\n2nd non-empty 3rd non-empty "); /* example 7.6 */
    DECODES("kept\\ \nhere", '"', "kept  here");
}

static void half_a_surrogate_is_no_character(void **state)
{
    (void)state;
    DECODES("\\uD800", '"', "\xEF\xBF\xBD");
    DECODES("\\UFFFFFFFF", '"', "\xEF\xBF\xBD");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(plain_lines_fold),
        cmocka_unit_test(single_quotes_double),
        cmocka_unit_test(double_quotes_escape),
        cmocka_unit_test(double_quoted_lines_fold),
        cmocka_unit_test(half_a_surrogate_is_no_character),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
