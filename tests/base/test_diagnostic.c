/* Does a message point at the place, in order, and show nothing raw? */
#include "base/diagnostic.h"

#include "support/close.h"
#include "support/faulty_allocator.h"

#include <stdio.h>
#include <string.h>
#include <time.h>

typedef struct page {
    ts_arena       *arena;
    ts_diagnostics *list;
    ts_buffer       out;
} page;

static page open_page(ts_text bytes)
{
    page p;
    p.arena = ts_arena_open(NULL);
    p.list  = ts_diagnostics_open(p.arena, "demo.yaml", bytes);
    ts_buffer_open(&p.out, NULL);
    assert_non_null(p.list);
    return p;
}

static void close_page(page *p)
{
    ts_buffer_close(&p->out);
    ts_arena_close(p->arena);
}

static void say(page *p, uint32_t line, uint32_t column, uint32_t columns, const char *says)
{
    ts_diagnose(
        p->list,
        &(ts_diagnostic){
            .code = "test", .line = line, .column = column, .columns = columns, .says = says});
}

static void expect_page(page *p, const char *text)
{
    ts_diagnostics_print(p->list, 0, &p->out);
    assert_string_equal(p->out.bytes, text);
}

static void a_message_says_where_what_was_expected_and_what_is_near(void **state)
{
    (void)state;
    page p = open_page(TS_TEXT("title: Corncrake\ngears:\n  moddule: 2 mm\n"));
    ts_diagnose(p.list, &(ts_diagnostic){.code     = "unknown-key",
                                         .line     = 3,
                                         .column   = 3,
                                         .columns  = 7,
                                         .says     = "there is no key `moddule`",
                                         .expected = "a key of gears",
                                         .nearest  = "module"});
    expect_page(&p, "demo.yaml:3:3: there is no key `moddule`; expected a key of gears; did you "
                    "mean module?\n"
                    "      moddule: 2 mm\n"
                    "      ^^^^^^^\n");
    close_page(&p);
}

static void sentences_and_lines_fit_the_terminal(void **state)
{
    (void)state;
    page p = open_page(TS_TEXT("title: Corncrake, the accessory drive of a small engine\n"));
    ts_diagnose(p.list, &(ts_diagnostic){.code     = "test",
                                         .line     = 1,
                                         .column   = 44,
                                         .columns  = 5,
                                         .says     = "there is no room for so many words here",
                                         .expected = "fewer of them in a sentence",
                                         .nearest  = "a small one"});
    ts_diagnostics_print(p.list, 50, &p.out);
    assert_string_equal(p.out.bytes, "demo.yaml:1:44: there is no room for so many words\n"
                                     "  here; expected fewer of them in a sentence; did\n"
                                     "  you mean a small one?\n"
                                     "    ...e, the accessory drive of a small engine\n"
                                     "                                   ^^^^^\n");
    close_page(&p);
}

static void messages_stand_in_the_order_of_the_file(void **state)
{
    (void)state;
    page p = open_page(TS_TEXT("a\nb\nc"));
    say(&p, 3, 1, 1, "third");
    say(&p, 1, 2, 1, "second");
    say(&p, 0, 0, 0, "whole file");
    say(&p, 1, 1, 1, "first");
    say(&p, 1, 1, 1, "first, said later");
    assert_int_equal(ts_diagnostics_count(p.list), 5);
    static const char *const order[] = {"whole file", "first", "first, said later", "second",
                                        "third"};
    for (size_t i = 0; i < 5; i++)
        assert_string_equal(ts_diagnostics_at(p.list, i)->says, order[i]);
    expect_page(&p, "demo.yaml: whole file\n"
                    "demo.yaml:1:1: first\n    a\n    ^\n"
                    "demo.yaml:1:1: first, said later\n    a\n    ^\n"
                    "demo.yaml:1:2: second\n    a\n     ^\n"
                    "demo.yaml:3:1: third\n    c\n    ^\n");
    close_page(&p);
}

static void everything_is_copied(void **state)
{
    (void)state;
    page p       = open_page(TS_TEXT("x"));
    char says[8] = "before", address[8] = "drive";
    ts_diagnose(p.list,
                &(ts_diagnostic){.code = "c", .says = says, .address = address, .nearest = says});
    memset(says, 'x', sizeof says);
    memset(address, 'x', sizeof address);
    const ts_diagnostic *d = ts_diagnostics_at(p.list, 0);
    assert_string_equal(d->says, "before");
    assert_string_equal(d->nearest, "before");
    assert_string_equal(d->address, "drive");
    assert_null(d->expected);
    assert_int_equal(d->columns, 1);
    close_page(&p);
}

static void a_sentence_can_be_formatted(void **state)
{
    (void)state;
    page p = open_page(TS_TEXT("x"));
    ts_diagnose_format(p.list, &(ts_diagnostic){.code = "c", .line = 1, .column = 1},
                       "%s has %zu of %.*s", "box", (size_t)3, 4, "padsxxx");
    assert_string_equal(ts_diagnostics_at(p.list, 0)->says, "box has 3 of pads");
    close_page(&p);
}

static void columns_are_code_points_and_carets_stand_under_them(void **state)
{
    (void)state;
    /* a tab is one blank; alpha is one column; an acute takes none; bad bytes take four each */
    page p = open_page(TS_TEXT("\t\xce\xb1 e\xcc\x81 \xff\x01 end\r\nnext\rlast"));
    say(&p, 1, 2, 1, "alpha");
    say(&p, 1, 4, 2, "e with its acute");
    say(&p, 1, 7, 2, "bytes");
    say(&p, 1, 10, 3, "end");
    say(&p, 2, 1, 9, "next");
    say(&p, 3, 9, 2, "past the end");
    say(&p, 4, 1, 1, "past the file");
    static const char line[] = "     \xce\xb1 e\xcc\x81 \\xff\\x01 end\n";
    char              text[1000];
    (void)snprintf(text, sizeof text,
                   "demo.yaml:1:2: alpha\n%s     ^\n"
                   "demo.yaml:1:4: e with its acute\n%s       ^\n"
                   "demo.yaml:1:7: bytes\n%s         ^^^^^^^^\n"
                   "demo.yaml:1:10: end\n%s                  ^^^\n"
                   "demo.yaml:2:1: next\n    next\n    ^^^^\n"
                   "demo.yaml:3:9: past the end\n    last\n        ^\n"
                   "demo.yaml:4:1: past the file\n",
                   line, line, line, line);
    expect_page(&p, text);
    close_page(&p);
}

static void words_of_the_file_cannot_steer_the_terminal(void **state)
{
    (void)state;
    page p = open_page(TS_TEXT("\x1b[2J\xc2\x9b\xe2\x80\xae"));
    say(&p, 1, 1, 1, "'\x1b[31m' is no unit\n");
    expect_page(&p, "demo.yaml:1:1: '\\x1b[31m' is no unit\\x0a\n"
                    "    \\x1b[2J\\xc2\\x9b\\xe2\\x80\\xae\n"
                    "    ^^^^\n");
    close_page(&p);
}

static void long_lines_are_cut_round_the_caret(void **state)
{
    (void)state;
    char line[1001];
    for (size_t i = 0; i < 1000; i++)
        line[i] = (char)('a' + i % 26);
    page p = open_page((ts_text){line, 1000});
    say(&p, 1, 501, 3, "middle");
    say(&p, 1, 5, 1, "start");
    say(&p, 1, 1000, 9, "end");
    ts_diagnostics_print(p.list, 0, &p.out);

    const char *at = p.out.bytes;
    for (int i = 0; i < 3; i++) {
        const uint32_t column = ts_diagnostics_at(p.list, (size_t)i)->column;
        const char    *shown  = strchr(at, '\n') + 1;
        const char    *carets = strchr(shown, '\n') + 1;
        const char    *caret  = strchr(carets, '^');
        assert_in_range(carets - shown, 80, 4 + 3 + 160 + 3 + 1);
        assert_int_equal(shown[caret - carets], line[column - 1]);
        at = strchr(carets, '\n') + 1;
    }
    assert_string_equal(at, "");
    close_page(&p);
}

static void marks_without_a_column_cannot_make_a_line_endless(void **state)
{
    (void)state;
    static char line[400001];
    for (size_t i = 0; i < 400000; i += 2)
        memcpy(line + i, "\xcc\x81", 2);
    page p = open_page((ts_text){line, 400000});
    say(&p, 1, 100000, 1, "marks");
    ts_diagnostics_print(p.list, 0, &p.out);
    assert_true(p.out.length < 2000);
    close_page(&p);
}

static void only_the_first_are_kept_but_all_are_counted(void **state)
{
    (void)state;
    page p = open_page(TS_TEXT("x"));
    for (uint32_t i = 0; i < TS_DIAGNOSTICS_MOST + 7; i++)
        say(&p, 0, 0, 1, i == 0 ? "first" : "later");
    assert_int_equal(ts_diagnostics_count(p.list), TS_DIAGNOSTICS_MOST + 7);
    assert_int_equal(ts_diagnostics_kept(p.list), TS_DIAGNOSTICS_MOST);
    ts_diagnostics_print(p.list, 0, &p.out);
    assert_non_null(strstr(p.out.bytes, "demo.yaml: first\n"));
    assert_string_equal(p.out.bytes + p.out.length - 22, "demo.yaml: and 7 more\n");
    close_page(&p);
}

/* A line of megabytes with two hundred messages: one walk, not two hundred.  The margin between the
 * two is a factor of hundred, so the limit is far from either. */
static void a_file_is_walked_once(void **state)
{
    (void)state;
    static char line[4000000];
    memset(line, 'x', sizeof line);
    page p = open_page((ts_text){line, sizeof line});
    for (uint32_t i = 0; i < TS_DIAGNOSTICS_MOST; i++)
        say(&p, 1, 3900000 + i, 1, "here");
    const clock_t start = clock();
    ts_diagnostics_print(p.list, 0, &p.out);
    assert_true((double)(clock() - start) / CLOCKS_PER_SEC < 1.5);
    close_page(&p);
}

static void a_list_without_memory_still_counts(void **state)
{
    (void)state;
    for (size_t n = 1;; n++) {
        faulty_allocator   faulty;
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONWARDS);
        ts_arena          *arena     = ts_arena_open(&allocator);
        ts_diagnostics    *list =
            arena != NULL ? ts_diagnostics_open(arena, "demo.yaml", TS_TEXT("x")) : NULL;
        for (int i = 0; list != NULL && i < 1000; i++) {
            ts_diagnose_format(list, &(ts_diagnostic){.code = "c", .expected = "e", .nearest = "n"},
                               "%s", "a sentence that takes some memory to keep, and to format");
        }
        if (list != NULL) {
            assert_int_equal(ts_diagnostics_count(list), 1000);
            for (size_t i = 0; i < ts_diagnostics_kept(list); i++) {
                assert_non_null(ts_diagnostics_at(list, i)->says);
                assert_non_null(ts_diagnostics_at(list, i)->code);
            }
        }
        ts_arena_close(arena);
        assert_int_equal(faulty.live_blocks, 0);
        if (faulty.failed == 0)
            break;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_message_says_where_what_was_expected_and_what_is_near),
        cmocka_unit_test(sentences_and_lines_fit_the_terminal),
        cmocka_unit_test(messages_stand_in_the_order_of_the_file),
        cmocka_unit_test(everything_is_copied),
        cmocka_unit_test(a_sentence_can_be_formatted),
        cmocka_unit_test(columns_are_code_points_and_carets_stand_under_them),
        cmocka_unit_test(words_of_the_file_cannot_steer_the_terminal),
        cmocka_unit_test(long_lines_are_cut_round_the_caret),
        cmocka_unit_test(marks_without_a_column_cannot_make_a_line_endless),
        cmocka_unit_test(only_the_first_are_kept_but_all_are_counted),
        cmocka_unit_test(a_file_is_walked_once),
        cmocka_unit_test(a_list_without_memory_still_counts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
