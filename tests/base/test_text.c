/* Are pieces of somebody else's bytes compared, measured and guessed at rightly? */
#include "base/text.h"

#include "support/close.h"
#include "support/sequence.h"

#include <string.h>

static void texts_compare_by_their_bytes(void **state)
{
    (void)state;
    assert_true(ts_text_equal(TS_TEXT("a\0b"), (ts_text){"a\0bc", 3}));
    assert_false(ts_text_equal(TS_TEXT("a\0b"), TS_TEXT("a\0c")));
    assert_false(ts_text_equal(TS_TEXT("ab"), TS_TEXT("abc")));
    assert_true(ts_text_equal((ts_text){NULL, 0}, TS_TEXT("")));
    assert_true(ts_text_is(TS_TEXT("rpm"), "rpm"));
    assert_false(ts_text_is(TS_TEXT("rpm"), "RPM"));
    assert_true(ts_text_is(ts_text_of(NULL), ""));
}

static void trimming_takes_blanks_and_tabs_only(void **state)
{
    (void)state;
    assert_true(ts_text_is(ts_text_trim(TS_TEXT(" \t a b\t ")), "a b"));
    assert_true(ts_text_is(ts_text_trim(TS_TEXT("\na\n")), "\na\n"));
    assert_int_equal(ts_text_trim(TS_TEXT(" \t ")).length, 0);
}

/* The examples of Unicode 15, table 3-7 and the text below it (from memory). */
static void utf8_ends_at_the_first_ill_formed_byte(void **state)
{
    (void)state;
    static const struct {
        const char *bytes;
        size_t      well_formed;
    } cases[] = {
        {"plain", 5},
        {"\x7f", 1},
        {"\xc2\x80 \xdf\xbf", 5},
        {"\xe0\xa0\x80\xed\x9f\xbf\xee\x80\x80", 9},
        {"\xf0\x90\x80\x80\xf4\x8f\xbf\xbf", 8},
        {"a\x80", 1},             /* a continuation by itself           */
        {"a\xc1\xbf", 1},         /* overlong in two bytes              */
        {"a\xe0\x9f\xbf", 1},     /* overlong in three                  */
        {"a\xf0\x8f\xbf\xbf", 1}, /* overlong in four                   */
        {"a\xed\xa0\x80", 1},     /* a surrogate                        */
        {"a\xf4\x90\x80\x80", 1}, /* past U+10FFFF                      */
        {"a\xf5\x80\x80\x80", 1}, /* no such first byte                 */
        {"a\xe2\x82", 1},         /* ends too early                     */
        {"a\xe2\x82(", 1},        /* the third byte does not continue   */
        {"a\xff", 1},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        assert_int_equal(ts_text_utf8_length(ts_text_of(cases[i].bytes)), cases[i].well_formed);
}

/* Encodes by the plain definition of UTF-8 (RFC 3629, clause 3). */
static size_t encode(uint32_t code, char out[4])
{
    if (code < 0x80) {
        out[0] = (char)code;
        return 1;
    }
    const size_t         length  = code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
    static const uint8_t first[] = {0, 0, 0xC0, 0xE0, 0xF0};
    for (size_t i = length - 1; i > 0; i--) {
        out[i] = (char)(0x80 | (code & 0x3F));
        code >>= 6;
    }
    out[0] = (char)(first[length] | code);
    return length;
}

static void every_code_point_is_read_back(void **state)
{
    (void)state;
    for (uint32_t code = 0; code < 0x110000; code++) {
        char         bytes[4];
        uint32_t     read   = 0;
        const size_t length = encode(code, bytes);
        const bool   valid  = code < 0xD800 || code > 0xDFFF;
        if (ts_text_code_point((ts_text){bytes, length}, 0, &read) != (valid ? length : 0) ||
            (valid && read != code))
            fail_msg("U+%04X", code);
    }
}

static void marks_take_no_column(void **state)
{
    (void)state;
    assert_int_equal(ts_text_columns(TS_TEXT("alpha")), 5);
    assert_int_equal(ts_text_columns(TS_TEXT("\xce\xb1\xe2\x82\x82")), 2); /* alpha, sub 2     */
    assert_int_equal(ts_text_columns(TS_TEXT("e\xcc\x81")), 1);            /* e, acute over it */
    assert_int_equal(ts_text_columns(TS_TEXT("\xd7\x91\xd6\xbc")), 1);     /* bet, dagesh      */
    assert_int_equal(ts_text_columns(TS_TEXT("a\xe2\x80\x8b"
                                             "b")),
                     2);                                               /* zero-width space */
    assert_int_equal(ts_text_columns(TS_TEXT("\xf0\x90\x8d\xb6")), 0); /* U+10376, a mark  */
    assert_int_equal(ts_text_columns(TS_TEXT("\xff\xfe")), 2);
}

static void the_nearest_word_is_found(void **state)
{
    (void)state;
    static const char *const words[] = {"teeth", "face",  NULL,  "module",
                                        "rear",  "front", "rpm", ""};
    const size_t             count   = sizeof words / sizeof words[0];
    assert_string_equal(ts_text_nearest(TS_TEXT("teeht"), words, count), "teeth");  /* one swap   */
    assert_string_equal(ts_text_nearest(TS_TEXT("modul"), words, count), "module"); /* one added */
    assert_string_equal(ts_text_nearest(TS_TEXT("moddulle"), words, count), "module");
    assert_string_equal(ts_text_nearest(TS_TEXT("RPM"), words, count), "rpm"); /* case ignored */
    assert_string_equal(ts_text_nearest(TS_TEXT("frunt"), words, count), "front");
    assert_null(ts_text_nearest(TS_TEXT("bearing"), words, count));
    assert_null(ts_text_nearest(TS_TEXT(""), words, count));
    assert_null(ts_text_nearest(TS_TEXT("rpm"), words, 0));
}

static void a_piece_of_a_name_finds_the_name(void **state)
{
    (void)state;
    static const char *const names[] = {"oil pump pack", "fuel pump", "B2-speed-band", "starter"};

    assert_string_equal(ts_text_nearest(TS_TEXT("pump"), names, 4), "fuel pump"); /* the shorter */
    assert_string_equal(ts_text_nearest(TS_TEXT("PACK"), names, 4), "oil pump pack");
    assert_string_equal(ts_text_nearest(TS_TEXT("B2-sped"), names, 4), "B2-speed-band");
    assert_null(ts_text_nearest(TS_TEXT("pum"), names, 4));  /* too little of it */
    assert_null(ts_text_nearest(TS_TEXT("bump"), names, 4)); /* four letters, none wrong */
}

static void the_nearer_in_case_wins_then_the_earlier(void **state)
{
    (void)state;
    static const char *const units[] = {"mw", "MW", "kW", "kw"};
    assert_string_equal(ts_text_nearest(TS_TEXT("MW"), units, 4), "MW");
    assert_string_equal(ts_text_nearest(TS_TEXT("mw"), units, 4), "mw");
    assert_string_equal(ts_text_nearest(TS_TEXT("Kw"), units, 4), "kw");
    static const char *const equal[] = {"bore", "core"};
    assert_string_equal(ts_text_nearest(TS_TEXT("dore"), equal, 2), "bore");
}

static void long_words_are_not_guessed_at(void **state)
{
    (void)state;
    char word[200];
    memset(word, 'a', sizeof word);
    const char *const same[] = {
        "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"};
    assert_null(ts_text_nearest((ts_text){word, sizeof word}, same, 1));
    assert_null(ts_text_nearest((ts_text){word, 64}, same, 1));
}

/* The plain recursive definition of the distance, for short words. */
static size_t slow_distance(const char *a, size_t n, const char *b, size_t m)
{
    if (n == 0 || m == 0)
        return n + m;
    size_t best  = slow_distance(a, n - 1, b, m - 1) + (a[n - 1] == b[m - 1] ? 0 : 1);
    size_t other = slow_distance(a, n - 1, b, m) + 1;
    best         = other < best ? other : best;
    other        = slow_distance(a, n, b, m - 1) + 1;
    best         = other < best ? other : best;
    if (n > 1 && m > 1 && a[n - 1] == b[m - 2] && a[n - 2] == b[m - 1]) {
        other = slow_distance(a, n - 2, b, m - 2) + 1;
        best  = other < best ? other : best;
    }
    return best;
}

static void a_word_is_near_when_its_distance_says_so(void **state)
{
    (void)state;
    sequence random = {7};
    size_t   near = 0, far = 0;
    for (int i = 0; i < 3000; i++) {
        char         a[8] = {0}, b[8] = {0};
        const size_t n = 1 + sequence_below(&random, 6), m = 1 + sequence_below(&random, 6);
        for (size_t k = 0; k < n; k++)
            a[k] = (char)('a' + sequence_below(&random, 3));
        for (size_t k = 0; k < m; k++)
            b[k] = (char)('a' + sequence_below(&random, 3));
        const char *const candidates[] = {b};
        const bool        expected     = slow_distance(a, n, b, m) <= 1 + n / 4;
        assert_int_equal(ts_text_nearest((ts_text){a, n}, candidates, 1) != NULL, expected);
        near += expected ? 1 : 0;
        far += expected ? 0 : 1;
    }
    assert_true(near > 300 && far > 300);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(texts_compare_by_their_bytes),
        cmocka_unit_test(trimming_takes_blanks_and_tabs_only),
        cmocka_unit_test(utf8_ends_at_the_first_ill_formed_byte),
        cmocka_unit_test(every_code_point_is_read_back),
        cmocka_unit_test(marks_take_no_column),
        cmocka_unit_test(the_nearest_word_is_found),
        cmocka_unit_test(a_piece_of_a_name_finds_the_name),
        cmocka_unit_test(the_nearer_in_case_wins_then_the_earlier),
        cmocka_unit_test(long_words_are_not_guessed_at),
        cmocka_unit_test(a_word_is_near_when_its_distance_says_so),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
