/* Does the search find what trying everything finds: the same optimum, the same number of ways?
 *
 * 520 invented problems by a fixed seed (60 under the sanitizers); TS_SOAK=20 makes 20 times as
 * many.
 *
 * ctest: timeout=600
 */
#include "arrange/brute.h"
#include "arrange/random_problem.h"
#include "search/arrange_search.h"
#include "support/close.h"

#include <stdio.h>
#include <stdlib.h>

#ifdef TS_SANITIZED
enum { PROBLEMS = 60, STEPS_MOST = 15000 };
#else
enum { PROBLEMS = 520, STEPS_MOST = 25000 };
#endif

static size_t problems(void)
{
    const char *soak = getenv("TS_SOAK");
    return PROBLEMS * (soak != NULL ? (size_t)atoi(soak) : 1);
}

static random_problem problem;
static brute_answer   brute;

static void draw(uint64_t seed)
{
    const random_wish wish = {.accessories = 1 + seed % 5,
                              .boxes       = 1 + seed / 5 % 2,
                              .modules     = 1 + seed / 3 % 3,
                              .z_in        = 1 + seed / 7 % 3,
                              .narrow      = true};
    random_problem_make(&problem, seed, &wish);
}

static void all_agree(void **state)
{
    size_t feasible = 0, infeasible = 0, skipped = 0;

    (void)state;
    for (uint64_t seed = 1; feasible + infeasible < problems(); seed++) {
        const ts_arrange_wish wish = {.workers = 1};
        ts_arrange_result     result;
        uint64_t              count = 0;

        draw(seed);
        brute_solve(&problem.problem, STEPS_MOST, &brute);
        if (brute.gave_up) {
            skipped++;
            continue;
        }
        assert_int_equal(ts_arrange_search(&problem.problem, &wish, &result), TS_OK);
        assert_int_equal(ts_arrange_count(&problem.problem, &wish, &count), TS_OK);
        if (count != brute.count || (result.count > 0) != (brute.count > 0))
            print_error("seed %llu\n", (unsigned long long)seed);
        assert_int_equal(count, brute.count);
        assert_int_equal(result.end, TS_ARRANGE_PROVEN);
        assert_int_equal(result.count, brute.count > 0 ? 1 : 0);
        if (brute.count > 0) {
            assert_close(result.answers[0].mass, brute.mass, 1e-9);
            assert_close(brute_mass(&problem.problem, &result.answers[0]), brute.mass, 1e-9);
            feasible++;
        } else {
            infeasible++;
        }
        ts_arrange_result_close(&result);
    }
    print_message("%zu feasible, %zu infeasible, %zu too large to try\n", feasible, infeasible,
                  skipped);
    assert_true(feasible >= problems() / 4);
    assert_true(infeasible >= problems() / 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(all_agree)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
