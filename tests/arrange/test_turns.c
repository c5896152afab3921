/* Is the lightest proven by itself where several answers are too much work, and are the others what
 * they are said to be when their search is ended early?
 */
#include "arrange/random_problem.h"
#include "search/arrange_search.h"
#include "search/arrange_verify.h"
#include "support/case_count.h"
#include "support/close.h"

enum { PROBLEMS = TS_CASES(40, 8), ANSWERS = 4, ENDS = 9, AT_FIRST = 30 };

static random_problem problem;

typedef struct patience {
    size_t asked, most;
} patience;

static bool is_over(void *context)
{
    patience *p = context;
    return ++p->asked > p->most;
}

static void draw(uint64_t seed)
{
    const random_wish wish = {.accessories = 3 + seed % 2,
                              .boxes       = 1 + seed / 5 % 2,
                              .modules     = 1 + seed % 2,
                              .z_in        = 2,
                              .narrow      = true};
    random_problem_make(&problem, seed, &wish);
}

/* Proven or not, nothing is told that the whole search does not bear out. */
static void judge(const ts_arrange_result *r, const ts_arrange_result *whole)
{
    const ts_arrange_problem *p = &problem.problem;
    for (size_t i = 0; i < r->count; i++) {
        assert_int_equal(ts_arrange_verify(p, &r->answers[i]), TS_RULE_NONE);
        if (i < whole->count)
            assert_true(r->answers[i].mass >= whole->answers[i].mass * (1.0 - 1e-9));
        for (size_t k = 0; k < i; k++)
            assert_true(r->answers[i].shape != r->answers[k].shape);
        assert_true(i == 0 || r->answers[i].mass >= r->answers[i - 1].mass * (1.0 - 1e-9));
    }
    if (r->end != TS_ARRANGE_PROVEN) {
        assert_true(whole->count == 0 || r->bound <= whole->answers[0].mass * (1.0 + 1e-9));
        return;
    }
    const ts_certificate_check check = ts_arrange_check_certificate(p, r);
    assert_int_equal(check.missing + check.not_closed, 0);
    assert_int_equal(r->count > 0, whole->count > 0);
    if (r->count == 0)
        return;
    assert_close(r->answers[0].mass, whole->answers[0].mass, 1e-9);
    assert_true(r->bound >= r->answers[0].mass * (1.0 - 1e-9));
    if (r->others_open)
        return;
    assert_int_equal(r->count, whole->count);
    for (size_t i = 0; i < r->count; i++)
        assert_close(r->answers[i].mass, whole->answers[i].mass, 1e-9);
}

static void first_is_proven_and_others_are_what_they_are_said_to_be(void **state)
{
    size_t proven = 0, stopped = 0, open = 0, more = 0;

    (void)state;
    for (uint64_t seed = 1; seed <= PROBLEMS; seed++) {
        ts_arrange_wish   how = {.workers = 1, .answers = ANSWERS};
        ts_arrange_result whole, r;
        draw(seed);
        assert_int_equal(ts_arrange_search(&problem.problem, &how, &whole), TS_OK);
        for (size_t most = 1; most <= (size_t)1 << ENDS; most *= 2) {
            patience p  = {.most = most};
            how.stop    = is_over;
            how.context = &p;
            assert_int_equal(ts_arrange_search_in_turns(&problem.problem, &how, AT_FIRST, &r),
                             TS_OK);
            judge(&r, &whole);
            stopped += r.end == TS_ARRANGE_STOPPED ? 1 : 0;
            proven += r.end == TS_ARRANGE_PROVEN && !r.others_open ? 1 : 0;
            open += r.others_open ? 1 : 0;
            more += r.others_open && r.count > 1 ? 1 : 0;
            ts_arrange_result_close(&r);
        }
        ts_arrange_result_close(&whole);
    }
    print_message(
        "%zu proven, %zu ended early, %zu with the first alone proven (%zu with others)\n", proven,
        stopped, open, more);
    assert_true(proven > 0 && stopped > 0 && open > 0 && more > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(first_is_proven_and_others_are_what_they_are_said_to_be),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
