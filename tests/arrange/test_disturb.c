/* Are widths by other code those of the search, and is the slack of bands where they are left? */
#include "arrange/random_problem.h"
#include "search/arrange_disturb.h"
#include "search/arrange_search.h"
#include "search/arrange_verify.h"
#include "support/case_count.h"
#include "support/close.h"

#include <math.h>

enum { PROBLEMS = TS_CASES(40, 8) };

static random_problem problem;

/* An invented problem that something fits; its answers are to be closed. */
static uint64_t draw(uint64_t seed, ts_arrange_result *result)
{
    for (;; seed++) {
        const random_wish     wish = {.accessories = 3 + seed % 3,
                                      .boxes       = 1 + seed / 5 % 2,
                                      .modules     = 2,
                                      .z_in        = 2,
                                      .narrow      = false};
        const ts_arrange_wish how  = {.workers = 1, .answers = 3};
        random_problem_make(&problem, seed, &wish);
        assert_int_equal(ts_arrange_search(&problem.problem, &how, result), TS_OK);
        if (result->count > 0)
            return seed;
        ts_arrange_result_close(result);
    }
}

static void widths_anew_are_those_of_the_search(void **state)
{
    uint64_t seed = 1;
    (void)state;
    for (int round = 0; round < PROBLEMS; round++, seed++) {
        ts_arrange_result result;
        seed = draw(seed, &result);
        for (size_t i = 0; i < result.count; i++) {
            ts_arrangement copy = result.answers[i];
            assert_close(ts_arrange_refit(&problem.problem, &copy), result.answers[i].mass, 1e-9);
            assert_int_equal(ts_arrange_verify(&problem.problem, &copy), TS_RULE_NONE);
        }
        ts_arrange_result_close(&result);
    }
}

static void more_load_never_weighs_less_and_still_verifies(void **state)
{
    uint64_t seed = 1000;
    (void)state;
    for (int round = 0; round < PROBLEMS; round++, seed++) {
        ts_arrange_result result;
        seed          = draw(seed, &result);
        double before = 0.0;
        for (double factor = 0.6; factor < 1.6; factor += 0.1) {
            ts_arena          *arena = ts_arena_open(NULL);
            ts_arrange_problem loaded;
            ts_arrangement     copy = result.answers[0];
            assert_true(ts_arrange_disturb(&problem.problem, &problem.problem, factor, 0.0, arena,
                                           &loaded));
            const double mass = ts_arrange_refit(&loaded, &copy);
            assert_true(mass >= before);
            if (isfinite(mass))
                assert_int_equal(ts_arrange_verify(&loaded, &copy), TS_RULE_NONE);
            before = mass;
            ts_arena_close(arena);
        }
        ts_arrange_result_close(&result);
    }
}

static void bands_are_kept_until_the_slack_is_gone(void **state)
{
    uint64_t seed = 2000;
    (void)state;
    for (int round = 0; round < PROBLEMS; round++, seed++) {
        ts_arrange_result result;
        size_t            accessory, condition;
        seed                        = draw(seed, &result);
        const ts_arrangement *a     = &result.answers[0];
        const double          slack = ts_arrange_slack(&problem.problem, a, &accessory, &condition);
        assert_true(accessory < problem.problem.accessory_count);
        for (int side = -1; side <= 1; side += 2) {
            ts_arena          *arena = ts_arena_open(NULL);
            ts_arrange_problem narrower;
            assert_true(ts_arrange_disturb(&problem.problem, &problem.problem, 1.0,
                                           slack + 1e-6 * side, arena, &narrower));
            assert_int_equal(ts_arrange_verify(&narrower, a),
                             side < 0 ? TS_RULE_NONE : TS_RULE_SPEED);
            ts_arena_close(arena);
        }
        ts_arrange_result_close(&result);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(widths_anew_are_those_of_the_search),
        cmocka_unit_test(more_load_never_weighs_less_and_still_verifies),
        cmocka_unit_test(bands_are_kept_until_the_slack_is_gone),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
