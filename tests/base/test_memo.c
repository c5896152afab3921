/* Is an answer used for the very question that it was given to, and for no other? */
#include "base/memo.h"

#include "base/arena.h"
#include "support/close.h"
#include "support/faulty_allocator.h"

#include <string.h>

static int *ask(ts_memo *memo, size_t place, const char *question, bool *known)
{
    ts_memo_ask(memo, question, strlen(question));
    return ts_memo_answer(memo, TS_MEMO_WEB, place, sizeof(int), known);
}

static void the_last_question_of_a_place_is_known(void **unused)
{
    ts_memo *memo = ts_memo_open(&ts_allocator_standard, 1);
    bool     known;

    (void)unused;
    for (int i = 0; i < 40; i++) {
        int *answer = ask(memo, (size_t)i, "how many?", &known);
        assert_false(known);
        *answer = 100 + i;
    }
    for (int i = 39; i >= 0; i--) {
        assert_int_equal(*ask(memo, (size_t)i, "how many?", &known), 100 + i);
        assert_true(known);
    }
    ts_memo_close(memo);
}

static void another_question_is_not_known(void **unused)
{
    static const char *const others[] = {"b", "ab", "ba", "", "a long one that asks for more room"};
    ts_memo                 *memo     = ts_memo_open(&ts_allocator_standard, 1);
    bool                     known;

    (void)unused;
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++) {
        *ask(memo, 3, "a", &known)       = 1;
        *ask(memo, 3, others[i], &known) = 2;
        assert_false(known);
        (void)ask(memo, 3, "a", &known);
        assert_false(known); /* one alone is kept */
    }
    ts_memo_ask(memo, "a", 1);
    assert_non_null(ts_memo_answer(memo, TS_MEMO_WHIRL, 3, sizeof(int), &known));
    assert_false(known); /* of another kind */
    (void)ask(memo, 4, "a", &known);
    ts_memo_ask(memo, "a", 1);
    (void)ts_memo_answer(memo, TS_MEMO_WEB, 4, sizeof(double), &known);
    assert_false(known); /* an answer of another size */
    ts_memo_close(memo);
}

/* Three are kept: the last three, whatever was asked between them. */
static void as_many_questions_are_known_as_the_memo_is_deep(void **unused)
{
    static const char *const asked[] = {"a", "b", "c", "d"};
    ts_memo                 *memo    = ts_memo_open(&ts_allocator_standard, 3);
    bool                     known;

    (void)unused;
    for (int i = 0; i < 4; i++) {
        *ask(memo, 7, asked[i], &known) = i;
        assert_false(known);
        (void)ask(memo, 8, "elsewhere", &known);
    }
    for (int i = 1; i < 4; i++) {
        assert_int_equal(*ask(memo, 7, asked[i], &known), i);
        assert_true(known);
    }
    (void)ask(memo, 7, "a", &known);
    assert_false(known); /* the first had to go, and now the second has */
    (void)ask(memo, 7, "b", &known);
    assert_false(known);
    assert_int_equal(*ask(memo, 7, "d", &known), 3);
    assert_true(known);
    ts_memo_close(memo);
}

/* Wherever memory ends, what is known is true, and what is not is NULL or to be filled. */
static void without_memory_nothing_is_known(void **unused)
{
    bool known = true;

    (void)unused;
    ts_memo_ask(NULL, "a", 1);
    assert_null(ts_memo_answer(NULL, TS_MEMO_WEB, 0, 4, &known));
    assert_false(known);
    for (size_t fail = 1; fail < 30; fail++) {
        faulty_allocator   faulty;
        const ts_allocator allocator = faulty_allocator_open(&faulty, fail, FAULTY_ONCE);
        ts_memo           *memo      = ts_memo_open(&allocator, 2);
        for (int round = 0; memo != NULL && round < 6; round++)
            for (size_t place = 0; place < 20; place += 19) {
                int *answer = ask(memo, place, round < 3 ? "a" : "a longer one", &known);
                assert_true(answer != NULL || !known);
                if (known)
                    assert_int_equal(*answer, round < 3 ? 1 : 2);
                else if (answer != NULL)
                    *answer = round < 3 ? 1 : 2;
            }
        ts_memo_close(memo);
        assert_int_equal(faulty.live_blocks, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_last_question_of_a_place_is_known),
        cmocka_unit_test(another_question_is_not_known),
        cmocka_unit_test(as_many_questions_are_known_as_the_memo_is_deep),
        cmocka_unit_test(without_memory_nothing_is_known),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
