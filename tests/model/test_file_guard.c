/* What is refused before anything is read from it? */
#include "model/file_guard.h"
#include "model/opened_drive.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

/* ---- small files ---------------------------------------------------------------------------- */

typedef struct bad {
    const char *bytes;
    size_t      length; /* 0: up to the zero */
    const char *code;
    uint32_t    line, column;
} bad;

static void assert_bad(const bad *each)
{
    opened_drive o;
    open_bytes(&o, (ts_text){each->bytes, each->length > 0 ? each->length : strlen(each->bytes)});
    assert_int_equal(o.status, TS_NOT_UNDERSTOOD);
    const ts_diagnostic *message = message_of(&o, each->code);
    if (message->line != each->line || message->column != each->column)
        fail_msg("%s at %u:%u, not at %u:%u: %s", each->code, message->line, message->column,
                 each->line, each->column, each->bytes);
    close_drive(&o);
}

static void bytes_that_are_no_text_are_refused(void **state)
{
    (void)state;
    static const bad files[] = {
        {"a: 1\nb: \xC0\x80\n", 0, "not-utf-8", 2, 4},
        {"a: 1\nb: \xED\xA0\x80\n", 0, "not-utf-8", 2, 4}, /* a surrogate */
        {"a: \xC3\xA9\xFF\n", 0, "not-utf-8", 1, 5},
        {"a: 1\nb: 2\0\n", 11, "nul-byte", 2, 5},
        {"a: 1\nb: \x1B[31m\n", 0, "control-byte", 2, 4},
        {"a: \x7F\n", 0, "control-byte", 1, 4},
        {"a: \xC2\x9B\n", 0, "control-byte", 1, 4}, /* CSI, which terminals obey */
        {"a: 1\rb: 2\n", 0, "lone-return", 1, 5},
        {"\xEF\xBB\xBF"
         "a: 1\n",
         0, "byte-order-mark", 1, 1},
        {"\xFF\xFE"
         "a\0:\0",
         6, "not-utf-8", 1, 1}, /* UTF-16 */
    };
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++)
        assert_bad(&files[i]);
}

static void yaml_beyond_the_notation_is_refused(void **state)
{
    (void)state;
    static const bad files[] = {
        {"a: 1\n<<<<<<< ours\nb: 2\n=======\nb: 3\n>>>>>>> theirs\n", 0, "conflict-marker", 2, 1},
        {"a: 1\n||||||| base\n", 0, "conflict-marker", 2, 1},
        {"a: 'x\n=======\n'\n", 0, "conflict-marker", 2, 1},
        {"%YAML 1.2\n---\na: 1\n", 0, "directive", 1, 1},
        {"%TAG ! tag:x,2000:\n---\na: 1\n", 0, "directive", 1, 1},
        {"a: 1\n---\nb: 2\n", 0, "second-document", 2, 1},
        {"---\na: 1\n---\nb: 2\n", 0, "second-document", 3, 1},
        {"a: 1\n...\nb: 2\n", 0, "second-document", 3, 1},
        {"a:\n\tb: 1\n", 0, "tab", 2, 1},
        {"a: &x 1\nb: *x\n", 0, "yaml-mark", 1, 4},
        {"a: [1, *x]\n", 0, "yaml-mark", 1, 8},
        {"a: !!str 1\n", 0, "yaml-mark", 1, 4},
        {"a: {b: !x y}\n", 0, "yaml-mark", 1, 8},
        {"&a b: 1\n", 0, "yaml-mark", 1, 1},
        {"<<: {a: 1}\n", 0, "merge-key", 1, 1},
        {"a: {<<: {b: 1}}\n", 0, "merge-key", 1, 5},
        {"a: |\n  text\n", 0, "block-scalar", 1, 4},
        {"- a: >-\n    text\n", 0, "block-scalar", 1, 6},
        {"? a\n: b\n", 0, "complex-key", 1, 1},
        {"a: {? b : c}\n", 0, "complex-key", 1, 5},
        {"{a: 1}: 2\n", 0, "key-form", 1, 1},
        {"a: [b: 1]\n", 0, "key-in-list", 1, 6},
        {": 1\n", 0, "missing-key-name", 1, 1},
        {"a: 1\nb: 2\na: 3\n", 0, "duplicate-key", 3, 1},
        {"a: {b: 1, \"b\": 2}\n", 0, "duplicate-key", 1, 11},
        {"a: \"\\0\"\n", 0, "control-character", 1, 4},
        {"a: \"x\\u009By\"\n", 0, "control-character", 1, 4},
        {"a: \"x\\ny\"\n", 0, "control-character", 1, 4},
    };
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++)
        assert_bad(&files[i]);
}

static void broken_yaml_is_said_in_our_own_words(void **state)
{
    (void)state;
    static const bad files[] = {
        {"a: [1, 2\n", 0, "open-bracket", 1, 4},
        {"a: {b: [1, 2], c: 3\nd: {e: 1}\n", 0, "open-bracket", 1, 4},
        {"a: {b: 1,\n    c: x\nd: {e: 1}\n", 0, "open-bracket", 1, 4},
        {"a:\n  b: {c: 1}\n  d: {c: 1\ne: f\n", 0, "open-bracket", 3, 6},
        {"a:\n  - {b: {c: 1}\n  - {b: {c: 2}}\n", 0, "open-bracket", 2, 5},
        {"a:\n  - {b: {c: 1\n  - {b: {c: 2}}\n", 0, "open-bracket", 2, 9},
        {"a: [1, 2\nb: {c: 1}}\n", 0, "open-bracket", 1, 4},
        {"a: {b: 1,\n    c: [1, {d: 2", 0, "open-bracket", 2, 12},
        {"a: {b: [1, 2}\n", 0, "stray-bracket", 1, 13},
        {"a: }\n", 0, "stray-bracket", 1, 4},
        {"a: {b: 1 c: 2}\n", 0, "missing-comma", 1, 11},
        {"a: {b: 1\n    c: 2}\n", 0, "missing-comma", 2, 6},
        {"a: [,]\n", 0, "stray-comma", 1, 5},
        {"a: \"x\n", 0, "open-quote", 1, 4},
        {"a: 'x\n", 0, "open-quote", 1, 4},
        {"a: \"x\nb: \"y\"\n", 0, "open-quote", 1, 4},
        {"a: 'x\nb: that's it\n", 0, "open-quote", 1, 4},
        {"a: {b: \"6:00, c: 1}\nd: 'x'\ne: {f: \"7:00\", g: 2}\n", 0, "open-quote", 1, 8},
        {"- \"a\n  b\" c\n", 0, "open-quote", 1, 3},
        {"a:\n  - {b: 'x, c: y\n     d: 'z'}\n", 0, "open-quote", 2, 9},
        {"a: {b: \"x\ny\"}\n", 0, "indentation", 1, 8},
        {"a: \"x\" y\n", 0, "after-quote", 1, 8},
        {"a: \"\\q\"\n", 0, "escape", 1, 5},
        {"a: b: c\n", 0, "second-colon", 1, 5},
        {"a: @x\n", 0, "needs-quotes", 1, 4},
        {"a: 1\n b: 2\n", 0, "indentation", 1, 4},
        {"a: {b: 1,\nc: 2}\n", 0, "indentation", 2, 1},
        {"a: 1\nb\n", 0, "missing-colon", 2, 1},
        {"- a\nb: 1\n", 0, "missing-dash", 2, 1},
    };
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++)
        assert_bad(&files[i]);
}

/* The one message of a small file. */
static void assert_message(const char *bytes, const char *says, const char *expected)
{
    opened_drive o;
    open_bytes(&o, ts_text_of(bytes));
    assert_int_equal(ts_diagnostics_count(o.list), 1);
    assert_string_equal(ts_diagnostics_at(o.list, 0)->says, says);
    assert_string_equal(ts_diagnostics_at(o.list, 0)->expected, expected);
    close_drive(&o);
}

static void what_is_left_open_is_named_with_where_that_was_seen(void **state)
{
    (void)state;
    assert_message("a: {b: 1\nc: 2\n", "the brace opened here is not closed before line 2",
                   "its closing brace, }");
    assert_message("a: {b: 1, c: 2", "the brace opened here is not closed", "its closing brace, }");
    assert_message("a: [1, 2\n\n# c\nb: [3]\n",
                   "the bracket opened here is not closed before line 4", "its closing bracket, ]");
    assert_message("a: {b: 1\n    c: 2}\n", "a comma is missing between two entries",
                   "a comma at the end of the entry before, or } there, for the brace opened at "
                   "1:4 is not closed yet");
    assert_message("a: \"x\nb: \"y\"\n", "the quote opened here is not closed",
                   "its closing quote on the same line");
    assert_message("a: \"x\n   y\" z\n",
                   "the quote opened here closes on another line, and text follows there",
                   "its closing quote on the same line");
}

/* Each is sound YAML, so that nothing but the missing keys of a drive is said of it. */
static void what_goes_on_over_lines_and_closes_is_let_through(void **state)
{
    (void)state;
    static const char *const files[] = {
        "a: {b: 1,\n # c }\n c: 2}\n",
        "a: \"x\n  y\"\n",
        "a: 'it''s\n\n  so' # it's\n",
        "- - \"x\n    y\"\n",
        "a:\n  b: [\n   1,\n   2\n   ]\n",
        "a: {b: \"x\n  y\" , c: 'z\n u'}\n",
        "\"a\": 'b\"'\n",
    };
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++) {
        opened_drive o;
        open_bytes(&o, ts_text_of(files[i]));
        for (size_t k = 0; k < ts_diagnostics_kept(o.list); k++) {
            const char *code = ts_diagnostics_at(o.list, k)->code;
            if (strcmp(code, "open-quote") == 0 || strcmp(code, "open-bracket") == 0 ||
                strcmp(code, "indentation") == 0)
                fail_msg("%s: %s", code, files[i]);
        }
        close_drive(&o);
    }
}

static void file_that_is_no_record_is_refused(void **state)
{
    (void)state;
    static const bad files[] = {
        {"\n", 0, "no-drive", 1, 1},
        {"# nothing\n", 0, "no-drive", 1, 1},
        {"- a\n", 0, "no-drive", 1, 1},
        {"\n\nplain\n", 0, "no-drive", 3, 1},
    };
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++)
        assert_bad(&files[i]);
    opened_drive o;
    open_bytes(&o, (ts_text){"", 0});
    assert_non_null(message_of(&o, "no-drive"));
    close_drive(&o);
}

static void every_guard_speaks_in_one_run(void **state)
{
    (void)state;
    static const char file[] = "a: &x 1\nb:\n\tc: 2\n<<<<<<< ours\nd: !t 3\n";
    opened_drive      o;
    open_bytes(&o, TS_TEXT(file));
    assert_int_equal(ts_diagnostics_count(o.list), 4);
    close_drive(&o);
}

/* What looks like more than the notation, and is plain text. */
static void text_with_signs_in_it_is_only_text(void **state)
{
    (void)state;
    static const char *const titles[] = {
        "a & b",        "50 % of *all*",  "what? nothing!",
        "x [old] {y}",  "it's | so > ",   "a#b",
        "'[[[[ & * !'", "\"{{ <<: ? %\"", "a\n  & b\n  ! c\n  [ d\n  - e",
    };
    for (size_t i = 0; i < sizeof titles / sizeof titles[0]; i++) {
        opened_drive o;
        ts_buffer    line;
        ts_buffer_open(&line, NULL);
        ts_buffer_print(&line, "title: %s", titles[i]);
        open_variant(&o, "title: Corncrake 33, accessory drive", line.bytes);
        if (o.status != TS_OK)
            fail_msg("%s: %s", titles[i], ts_diagnostics_at(o.list, 0)->says);
        close_drive(&o);
        ts_buffer_close(&line);
    }
}

static void node_count_of_the_guard_is_exact(void **state)
{
    (void)state;
    opened_drive o;
    size_t       nodes = 0;
    open_sample(&o);
    assert_true(ts_guard_file(o.bytes, o.list, &nodes));
    assert_int_equal(nodes, o.source.node_count);
    close_drive(&o);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bytes_that_are_no_text_are_refused),
        cmocka_unit_test(yaml_beyond_the_notation_is_refused),
        cmocka_unit_test(broken_yaml_is_said_in_our_own_words),
        cmocka_unit_test(what_is_left_open_is_named_with_where_that_was_seen),
        cmocka_unit_test(what_goes_on_over_lines_and_closes_is_let_through),
        cmocka_unit_test(file_that_is_no_record_is_refused),
        cmocka_unit_test(every_guard_speaks_in_one_run),
        cmocka_unit_test(text_with_signs_in_it_is_only_text),
        cmocka_unit_test(node_count_of_the_guard_is_exact),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
